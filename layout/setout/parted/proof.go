package parted

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// Open is why a room with bands is not said to be proven, where not everything was tried.
type Open int

// The reasons, the first that holds.
const (
	Nothing    Open = iota
	EitherSide      // an opening may stand on either side of a band
	HeightToo       // a band that goes up to the head may begin at other heights
	Leaning         // a corner leans beside a band that may stand at other heights
	AcrossEdge      // a pipe stands across the edge of a band, and is left out where the field is counted
	UnderRoof       // a ceiling slants over a band, and the field is folded with all of it
	RunsOn          // a band's plumb joints run on from the field's, and a start of its own would be better
	Ends            // an end that is free cuts field and band, and not every place was tried with both
)

// prove tells whether anything can be better: the best that the field could have, with
// the best that each band could have by itself, is what nothing can beat.
func (p *parter) prove(r *Result) error {
	if r.Open = p.open(r); r.Open != Nothing {
		return nil
	}
	order := r.Field.Order()
	field := bound(&r.Field)
	r.Bound = field
	for i := range r.Bands {
		bound, err := p.bandBound(r, i)
		if err != nil {
			return err
		}
		r.Bound = r.Bound.Plus(&bound)
	}
	if r.Proven = !order.Better(&r.Bound, &r.Merit); r.Proven || order.Better(&field, &r.Field.Merit) {
		return nil
	}
	r.Open = RunsOn
	for i := range r.Bands {
		if p.freeEnds(i) {
			r.Open = Ends
		}
	}
	return nil
}

// open is what was not tried of all line and heights, starts aside.
func (p *parter) open(r *Result) Open {
	switch {
	case !p.clear():
		return EitherSide
	case p.anyHeight(func(b survey.BandFound) bool { return b.ToHead }),
		p.room.Prefer.Shared && p.toHead():
		return HeightToo
	case p.anyHeight(func(b survey.BandFound) bool { return p.leans(b) }):
		return Leaning
	case p.patternAtFreeEnd():
		return Ends
	case p.pipeAcross(r):
		return AcrossEdge
	case p.underRoof():
		return UnderRoof
	}
	return Nothing
}

// anyHeight tells whether there is such a band among those that may stand at several heights.
func (p *parter) anyHeight(such func(survey.BandFound) bool) bool {
	for _, b := range p.room.Bands {
		if b.Bottom.Free() && such(b) {
			return true
		}
	}
	return false
}

func (p *parter) toHead() bool {
	for _, b := range p.room.Bands {
		if b.ToHead {
			return true
		}
	}
	return false
}

// leans tells whether a corner leans on a wall of a band.
func (p *parter) leans(b survey.BandFound) bool {
	for _, w := range b.Walls {
		if len(p.room.Walls[w].Left.Lean) > 1 || len(p.room.Walls[w].Right.Lean) > 1 {
			return true
		}
	}
	return false
}

// underRoof tells whether the ceiling slants on a wall of a band.
func (p *parter) underRoof() bool {
	return slices.ContainsFunc(p.room.Bands, func(b survey.BandFound) bool {
		return slices.ContainsFunc(b.Walls, func(w int) bool { return p.room.Walls[w].Head.Slants() })
	})
}

// patternAtFreeEnd tells whether a band laid in a pattern comes to an end that is free.
func (p *parter) patternAtFreeEnd() bool {
	for i, b := range p.room.Bands {
		if !b.Bond.Coursed() && p.freeEnds(i) {
			return true
		}
	}
	return false
}

// alike tells whether the folded room is the same for all heights at which the bands
// may stand, and gives the same field whatever they are.
func (p *parter) alike() bool {
	return p.clear() && !p.anyHeight(func(b survey.BandFound) bool { return b.ToHead || p.leans(b) })
}

// pipeAcross tells whether a pipe stands across the edge of a band.
func (p *parter) pipeAcross(r *Result) bool {
	for w := range r.folds {
		for _, s := range r.folds[w].strips {
			for _, o := range p.room.Walls[w].Openings {
				if o.Kind != survey.Pipe {
					continue
				}
				e := o.Takes(p.room.Units)
				across := func(low, high length.Length) bool { return e.Bottom < low && e.Top > high }
				if across(s.bottom-p.room.Joint, s.bottom) || !s.toHead && across(s.top, s.next) {
					return true
				}
			}
		}
	}
	return false
}

