package niche_test

import (
	"context"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/niche"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// crowned is a room of one wall with a top of any kind, depth and edge on it, and where
// it is set out.
func crowned(t *rapid.T) (survey.Room, plan.Setout, plan.Wall) {
	room, s, w := drawn(t)
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm
	}
	top := &survey.TopFound{Kind: rapid.SampledFrom([]survey.Kind{survey.SeatTop, survey.LedgeTop, survey.CurbTop, survey.CapTop}).Draw(t, "kind"),
		Left: n("deep left", 120, 500), Fall: n("top falls", 0, 60), How: rapid.SampledFrom([]survey.Kind{survey.Lap, survey.Mitre, survey.Profile, survey.Bullnose}).Draw(t, "how")}
	top.Right = top.Left
	if rapid.Bool().Draw(t, "slant") {
		top.Right = n("deep right", 120, 500)
	}
	top.Laps = (top.How == survey.Lap || top.How == survey.Bullnose) && rapid.Bool().Draw(t, "laps")
	switch {
	case top.How == survey.Profile:
		top.Strip = &survey.TrimFound{Name: "bar", Kind: survey.Profile, Width: n("bar", 2, 6), Length: 2500 * mm}
	case top.How == survey.Bullnose && rapid.Bool().Draw(t, "in pieces"):
		top.Strip = &survey.TrimFound{Name: "nose", Kind: survey.Bullnose, Width: n("nose", 20, 50), Length: n("long", 100, 200), Mitred: rapid.Bool().Draw(t, "mitred")}
	}
	if rapid.Bool().Draw(t, "own gap") {
		gap := n("top gap", 1, 6)
		top.Gap = &gap
	}
	top.Face = survey.FaceFound{Tiled: true, Cover: room.Bed + room.Tile.Thickness}
	if rapid.Bool().Draw(t, "own tile") {
		top.Face.Tile = &survey.TileSize{Width: n("top wide", 15, 100), Height: n("top high", 15, 100), Thickness: room.Tile.Thickness}
		top.Face.Joint = n("top joint", 1, 3)
	}
	end := func(name string, at length.Length) survey.EndFound {
		switch rapid.IntRange(0, 3).Draw(t, name) {
		case 0:
			return survey.EndFound{Meets: true, Against: true, Beyond: -1}
		case 1:
			return survey.EndFound{Meets: true, Beyond: -1, Lean: []survey.Reading{{At: -300 * mm, Value: 0}, {At: 900 * mm, Value: 12 * mm}}}
		case 2:
			return survey.EndFound{Outside: &survey.OutsideFound{Next: -1, How: survey.Lap, Angle: 90, Past: room.Bed + room.Tile.Thickness}, Beyond: -1}
		}
		return survey.EndFound{Stops: survey.Span{From: at, To: at}, Beyond: -1}
	}
	w.Found = survey.WallFound{Name: "bench", Letter: "B", Width: n("wall", 400, 1800)}
	w.Found.Left, w.Found.Right = end("left end", 0), end("right end", w.Found.Width)
	w.Found.Head = survey.HeadFound{Top: top}
	w.Start.Placed = survey.Placed{Left: 0, Right: w.Found.Width, Head: n("head", 100, 600)}
	if rapid.IntRange(0, 3).Draw(t, "in a corner") == 0 {
		cornered(t, &w.Found)
	}
	return room, s, w
}

// cornered puts the top of a wall into the corner of two others, where that leaves
// something of it.
func cornered(t *rapid.T, w *survey.WallFound) {
	top := w.Head.Top
	if top.Open() {
		return
	}
	long := func(name string) length.Length {
		return w.Width * length.Length(rapid.IntRange(60, 95).Draw(t, name)) / 100
	}
	top.Left, top.Right = long("along left"), long("along right")
	room := survey.Room{Joint: 3 * mm, Tile: survey.TileSize{Thickness: 12 * mm}}
	c := survey.CornerTopOf(w.Width, top.Left, top.Right, 20*mm)
	if c == nil || c.Wide < 300*mm || c.Peak.Y < 150*mm || c.Inset(top.Behind(room), 6*mm) == nil {
		return
	}
	top.Corner = c
	w.Left, w.Right = survey.EndFound{Meets: true, Against: true, Beyond: -1}, survey.EndFound{Meets: true, Against: true, Beyond: -1}
}

