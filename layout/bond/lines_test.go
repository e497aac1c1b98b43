package bond

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Law 6: read off the tiles themselves, edges that face right make up a tenth of every
// line on which tiles end, and nowhere else; with those that face left for lines on which tiles
// begin. Level lines are those of the pattern with x and y swapped.
func TestJointLinesAreMadeOfFactoryEdges(t *testing.T) {
	drawn := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Pattern(t, 20_000)
		p := For(room, survey.Right)
		lines := p.PlumbLines()
		period := length.Length(p.Area2()/2) / lines.Pitch
		if period > 4*length.Metre || lines.Pitch < 20 {
			require.True(t, lines.None(), "its edges come again after %v only", period)
			return
		}
		drawn++
		// Every edge of one period of height and two pitches.
		ends, begins := map[length.Length]length.Length{}, map[length.Length]length.Length{}
		box := plane.Rect{Left: -lines.Pitch - drift, Right: 2*lines.Pitch + drift, Bottom: -period, Top: 2 * period}
		for _, s := range p.Over(plane.Point{}, box) {
			for i, c := range s.Outline {
				if d := s.Outline[(i+1)%len(s.Outline)]; c.X == d.X {
					low, high := max(0, min(c.Y, d.Y)), min(period, max(c.Y, d.Y))
					if low < high && d.Y > c.Y {
						ends[c.X] += high - low
					} else if low < high {
						begins[c.X] += high - low
					}
				}
			}
		}
		check := func(edges map[length.Length]length.Length, listed []length.Length, towards length.Length) {
			for x := range edges {
				if x < 0 || x >= lines.Pitch {
					continue
				}
				sum, last := edges[x], x
				for far := length.Length(1); far <= drift; far++ { // those that make one line with it
					for _, side := range [...]length.Length{-1, 1} {
						y := x + side*far
						sum += edges[y]
						if edges[y] > 0 && (y-last)*towards > 0 {
							last = y
						}
					}
				}
				require.Equal(t, rarest*sum >= period, lines.Any(listed, last, last), "%v: %v of %v at %v", room.Bond.Kind, sum, period, x)
			}
		}
		check(ends, lines.Ends, 1)
		check(begins, lines.Begins, -1)
	})
	require.Positive(t, drawn)
}

// Worked by hand (G): by pattern of 1/8 in joints, how many lines there are in one repeat.
func TestJointLinesOfThePatterns(t *testing.T) {
	const in = length.Inch
	square := func(s length.Length) survey.TileSize { return survey.TileSize{Width: s, Height: s} }
	for _, c := range []struct {
		name         string
		bond         survey.BondRule
		tile         survey.TileSize
		pitch        length.Length // of the plumb lines
		plumb, level int
		clear        [2]length.Length // an opening that the plumb lines clear, from the origin
		notClear     [2]length.Length
		notIn        length.Length // what the middle of no tile or joint stands on
	}{
		{"hexagons: their flats, in every second row", survey.BondRule{Kind: survey.Hexagon}, square(4 * in), 33 * in / 16, 1, 0,
			[2]length.Length{2 * in, 2*in + in/8}, [2]length.Length{2 * in, 2*in + in/4}, in},
		{"a herringbone on one grid", survey.BondRule{Kind: survey.Herringbone}, survey.TileSize{Width: 6*in + in/8, Height: 3 * in}, 25 * in / 8, 1, 1,
			[2]length.Length{3 * in, 25 * in / 8}, [2]length.Length{2 * in, 25 * in / 8}, in},
		{"a herringbone that drifts", survey.BondRule{Kind: survey.Herringbone}, survey.TileSize{Width: 6 * in, Height: 3 * in}, in / 8, 0, 0,
			[2]length.Length{1, 2}, [2]length.Length{}, in},
		{"columns of a chevron", survey.BondRule{Kind: survey.Chevron, Angle: 45}, survey.TileSize{Width: 6 * in, Height: 2 * in}, 0, 2, 0,
			[2]length.Length{}, [2]length.Length{}, in},
		{"a diagonal", survey.BondRule{Kind: survey.Diagonal}, square(4 * in), 0, 0, 0, [2]length.Length{}, [2]length.Length{}, in},
		{"squares of a basket weave, and the joint in the middle of half of them", survey.BondRule{Kind: survey.BasketWeave},
			survey.TileSize{Width: 6*in + in/8, Height: 3 * in}, 25 * in / 4, 2, 2, [2]length.Length{3 * in, 25 * in / 8}, [2]length.Length{in, in}, in},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.bond.Den = 1
			p := For(survey.Room{Tile: c.tile, Joint: in / 8, Bond: c.bond}, survey.Free)
			plumb, level := p.PlumbLines(), p.LevelLines()
			require.Equal(t, [2]int{c.plumb, c.level}, [2]int{len(plumb.Ends), len(level.Ends)})
			require.Equal(t, [2]int{c.plumb, c.level}, [2]int{len(plumb.Begins), len(level.Begins)})
			if c.pitch != 0 {
				require.Equal(t, c.pitch, plumb.Pitch)
			}
			if c.clear != [2]length.Length{} {
				require.True(t, plumb.Clear(c.clear[0], c.clear[1]))
			}
			if c.notClear != [2]length.Length{} {
				require.False(t, plumb.Clear(c.notClear[0], c.notClear[1]))
			}
			if c.notIn != 0 {
				require.False(t, plumb.Centred(2*c.notIn))
			}
		})
	}
}
