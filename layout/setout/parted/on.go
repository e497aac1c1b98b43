package parted

import (
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
)

// on sets the room out on a course line, with its openings where they are best;
// without one on the line that is fixed. The ways are tried wall by wall, with the starts
// that were found with the line, or with those of the first; the best is searched again.
func (p *parter) on(at *found) (Result, error) {
	from := at
	if from == nil {
		from = &found{line: p.line()}
	}
	strips := p.strips(from)
	all := ways(p.room.Walls, strips, &joints{line: from.line, pitch: p.pitch(), joint: p.room.Joint})
	zones := firsts(all)
	var starts []*start
	if at != nil {
		starts = slices.Clone(at.starts)
	}
	var first *Result
	if starts == nil {
		r, err := p.way(at, strips, zones, nil)
		if err != nil {
			return Result{}, err
		}
		first, starts, from.hand = &r, startsOf(&r.Field, &r.Folded), r.Field.Hand
	}
	changed := false
	for w := range all {
		if len(all[w]) == 1 {
			continue
		}
		k, found, err := p.best(from, strips, all[w], w, starts[w])
		if err != nil {
			return Result{}, err
		}
		zones[w], changed = all[w][k], changed || k > 0
		starts[w] = startsOf(&found.Field, &found.Folded)[0].beside(p.room.Walls[w])
	}
	switch {
	case first == nil && at.alike(zones):
		return p.way(at, strips, zones, starts)
	case first == nil:
		for w := range starts {
			if !p.clearOn(w) { // it is another wall where the bands stand otherwise
				starts[w] = nil
			}
		}
		return p.way(at, strips, zones, starts)
	case !changed:
		return *first, nil
	}
	r, err := p.way(at, strips, zones, nil)
	if order := first.Field.Order(); err == nil && !order.Better(&r.Merit, &first.Merit) {
		r = *first
	}
	return r, err
}

// best is the best of the ways in which the openings of one wall may stand, with its
// start on a line. Merits add up over walls, so it is the best whatever the others do.
// The ways are tried in the order of what the field cannot beat in them.
func (p *parter) best(at *found, strips [][]strip, ways [][]zone, wall int, from *start) (int, Result, error) {
	alone := parter{ctx: p.ctx, room: p.room.Alone(wall)}
	var on []strip
	for _, s := range strips[wall] {
		s.band = len(on)
		on = append(on, s)
	}
	line := found{line: at.line, hand: at.hand, from: at.from}
	bounds := make([]merit.Merit, len(ways))
	order, sorted := merit.OrderFor(p.room.Prefer), make([]int, len(ways))
	for k, zones := range ways {
		folded, _ := alone.fold([][]strip{on}, [][]zone{zones})
		w := count.NewWall(&folded, folded.Walls[0], at.hand)
		bounds[k], sorted[k] = w.Bounds.OfBoth(at.line, from.edge), k
		if w.FixedEnds() {
			if m := w.Bounds.Plainly(at.line, from.edge); order.Better(&bounds[k], &m) {
				bounds[k] = m
			}
		}
	}
	slices.SortStableFunc(sorted, func(a, b int) int {
		c, _ := order.Compare(&bounds[a], &bounds[b])
		return c
	})
	chosen := -1
	var best *Result
	var rival *merit.Merit
	for _, k := range sorted {
		if best != nil && order.Better(rival, &bounds[k]) {
			break
		}
		r, err := alone.wayAgainst(&line, [][]strip{on}, [][]zone{ways[k]}, []*start{from.beside(alone.room.Walls[0])}, rival)
		switch {
		case err != nil:
			return 0, Result{}, err
		case r == nil:
			continue
		}
		if best != nil {
			if c, _ := order.Compare(&r.Merit, rival); c > 0 || c == 0 && k > chosen {
				continue
			}
		}
		best, chosen, rival = r, k, &r.Merit
	}
	return chosen, *best, nil
}

// alike tells whether the openings stand among the strips as they did when the starts
// were found: then these are as good as others.
func (f *found) alike(zones [][]zone) bool {
	for w := range zones {
		for k, z := range zones[w] {
			if f.zones == nil || z.bottom != f.zones[w][k].bottom || z.top != f.zones[w][k].top {
				return false
			}
		}
	}
	return true
}

// way sets the room out with its openings in one way, and some of its walls with the
// starts given.
func (p *parter) way(at *found, strips [][]strip, zones [][]zone, starts []*start) (Result, error) {
	r, err := p.wayAgainst(at, strips, zones, starts, nil)
	if err != nil {
		return Result{}, err
	}
	return *r, nil
}

// wayAgainst is way; nil where the field alone is sure to be worse than the rival.
func (p *parter) wayAgainst(at *found, strips [][]strip, zones [][]zone, starts []*start, rival *merit.Merit) (*Result, error) {
	folded, folds := p.fold(strips, zones)
	r := Result{Folded: folded, room: p.room, folds: folds}
	field := at.whole()
	if field == nil {
		var err error
		if field, err = p.field(at, folded, starts, rival); err != nil || field == nil {
			return nil, err
		}
	}
	r.Field, r.Merit = *field, field.Merit
	if alone := field.Merit; rival != nil {
		if alone.Part = true; field.Order().Better(rival, &alone) {
			return nil, nil
		}
	}
	return &r, p.setBands(&r, strips, zones)
}

// whole is the field that was found with a line, where that is the same for all heights of the bands.
func (f *found) whole() *search.Result {
	if f == nil {
		return nil
	}
	return f.field
}
