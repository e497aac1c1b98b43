package niche_test

import (
	"context"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/niche"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Law 7, worked by hand: hexagons 100 from flat to flat, joints of 4, a niche whose left edge is at 300. Of the hexagon from 250 to
// 350 the edge leaves 50 on the wall, and a joint behind the edge, from 304, 46 go on upon the side. That is 90 deep, less the tile
// that laps over it and a joint in front, 8 + 4, and a soft joint of 4 at the back: 74 to tile. So there stand 46, a joint of 4, and 24 of the next. In the
// row over it the hexagon from 302 to 402 has lost 2 at the front, and 74 of it stand on the side, 24 are cut off at the back. A hexagon is
// 100/√3 = 57.735 high at its flats and grows by 2/√3 to its middle: x from a flat it has x · 57.735 + x²/√3, of 8660.25 in all.
func TestHexagonsGoOnRoundTheEdge(t *testing.T) {
	job := survey.Job{Format: survey.Format, Units: "mm", Tile: survey.Tile{Width: "100", Height: "100", Thickness: "8"},
		Joint: survey.Measure{Plain: "4"}, Bed: "5", Bond: survey.Bond{Kind: "hexagon"},
		Walls: []survey.Wall{{Name: "back", Width: "1500", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "900"}}}}, Head: survey.Head{Stops: &survey.Mark{At: "900"}},
			Openings: []survey.Opening{{Kind: "niche", Name: "n", Left: &survey.Mark{At: "300"}, Width: &survey.Mark{At: "300"}, Bottom: &survey.Mark{At: "-150"},
				Height: &survey.Measure{Mark: &survey.Mark{At: "450"}}, Inside: &survey.Inside{Depth: "90", Fall: "0"}}}}}}
	side := func(held *survey.Held) *plan.Face {
		job.Held = held
		room, faults := job.Resolve()
		require.Empty(t, faults)
		walls := []plan.Wall{{Found: room.Walls[0], Start: plan.Start{Edge: 250 * mm,
			Placed: survey.Placed{Openings: []survey.Edges{{Left: 300 * mm, Right: 600 * mm, Bottom: -150 * mm, Top: 300 * mm}}}}}}
		require.NoError(t, niche.Lay(context.Background(), room, plan.Setout{Joint: room.Joint, Hand: survey.Left}, walls))
		return walls[0].Insides[0].Find(survey.LeftFace)
	}
	left := side(nil)
	assert.True(t, left.Round)
	area := map[[2]length.Length]float64{} // of the two rows that are whole in height, by where a piece begins and ends
	for _, p := range left.Pieces {
		if box := p.Face.Bounds(); p.Row == 0 || p.Row == 1 {
			area[[2]length.Length{box.Left / mm, box.Right / mm}] = float64(p.Face.Area2()) / 2 / float64(mm*mm)
		}
	}
	require.Len(t, area, 3, "%v", area)
	for at, want := range map[[2]length.Length]float64{{12, 58}: 3877.50, {62, 86}: 1718.19, {12, 86}: 8660.25 - 117.78 - 1718.19} {
		assert.InDelta(t, want, area[at], 0.5, "%v", at)
	}
	for _, p := range side(&survey.Held{}).Pieces {
		assert.Len(t, p.Face[0], 4, "a set-out held from before keeps its plain rows")
	}
}

// Law 7, by a general geometry library (simplefeatures): tiles are drawn one by one where they stand on the wall, past the
// opening; each return is folded out into the wall, its front a joint behind the edge; and what of each tile lies on it is what its piece has.
// Left out may only be what sealant fills. No two pieces overlap.
func TestWhatTheEdgeCutsOffGoesOnBehindIt(t *testing.T) {
	kinds := map[survey.BondKind]int{}
	rapid.Check(t, func(t *rapid.T) {
		room, s, w := drawn(t)
		laid := chance.Pattern(t, 40*mm)
		room.Tile, room.Joint, room.Bond = laid.Tile, laid.Joint, laid.Bond
		room.Tile.Sheet = survey.SheetSize{Across: 6, Up: 6}
		walls := []plan.Wall{w}
		require.NoError(t, niche.Lay(context.Background(), room, s, walls))
		pattern, hole := bond.For(room, s.Hand), w.Start.Placed.Openings[0]
		origin := pattern.Origin(s.Line, w.Start.Edge)
		for _, f := range walls[0].Insides[0].Faces {
			box := f.Shape.Region.Bounds()
			by, ok := map[survey.FaceName]plane.Point{
				survey.LeftFace:  {X: hole.Left + room.Joint - box.Left},
				survey.RightFace: {X: hole.Right - room.Joint - box.Right},
				survey.SillFace:  {X: f.Origin.X, Y: hole.Bottom + room.Joint - box.Bottom},
				survey.TopFace:   {X: f.Origin.X, Y: hole.Top - room.Joint - box.Top},
			}[f.Is]
			goesOn := ok && !f.Own && (!room.Bond.Coursed() || room.Bond.Num > 0)
			require.Equal(t, goesOn, f.Round, "%s of %v", f.Is, room.Bond.Kind)
			if !goesOn || w.Found.Openings[0].Inside.Faces[f.Is].AtSill {
				continue
			}
			kinds[room.Bond.Kind]++
			at := map[plane.Rect]geom.Geometry{}
			for _, p := range f.Pieces {
				tile, shape := movedBox(p.Tile, by), outside(t, plane.Region{bond.Moved(p.Face[0], by)})
				for box, other := range at {
					if !box.Overlaps(tile) {
						continue
					}
					both, err := geom.Intersection(shape, other)
					require.NoError(t, err)
					require.LessOrEqual(t, both.Area(), both.Boundary().Length()+8, "%s overlaps", p.ID)
				}
				at[tile] = shape
			}
			folded := outside(t, plane.Region{bond.Moved(f.Shape.Region[0], by)})
			for _, tile := range pattern.Over(origin, movedBox(box, by)) {
				part, err := geom.Intersection(outside(t, plane.Region{tile.Outline}), folded)
				require.NoError(t, err)
				bounds := plane.Region{tile.Outline}.Bounds()
				is, set := at[bounds]
				delete(at, bounds)
				if set {
					require.InDelta(t, part.Area(), is.Area(), part.Boundary().Length()+8, "%s of %v", f.Is, room.Bond.Kind)
				} else if part.Area() > 0 {
					thin := part.Envelope()
					require.LessOrEqual(t, float64(min(thin.Width(), thin.Height())), float64(room.Sealant)+2, "%s of %v: bare at %v", f.Is, room.Bond.Kind, bounds)
				}
			}
			require.Empty(t, at, "%s of %v: a piece of a tile that the wall does not have there", f.Is, room.Bond.Kind)
		}
	})
	for _, k := range survey.Bonds {
		if k != survey.Stack {
			require.Positive(t, kinds[k], k)
		}
	}
}

func movedBox(r plane.Rect, by plane.Point) plane.Rect {
	return plane.Rect{Left: r.Left + by.X, Bottom: r.Bottom + by.Y, Right: r.Right + by.X, Top: r.Top + by.Y}
}
