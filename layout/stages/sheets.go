package stages

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
)

// CourseOfSheets is what of mosaic is set one after the other: the sheets that stand
// beside each other, or, where the rows of a pattern are not level, those of one part of
// the work from the lowest up.
type CourseOfSheets struct {
	Field  *mosaic.Field
	Part   Part
	Sheets []*mosaic.Sheet // in the order of setting, each with its pieces as they stand in the plan

	level  int64 // of its lowest piece, 0 on the batten
	top    int64 // of its highest
	pieces map[*mosaic.Sheet][]piece.Piece
}

// Sheets puts the sheets of a plan into the order in which they are set, that of Order.
func Sheets(in Input) (out []CourseOfSheets) {
	if len(in.Cuts.Mosaic) == 0 {
		return nil
	}
	last := map[*mosaic.Field]int{}
	for _, s := range Order(in) {
		if s.Sheet == nil {
			continue
		}
		k, there := last[s.Field]
		if !there || out[k].Part != s.Part || s.Field.Level && out[k].Sheets[0].Row != s.Sheet.Row {
			k, out = len(out), append(out, CourseOfSheets{Field: s.Field, Part: s.Part})
			last[s.Field] = k
		}
		out[k].Sheets = append(out[k].Sheets, s.Sheet)
	}
	return out
}

// sheets are the courses of sheets of what lies on a wall or face, and what pieces are on
// them; level and part say of a piece what it is counted as.
func (o ordering) sheets(wall int, w *plan.Wall, level func(piece.Piece) int64, part func(int64) Part) (all []CourseOfSheets, on map[string]bool) {
	if len(o.Cuts.Mosaic) == 0 {
		return nil, nil
	}
	at := map[string]*piece.Piece{}
	for i := range w.Pieces {
		if p := &w.Pieces[i]; !w.Found.Stands(p.Row) {
			at[p.ID] = p
		}
	}
	on = map[string]bool{}
	for i := range o.Cuts.Mosaic {
		f := &o.Cuts.Mosaic[i]
		for n := range f.Sheets {
			s := &f.Sheets[n]
			c := CourseOfSheets{Field: f, Sheets: []*mosaic.Sheet{s}, pieces: map[*mosaic.Sheet][]piece.Piece{}}
			for _, id := range s.Pieces {
				p := at[id]
				if p == nil || f.Wall != wall {
					continue
				}
				l := level(*p)
				if len(c.pieces[s]) == 0 {
					c.level, c.top = l, l
				}
				on[id], c.level, c.top = true, min(c.level, l), max(c.top, l)
				c.pieces[s] = append(c.pieces[s], *p)
			}
			if len(c.pieces[s]) > 0 {
				c.Part = c.part(part)
				all = joined(all, c, part)
			}
		}
	}
	for i := range all {
		c := &all[i]
		if c.Part == OnBatten {
			c.level = 0
		}
		c.order(w.Start.Edge)
	}
	return all, on
}

// part is when the course is set: what stands on the batten or hangs over it with it.
func (c CourseOfSheets) part(of func(int64) Part) Part {
	if c.level < 0 && c.top >= 0 {
		return of(0)
	}
	return of(c.level)
}

// joined adds a sheet to its course, or a course of its own.
func joined(all []CourseOfSheets, c CourseOfSheets, part func(int64) Part) []CourseOfSheets {
	s := c.Sheets[0]
	i := slices.IndexFunc(all, func(d CourseOfSheets) bool {
		if d.Field != c.Field {
			return false
		}
		return c.Field.Level && d.Sheets[0].Row == s.Row || !c.Field.Level && d.Part == c.Part
	})
	if i < 0 {
		return append(all, c)
	}
	d := &all[i]
	d.Sheets, d.level, d.top = append(d.Sheets, s), min(d.level, c.level), max(d.top, c.top)
	d.pieces[s] = c.pieces[s]
	if c.Field.Level {
		d.Part = d.part(part)
	}
	return all
}

// order puts the sheets of a course from the start outwards, first to its right; those in
// slanting rows from the lowest up, or under the batten from the highest down.
func (c CourseOfSheets) order(start length.Length) {
	middle := func(s *mosaic.Sheet) length.Length { return (s.Box.Left + s.Box.Right).Half() - start }
	left := func(s *mosaic.Sheet) int {
		if middle(s) < 0 {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(c.Sheets, func(a, b *mosaic.Sheet) int {
		switch {
		case !c.Field.Level && c.Part == Under:
			return cmp.Or(cmp.Compare(b.Box.Top, a.Box.Top), cmp.Compare(a.Box.Left, b.Box.Left))
		case !c.Field.Level:
			return cmp.Or(cmp.Compare(a.Box.Bottom, b.Box.Bottom), cmp.Compare(a.Box.Left, b.Box.Left))
		}
		return cmp.Or(cmp.Compare(left(a), left(b)), cmp.Compare(middle(a).Abs(), middle(b).Abs()))
	})
}

// steps are one for each sheet.
func (c CourseOfSheets) steps(of Step) (out []Step) {
	for _, s := range c.Sheets {
		next := of
		next.Part, next.Pieces, next.Sheet, next.Field, next.Beside = c.Part, c.pieces[s], s, c.Field, len(c.Sheets)
		out = append(out, next)
	}
	return out
}
