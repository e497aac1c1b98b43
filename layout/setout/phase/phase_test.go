package phase

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const mm = length.Millimetre

// randomRoom draws a room with a random pattern, its tile large beside its walls.
func randomRoom(t *rapid.T, walls int) survey.Room {
	r, p := chance.House(t, walls), chance.Pattern(t, 70*mm)
	if p.Bond.Coursed() {
		p.Bond.Kind, p.Tile.Width, p.Bond = survey.Herringbone, p.Tile.Width+p.Tile.Height, survey.BondRule{Kind: survey.Herringbone, Den: 1}
	}
	r.Tile, r.Bond, r.Joint, r.Joints = p.Tile, p.Bond, p.Joint, p.Joints
	return r
}

// Law 1: what Count reads is what the pieces of the wall give, all of them laid.
func TestCountIsReadFromThePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 2)
		pattern := bond.For(r, r.Bond.Hand)
		for _, found := range r.Walls {
			w := NewWall(&r, found, pattern)
			s := Setting{Line: length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line")), Edge: length.Length(rapid.IntRange(0, 400_000).Draw(t, "edge")), Placed: w.outer}
			c := w.Count(s)
			_, pieces, gaps := w.Cut(s)
			var want merit.Sight
			work, bare := 0, length.Length(0)
			for i := range pieces {
				p := &pieces[i]
				if p.Whole {
					continue
				}
				work += p.Effort()
				switch p.Grade(false) {
				case piece.Hopeless:
					want.Unworkable++
				case piece.Small:
					want.Slivers++
				}
			}
			for _, g := range gaps {
				if !g.Low {
					bare += g.Length
				}
			}
			require.Equal(t, [3]int{want.Unworkable, want.Slivers, work}, [3]int{c.Merit.Unworkable, c.Merit.Slivers, c.Merit.Work})
			require.Equal(t, bare, c.Merit.Bare)
		}
	})
}

// Law 2: what a stretch of phases cannot beat does not come after what any phase in
// it gives.
func TestNoPhaseBeatsItsBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		order := merit.OrderFor(r.Prefer)
		w := NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
		for range 6 {
			line := length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))
			edge := length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge"))
			along := length.Length(rapid.IntRange(0, 12).Draw(t, "along")) * r.Tape / 2
			up := length.Length(rapid.IntRange(0, 12).Draw(t, "up")) * r.Tape / 2
			bound := w.AtBest(line, edge, along, up)
			for range 4 {
				at := Setting{Line: line + length.Length(rapid.IntRange(-int(up), int(up)).Draw(t, "v")), Edge: edge + length.Length(rapid.IntRange(-int(along), int(along)).Draw(t, "u")), Placed: w.outer}
				c := w.Count(at)
				worse, term := order.Compare(&bound, &c.Merit)
				require.LessOrEqual(t, worse, 0, "%s: bound %+v, counted %+v at %v", term, bound, c.Merit, at)
			}
		}
	})
}

// Law 2 for what is looked at more closely, wherever the free marks are placed.
func TestNoSetOutBeatsItsCorners(t *testing.T) {
	free := 0
	rapid.Check(t, func(t *rapid.T) {
		r := randomRoom(t, 1)
		w := NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
		for range 4 {
			line := length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))
			edge := length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge"))
			sharper := func() int { return rapid.IntRange(0, 4).Draw(t, "sharper") }
			option := func(most int) int { return rapid.IntRange(0, min(20, most)).Draw(t, "option") }
			other := merit.Merit{Sight: merit.Sight{Slivers: rapid.IntRange(0, 3).Draw(t, "slivers")}}
			s, bounds, ok := everyBound(w, line, edge, sharper, option, &other)
			if ok {
				free += min(1, len(w.axes))
				nothingBeats(t, w, s, bounds)
			}
		}
	})
	require.Positive(t, free)
}

