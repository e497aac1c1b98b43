package survey

import (
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// boxed is a wall in 4 in tile with an opening that has an inside. Board 1/2, bed
// 3/16 and tile 5/16: lining and tile take 1 in a side, tile and bed 1/2.
func boxed(o Opening) Job {
	if o.Kind == "" {
		o.Kind = "niche"
	}
	o.Name = "n"
	return Job{Format: Format, Units: "in", Tile: Tile{Width: "4", Height: "4", Thickness: "5/16"}, Joint: Measure{Plain: "1/8"}, Bed: "3/16",
		Bond: Bond{Kind: "stack"}, Walls: []Wall{{Name: "back", Width: "60", Left: End{Meets: "corner"}, Right: End{Meets: "corner"},
			Base: []Segment{{Meets: "tub", Readings: []Drop{{At: "0", Drop: "40"}}}}, Head: Head{Stops: &Mark{At: "42"}}, Openings: []Opening{o}}}}
}

func markAt(l string) *Mark          { return &Mark{At: l} }
func tall(l string) *Measure         { return &Measure{Mark: markAt(l)} }
func inches(n float64) length.Length { return length.Length(n * float64(length.Inch)) }

func TestSizesOfAnOpeningAreToldApart(t *testing.T) {
	for name, c := range map[string]struct {
		inside      Inside
		left, width float64
		depth       float64
	}{
		"finished is what it was":                        {Inside{Depth: "3 1/2"}, 20, 14, 3.5},
		"lined: bed and tile come off each side":         {Inside{Depth: "3 1/2", Sizes: "lined"}, 20.5, 13, 3.5},
		"rough: the board as well":                       {Inside{Depth: "3 1/2", Sizes: "rough"}, 21, 12, 3.5},
		"flush: the tile of the wall ends at the lining": {Inside{Depth: "3 1/2", Sizes: "rough", Front: "flush"}, 20.5, 13, 3.5},
		"flush and finished: the hole is larger":         {Inside{Depth: "3 1/2", Front: "flush"}, 19.5, 15, 3.5},
		"a board of its own at the left":                 {Inside{Depth: "3 1/2", Sizes: "rough", Left: InsideFace{Lining: "1/4"}}, 20.75, 12.25, 3.5},
		"a cased side keeps its board":                   {Inside{Depth: "3 1/2", Sizes: "rough", Left: InsideFace{Cased: true}}, 20.5, 12.5, 3.5},
		"a thinner tile on the back deepens it":          {Inside{Depth: "3 1/2", DepthIs: "rough", Back: InsideFace{Tile: &Tile{Width: "1", Height: "1", Thickness: "3/16"}}}, 20, 14, 3.625},
	} {
		t.Run(name, func(t *testing.T) {
			room, faults := boxed(Opening{Left: markAt("20"), Width: markAt("14"), Bottom: markAt("0"), Height: tall("14"), Inside: &c.inside}).Resolve()
			require.Empty(t, faults)
			o := room.Walls[0].Openings[0]
			assert.Equal(t, Span{inches(c.left), inches(c.left)}, o.Left)
			assert.Equal(t, Span{inches(c.width), inches(c.width)}, o.Width)
			assert.Equal(t, inches(c.depth), o.Inside.Depth)
		})
	}
}

// Worked by hand, common practice, no source: 14 1/2 less 1 in a side is 12 1/2,
// which is three tiles of 4 and four joints of 1/8.
func TestBetweenItsStudsANicheIsFree(t *testing.T) {
	room, faults := boxed(Opening{Bottom: markAt("0"), Height: tall("12"), Inside: &Inside{Studs: &Studs{"22", "36 1/2"}, Depth: "3 1/2"}}).Resolve()
	require.Empty(t, faults)
	o := room.Walls[0].Openings[0]
	assert.Equal(t, inches(23), o.Left.From)
	assert.Equal(t, inches(12.5), o.Width.From)
	assert.True(t, o.Width.Free(), "it is chosen, though only one width goes from joint to joint")
	assert.Equal(t, inches(35.5), o.Right.To)

	room, faults = boxed(Opening{Left: &Mark{From: "10", To: "40"}, Width: markAt("8"), Bottom: markAt("0"), Height: tall("12"),
		Inside: &Inside{Studs: &Studs{"22", "36 1/2"}, Depth: "3 1/2"}}).Resolve()
	require.Empty(t, faults)
	o = room.Walls[0].Openings[0]
	assert.Equal(t, Span{inches(23), inches(27.5)}, o.Left, "a range that is typed is kept within the bay")
}

func TestABuiltNicheMayMoveByItsTolerance(t *testing.T) {
	room, faults := boxed(Opening{Left: markAt("20"), Width: markAt("12"), Bottom: markAt("0"), Height: tall("12"), Inside: &Inside{Depth: "3", Tolerance: "1/4"}}).Resolve()
	require.Empty(t, faults)
	o := room.Walls[0].Openings[0]
	assert.Equal(t, Span{inches(19.75), inches(20.25)}, o.Left)
	assert.Equal(t, Span{inches(11.5), inches(12.5)}, o.Width)
	assert.Equal(t, Span{inches(31.75), inches(32.25)}, o.Right)
	assert.Equal(t, Span{inches(11.75), inches(12.25)}, o.Top)
}

func TestFaultsOfAnInside(t *testing.T) {
	whole := func(in Inside) Opening {
		return Opening{Left: markAt("20"), Width: markAt("14"), Bottom: markAt("0"), Height: tall("14"), Inside: &in}
	}
	window := whole(Inside{Depth: "3", Back: InsideFace{Cased: true}})
	window.Kind = "window"
	narrow := whole(Inside{Depth: "3", Sizes: "rough"})
	narrow.Width = markAt("1 1/2")
	for path, o := range map[string]Opening{
		"depth":          whole(Inside{}),
		"sizes":          whole(Inside{Depth: "3", Sizes: "clear"}),
		"depthIs":        whole(Inside{Depth: "3", DepthIs: "clear"}),
		"front":          whole(Inside{Depth: "3", Front: "round"}),
		"behind":         whole(Inside{Depth: "3", Behind: "garden"}),
		"fall":           whole(Inside{Depth: "3", Fall: "5"}),
		"gap":            whole(Inside{Depth: "3", Gap: "1/2"}),
		"studs.right":    whole(Inside{Depth: "3", Studs: &Studs{"36", "22"}}),
		"sill.slab":      whole(Inside{Depth: "3", Sill: InsideFace{Slab: "3/4", Tile: &Tile{Width: "1", Height: "1"}}}),
		"top.cased":      whole(Inside{Depth: "3", Top: InsideFace{Cased: true, Slab: "3/4"}}),
		"left.joint":     whole(Inside{Depth: "3", Left: InsideFace{Joint: "1/16"}}),
		"left.depth":     whole(Inside{Depth: "3", Left: InsideFace{Depth: "4"}}),
		"sill.lining":    whole(Inside{Depth: "3", Sill: InsideFace{Lining: "thick"}}),
		"back.bond.kind": whole(Inside{Depth: "3", Back: InsideFace{Bond: &Bond{Kind: "wild"}}}),
		"back":           window,
	} {
		_, faults := boxed(o).Resolve()
		require.Len(t, faults, 1, path)
		assert.Equal(t, "walls[0].openings[0].inside."+path, faults[0].Path)
	}
	for path, o := range map[string]Opening{
		"inside.depth": whole(Inside{Depth: "1/2"}), "width": narrow,
		"inside.studs.right": whole(Inside{Depth: "3", Studs: &Studs{"22", "24"}}),
		"left":               {Width: markAt("14"), Bottom: markAt("0"), Height: tall("14"), Inside: &Inside{Depth: "3", Studs: &Studs{"22", "36"}}},
	} {
		_, faults := boxed(o).Resolve()
		require.Len(t, faults, 1, path)
		assert.Equal(t, "walls[0].openings[0]."+path, faults[0].Path)
	}
	// In a wall of a pattern that goes on at the back, tile of its own there closes too.
	for kind, tile := range map[string]Tile{"herringbone": {Width: "2", Height: "2"}, "hexagon": {Width: "2", Height: "1"}, "diagonal": {Width: "2", Height: "1"}} {
		job := boxed(whole(Inside{Depth: "3", Back: InsideFace{Tile: &tile, Joint: "1/8"}}))
		job.Tile, job.Bond = Tile{Width: "4", Height: "4"}, Bond{Kind: kind}
		if kind == "herringbone" {
			job.Tile.Height = "2"
		}
		_, faults := job.Resolve()
		if kind == "diagonal" {
			require.Empty(t, faults)
			continue
		}
		require.Len(t, faults, 1, kind)
		assert.Equal(t, "walls[0].openings[0].inside.back.bond.kind", faults[0].Path)
		assert.Contains(t, faults[0].Want, "a bond of its own, such as stack; as on the wall only ")
	}
	_, faults := boxed(Opening{Kind: "pipe", At: "20", Height: &Measure{Plain: "0"}, Diameter: "2", Inside: &Inside{Depth: "3"}}).Resolve()
	require.Len(t, faults, 1)
	assert.Equal(t, "walls[0].openings[0].inside", faults[0].Path)
}
