package phase

import "coursewright/layout/merit"

// merits is room for many that are kept.
type merits []merit.Merit

// next is room for one.
func (all *merits) next() *merit.Merit {
	if len(*all) == 0 {
		*all = make(merits, 64)
	}
	m := &(*all)[0]
	*all = (*all)[1:]
	return m
}
