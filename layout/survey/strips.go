package survey

import (
	"fmt"
	"reflect"

	"coursewright/layout/length"
)

// mostStrips bounds the strips of a wall: nobody sets more.
const mostStrips = 4

// mostMore bounds how many more columns a strip may have than the fewest: each number is
// set out.
const mostMore = 5

// strips reads the strips of a wall and adds the openings that they take from its
// field after those that were typed.
func (r *resolver) strips(p path, typed []Strip, w *WallFound, across bounds) {
	if len(typed) > mostStrips {
		r.faults.add(p, fmt.Sprintf("%d strips", len(typed)), fmt.Sprintf("at most %d", mostStrips))
		return
	}
	taken, before := map[string]bool{}, len(r.faults)
	own := len(w.Openings)
	for i, s := range typed {
		r.plumbStrip(p.at(i), s, w, across, taken)
	}
	if len(r.faults) > before || len(w.Base) == 0 {
		return
	}
	for i := range typed {
		r.stripClear(p.at(i), own+i, w)
	}
}

// plumbStrip reads one strip.
func (r *resolver) plumbStrip(p path, s Strip, w *WallFound, across bounds, taken map[string]bool) {
	before := len(r.faults)
	name := r.name(value{p.dot("name"), s.Name}, taken)
	found := StripFound{Columns: max(1, s.Columns), Low: s.Bottom == nil, High: s.Top == nil}
	joint := Measure{Plain: s.Joint}
	if s.Joint != "" {
		found.Joint = r.length(value{p.dot("joint"), s.Joint}, bounds{1, widestJoint})
	}
	if found.Tile = r.tile(p.dot("tile"), s.Tile, joint); s.Tile.Colour == "" {
		found.Tile.Colour = UsualBand
	}
	if reflect.DeepEqual(s.Bond, Bond{}) {
		s.Bond.Kind = string(Stack)
	}
	if found.Bond = r.bond(p.dot("bond"), s.Bond, found.Tile, nil); !found.Bond.Coursed() || found.Bond.Kind == Running && !found.Bond.Plumb {
		r.faults.add(p.dot("bond"), "a bond without plumb joints from edge to edge", "stack bond, or running bond in columns: a strip stands between plumb joints")
	}
	if s.Columns < 0 || s.Columns > mostCourses {
		r.faults.add(p.dot("columns"), fmt.Sprint(s.Columns), fmt.Sprintf("a whole number from 1 to %d", mostCourses))
	}
	r.mostColumns(p.dot("mostColumns"), s, &found)
	middle := r.span(p.dot("middle"), &s.Middle, across)
	o := OpeningFound{Kind: PlumbStrip, Name: name, Strip: &found}
	if s.Near != "" {
		near := r.length(value{p.dot("near"), s.Near}, across)
		if !middle.Free() {
			r.unused("a wish belongs to a middle that is a range", value{p.dot("near"), s.Near})
		}
		near = min(max(near, middle.From), middle.To)
		o.Near.X = &near
	}
	if s.Beside != "" {
		found.Whole = r.choice(value{p.dot("beside"), s.Beside}, "whole") != ""
		if s.Bottom != nil || s.Top != nil {
			r.unused("the field goes on over or under a strip that has a height", value{p.dot("beside"), s.Beside})
		}
	}
	bottom, top := r.stripHeights(p, s)
	if len(r.faults) > before || len(w.Base) == 0 {
		w.Openings = append(w.Openings, o)
		return
	}
	found.Middle = middle
	o.across(r.around.Joint)
	o.upright(bottom, top, r.around.Joint, *w)
	w.Openings = append(w.Openings, o)
}

// mostColumns reads how many columns a strip may have where that is free.
func (r *resolver) mostColumns(p path, s Strip, found *StripFound) {
	switch {
	case s.MostColumns == 0 || s.MostColumns == found.Columns:
	case s.MostColumns < found.Columns || s.MostColumns > found.Columns+mostMore:
		r.faults.add(p, fmt.Sprint(s.MostColumns), fmt.Sprintf("a whole number from %d to %d, or nothing where it has %d", found.Columns, found.Columns+mostMore, found.Columns))
	default:
		found.Most = s.MostColumns
	}
}

// stripHeights reads the lower and the upper edge of a strip's tile; those that are
// left out are empty.
func (r *resolver) stripHeights(p path, s Strip) (bottom, top Span) {
	before := len(r.faults)
	if s.Bottom != nil {
		bottom = r.span(p.dot("bottom"), s.Bottom, upright())
	}
	if s.Top != nil {
		top = r.span(p.dot("top"), s.Top, upright())
	}
	if len(r.faults) == before && s.Bottom != nil && s.Top != nil && top.From < bottom.To+leastTile {
		r.faults.add(p.dot("top"), "an upper edge at "+top.From.Format(r.units, r.units.FineStep()), "a height over "+
			(bottom.To+leastTile).Format(r.units, r.units.FineStep())+", so that there is room for its tile")
	}
	return bottom, top
}

