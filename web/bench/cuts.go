package bench

import (
	"fmt"

	"github.com/a-h/templ"

	"coursewright/web/page"
)

// Cut is one cut of the walls shown.
type Cut struct{ page.Cut }

// mostNamed is how many pieces of a cut are named.
const mostNamed = 12

func (c Cut) first() []string { return c.Pieces[:min(mostNamed, len(c.Pieces))] }

func (c Cut) rest() string {
	if n := len(c.Pieces) - mostNamed; n > 0 {
		return fmt.Sprintf("and %d more", n)
	}
	return ""
}

// cuts lists the cuts of the walls shown.
func (b Bench) cuts() []Cut {
	var out []Cut
	for _, c := range page.CutsOn(b.Plan, b.Schedule, b.Walls()) {
		out = append(out, Cut{c})
	}
	return out
}

func (b Bench) cutsLine() string { return page.CutsText(page.CutsOn(b.Plan, b.Schedule, b.Walls())) }

// pieceAt is the address of the page with the card of a piece.
func (b Bench) pieceAt(id string) templ.SafeURL {
	if b.query() == "" {
		return page.JobPath(b.ID, "?piece="+id)
	}
	return page.JobPath(b.ID, b.query()+"&piece="+id)
}