// bandBound is what nothing can beat of a band in its strip: with the ends of its walls
// where they stand, or, where these are free, wherever they are best for it.
func (p *parter) bandBound(r *Result, i int) (merit.Merit, error) {
	if !p.freeEnds(i) {
		return r.Bands[i].bound, nil
	}
	got, err := p.byItself(r, i)
	return bound(&got), err
}

// bound is what nothing can beat.
func bound(r *search.Result) merit.Merit {
	if r.Proven {
		return r.Merit
	}
	return r.Bound
}

// freeEnds tells whether an end is free on a wall of a band.
func (p *parter) freeEnds(band int) bool {
	for _, w := range p.room.Bands[band].Walls {
		if p.freeEnd(w) {
			return true
		}
	}
	return false
}

func (p *parter) freeEnd(wall int) bool {
	w := p.room.Walls[wall]
	_, left := w.MarkPins[survey.EndLeft]
	_, right := w.MarkPins[survey.EndRight]
	return !w.Left.Meets && w.Left.Stops.Free() && !left || !w.Right.Meets && w.Right.Stops.Free() && !right
}

// byItself is the best that a band could have in its strip with ends and starts of its own.
// It is worked out once for a result.
func (p *parter) byItself(r *Result, i int) (search.Result, error) {
	if own, there := p.own[i]; there {
		return own, nil
	}
	room := p.bandRoom(r, i)
	for k, w := range p.room.Bands[i].Walls {
		own, wall := &room.Walls[k], p.room.Walls[w]
		own.Left.Stops, own.Right.Stops = wall.Left.Stops, wall.Right.Stops
		for _, mark := range []survey.MarkName{survey.EndLeft, survey.EndRight} {
			if x, there := wall.MarkPins[mark]; there {
				own.MarkPins = pinned(own.MarkPins, mark, x)
			}
		}
	}
	own, err := search.Room(p.ctx, &room)
	if p.own == nil {
		p.own = map[int]search.Result{}
	}
	p.own[i] = own
	return own, err
}

// sharedEnds tries free ends where the bands' own tile would have them, and keeps them
// where field and bands together are better so.
func (p *parter) sharedEnds(r Result) (Result, error) {
	for i := range p.room.Bands {
		if !p.freeEnds(i) || p.open(&r) != Nothing {
			continue
		}
		own, err := p.byItself(&r, i)
		if err != nil {
			return r, err
		}
		if order := r.Field.Order(); !order.Better(&own.Merit, &r.Bands[i].Merit) {
			continue
		}
		other, err := p.withEnds(&r, i, own.Walls)
		if err != nil {
			return r, err
		}
		if order := r.Field.Order(); order.Better(&other.Merit, &r.Merit) {
			other.Field.Proven, other.Field.Bound = false, bound(&r.Field)
			r, p.own = other, nil
		}
	}
	return r, nil
}

// withEnds sets the room out on the line found with the free ends of a band's walls where
// these counts have them; the other walls stay as they are.
func (p *parter) withEnds(r *Result, band int, ends []count.Counted) (Result, error) {
	with := parter{ctx: p.ctx, room: p.room}
	with.room.Walls = slices.Clone(p.room.Walls)
	starts, strips := startsOf(&r.Field, &r.Folded), make([][]strip, len(r.folds))
	for w := range r.folds {
		strips[w] = r.folds[w].strips
	}
	for k, w := range p.room.Bands[band].Walls {
		if !p.freeEnd(w) {
			continue
		}
		wall := &with.room.Walls[w]
		starts[w] = nil
		if !wall.Left.Meets {
			wall.MarkPins = pinned(wall.MarkPins, survey.EndLeft, ends[k].Placed.Left)
		}
		if !wall.Right.Meets {
			wall.MarkPins = pinned(wall.MarkPins, survey.EndRight, ends[k].Placed.Right)
		}
	}
	return with.way(&found{line: r.Field.Line, hand: r.Field.Hand}, strips, r.zones, starts)
}
