package phase

import (
	"slices"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// A free niche is tried with its middle on that of a tile, of a joint, and on a line of symmetry.
func TestANicheIsTriedOnMiddles(t *testing.T) {
	shelf := func(r *survey.Room) {
		span := func(from, to length.Length) survey.Span { return survey.Span{From: from * mm, To: to * mm} }
		r.Walls[0].Openings = []survey.OpeningFound{{Kind: survey.Niche, Name: "n", Left: span(150, 350), Width: span(151, 151), Bottom: span(-150, 0), Height: span(121, 121)}}
	}
	for name, r := range map[string]survey.Room{
		"hexagon":            small(survey.Hexagon, 100*mm, 100*mm, shelf),
		"herringbone":        small(survey.Herringbone, 150*mm, 73*mm, shelf),
		"herringbone at 45°": small(survey.Herringbone, 140*mm, 62*mm, shelf, func(r *survey.Room) { r.Bond.Turned = true }),
	} {
		t.Run(name, func(t *testing.T) {
			w := NewWall(&r, r.Walls[0], bond.For(r, survey.Free))
			origin := w.Pattern.Origin(-31*mm, 17*mm)
			var middles []plane.Point
			for _, o := range w.options(w.axes[0], origin, coarsely) {
				middles = append(middles, plane.Point{X: (o.edges.Left + o.edges.Right).Half(), Y: (o.edges.Bottom + o.edges.Top).Half()})
			}
			onTile, onJoint := false, false
			for _, s := range w.Pattern.Over(origin, w.ground(w.outer).box) {
				b := w.Pattern.Tiles[s.Tile].BoxAt(s.At)
				onTile = onTile || slices.Contains(middles, plane.Point{X: (b.Left + b.Right).Half(), Y: (b.Bottom + b.Top).Half()})
				onJoint = onJoint || slices.ContainsFunc(middles, func(p plane.Point) bool { return p.X == b.Left-r.Joint/2 })
			}
			require.True(t, onTile)
			require.Equal(t, name == "hexagon", onJoint) // the others have no joint lines
		})
	}
}
