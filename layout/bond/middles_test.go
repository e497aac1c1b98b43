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

// Which patterns are alike on both sides of a plumb line is read off their pictures (common
// knowledge, no source): a herringbone is not, a hexagon is about its tiles and its flat joints.
func TestLinesOfSymmetry(t *testing.T) {
	const mm = length.Millimetre
	for _, c := range []struct {
		kind    survey.BondKind
		w, h    length.Length
		mirrors int // in one pitch of the joint lines
	}{
		{survey.Stack, 150 * mm, 75 * mm, 2},
		{survey.Hexagon, 100 * mm, 100 * mm, 2}, // in half a pitch of tiles, the middles of tiles and of joints
		{survey.Picket, 75 * mm, 200 * mm, 2},
		{survey.Diagonal, 100 * mm, 100 * mm, 2},
		{survey.Chevron, 180 * mm, 60 * mm, 2},
		{survey.Herringbone, 153 * mm, 75 * mm, 0},
		{survey.Pinwheel, 98 * mm, 98 * mm, 0},
	} {
		r := survey.Room{Joint: 3 * mm, Tile: survey.TileSize{Width: c.w, Height: c.h}, Bond: survey.BondRule{Kind: c.kind, Den: 1, Angle: 45}}
		if c.kind == survey.Pinwheel {
			r.Bond.Others = []survey.TileSize{{Width: 48 * mm, Height: 48 * mm}}
		}
		p := For(r, survey.Free)
		l := p.PlumbLines()
		found := len(l.mirrors)
		if c.mirrors > 0 {
			require.Positive(t, found, "%v", c.kind)
		} else {
			require.Zero(t, found, "%v", c.kind)
		}
	}
}

// About a line of symmetry every tile stands across from one of the same outline.
func TestTilesStandAcrossALineOfSymmetry(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Pattern(t, 20_000)
		p := For(room, survey.Right)
		l := p.PlumbLines()
		for _, twice := range l.mirrors {
			found++
			box := plane.Rect{Left: (twice - 500_000).Half(), Right: (twice + 500_000).Half(), Bottom: 0, Top: 300_000}
			all := p.Over(plane.Point{}, box)
			for _, s := range all {
				across := false
				for _, o := range all {
					b, c := plane.Region{s.Outline}.Bounds(), plane.Region{o.Outline}.Bounds()
					across = across || len(s.Outline) == len(o.Outline) && (twice-b.Left-c.Right).Abs() <= near && (twice-b.Right-c.Left).Abs() <= near &&
						(b.Bottom-c.Bottom).Abs() <= near && (b.Top-c.Top).Abs() <= near
				}
				b := plane.Region{s.Outline}.Bounds()
				if b.Left > box.Left+near && b.Right < box.Right-near { // its mirror image touches the box too
					require.True(t, across, "%v at %v about %v/2", room.Bond.Kind, b, twice)
				}
			}
		}
	})
	require.Positive(t, found)
}

// The middle that is found is one of a tile, and no tile of its place has a nearer one.
func TestCentreIsTheNearestTile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := For(chance.Pattern(t, 20_000), survey.Right)
		at := func(name string) length.Length { return length.Length(rapid.IntRange(-500_000, 500_000).Draw(t, name)) }
		origin, to := plane.Point{X: at("x"), Y: at("y")}, plane.Point{X: at("to x"), Y: at("to y")}
		place := rapid.IntRange(0, len(p.Places)-1).Draw(t, "place")
		got, is := p.Centre(place, origin, to), false
		far := func(c plane.Point) length.Area { return (c.X - to.X).Times(c.X-to.X) + (c.Y - to.Y).Times(c.Y-to.Y) }
		for _, s := range p.Over(origin, plane.Rect{Left: to.X.Half() - 400_000, Right: to.X.Half() + 400_000, Bottom: to.Y.Half() - 400_000, Top: to.Y.Half() + 400_000}) {
			if s.Place == place {
				b := p.Tiles[s.Tile].BoxAt(s.At)
				c := plane.Point{X: b.Left + b.Right, Y: b.Bottom + b.Top}
				is = is || c == got
				require.LessOrEqual(t, plane.Root(far(got)), plane.Root(far(c))+8)
			}
		}
		require.True(t, is)
	})
}