// everyBound is all that a phase cannot beat, by name, with the marks at the options that are asked for
// of every axis. Marks that stand in one another are not ok.
func everyBound(w *Wall, line, edge length.Length, sharper func() int, option func(int) int, other *merit.Merit) (s Setting, bounds map[string]merit.Merit, ok bool) {
	h, x := &hunt{wall: w, line: line}, &stretch{edge: edge, marks: 1}
	x.merit = w.AtBest(h.line, x.edge, 0, 0)
	s = Setting{Line: h.line, Edge: x.edge, Placed: w.outer}
	bounds = map[string]merit.Merit{"edges that stand": x.merit}
	if len(w.axes) > 0 {
		choice, pick := w.choose(x, h), make([]int, len(w.axes))
		choice.closer(nil)
		bounds["corners apart"] = choice.least()
		ends := listedEnds(choice, sharper(), bounds)
		choice.closer(nil)
		bounds["all apart"] = choice.least()
		for i := len(choice.axes); i < len(w.axes); i++ {
			choice.list()
			bounds[fmt.Sprint("best options of ", i+1)] = choice.least()
		}
		for i := range sharper() {
			choice.sharpen(allCut)
			bounds[fmt.Sprint("sharper ", i)] = choice.least()
		}
		for axis := range pick {
			pick[axis] = option(len(choice.axes[axis].wait.items) - 1)
		}
		bounds["options"] = choice.bound(pick, len(pick))
		bounds["ends where they are placed"] = ends(pick)
		if s.Placed, ok = choice.placed(pick); !ok {
			return s, nil, false
		}
		bounds["corners of the marks"], _ = choice.closely(s, nil)
	}
	bounds["corners"], _ = w.Closely(s, nil)
	bounds["some corners"], _ = w.Closely(s, other)
	return s, bounds, true
}

// listedEnds takes so many steps towards the best options of ends and the head, and gives what a way to place
// the marks cannot beat by the corners of these.
func listedEnds(c *choice, steps int, bounds map[string]merit.Merit) (placed func(pick []int) merit.Merit) {
	for i := range steps {
		c.listEnds()
		bounds[fmt.Sprint("ends ", i)] = c.least()
	}
	stands, cut := c.stands, map[*option]merit.Merit{}
	for i := range c.axes {
		for _, o := range c.axes[i].wait.items {
			corners := *o
			c.cutEnds(c.w.axes[i], &corners, c.axes[i].small)
			cut[o] = *corners.merit
		}
	}
	return func(pick []int) merit.Merit {
		m := stands
		for axis, n := range pick {
			if one, there := cut[c.option(axis, n)]; there {
				m = m.Plus(&one)
			}
		}
		return m
	}
}

// nothingBeats wants that a set-out comes before none of its bounds.
func nothingBeats(t require.TestingT, w *Wall, s Setting, bounds map[string]merit.Merit) {
	c := w.Count(s)
	for name, m := range bounds {
		worse, term := w.order.Compare(&m, &c.Merit)
		require.LessOrEqual(t, worse, 0, "%s, %s: bound %+v, counted %+v at %v", name, term, m, c.Merit, s)
	}
}

// small is a small room with one wall that meets a corner at the left, a tub that
// rises a little, and stops at the right and at the head.
func small(kind survey.BondKind, width, height length.Length, with ...func(*survey.Room)) survey.Room {
	r := survey.Room{Units: length.Metric, Tape: 2 * mm, Joint: 2 * mm, Joints: []length.Length{2 * mm}, Bed: 5 * mm, Sealant: 6 * mm,
		Tile: survey.TileSize{Width: width, Height: height, Thickness: 8 * mm}, Bond: survey.BondRule{Kind: kind, Den: 1, Angle: 45}}
	r.Walls = []survey.WallFound{{Name: "a", Letter: "A", Width: 620 * mm,
		Left:  survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1},
		Right: survey.EndFound{Stops: survey.Span{From: 611 * mm, To: 611 * mm}, Beyond: -1},
		Base:  []survey.SegmentFound{{Meets: survey.Tub, Gap: 3 * mm, Readings: []survey.Reading{{At: 0, Value: -300 * mm}, {At: 620 * mm, Value: -297 * mm}}}},
		Head:  survey.HeadFound{Stops: survey.Span{From: 260 * mm, To: 260 * mm}},
	}}
	for _, f := range with {
		f(&r)
	}
	return r
}

