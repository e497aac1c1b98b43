package sheet

import (
	"slices"

	"coursewright/web/drawing"
)

// columnGap is between two columns of a list.
const columnGap = 5 * mmPaper

// into parts the rows of a list, in their order, into columns beside each other that are as low as
// they can be, and tells how high the highest is.
func (f *flow) into(t table, columns int) (parts []table, high drawing.Micron) {
	f = f.inColumn(0, columns)
	for _, last := range t.rows { // the highest column ends with some row; the lowest such height that will do
		high = max(high, f.high(t.of([]row{last})))
	}
	for {
		if parts = f.filled(t, high); len(parts) <= columns {
			return parts, high
		}
		next := drawing.Micron(0)
		for i, p := range parts[:len(parts)-1] { // one more row in one of them
			more := f.high(t.of(append(p.rows[:len(p.rows):len(p.rows)], parts[i+1].rows[0])))
			if next == 0 || more < next {
				next = more
			}
		}
		high = max(next, high+1)
	}
}

// filled fills columns of a height with the rows of a list, one after the other.
func (f *flow) filled(t table, high drawing.Micron) (parts []table) {
	for _, r := range t.rows {
		if n := len(parts) - 1; n >= 0 {
			if longer := t.of(append(parts[n].rows[:len(parts[n].rows):len(parts[n].rows)], r)); f.high(longer) <= high {
				parts[n] = longer
				continue
			}
		}
		parts = append(parts, t.of([]row{r}))
	}
	return parts
}

// of is a table with other rows.
func (t table) of(rows []row) table {
	t.rows = rows
	return t
}

// columnWide is how wide each of several columns is.
func (f *flow) columnWide(columns int) drawing.Micron {
	n := drawing.Micron(columns)
	return (f.hi.X - f.lo.X - (n-1)*columnGap) / n
}

// holdsIn tells whether a list fits on what is left of the leaf in columns that are wide enough, and
// what is kept free under them or under the last.
func (f *flow) holdsIn(t table, free drawing.Micron, columns int) bool {
	if f.columnWide(columns) < leastAt(f.percent) {
		return false
	}
	parts, high := f.columnsOf(t, free, columns)
	last := f.inColumn(len(parts)-1, columns)
	return high-tableGap <= f.left() && last.high(parts[len(parts)-1]) <= f.left()-free
}

// columnsOf parts a list into its columns: the lowest or, where these leave no room for what is to go under
// the last of them, as high as the leaf allows but for that one.
func (f *flow) columnsOf(t table, free drawing.Micron, columns int) (parts []table, high drawing.Micron) {
	parts, high = f.into(t, columns)
	if f.left()-high >= free {
		return parts, high
	}
	column := f.inColumn(0, columns)
	over := func(p table) bool { return column.high(p) > f.left() } // a single row may be
	if fuller := column.filled(t, f.left()); len(fuller) == columns && !slices.ContainsFunc(fuller, over) {
		return fuller, f.left()
	}
	return parts, high
}

// inColumn is a flow that fills one of several columns, from where this one stands.
func (f *flow) inColumn(i, columns int) *flow {
	out, wide := *f, f.columnWide(columns)
	out.lo.X += drawing.Micron(i) * (wide + columnGap)
	out.hi.X = out.lo.X + wide
	return &out
}

// inColumns writes a list in columns beside each other. What follows it goes under the last of them,
// where there is no room under all.
func (f *flow) inColumns(t table, free drawing.Micron, columns int) *flow {
	parts, high := f.columnsOf(t, free, columns)
	var last *flow
	for i, p := range parts {
		last = f.inColumn(i, columns)
		last.table(p)
	}
	if f.y += high; f.left() >= f.of(plain).leading() {
		return f
	}
	return last
}
