package count

import (
	"coursewright/layout/length"
)

// Widths are the widths at both ends by course, worked out once.
func (w *Wall) Widths(c *Counted) (left, right map[int]length.Length) {
	if c.widths == nil {
		l, r := w.EndWidths(c.Setting)
		c.widths = &[2]map[int]length.Length{l, r}
	}
	return c.widths[0], c.widths[1]
}

// EndWidths are the widths of the pieces at both ends by course; a course
// without a piece at an end has none there. It is for level courses.
func (w *Wall) EndWidths(s Setting) (left, right map[int]length.Length) {
	left, right = map[int]length.Length{}, map[int]length.Length{}
	f := w.cutter.fit(s.Placed)
	outline := f.outline()
	for _, row := range w.facts.rows(s, f.box) {
		at, plain := outline.widths(f.box, row)
		if !plain {
			at = f.row(row).ends
		}
		put(left, row.Course, at[0])
		put(right, row.Course, at[1])
	}
	return left, right
}

func put(m map[int]length.Length, course int, wide length.Length) {
	if wide != absent {
		m[course] = wide
	}
}
