package cuts

import (
	"context"
	"os"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/setout"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The pairs of a pattern are as many as a MIP solver finds, which pieces go together being
// told by a general geometry library: one of them lies, in a way in which its tile looks the
// same, at least a kerf away from all that is on the other's side of its one straight cut.
func TestPairsOfAPatternAgainstMIP(t *testing.T) {
	solver := glpsol(t)
	tile := func(w, h string) survey.Tile {
		return survey.Tile{Width: w, Height: h, Thickness: "9"}
	}
	for name, c := range map[string]struct {
		tile survey.Tile
		bond survey.Bond
	}{
		"hexagon":          {tile("182", "182"), survey.Bond{Kind: "hexagon"}},
		"hexagon, flat":    {tile("150", "150"), survey.Bond{Kind: "hexagon", Along: "plumb"}},
		"hexagon, grained": {survey.Tile{Width: "170", Height: "170", Grain: true}, survey.Bond{Kind: "hexagon"}},
		"picket":           {tile("120", "300"), survey.Bond{Kind: "picket"}},
		"chevron":          {tile("400", "120"), survey.Bond{Kind: "chevron"}},
	} {
		t.Run(name, func(t *testing.T) {
			in := oneWall(t, c.tile, c.bond)
			set := For(in.Room)
			set.Turn = set.Turn && !in.Room.Tile.Grain
			cut, _ := inSettingOrder(in, set.Turn)
			var all []*laid
			for _, w := range cut {
				if b := w.blank(); min(b.wide, b.high) >= set.Least {
					all = append(all, b.laid)
				}
			}
			require.Greater(t, len(all), 8)
			require.False(t, all[0].square())
			fits := func(i, j int) bool {
				return all[i].like(all[j]) && (leaves(t, all[i], all[j], set.Kerf) || leaves(t, all[j], all[i], set.Kerf))
			}
			assert.Equal(t, milp(t, solver, len(all), fits), Of(in, set).Offcuts.TilesSaved)
		})
	}
}

// oneWall is a wall of the hexagon job laid in another pattern.
func oneWall(t *testing.T, tile survey.Tile, bond survey.Bond) Input {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/hexagon.json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	job.Tile, job.Bond, job.Walls = tile, bond, job.Walls[1:]
	job.Walls[0].Left = survey.End{Stops: &survey.Mark{At: "0"}}
	job.Walls[0].Head.Stops = &survey.Mark{At: "370"}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	room, _, walls, err := setout.Solve(context.Background(), room)
	require.NoError(t, err)
	return Input{Room: room, Walls: walls}
}

// leaves tells by the geometry library whether what a piece's one cut leaves of its tile
// holds another, a kerf from all of the cut's own side.
func leaves(t *testing.T, l, o *laid, kerf length.Length) bool {
	if !l.single {
		return false
	}
	// The side of the cut that the piece is on, far beyond the tile.
	along := plane.Point{X: l.p.X - l.from.X, Y: l.p.Y - l.from.Y}
	far := 20 * length.Metre / max(1, plane.Distance(l.from, l.p))
	a := plane.Point{X: l.from.X - far*along.X, Y: l.from.Y - far*along.Y}
	b := plane.Point{X: l.p.X + far*along.X, Y: l.p.Y + far*along.Y}
	side := plane.Ring{{Point: a}, {Point: b}, {Point: plane.Point{X: b.X - far*along.Y, Y: b.Y + far*along.X}}, {Point: plane.Point{X: a.X - far*along.Y, Y: a.Y + far*along.X}}}
	for _, way := range o.ways {
		rest := true
		for _, ring := range way {
			d, ok := geom.Distance(polygon(t, side), polygon(t, ring))
			rest = rest && ok && d >= float64(kerf)
		}
		if rest {
			return true
		}
	}
	return false
}
