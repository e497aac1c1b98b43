package phase

import (
	"slices"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// alikeEnds is a wall between two corners with a free head and free niches that may stand so near an end, and the head, that
// they cut tiles there.
func alikeEnds(t *rapid.T) *Wall {
	r := randomRoom(t, 1)
	draw := func(name string, lo, hi int) length.Length {
		return length.Length(rapid.IntRange(lo, hi).Draw(t, name)) * mm
	}
	r.Tape = rapid.SampledFrom([]length.Length{r.Tape, 1}).Draw(t, "tape")
	wall := &r.Walls[0]
	wall.Width = draw("wide", 1000, 1500)
	end := survey.EndFound{Meets: true, Gap: draw("gap", 3, 6), Beyond: -1} // the last is for no sealant to fill
	if rapid.IntRange(0, 3).Draw(t, "ends out of sight") == 0 {
		end.Sight = survey.Low
	}
	wall.Left, wall.Right = end, end
	for _, end := range [...]*survey.EndFound{&wall.Left, &wall.Right} {
		if rapid.IntRange(0, 5).Draw(t, "leans") == 0 {
			end.Lean = []survey.Reading{{At: -600 * mm, Value: draw("lean", -8, 8)}, {At: 600 * mm, Value: draw("lean", -8, 8)}}
		}
	}
	wall.Base = wall.Base[:1]
	wall.Base[0].Readings = []survey.Reading{{At: 0, Value: -600 * mm}, {At: wall.Width, Value: -596 * mm}}
	high := draw("head", 0, 200)
	wall.Head = survey.HeadFound{Stops: survey.Span{From: high, To: high + draw("head range", 5, 60)}}
	wall.Openings = nil
	for k := range rapid.SampledFrom([]int{1, 1, 1, 2}).Draw(t, "niches") {
		left, more := draw("from an end", 1, 250), draw("range", 1, 600)
		if rapid.Bool().Draw(t, "from the right") {
			left = wall.Width - left - more - 120*mm
		}
		bottom := draw("bottom", -400, -100)
		wall.Openings = append(wall.Openings, survey.OpeningFound{Kind: survey.Niche, Name: string(rune('n' + k)), Left: survey.Span{From: left, To: left + more}, Width: survey.Span{From: 120 * mm, To: 120 * mm},
			Bottom: survey.Span{From: bottom, To: bottom + draw("bottom range", 1, 60)}, Height: survey.Span{From: 100 * mm, To: 100 * mm}})
	}
	return NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
}

// Law 2 for how alike the ends are, also where a tile hardly comes to one of them, or to no more than a joint: its piece is there,
// or it is cut, by a unit or two. Out of sight that counts after how alike they are.
func TestNoSetOutBeatsHowItsEndsDiffer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := alikeEnds(t)
		for range 4 {
			line := length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))
			sharper := func() int { return rapid.IntRange(0, 8).Draw(t, "sharper") }
			option := func(most int) int { return rapid.IntRange(0, min(20, most)).Draw(t, "option") }
			if s, bounds, ok := everyBound(w, line, w.hardlyReaching(t, line), sharper, option, &merit.Merit{}); ok {
				nothingBeats(t, w, s, bounds)
			}
		}
	})
}

// What is said of how the ends differ holds by itself, wherever the niches go, unless there is a piece at an end that is
// hardly there: such a set-out comes after it anyway.
func TestNothingMakesUpForHowEndsDiffer(t *testing.T) {
	differ := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		w := alikeEnds(t)
		for range 20 {
			h := &hunt{wall: w, line: length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))}
			x := &stretch{edge: w.hardlyReaching(t, h.line), marks: 1}
			x.merit = w.AtBest(h.line, x.edge, 0, 0)
			c, pick := w.choose(x, h), make([]int, len(w.axes))
			for len(c.axes) < len(w.axes) {
				c.closer(nil)
				c.list()
			}
			for axis := range pick {
				pick[axis] = rapid.IntRange(0, 9).Draw(t, "option")
				for c.option(axis, pick[axis]) == nil && pick[axis] > 0 {
					pick[axis]--
				}
			}
			placed, ok := c.placed(pick)
			if !ok {
				continue
			}
			s := Setting{Line: h.line, Edge: x.edge, Placed: placed}
			got := w.Count(s)
			if min(got.left.least, got.right.least) < 2*mm {
				continue
			}
			said := map[string]length.Length{"with the way bound": c.bound(pick, len(pick)).Mirror}
			for axis, n := range pick {
				if o := c.option(axis, n); w.axes[axis].opening < 0 {
					said["with the head placed"] = o.alone.Mirror
				}
			}
			closely, _ := c.closely(s, nil)
			said["with the marks placed"] = closely.Mirror
			for how, m := range said {
				differ[how] += boolean(m > 0)
				require.LessOrEqual(t, m, got.Merit.Mirror, "%s, %v at %v and %v", how, placed, h.line, x.edge)
			}
		}
	})
	require.Len(t, differ, 3)
	for how, n := range differ {
		require.Positive(t, n, how)
	}
}

