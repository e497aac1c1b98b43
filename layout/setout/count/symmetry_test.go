package count

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// mirrored is a wall seen in a mirror: what was at its left is at its right.
func mirrored(w survey.WallFound) survey.WallFound {
	out := w
	turn := func(s survey.Span) survey.Span { return survey.Span{From: w.Width - s.To, To: w.Width - s.From} }
	end := func(e survey.EndFound) survey.EndFound {
		e.Stops = turn(e.Stops)
		e.Lean = readings(e.Lean, func(r survey.Reading) survey.Reading { return survey.Reading{At: r.At, Value: -r.Value} })
		return e
	}
	across := func(r survey.Reading) survey.Reading { return survey.Reading{At: w.Width - r.At, Value: r.Value} }
	out.Left, out.Right = end(w.Right), end(w.Left)
	out.Head.Readings = readings(w.Head.Readings, across)
	out.Base = slices.Clone(w.Base)
	slices.Reverse(out.Base)
	for i := range out.Base {
		out.Base[i].Readings = readings(out.Base[i].Readings, across)
		slices.Reverse(out.Base[i].Readings)
	}
	slices.Reverse(out.Head.Readings)
	out.Openings = slices.Clone(w.Openings)
	for i, o := range w.Openings {
		m := &out.Openings[i]
		m.At = w.Width - o.At
		m.Left = survey.Span{From: w.Width - o.Left.To - o.Width.To, To: w.Width - o.Left.From - o.Width.From}
		if o.Near.X != nil {
			x := w.Width - *o.Near.X
			m.Near.X = &x
		}
	}
	return out
}

func readings(list []survey.Reading, of func(survey.Reading) survey.Reading) (out []survey.Reading) {
	for _, r := range list {
		out = append(out, of(r))
	}
	return out
}

// reflected is a set-out seen in the mirror with its wall.
func (w *Wall) reflected(s Setting) Setting {
	width, tile := w.Found.Width, w.facts.room.Tile.Width
	out := s
	out.Edge = width - s.Edge - tile
	out.Placed.Left, out.Placed.Right = width-s.Placed.Right, width-s.Placed.Left
	out.Placed.Openings = slices.Clone(s.Placed.Openings)
	for i, e := range s.Placed.Openings {
		if w.Found.Openings[i].Kind != survey.Pipe {
			out.Placed.Openings[i].Left, out.Placed.Openings[i].Right = width-e.Right, width-e.Left
		}
	}
	return out
}

// evenly makes courses of a running bond step by whole units, so that its mirror image is
// the bond of the other hand to the unit.
func evenly(room *survey.Room) {
	den := length.Length(max(1, room.Bond.Den))
	room.Tile.Width -= length.Mod(room.Tile.Width+room.Joint, den)
	room.Tile.Height -= length.Mod(room.Tile.Height+room.Joint, den)
}

func other(h survey.Hand) survey.Hand {
	if h == survey.Left {
		return survey.Right
	}
	return survey.Left
}

// A wall in the mirror, with the bond of the other hand, has the same merit, and every
// bound claims the same of it: nothing favours the left. Leaning and raked edges are
// rounded one way, so that what they cut may differ by some units: walls without them.
func TestAMirroredWallHasTheSameMerit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 3)
		evenly(&room)
		found := room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")]
		upright(&found)
		for i := range found.Openings { // of one that may grow to the right the mirror image grows to the left
			found.Openings[i].Width.To = found.Openings[i].Width.From
		}
		hand := rapid.SampledFrom([]survey.Hand{survey.Left, survey.Right}).Draw(t, "hand")
		w, m := NewWall(&room, found, hand), NewWall(&room, mirrored(found), other(hand))
		s := setting(t, w)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		r := w.reflected(s)
		a, b := w.Count(s), m.Count(r)
		same(t, w, a.Merit, b.Merit)
		require.Equal(t, a.LeftCuts, b.RightCuts)
		require.Equal(t, a.RightCuts, b.LeftCuts)
		require.Equal(t, [2]bool{a.SmallLeft, a.SmallRight}, [2]bool{b.SmallRight, b.SmallLeft})
		claimsInTheMirror(t, w, m, s, r)
	})
}

// claimsInTheMirror wants every bound to claim the same of a wall and of its image.
func claimsInTheMirror(t require.TestingT, w, m *Wall, s, r Setting) {
	for name, bound := range map[string]func(*Wall, Setting) merit.Merit{
		"OfBoth":   func(w *Wall, s Setting) merit.Merit { return w.Bounds.OfBoth(s.Line, s.Edge) },
		"Plainly":  func(w *Wall, s Setting) merit.Merit { return w.Bounds.Plainly(s.Line, s.Edge) },
		"Beyond":   func(w *Wall, s Setting) merit.Merit { return w.Bounds.Beyond(s) },
		"Standing": func(w *Wall, s Setting) merit.Merit { return w.Bounds.Standing(s.Line, s.Edge) },
		"Mirror":   func(w *Wall, s Setting) merit.Merit { return merit.Merit{Mirror: w.Bounds.Mirror(s)} },
	} {
		x, y := bound(w, s), bound(m, r)
		order, term := w.facts.order.Until(&x, &y, merit.Near) // marks of the tape are not the same from the right
		require.Zero(t, order, "%s differs in %s:\n%+v\n%+v", name, term, x, y)
	}
}