// Laws 1 and 3 of tops, by a general geometry library (simplefeatures): pieces, joints,
// trim with its joints, what is sealed away and what stands round the tile are as large as
// the top together, and the front row has its factory edge at the front.
func TestPiecesTrimAndJointsMakeUpATop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, s, w := crowned(t)
		walls := []plan.Wall{w}
		require.NoError(t, niche.Lay(context.Background(), room, s, walls))
		top := walls[0].Top
		f := top.Face
		face, laid := outside(t, f.Outline), outside(t, f.Shape.Region)
		slack := float64(len(f.Pieces)+4) * float64(f.Outline.Bounds().Width()+f.Outline.Bounds().Height())
		within, err := geom.Difference(laid, face)
		require.NoError(t, err)
		require.InDelta(t, 0, within.Area(), slack, "tile lies within the finished edges")
		pieces, tiles := 0.0, 0.0
		for _, p := range f.Pieces {
			pieces += outside(t, p.Face).Area()
		}
		for _, tile := range tilesOf(room, s, f) {
			part, err := geom.Intersection(outside(t, plane.Region{tile.Ring(0)}), laid)
			require.NoError(t, err)
			tiles += part.Area()
			if part.Area() > 0 && !stands(f, tile) {
				box := part.Envelope()
				require.LessOrEqual(t, float64(min(box.Width(), box.Height())), float64(room.Sealant)+1, "%v is left bare", tile)
				pieces += part.Area()
			}
		}
		require.InDelta(t, tiles, pieces, slack)
		for _, p := range f.Pieces {
			if box := p.Face.Bounds(); box.Bottom == f.Shape.Region.Bounds().Bottom {
				require.Equal(t, p.Tile.Bottom+top.Less, box.Bottom, "%s has its factory edge at the front, or is cut as all are", p.ID)
				require.True(t, top.Less == 0 || top.Found.HidesCuts(), "a cut edge does not show")
			}
		}
		for _, p := range f.Trim {
			strip := outside(t, p.Face)
			require.Greater(t, strip.Area(), 0.0, p.ID)
			out, err := geom.Difference(strip, face)
			require.NoError(t, err)
			require.InDelta(t, 0, out.Area(), slack, "%s lies on the top", p.ID)
			on, err := geom.Intersection(strip, laid)
			require.NoError(t, err)
			require.InDelta(t, 0, on.Area(), slack, "%s keeps off the tile", p.ID)
			for _, q := range f.Trim {
				if both, err := geom.Intersection(strip, outside(t, q.Face)); q.ID != p.ID {
					require.NoError(t, err)
					require.InDelta(t, 0, both.Area(), slack, "%s and %s", p.ID, q.ID)
				}
			}
		}
		if top.Found.Laps && top.Found.Strip != nil {
			require.NotEmpty(t, f.Trim, "bullnose along the front")
		}
	})
}

// Law 5: the first row of a top in the wall's bond is the next course, with the joints
// where that course would have them.
func TestATopGoesOnWithTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, s, w := crowned(t)
		w.Found.Head.Top.Face.Tile, room.Bond.Plumb = nil, false
		walls := []plan.Wall{w}
		require.NoError(t, niche.Lay(context.Background(), room, s, walls))
		f := walls[0].Top.Face
		high, wide := room.Tile.Height+room.Joint, room.Tile.Width+room.Joint
		next := int(length.DivFloor(w.Start.Placed.Head-1-s.Line, high)) + 1
		from := func(next int) (off int) { // how many pieces do not stand as the courses from one on do
			for _, p := range f.Pieces {
				k := int(length.DivFloor(p.Tile.Bottom+walls[0].Top.Less-f.Shape.Region.Bounds().Bottom, high))
				course := w.Start.Edge + room.Bond.Shift(next+k, s.Hand, wide)
				if length.Mod(p.Tile.Left+f.Origin.X-course, wide) != 0 {
					off++
				}
			}
			return off
		}
		off := from(next)
		for skip := 1; off > 0 && skip < int(room.Bond.Den); skip++ {
			off = from(next + skip)
		}
		require.Zero(t, off, "the rows are courses of the bond in their order")
	})
}

// Law 4.
func TestAHeadWithoutATopStaysAsItWas(t *testing.T) {
	walls := []plan.Wall{{Found: survey.WallFound{Head: survey.HeadFound{}}}}
	require.NoError(t, niche.Lay(context.Background(), survey.Room{}, plan.Setout{}, walls))
	assert.Nil(t, walls[0].Top)
}