// What is said with the head placed holds by itself wherever the niches then stand, near the ends, across tiles that these
// cut, or clear of all.
func TestNoNicheMakesUpForHowEndsDiffer(t *testing.T) {
	differ := 0
	rapid.Check(t, func(t *rapid.T) {
		w := alikeEnds(t)
		for range 10 {
			h := &hunt{wall: w, line: length.Length(rapid.IntRange(-400_000, 400_000).Draw(t, "line"))}
			x := &stretch{edge: w.hardlyReaching(t, h.line), marks: 1}
			x.merit = w.AtBest(h.line, x.edge, 0, 0)
			c := w.choose(x, h)
			c.ready()
			o := c.option(0, 0)
			if differ += boolean(o.alone.Mirror > 0); o.alone.Mirror == 0 {
				continue
			}
			for range 20 {
				p := w.outer
				p.Openings = slices.Clone(p.Openings)
				w.axes[0].set(&p, o)
				for n, found := range w.Found.Openings {
					if found.Kind != survey.Niche {
						continue
					}
					at := func(s survey.Span) length.Length {
						return length.Length(rapid.Int64Range(int64(s.From), int64(s.To)).Draw(t, found.Name))
					}
					left, bottom := at(found.Left), at(found.Bottom)
					p.Openings[n] = survey.Edges{Left: left, Right: left + found.Width.From, Bottom: bottom, Top: bottom + found.Height.From}
				}
				got := w.Count(Setting{Line: h.line, Edge: x.edge, Placed: p})
				if apart(p.Openings) && min(got.left.least, got.right.least) >= 2*mm {
					require.LessOrEqual(t, o.alone.Mirror, got.Merit.Mirror, "%v at %v and %v", p, h.line, x.edge)
				}
			}
		}
	})
	require.Positive(t, differ)
}

// A niche that comes to an end may take its narrowest tiles away, where the end bulges: then the ends are more alike than where it
// stands clear of all, and than what it cannot touch says by itself. Without mirrorCut too much is said of these walls.
func TestANicheAtAnEndMayMakeTheEndsMoreAlike(t *testing.T) {
	for _, c := range []struct {
		kind               survey.BondKind
		wide, bulge        length.Length
		line, edge, bottom length.Length
	}{
		{survey.Diagonal, 900*mm + 43_353, 7 * mm, -121_806, 774_760, -350 * mm},
		{survey.Hexagon, 900*mm + 36_829, 16 * mm, -163_063, 431_197, -390 * mm},
		{survey.Hexagon, 900*mm + 69_420, 17 * mm, 92_440, 704_893, -350 * mm},
	} {
		w := bulging(c.kind, c.wide, c.bulge)
		require.True(t, w.alike.apart)
		x := &stretch{edge: c.edge, marks: 1, merit: w.AtBest(c.line, c.edge, 0, 0)}
		choice := w.choose(x, &hunt{wall: w, line: c.line})
		choice.ready()
		head := choice.option(0, 0)
		p := w.outer
		w.axes[0].set(&p, head)
		niche, standing := w.axes[1], choice.lowered(head.lowers).copy()
		clear := standing.copy()
		clear.add(choice.beside(niche, &w.outer))
		p.Openings = []survey.Edges{{Left: 30 * mm, Right: 150 * mm, Bottom: c.bottom, Top: c.bottom + 150*mm}}
		got := w.Count(Setting{Line: c.line, Edge: c.edge, Placed: p}).Merit.Mirror
		require.LessOrEqual(t, head.alone.Mirror, got)
		require.Greater(t, min(clear.mirror(), standing.mirror()), got, "a wall that shows it")
	}
}