// Every kind of wall is the same in the mirror, and a leg in single tiles gives the same pieces.
func TestEveryKindIsTheSameInTheMirror(t *testing.T) {
	for _, c := range everyKind {
		if strings.Contains(c.sketch, "lean") || strings.Contains(c.sketch, "base") {
			continue
		}
		room, found := sketch(c.sketch)
		evenly(&room)
		for i := range found.Openings {
			found.Openings[i].Width.To = found.Openings[i].Width.From
		}
		w, m := NewWall(&room, found, survey.Left), NewWall(&room, mirrored(found), survey.Right)
		n := 0
		w.setOuts(func(line, edge length.Length) {
			if n++; n%7 != 1 {
				return
			}
			s := w.best(line, edge).Setting
			r := w.reflected(s)
			a, b := w.Count(s).Merit, m.Count(r).Merit
			order, term := w.facts.order.Compare(&a, &b)
			require.Zero(t, order, "%s differs in %s", c.sketch, term)
			claimsInTheMirror(t, w, m, s, r)
		})
	}
}

// A leg by itself at the right is one at the left in the mirror, wherever courses stand and
// whichever of the two goes higher.
func TestALegByItselfIsTheSameInTheMirror(t *testing.T) {
	for _, line := range []string{"1000x600 300x100+2 leg=150", "1000x600 60x200+2 leg=150", "1000x600 100x300+3 gap=3 leg=90"} {
		room, found := sketch(line)
		found.Base[0].Leg = survey.SingleTiles
		w, m := NewWall(&room, found, survey.Left), NewWall(&room, mirrored(found), survey.Right)
		higher := 0
		w.setOuts(func(line, edge length.Length) {
			s := Setting{Line: line, Edge: edge, Placed: w.Outer()}
			_, a, bareA := w.CutWithLegs(s)
			_, b, bareB := m.CutWithLegs(w.reflected(s))
			require.Len(t, b, len(a))
			image := map[plane.Rect]int{}
			for i := range b {
				image[b[i].Face.Bounds()]++
			}
			for i := range a {
				box := a[i].Face.Bounds()
				own := length.Mod(a[i].Tile.Left-edge, room.Tile.Width+room.Joint) != 0 // begun at the wall's end, not as the bond is
				if front := found.Base[0].Readings[1].At; own && box.Bottom < 0 && box.Top > 0 {
					higher++
					for k := range a { // beside what goes over the rim there is a joint
						if b := a[k].Face.Bounds(); b.Left >= front && b.Bottom < box.Top {
							require.GreaterOrEqual(t, b.Left-box.Right, room.Joint)
						}
					}
				}
				box.Left, box.Right = found.Width-box.Right, found.Width-box.Left
				require.Positive(t, image[box], "no image of %v", a[i].Face)
			}
			require.Len(t, bareB, len(bareA))
		})
		require.Positive(t, higher, "sometimes the leg's own tile goes over the rim")
	}
}

// upright makes all edges of a wall level or plumb.
func upright(w *survey.WallFound) {
	w.Left.Lean, w.Right.Lean = nil, nil
	for i := range w.Base {
		r := slices.Clone(w.Base[i].Readings)
		r[1].Value = r[0].Value
		w.Base[i].Readings = r
	}
	if len(w.Head.Readings) > 0 {
		r := slices.Clone(w.Head.Readings)
		for k := range r {
			r[k].Value = r[0].Value
		}
		w.Head.Readings = r
	}
}

// Stack bond has no courses and no columns but by name: cut by the ones or by the others, a
// wall gives the same.
func TestColumnsOfStackBondAreItsCourses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 3)
		room.Bond = survey.BondRule{Kind: survey.Stack, Den: 1}
		if room.Tile.Width == room.Tile.Height {
			t.Skip("of a square tile a cut is across or along as the rows run")
		}
		found := room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")]
		upright(&found) // what leans is rounded where rows cross it, or columns
		w := NewWall(&room, found, survey.Left)
		s := setting(t, w)
		if w.Places.Overlap(s.Placed) {
			t.Skip("openings overlap")
		}
		turned := room
		turned.Bond.Plumb = true
		columns := NewWall(&turned, found, survey.Left)
		a, b := w.Count(s), columns.Count(s)
		same(t, w, a.Merit, b.Merit)
		require.ElementsMatch(t, a.Runs, b.Runs)
		require.Equal(t, a.LeftCuts, b.LeftCuts)
		require.Equal(t, w.Starts.Tried(), columns.Starts.Tried())
		require.Equal(t, w.Marks.Fixed(s.Line, s.Edge), columns.Marks.Fixed(s.Line, s.Edge))
	})
}