// upright says between which heights the field is open for a strip. One that goes on
// to base or head is open as far as they reach beside it.
func (o *OpeningFound) upright(bottom, top Span, joint length.Length, w WallFound) {
	low, high := w.farthest(o.Left.From, o.Left.To+o.Width.To)
	if o.Strip.Low {
		bottom = Span{low, low}
	} else {
		bottom = bottom.Moved(-joint)
	}
	o.Bottom = bottom
	switch {
	case o.Strip.High:
		o.Height = Span{high - bottom.From, high - bottom.From}
	default:
		top = top.Moved(joint)
		o.Height = Span{top.From - bottom.To, top.To - bottom.From}
		if bottom.Free() {
			o.Top = top
		}
	}
}

// farthest is how low tile reaches on the base from one place to another, and how
// high under the head.
func (w WallFound) farthest(from, to length.Length) (low, high length.Length) {
	first := true
	for i, s := range w.Base {
		a, b := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
		if i == 0 {
			a = min(a, from)
		}
		if i == len(w.Base)-1 {
			b = max(b, to)
		}
		if b < from || a > to {
			continue
		}
		if y := lowest(s.Readings, max(a, from), min(b, to)) + s.Gap; first || y < low {
			low, first = y, false
		}
	}
	if !w.Head.Meets {
		return low, w.Head.Stops.To
	}
	return low, -lowest(negative(w.Head.Readings), from, to) - w.Head.Gap
}

// stripClear checks that a strip stands clear of the ends of its wall and of its
// other openings, wherever these may stand. Pipes may come through it.
func (r *resolver) stripClear(p path, i int, w *WallFound) {
	o := w.Openings[i]
	left, right := w.Field()
	if o.Left.From <= left || o.Left.To+o.Width.To >= right {
		half := o.Width.To.Half()
		r.faults.add(p.dot("middle"), "a strip from "+o.Left.From.Format(r.units, r.units.FineStep())+" to "+(o.Left.To+o.Width.To).Format(r.units, r.units.FineStep()),
			"a middle from "+(left+half).Format(r.units, r.units.FineStep())+" to "+(right-half).Format(r.units, r.units.FineStep())+", inside the tile of the wall")
		return
	}
	e := o.Reach()
	for k, other := range w.Openings {
		f := other.Reach()
		if k == i || other.Kind == Pipe || k > i && other.Kind == PlumbStrip || f.Left >= e.Right || e.Left >= f.Right || f.Bottom >= e.Top || e.Bottom >= f.Top {
			continue
		}
		r.faults.add(p.dot("middle"), "a strip where "+clip(other.Key())+" may stand", "a place clear of it: measure it, or give either a narrower range")
		return
	}
}

// partedRoom refuses what cannot go on on both sides of a strip from base to head.
func (r *resolver) partedRoom(room Room) {
	for i, w := range room.Walls {
		if len(w.PartedBy()) == 0 || !room.Bond.Coursed() {
			continue
		}
		here := path("walls").at(i).dot("strips").at(0)
		switch {
		case w.Set != nil:
			r.stripWhereTileStands(here, path("walls").at(i).dot("set.start.at"), w)
		case w.stripOverLeg():
			r.faults.add(here, "a strip from base to head, over a leg in single tiles", "a place clear of the leg, a leg in the bond or left out, or a strip between heights")
		}
	}
}

// stripWhereTileStands refuses a strip beside courses that stand whose place is not known,
// and a start that was measured beyond it, where the joints begin anew.
func (r *resolver) stripWhereTileStands(here, at path, w WallFound) {
	for _, k := range w.PartedBy() {
		switch o := w.Openings[k]; {
		case o.Left.Free() || o.Width.Free():
			r.faults.add(here.dot("middle"), "a strip from base to head that may stand anywhere in a range, where courses stand", "the middle as it was measured, and one number of columns")
			return
		case w.Set.At > o.Left.From:
			r.faults.add(at, "a place beyond a strip from base to head, where the joints begin anew", "a joint or a tile left of it, at less than "+o.Left.From.Format(r.units, r.units.FineStep()))
			return
		}
	}
}

// stripOverLeg tells whether a strip that parts the field may stand over a leg in single
// tiles. Clear of it the leg belongs to the part of the wall beside it.
func (w WallFound) stripOverLeg() bool {
	for _, l := range w.LegsBeside() {
		if _, how := w.LegOf(l); how != SingleTiles {
			continue
		}
		for _, k := range w.PartedBy() {
			o := w.Openings[k]
			if !l.Right && o.Left.From < l.Front || l.Right && o.Left.To+o.Width.To > l.Front {
				return true
			}
		}
	}
	return false
}
