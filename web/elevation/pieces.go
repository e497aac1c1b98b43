package elevation

import (
	"strings"

	"coursewright/web/drawing"
)

// among opens the list of a wall's pieces before the first of them, where a
// reader may pick one, and leaves it before anything else.
func (p *pen) among(t drawing.Tag) {
	wall := none
	if p.pieces != nil && strings.HasPrefix(string(t.Kind), "piece ") {
		wall = t.Wall
	}
	if p.list == wall {
		return
	}
	p.leave()
	if wall == none {
		return
	}
	p.canvas.Group(`class="pieces" role="listbox"`, attr("aria-label", "Pieces of "+p.pieces.Walls[t.Wall]), number("data-wall", int64(t.Wall)))
	p.list = t.Wall
}

// leave closes the open groups.
func (p *pen) leave() {
	p.end()
	if p.list != none {
		p.canvas.Gend()
	}
	p.list = none
}

// none is the number of no wall.
const none = -1

// option makes a piece one that can be picked, by the words for it.
func (p *pen) option(t drawing.Tag) string {
	if p.list == none || t.Piece == "" {
		return ""
	}
	return ` role="option" ` + attr("aria-label", p.pieces.Names[t.Piece])
}
