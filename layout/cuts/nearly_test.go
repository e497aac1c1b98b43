package cuts

import (
	"fmt"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const mm = length.Millimetre

// laidEnd is a tile of 190 × 60 mm of a pattern, cut into the right end of its wall: so long below and above.
func laidEnd(id string, below, above length.Length) piece.Piece {
	at := func(x, y length.Length) plane.Corner { return plane.Corner{Point: plane.Point{X: x, Y: y}} }
	tile := plane.Ring{at(0, 0), at(190*mm, 0), at(190*mm, 60*mm), at(0, 60*mm)}
	face := plane.Region{{at(0, 0), {Point: plane.Point{X: below}, On: survey.SideRight}, at(above, 60*mm), at(0, 60*mm)}}
	kind := piece.Cross
	if below != above {
		kind = piece.Taper
	}
	return piece.Piece{ID: id, Outline: tile, Tile: plane.Region{tile}.Bounds(), Face: face, Visible: face, Cuts: []plane.Side{survey.SideRight}, Kind: kind}
}

// laidLines are the lines of such pieces: the first that are seen, then those that end in a corner.
func laidLines(seen, hidden []piece.Piece) []string {
	walls := []plan.Wall{*wallOf([]survey.Boundary{{}, {}, {Part: survey.Part{Is: survey.RightEnd}}}), *wallOf([]survey.Boundary{{}, {}, {Part: survey.Part{Is: survey.RightEnd}, Meets: true}})}
	walls[0].Pieces, walls[1].Pieces = seen, hidden
	var out []string
	for _, g := range Of(Input{Room: survey.Room{Units: length.Metric}, Walls: walls}, Usual(length.Metric)).Groups {
		out = append(out, fmt.Sprintf("%d %s %v + %v", g.Count, g.Kind, g.Size.Width.Millimetres(), g.Spread.Millimetres()))
	}
	return out
}

// Found on a herringbone wall, of whose sixty lines seventeen were tapers of 1/64 in: 1/32 in, or 0.5 mm, is
// what a saw is set to, so that one under it is a straight cut, at the end where the piece is smaller.
func TestATaperUnderTheStepIsAStraightCutInAPatternToo(t *testing.T) {
	assert.Equal(t, []string{"1 cross cut 100 + 0"}, laidLines([]piece.Piece{laidEnd("a", 100*mm, 100*mm+mm*4/10)}, nil))
	assert.Equal(t, []string{"1 cross cut 100 + 0"}, laidLines([]piece.Piece{laidEnd("a", 100*mm+mm*4/10, 100*mm)}, nil))
	assert.Equal(t, []string{"1 taper 100.5 + 0"}, laidLines([]piece.Piece{laidEnd("a", 100*mm, 100*mm+mm*6/10)}, nil))
}

// Into a corner, pieces within 1.5 mm are one batch at the smallest, wherever the steps of the saw fall between them;
// at an end that is seen each has its setting, which one in a corner may share where it is no smaller.
func TestPiecesOfAPatternAreBatchedAsThoseOfCourses(t *testing.T) {
	ends := func(wides ...length.Length) (all []piece.Piece) {
		for i, wide := range wides {
			all = append(all, laidEnd(fmt.Sprint(len(wides), "-", i), wide*mm/10, wide*mm/10))
		}
		return all
	}
	for _, c := range []struct {
		name         string
		seen, hidden []piece.Piece
		want         []string
	}{
		{"in a corner", nil, ends(805, 810, 820), []string{"3 cross cut 80.5 + 1.5"}},
		{"further apart", nil, ends(805, 810, 825), []string{"2 cross cut 80.5 + 0.5", "1 cross cut 82.5 + 0"}},
		{"at an end that is seen", ends(805, 810, 810), nil, []string{"2 cross cut 81 + 0", "1 cross cut 80.5 + 0"}},
		{"one in a corner with those that are seen", ends(810, 810), ends(820), []string{"3 cross cut 81 + 1"}},
		{"but no smaller one", ends(810, 810), ends(805), []string{"2 cross cut 81 + 0", "1 cross cut 80.5 + 0"}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, laidLines(c.seen, c.hidden)) })
	}
}

// Two that taper to opposite sides are cut to the smaller at each mark, though neither is the smaller in all.
func TestALineOfAPatternTakesTheSmallerAtEachMark(t *testing.T) {
	w := wallOf([]survey.Boundary{{}, {}, {Part: survey.Part{Is: survey.RightEnd}, Meets: true}})
	w.Pieces = []piece.Piece{laidEnd("a", 80*mm, 81*mm), laidEnd("b", 81*mm, 80*mm+mm/2)}
	groups := Of(Input{Room: survey.Room{Units: length.Metric}, Walls: []plan.Wall{*w}}, Settings{}).Groups
	require.Len(t, groups, 1)
	require.Len(t, groups[0].Saws, 1)
	marks := map[string]length.Length{groups[0].Saws[0].Enters.String(): groups[0].Saws[0].Enters.From, groups[0].Saws[0].Leaves.String(): groups[0].Saws[0].Leaves.From}
	assert.Equal(t, map[string]length.Length{"A to B": 80 * mm, "D to C": 80*mm + mm/2}, marks)
	assert.Equal(t, 1*mm, groups[0].Spread)
}

// Law 2 of Of in patterns: what a line is cut to, by its size and by each of its marks, is nowhere larger than any of its
// pieces, but for what marks are rounded by; and the largest is larger by no more than it says and a step.
func TestNoPieceOfAPatternExceedsItsPlace(t *testing.T) {
	for _, name := range []string{"hexagon", "herringbone"} {
		in := inPattern(t, name)
		set, step := For(in.Room), in.Room.Units.FineStep()
		cut, _ := inSettingOrder(in, set.Turn)
		of := map[string]work{}
		for _, w := range cut {
			of[w.piece.ID] = w
		}
		batches := 0
		for _, g := range Of(in, set).Groups {
			if g.How != Fence {
				continue
			}
			for _, id := range g.Pieces {
				w := of[id]
				size := w.size(step)
				assert.LessOrEqual(t, g.Size.Width, size.Width, "%s, %s", name, id)
				assert.LessOrEqual(t, g.Size.Height, size.Height, "%s, %s", name, id)
				assert.LessOrEqual(t, size.Width, g.Size.Width+g.Spread+step, "%s, %s", name, id)
				assert.LessOrEqual(t, size.Height, g.Size.Height+g.Spread+step, "%s, %s", name, id)
				saws := w.saws(1)
				if w.piece.Kind&piece.Notch != 0 || len(saws) != len(g.Saws) {
					continue
				}
				for i, s := range saws {
					for _, pair := range [][2]Mark{{g.Saws[i].Enters, s.Enters}, {g.Saws[i].Leaves, s.Leaves}} {
						if pair[0].Edge != pair[1].Edge || pair[0].Corner != pair[1].Corner {
							continue
						}
						batches++
						more := pair[0].From - pair[1].From // what the line keeps more than the place has
						if !w.keeps(pair[0].Corner) {
							more = -more
						}
						assert.LessOrEqual(t, more, step/2+1, "%s, %s: %v for %v", name, id, pair[0], pair[1])
					}
				}
			}
		}
		require.Greater(t, batches, 100, name)
	}
}
