package finding

import (
	"fmt"
	"slices"

	"coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// wetHeight judges the head of each wall over the lowest floor reading of the
// room or, in a shower without one, over the lowest point of its base. With a
// tub and no floor reading nothing can be said.
func wetHeight(in Input) []place {
	from, least, over := length.Length(0), in.Limits.WallHeight, "the floor"
	floor, known := in.lowest(survey.Floor)
	from = floor
	if !known {
		from, known = in.lowest(survey.ShowerBase)
		least, over = in.Limits.OverDrain, "the shower base"
	}
	var heights []length.Length
	names, walls := map[length.Length][]string{}, map[length.Length]int{}
	for i, w := range in.Walls {
		h := headHeight(w) - from
		if !known || h >= least || in.low(i) || !in.wet(i) {
			continue
		}
		if names[h] == nil {
			heights, walls[h] = append(heights, h), i
		} else {
			walls[h] = -1
		}
		names[h] = append(names[h], w.Found.Name)
	}
	var all []place
	for _, h := range heights {
		all = append(all, place{wall: walls[h], text: fmt.Sprintf("The tile on %s ends %s over %s; %s is commonly asked for.",
			list(names[h]), in.tape(h), over, in.tape(least))})
	}
	return all
}

// wet tells whether a wall is one of a tub or shower: it stands on a rim, or holds a pipe or
// glass. Where nothing of the room stands on a rim, as over a tiled floor, one such wall is enough
// for all; without any the tile is a wainscot.
func (in Input) wet(wall int) bool {
	over := func(w plan.Wall) bool {
		return slices.ContainsFunc(w.Found.Base, func(s survey.SegmentFound) bool { return s.Meets.Rim() })
	}
	holds := func(w plan.Wall) bool {
		return slices.ContainsFunc(w.Found.Openings, func(o survey.OpeningFound) bool { return o.Kind == survey.Pipe }) ||
			slices.ContainsFunc(w.Fixtures, func(p fixture.Placed) bool { return p.Found.Kind == survey.GlassLine })
	}
	if slices.ContainsFunc(in.Walls, over) {
		return over(in.Walls[wall]) || holds(in.Walls[wall])
	}
	return slices.ContainsFunc(in.Walls, holds)
}

// headHeight is the lowest height at which the tile of a wall ends.
func headHeight(w plan.Wall) length.Length {
	h := w.Found.Head
	if !h.Meets || len(h.Readings) == 0 {
		return w.Start.Placed.Head
	}
	low := h.Readings[0].Value
	for _, r := range h.Readings {
		low = min(low, r.Value)
	}
	return low - h.Gap
}