// Law 3, by brute force over every mark of the tape, up and along: a herringbone wall,
// upright and at 45°, and a hexagon wall, points up and flat.
func TestNoMarkOfTheTapeIsBetter(t *testing.T) {
	for name, r := range map[string]survey.Room{
		"herringbone":        small(survey.Herringbone, 150*mm, 75*mm),
		"herringbone at 45°": small(survey.Herringbone, 140*mm, 62*mm, func(r *survey.Room) { r.Bond.Turned = true }),
		"hexagon":            small(survey.Hexagon, 100*mm, 100*mm),
		"flat hexagon":       small(survey.Hexagon, 90*mm, 90*mm, func(r *survey.Room) { r.Bond.Swapped = true }),
		"chevron":            small(survey.Chevron, 180*mm, 60*mm),
		"hexagon, a niche":   small(survey.Hexagon, 100*mm, 100*mm, niche),
		"basket weave":       small(survey.BasketWeave, 102*mm, 50*mm, niche),
		"pinwheel": small(survey.Pinwheel, 98*mm, 98*mm, niche, func(r *survey.Room) {
			r.Bond.Others = []survey.TileSize{{Width: 48 * mm, Height: 48 * mm}}
		}),
		"herringbone, a roof":          small(survey.Herringbone, 150*mm, 75*mm, roof(260*mm, -120*mm)),
		"hexagon, a steep roof":        small(survey.Hexagon, 100*mm, 100*mm, roof(420*mm, -280*mm)),
		"chevron, a roof":              small(survey.Chevron, 180*mm, 60*mm, roof(0, 260*mm)),
		"herringbone at 45°, its roof": small(survey.Herringbone, 140*mm, 62*mm, roof(310*mm, -310*mm), func(r *survey.Room) { r.Bond.Turned = true }),
		"flat hexagon, a gable":        small(survey.Hexagon, 90*mm, 90*mm, roof(-100*mm, 250*mm, -60*mm), func(r *survey.Room) { r.Bond.Swapped = true }),
	} {
		t.Run(name, func(t *testing.T) {
			found, err := Room(context.Background(), &r)
			require.NoError(t, err)
			require.True(t, found.Proven)
			w := NewWall(&r, r.Walls[0], bond.For(r, survey.Free))
			box, p := w.ground(w.outer).box, w.Pattern
			low, left := (box.Bottom + box.Top - p.Rise).Half().CeilTo(r.Tape), (box.Left + box.Right - p.Reach).Half().CeilTo(r.Tape)
			looked := 0
			edges := slices.Clone(w.classic)
			for edge := left; edge < left+p.Reach; edge += r.Tape {
				edges = append(edges, edge)
			}
			for line := low; line < low+p.Rise; line += r.Tape {
				for _, edge := range edges {
					looked++
					c := w.Count(Setting{Line: line, Edge: edge, Placed: w.outer})
					if order, term := found.Order().Compare(&c.Merit, &found.Walls[0].Merit); order < 0 {
						require.Failf(t, "better", "%v at line %v, edge %v: %s", name, line, edge, term)
					}
				}
			}
			require.Greater(t, looked, 500)
		})
	}
}

// roof is a ceiling at even steps along a small room.
func roof(heights ...length.Length) func(*survey.Room) {
	return func(r *survey.Room) {
		w := &r.Walls[0]
		w.Head = survey.HeadFound{Meets: true, Gap: 3 * mm}
		for i, h := range heights {
			w.Head.Readings = append(w.Head.Readings, survey.Reading{At: w.Width * length.Length(i) / length.Length(len(heights)-1), Value: h})
		}
	}
}

// niche is a built niche in a small room.
func niche(r *survey.Room) {
	at := func(x length.Length) survey.Span { return survey.Span{From: x, To: x} }
	r.Walls[0].Openings = []survey.OpeningFound{{Kind: survey.Niche, Name: "n", Left: at(240 * mm), Width: at(150 * mm), Bottom: at(-60 * mm), Height: at(120 * mm)}}
}

