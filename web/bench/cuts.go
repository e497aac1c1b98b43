package bench

import (
	"fmt"
	"slices"

	"github.com/a-h/templ"

	"coursewright/layout/cuts"
	"coursewright/web/page"
)

// Cut is one cut of the schedule with those of its pieces that are shown.
type Cut struct{ cuts.Group }

// mostNamed is how many pieces of a cut are named.
const mostNamed = 12

func (c Cut) first() []string { return c.Pieces[:min(mostNamed, len(c.Pieces))] }

func (c Cut) rest() string {
	if n := len(c.Pieces) - mostNamed; n > 0 {
		return fmt.Sprintf("and %d more", n)
	}
	return ""
}

// kindWords name the cut, and the tile that is cut where it is not the room's.
func (c Cut) kindWords() string {
	if c.Tile != "" {
		return c.Kind + ", " + c.Tile
	}
	return c.Kind
}

// cuts lists the cuts of the walls shown, and of what is folded out of them, as the schedule counts them.
func (b Bench) cuts() []Cut {
	here := map[string]bool{}
	for _, i := range b.Walls() {
		for _, p := range b.Plan.Walls[i].All() {
			here[p.ID] = true
		}
		for _, f := range b.Plan.Walls[i].Folded() {
			for _, p := range f.Pieces {
				here[p.ID] = true
			}
		}
	}
	var out []Cut
	for _, g := range b.Schedule.Groups {
		g.Pieces = slices.DeleteFunc(slices.Clone(g.Pieces), func(id string) bool { return !here[id] })
		if len(g.Pieces) > 0 {
			out = append(out, Cut{g})
		}
	}
	return out
}

func (b Bench) cutsLine() string {
	n := 0
	cuts := b.cuts()
	for _, c := range cuts {
		n += len(c.Pieces)
	}
	return page.Count(len(cuts), "size") + " for " + page.Count(n, "piece")
}

// pieceAt is the address of the page with the card of a piece.
func (b Bench) pieceAt(id string) templ.SafeURL {
	if b.query() == "" {
		return page.JobPath(b.ID, "?piece="+id)
	}
	return page.JobPath(b.ID, b.query()+"&piece="+id)
}
