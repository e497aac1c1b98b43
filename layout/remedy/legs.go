package remedy

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// legs sets a leg with poor pieces in single tiles of its own width, or leaves it out where these
// are slivers themselves.
func (a *asker) legs(poor []troubled) (out []try) {
	room := a.now.Room
	if a.stands() || !room.Bond.Coursed() || room.Bond.Plumb {
		return nil
	}
	for i, w := range a.now.Walls {
		for _, leg := range w.Found.LegsBeside() {
			index, how := w.Found.LegOf(leg) // what is laid as is best was tried
			if how != survey.InBond || w.Found.Base[index].Best || !slices.ContainsFunc(poor, func(t troubled) bool { return t.wall == i && inLeg(t) }) {
				continue
			}
			path := fmt.Sprintf("walls[%d].base[%d].leg", i, index)
			wide := leg.Width(w.Found, w.Start.Placed)
			if wide < piece.SliverLimit(room, room.Tile.Width) {
				text := fmt.Sprintf("Leave out the leg at the %s of %s, %s wide.", leg.Side(), w.Found.Name, a.about(max(wide, 0)))
				out = append(out, try{Leg, path, text, []Use{{path, "none"}}, nil})
				continue
			}
			text := fmt.Sprintf("Set the leg at the %s of %s in single tiles, each %s wide, course by course.", leg.Side(), w.Found.Name, a.say(wide.FloorTo(room.Units.FineStep())))
			out = append(out, try{Leg, path, text, []Use{{path, "single"}}, nil})
		}
	}
	return out
}

// inLeg tells whether a run is of pieces beside the front of a tub, or over its
// floor.
func inLeg(t troubled) bool {
	return slices.ContainsFunc(t.run.Edges, func(e string) bool { return strings.HasPrefix(e, "step ") })
}
