package parted

import (
	"slices"

	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
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
	zones, starts := firsts(all), at.starts()
	var first *Result
	if starts == nil {
		r, err := p.way(at, strips, zones, nil)
		if err != nil {
			return Result{}, err
		}
		first, starts, from.hand = &r, r.starts(), r.Field.Hand
	}
	changed := false
	for w := range all {
		if len(all[w]) == 1 {
			continue
		}
		k, err := p.best(from, strips, all[w], w, starts[w])
		if err != nil {
			return Result{}, err
		}
		zones[w], changed = all[w][k], changed || k > 0
	}
	switch {
	case first == nil && at.alike(zones):
		return p.way(at, strips, zones, starts)
	case first == nil:
		return p.way(at, strips, zones, p.startsOf(at))
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
func (p *parter) best(at *found, strips [][]strip, ways [][]zone, wall int, start *survey.StartPin) (int, error) {
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
		bounds[k], sorted[k] = w.Bounds.OfBoth(at.line, start.X), k
		if w.FixedEnds() {
			if m := w.Bounds.Plainly(at.line, start.X); order.Better(&bounds[k], &m) {
				bounds[k] = m
			}
		}
	}
	slices.SortStableFunc(sorted, func(a, b int) int {
		c, _ := order.Compare(&bounds[a], &bounds[b])
		return c
	})
	chosen := -1
	var best merit.Merit
	for _, k := range sorted {
		if chosen >= 0 && order.Better(&best, &bounds[k]) {
			break
		}
		r, err := alone.way(&line, [][]strip{on}, [][]zone{ways[k]}, []*survey.StartPin{start})
		if err != nil {
			return 0, err
		}
		if c, _ := order.Compare(&r.Merit, &best); chosen < 0 || c < 0 || c == 0 && k < chosen {
			best, chosen = r.Merit, k
		}
	}
	return chosen, nil
}

// starts are the starts that were found with a line, as pins; nil where there are none.
func (f *found) starts() (out []*survey.StartPin) {
	if f == nil {
		return nil
	}
	for _, edge := range f.edges {
		out = append(out, &survey.StartPin{X: edge, Is: survey.OnEdge})
	}
	return out
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

// startsOf are the starts that were found with a line, of the walls that are the same
// wherever the bands stand.
func (p *parter) startsOf(at *found) []*survey.StartPin {
	if at == nil || at.edges == nil {
		return nil
	}
	out := make([]*survey.StartPin, len(at.edges))
	for w, edge := range at.edges {
		if p.clearOn(w) {
			out[w] = &survey.StartPin{X: edge, Is: survey.OnEdge}
		}
	}
	return out
}

// starts are the starts of a result, as pins.
func (r *Result) starts() []*survey.StartPin {
	out := make([]*survey.StartPin, len(r.Field.Walls))
	for w, c := range r.Field.Walls {
		out[w] = &survey.StartPin{X: c.Edge, Is: survey.OnEdge}
	}
	return out
}

// way sets the room out with its openings in one way, and some of its walls with the
// starts given.
func (p *parter) way(at *found, strips [][]strip, zones [][]zone, starts []*survey.StartPin) (Result, error) {
	folded, folds := p.fold(strips, zones)
	r := Result{Folded: folded, room: p.room, folds: folds}
	if at != nil && at.field != nil {
		r.Field = *at.field
	} else {
		var err error
		if r.Field, err = p.field(at, folded, starts); err != nil {
			return Result{}, err
		}
	}
	r.Merit = r.Field.Merit
	return r, p.setBands(&r, strips, zones)
}

// field sets the folded room out, on the line given and with the starts that are.
func (p *parter) field(at *found, folded survey.Room, starts []*survey.StartPin) (search.Result, error) {
	folded.Walls = slices.Clone(folded.Walls)
	if at != nil {
		folded.Line, folded.Bond.Hand = &at.line, at.hand
	}
	for w, pin := range starts {
		if pin != nil && folded.Walls[w].Pin == nil {
			folded.Walls[w].Pin = pin
		}
	}
	return search.Room(p.ctx, &folded)
}
