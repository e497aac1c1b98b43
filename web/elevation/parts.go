package elevation

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strconv"

	"coursewright/web/drawing"
)

// scene writes the elements, each wall of a drawing of walls as a group of its
// own with its handles. The group's id stays the same from drawing to drawing,
// and data-hash changes with anything in it, so that who has the group already can
// leave it as it is.
func (p *pen) scene(s drawing.Scene) {
	at := 0
	for _, part := range s.Parts {
		p.elements(s.Elements[at:part.From])
		p.part(s, part)
		at = part.To
	}
	p.elements(s.Elements[at:])
	if len(s.Parts) == 0 {
		p.handles(s.Handles)
	}
}

func (p *pen) elements(all []drawing.Element) {
	for _, e := range all {
		drawing.Draw(e, p)
	}
	p.leave()
}

// hashBytes is how much of its hash a wall carries: two drawings of one wall
// in a row are what must be told apart.
const hashBytes = 8

// part writes one wall. Its origin is where the level line meets the left corner
// of the boards.
func (p *pen) part(s drawing.Scene, part drawing.Part) {
	inner := &p.inner
	inner.Reset()
	q := newPen(inner, p.id)
	q.pieces, q.inks = s.Pieces, p.inks
	q.elements(s.Elements[part.From:part.To])
	var own []drawing.Handle
	for _, h := range s.Handles {
		if h.Wall == part.Wall {
			own = append(own, h)
		}
	}
	q.handles(own)
	lines := joints(part.Joints)
	sum := sha256.New()
	_, _ = sum.Write([]byte(lines)) // a hash takes all
	_, _ = sum.Write(inner.Bytes())
	g := group{id: PartID(p.id, part.Wall), hash: hex.EncodeToString(sum.Sum(nil)[:hashBytes]), from: p.written()}
	p.canvas.Group(`class="wall"`, attr("id", g.id), number("data-wall", int64(part.Wall)),
		fmt.Sprintf(`data-origin="%d %d"`, part.Origin.X, part.Origin.Y), attr("data-hash", g.hash),
		`role="group"`, attr("aria-label", "Wall "+part.Name)+lines)
	_, _ = p.out.Write(inner.Bytes()) // p.out keeps the error
	p.canvas.Gend()
	g.to = p.written()
	p.walls = append(p.walls, g)
}

// PartID is the id of a wall's group in the drawing whose id is given.
func PartID(id string, wall int) string { return cleanID(id) + "-wall-" + strconv.Itoa(wall) }
