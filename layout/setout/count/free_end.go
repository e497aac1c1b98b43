package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
)

// at is what is sure of the pieces beside a free end that is placed at x, in the rows of
// each band and in those that are plain only in slices.
func (z *zones) at(right bool, x, along length.Length, bands pattern, slow []*uneven) merit.Merit {
	s := z.sure()
	for _, row := range slow {
		z.sliced(&s, right, x, along, row)
	}
	added := 0
	for _, row := range z.beside(stand{right, x, along}) {
		if n := int(bands[row.pattern]); n > 0 {
			s.add(&row, n)
			added++
		}
	}
	for _, row := range z.narrow.beside(stand{right, x, along}) {
		if bands[row.pattern]&row.sure != 0 {
			s.runs = append(s.runs, row.runs...)
		}
	}
	z.meter.add(3 + added)
	return s.merit()
}