// bulging is a wall whose left end bulges to the right halfway up, with a free head and a niche that may stand at that end.
func bulging(kind survey.BondKind, wide, bulge length.Length) *Wall {
	r := small(kind, 50*mm, 50*mm)
	r.Tape = mm
	wall := &r.Walls[0]
	wall.Width = wide
	wall.Left = survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
	wall.Right = wall.Left
	wall.Left.Lean = []survey.Reading{{At: -600 * mm}, {At: -250 * mm, Value: bulge}, {At: 200 * mm}}
	wall.Base[0].Readings = []survey.Reading{{At: 0, Value: -600 * mm}, {At: wide, Value: -596 * mm}}
	wall.Head = survey.HeadFound{Stops: survey.Span{From: 200 * mm, To: 220 * mm}}
	wall.Openings = []survey.OpeningFound{{Kind: survey.Niche, Name: "n", Left: survey.Span{From: 30 * mm, To: 630 * mm}, Width: survey.Span{From: 120 * mm, To: 120 * mm},
		Bottom: survey.Span{From: -450 * mm, To: -150 * mm}, Height: survey.Span{From: 150 * mm, To: 150 * mm}}}
	return NewWall(&r, r.Walls[0], bond.For(r, r.Bond.Hand))
}

// hardlyReaching is a start with which, every other time, a tile at an end of the wall begins or ends within a few units of it, or
// of where what it leaves is no strip for the sealant any more.
func (w *Wall) hardlyReaching(t *rapid.T, line length.Length) length.Length {
	edge := length.Length(rapid.IntRange(-200_000, 900_000).Draw(t, "edge"))
	if rapid.Bool().Draw(t, "anywhere") {
		return edge
	}
	box := w.ground(w.outer).box
	at := rapid.SampledFrom([]length.Length{box.Left, box.Right}).Draw(t, "end")
	var starts []length.Length
	w.Pattern.Each(w.Pattern.Origin(line, edge), plane.Rect{Left: at - 1, Right: at + 1, Bottom: box.Bottom, Top: box.Top}, func(place int, from plane.Point) {
		tile := w.Pattern.Tiles[w.Pattern.Places[place].Tile].BoxAt(from)
		strip := w.room.Sealant - w.Found.Left.Gap
		starts = append(starts, edge+at-tile.Left, edge+at-tile.Right, edge+at-tile.Left-strip, edge+at-tile.Right+strip)
	})
	if len(starts) == 0 {
		return edge
	}
	return rapid.SampledFrom(starts).Draw(t, "begins") + length.Length(rapid.IntRange(-3, 3).Draw(t, "by"))
}

// Of some ends nothing is said: what stops, what is out of sight, and where a strip for the sealant may be a piece to set.
func TestEndsOfWhichNothingIsSaid(t *testing.T) {
	meets := survey.EndFound{Meets: true, Gap: 3 * mm, Beyond: -1}
	leaning, hidden := meets, meets
	leaning.Lean = []survey.Reading{{At: -600 * mm}, {At: 600 * mm, Value: 4 * mm}}
	hidden.Sight = survey.Low
	stopping := survey.EndFound{Stops: survey.Span{From: 611 * mm, To: 611 * mm}, Beyond: -1}
	for name, c := range map[string]struct {
		right   survey.EndFound
		sealant length.Length
		said    bool
	}{
		"alike":                       {meets, 6 * mm, true},
		"leaning":                     {leaning, 6 * mm, true},
		"leaning, a piece of sealant": {leaning, 16*mm - 4, false},
		"plumb, a piece of sealant":   {meets, 16 * mm, true},
		"out of sight":                {hidden, 6 * mm, false},
		"stopping":                    {stopping, 6 * mm, false},
	} {
		r := small(survey.Hexagon, 100*mm, 100*mm)
		r.Walls[0].Left, r.Walls[0].Right, r.Sealant = meets, c.right, c.sealant
		w := NewWall(&r, r.Walls[0], bond.For(r, survey.Free))
		require.Equal(t, c.said, w.alike.seen, name)
	}
}