// A wall laid on its side, x for y, with its courses as columns: the same pieces are cut, so
// the terms that know no direction are the same, also of what is claimed.
func TestAWallOnItsSideCutsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
		size, tile := [2]int{n("wide", 300, 1200), n("high", 300, 1200)}, [2]int{n("tile", 40, 400), n("tile high", 40, 400)}
		joint, gap := n("joint", 0, 5), n("gap", 0, 5)
		x, y := [2]int{n("x", 20, 200), n("broad", 20, 80)}, [2]int{n("y", 20, 200), n("tall", 20, 80)}
		at, up := [2]int{n("line", -300, 0), n("edge", -300, 0)}, [3]int{n("pipe", 20, 280), n("pipe up", 20, 280), n("diameter", 10, 90)}
		bond := rapid.SampledFrom([]string{"", " 1/2", " 1/3"}).Draw(t, "bond")
		draw := func(a, b int, columns string) *Wall {
			return drawWall(fmt.Sprintf("%dx%d %dx%d+%d%s%s gap=%d window=%d,%d,%d,%d pipe=%d,%d,%d", size[a], size[b], tile[a], tile[b], joint, bond, columns,
				gap, [2][2]int{x, y}[a][0], [2][2]int{x, y}[a][1], [2][2]int{x, y}[b][0], [2][2]int{x, y}[b][1], up[a], up[b], up[2]))
		}
		w, v := draw(0, 1, ""), draw(1, 0, " columns")
		s := Setting{Line: length.Length(at[0]) * mm, Edge: length.Length(at[1]) * mm, Placed: w.Outer()}
		turned := Setting{Line: s.Edge, Edge: s.Line, Placed: v.Outer()}
		for name, count := range map[string]func(*Wall, Setting) merit.Merit{
			"the count": func(w *Wall, s Setting) merit.Merit { return w.Count(s).Merit },
			"OfBoth":    func(w *Wall, s Setting) merit.Merit { return w.Bounds.OfBoth(s.Line, s.Edge) },
			"Plainly":   func(w *Wall, s Setting) merit.Merit { return w.Bounds.Plainly(s.Line, s.Edge) },
		} {
			a, b := count(w, s), count(v, turned)
			require.True(t, sameShares(a.Runs, b.Runs), "%s: %v, %v", name, a.Runs, b.Runs)
			a.Runs, b.Runs = nil, nil
			require.Equal(t, a.Sight, b.Sight, name)
			require.Equal(t, a.Built, b.Built, name)
			if tile[0] != tile[1] { // of a square one a cut is across or along as the rows run
				require.Equal(t, a.Work, b.Work, name)
			}
		}
	})
}

// What is far from an opening does not know of it: every run that a wall has without a window
// is the same with it, if the window is not in it.
func TestAWindowChangesOnlyWhatItCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm
		}
		line := rapid.SampledFrom([]string{"2400x1800 300x100+2 1/2 gap=3", "2400x1800 200x200+3 gap=3 leg=150", "2400x1800 100x300+2 1/3 columns gap=3 base=0,-8"}).Draw(t, "wall")
		without, with := drawWall(line), drawWall(line+" window=900,500,700,400")
		s := Setting{Line: n("line", -300, 0), Edge: n("edge", -300, 0), Placed: without.Outer()}
		plain := without.Count(s)
		s.Placed = with.Outer()
		got := with.Count(s)
		window := func(e piece.Edge) bool { return int(e.Side()) == int(survey.SideBase)+len(with.Found.Base) }
		others := slices.DeleteFunc(slices.Clone(got.Runs), func(r Run) bool { return slices.ContainsFunc(r.Edges, window) })
		require.ElementsMatch(t, plain.Runs, others)
		require.Equal(t, plain.Merit.Bare, got.Merit.Bare-bareAt(with, s), "no more is bare but at the window")
		require.Equal(t, plain.LeftCuts, got.LeftCuts)
		require.Equal(t, plain.RightCuts, got.RightCuts)
	})
}

// bareAt is what is bare of the edges of the window of a wall.
func bareAt(w *Wall, s Setting) (sum length.Length) {
	_, _, bare := w.Cut(s)
	for _, g := range bare {
		if int(g.Edge.Side()) == int(survey.SideBase)+len(w.Found.Base) {
			sum += g.Length
		}
	}
	return sum
}