// square is a square wall from 0 to 600 and from −600 to 0, so that x and y swap: what is
// at its left is at its foot, and its right end is as its head. It meets something all round,
// because only ends at its sides may be exposed.
func square(kind survey.BondKind, swapped bool, width, height length.Length) survey.Room {
	r := small(kind, width, height, func(r *survey.Room) { r.Bond.Swapped = swapped })
	w := &r.Walls[0]
	w.Width, w.Left, w.Right = 600*mm, survey.EndFound{Meets: true, Beyond: -1}, survey.EndFound{Meets: true, Beyond: -1}
	w.Base[0].Readings = []survey.Reading{{At: 0, Value: -600 * mm}, {At: 600 * mm, Value: -600 * mm}}
	w.Base[0].Gap, w.Head = 0, survey.HeadFound{Meets: true, Readings: []survey.Reading{{At: 0}, {At: 600 * mm}}}
	return r
}

// The best of a whole room is as good as the best of the same room turned by 90° and seen
// from behind: x and y swapped, of the wall and of the pattern. What is told apart by what
// is plumb, and not by the pieces, is left out. The lattices are of whole marks, so that the
// marks of one box of phases are those of another.
func TestARoomTurnedIsAsGood(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]survey.BondKind{survey.Herringbone, survey.DoubleHerringbone, survey.Pinwheel, survey.MixedHeights, survey.BasketWeave}).Draw(t, "kind")
		n := func(name string, low, high int) length.Length {
			return 2 * mm * length.Length(rapid.IntRange(low, high).Draw(t, name))
		}
		wide, high := n("wide", 50, 90), n("high", 30, 45)
		room := func(swapped bool) survey.Room {
			w, h := wide, high
			other := survey.TileSize{Width: 60 * mm, Height: 60 * mm}
			switch kind {
			case survey.DoubleHerringbone:
				w = 2*high + 2*mm + wide/4/(2*mm)*2*mm
			case survey.BasketWeave:
				w = 2*high + 2*mm
			case survey.Pinwheel:
				h = w
			case survey.MixedHeights:
				other = survey.TileSize{Width: w, Height: 42 * mm}
			}
			if swapped {
				w, h, other.Width, other.Height = h, w, other.Height, other.Width
			}
			r := square(kind, swapped, w, h)
			if kind == survey.Pinwheel || kind == survey.MixedHeights {
				r.Bond.Others = []survey.TileSize{other}
			}
			return r
		}
		a, b := room(false), room(true)
		one, err := Room(context.Background(), &a)
		require.NoError(t, err)
		two, err := Room(context.Background(), &b)
		require.NoError(t, err)
		require.True(t, one.Proven && two.Proven)
		require.Equal(t, one.Merit.Sight, two.Merit.Sight)
	})
}

// The same room turned by 90° is not the same job, but a pattern with x and y swapped
// on a wall with x and y swapped has the same least widths and the same counts.
func TestAPatternTurnedWithItsWallCountsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]survey.BondKind{survey.Hexagon, survey.Herringbone, survey.Picket, survey.Chevron}).Draw(t, "kind")
		wide, high := 96*mm, 152*mm
		if kind == survey.Hexagon {
			high = wide
		}
		a, b := square(kind, false, wide, high), square(kind, true, high, wide)
		u, v := length.Length(rapid.IntRange(0, 300_000).Draw(t, "u")), length.Length(rapid.IntRange(0, 300_000).Draw(t, "v"))
		count := func(r survey.Room, line, edge length.Length) merit.Merit {
			w := NewWall(&r, r.Walls[0], bond.For(r, survey.Free))
			return w.Count(Setting{Line: line, Edge: edge, Placed: w.outer}).Merit
		}
		// The wall reaches from 0 to 600 and from −600 to 0: a square, so that x and y swap.
		m, n := count(a, -600*mm+v, u), count(b, -600*mm+u, v)
		require.Equal(t, [4]int{m.Unworkable, m.Slivers, m.Fifths, m.Thirds}, [4]int{n.Unworkable, n.Slivers, n.Fifths, n.Thirds})
		require.Equal(t, m.Runs, n.Runs)
	})
}
