package tell

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Holds says how far each measured length may be wrong before a sliver appears.
func Holds(room survey.Room, walls []plan.Wall) []plan.Hold {
	var out []plan.Hold
	for i, w := range walls {
		out = append(out, holds(room, i, w)...)
	}
	return out
}

// holds tell how far each measured length may be wrong, with the set-out as it
// is, before a sliver appears along its boundary: the wall's width at its right
// end, the drop to each base, the rise to a ceiling. From the pieces that the
// boundary cuts: a piece may shrink to the sliver limit, or grow until what
// comes after the next joint is more than sealant fills.
func holds(room survey.Room, wall int, w plan.Wall) []plan.Hold {
	var out []plan.Hold
	add := func(what, path string, measured length.Length, side plane.Side, level bool) {
		if shrink, grow, found := slack(room, w, side, level); found {
			out = append(out, plan.Hold{What: what, Path: fmt.Sprintf("walls[%d].%s", wall, path), Wall: wall, Measured: measured, From: measured - shrink, To: measured + grow})
		}
	}
	f := w.Found
	add("width of "+f.Name, "width", f.Width, survey.SideRight, false)
	for i, b := range f.Base {
		add("drop to the "+string(b.Meets)+" under "+f.Name, fmt.Sprintf("base[%d]", i), -highest(b.Readings), survey.SideBase+plane.Side(i), true)
	}
	if f.Head.Meets {
		add("rise to the ceiling over "+f.Name, "head", -highest(negated(f.Head.Readings)), survey.SideHead, true)
	}
	return out
}

func highest(readings []survey.Reading) length.Length {
	top := readings[0].Value
	for _, r := range readings {
		top = max(top, r.Value)
	}
	return top
}

func negated(readings []survey.Reading) []survey.Reading {
	out := make([]survey.Reading, len(readings))
	for i, r := range readings {
		out[i] = survey.Reading{At: r.At, Value: -r.Value}
	}
	return out
}

// slack is how far a boundary may move in and out before one of the pieces it
// cuts becomes a sliver, or another follows it.
func slack(room survey.Room, w plan.Wall, side plane.Side, level bool) (shrink, grow length.Length, found bool) {
	tile := room.Tile.Width
	if level {
		tile = room.Tile.Height
	}
	seal := length.Length(0)
	if b := w.Shape.Sides[side]; b.Meets {
		seal = room.Sealant - b.Gap
	}
	for _, p := range w.Pieces {
		if !slices.Contains(p.Cuts, side) {
			continue
		}
		size := p.Wide
		if level {
			size = p.High
		}
		in, out := max(0, size-piece.SliverLimit(room, tile)), tile-size+room.Joint+seal
		if !found {
			shrink, grow, found = in, out, true
		}
		shrink, grow = min(shrink, in), min(grow, out)
	}
	return shrink, grow, found
}
