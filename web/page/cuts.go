package page

import (
	"slices"
	"strconv"

	"coursewright/layout"
	"coursewright/layout/cuts"
)

// Cut is one cut of the schedule with those of its pieces that are shown.
type Cut struct{ cuts.Group }

// KindWords name the cut, and the tile that is cut where it is not the room's.
func (c Cut) KindWords() string {
	if c.Tile != "" {
		return c.Kind + ", " + c.Tile
	}
	return c.Kind
}

// CutsOn lists the cuts of walls, by index, and of what is folded out of them, as the schedule counts them.
func CutsOn(plan layout.Plan, s cuts.Schedule, walls []int) []Cut {
	here := map[string]bool{}
	for _, i := range walls {
		for _, p := range plan.Walls[i].All() {
			here[p.ID] = true
		}
		for _, f := range plan.Walls[i].Folded() {
			for _, p := range f.Pieces {
				here[p.ID] = true
			}
		}
	}
	var out []Cut
	for _, g := range s.Groups {
		g.Pieces = slices.DeleteFunc(slices.Clone(g.Pieces), func(id string) bool { return !here[id] })
		if len(g.Pieces) > 0 {
			out = append(out, Cut{g})
		}
	}
	return out
}

// CutsText counts cuts and their pieces.
func CutsText(list []Cut) string {
	n := 0
	for _, c := range list {
		n += len(c.Pieces)
	}
	return Count(len(list), "size") + " for " + Count(n, "piece")
}

func many(c Cut) string { return strconv.Itoa(len(c.Pieces)) }
