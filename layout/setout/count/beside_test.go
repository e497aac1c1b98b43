package count

import (
	"fmt"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// optionAt is what an option promises whose edges stand at two places, in millimetres.
func optionAt(t *testing.T, options []Option, low, high length.Length) merit.Merit {
	k := slices.IndexFunc(options, func(o Option) bool { return o.Pair == Pair{low * mm, high * mm} })
	require.GreaterOrEqual(t, k, 0, "%d to %d is no option", low, high)
	return options[k].Merit
}

// By hand: tile of 300 by 100 with joints of 2 from 0, a niche of 304 by 206 that may begin
// between 850 and 950 and stand between 400 and 460 high. Tiles end at 904 and begin at 1208.
// Wherever it stands, two courses at least lie beside it.
func TestWhatIsSureBesideAFreeNiche(t *testing.T) {
	w := drawWall("2000x1200 300x100+2 niche=850..950,304,400..460,206")
	for name, c := range map[string]struct {
		low, high           length.Length
		openings            int
		small, runs, thirds int
		work                int
	}{
		"on the joint lines":                     {904, 1208, 0, 0, 0, 0, 0},
		"246 on the left of it, 52 on the right": {850, 1154, 1, 0, 1, 1, 4},
		"44 and 150":                             {950, 1254, 1, 2, 1, 1, 4}, // 950 - 906, and 1508 - 1254 = 254 of 300
	} {
		m := optionAt(t, w.Places.Level(0, 0), c.low, c.high)
		require.Equal(t, []int{c.openings, c.small, c.runs, c.thirds, c.work}, []int{m.Openings, m.Slivers + m.Unworkable, len(m.Runs), m.Thirds, m.Work}, name)
	}
	for name, c := range map[string]struct {
		low, high      length.Length
		openings, runs int
	}{
		"on the joint lines":         {406, 612, 0, 0},
		"94 under it and 4 over it":  {400, 606, 1, 1}, // courses 306–406 and 510–610
		"52 under it and 46 over it": {460, 666, 1, 1},
	} {
		m := optionAt(t, w.Places.Upright(0, 0), c.low, c.high)
		require.Equal(t, []int{c.openings, c.runs}, []int{m.Openings, len(m.Runs)}, name)
		require.Zero(t, m.Work, "%s: one tile at most lies along an edge of 304, and may stand round its corner", name)
	}
}

// Of a niche so long that whole tiles lie along its level edges these are counted too, and a
// rip costs two.
func TestWhatIsSureOverALongNiche(t *testing.T) {
	w := drawWall("2000x1200 100x100+2 niche=500,410,400..460,206")
	m := optionAt(t, w.Places.Upright(0, 0), 460, 666) // 52 of 408–508 under it, 46 of 612–712 over it
	// (410 - 100) / 102 = 3 tiles lie along it wherever it stands.
	require.Equal(t, 2*3*1, m.Work, "of a square tile a cut counts as across")
	require.Equal(t, []piece.Share{{Num: int64(46 * mm), Den: int64(100 * mm)}}, m.Runs)
	lying := drawWall("3000x1200 300x100+2 niche=500,910,400..460,206")
	m = optionAt(t, lying.Places.Upright(0, 0), 460, 666) // a rip of two tiles on either side
	require.Equal(t, 2*2*2, m.Work)
	require.Equal(t, []piece.Share{{Num: int64(46 * mm), Den: int64(100 * mm)}}, m.Runs)
}

// What comes near the tile beside a niche takes away what is sure: a pipe, a window, another
// free niche, the end of the wall.
func TestWhatComesNearANicheIsNotSure(t *testing.T) {
	const niche = "2000x1200 300x100+2 niche=850..950,304,400..460,206"
	for name, c := range map[string]struct {
		sketch string
		work   int
	}{
		"nothing":                        {niche, 4},
		"a pipe in the tile on the left": {niche + " pipe=700,550,30", 2},
		"a pipe two tiles away":          {niche + " pipe=500,550,30", 4},
		"a window on the right":          {niche + " window=1190,200,400,206", 2},
		"a niche that may come there":    {niche + " niche=1300..1400,200,400..460,206", 4},
		"one that may come nearer":       {niche + " niche=1100..1400,200,400..460,206", 2},
		"a window over it":               {niche + " window=850,304,700,100", 2}, // 666 + 102 = 768
		"a window farther over it":       {niche + " window=850,304,780,100", 4},
	} {
		w := drawWall(c.sketch)
		m := optionAt(t, w.Places.Level(0, 0), 850, 1154) // 246 of 604–904, 52 of 906–1206
		require.Equal(t, c.work, m.Work, name)
	}
}

// A tile round the corner of a niche reaches past its edge, and what cuts it there takes away what is sure.
func TestATileRoundACornerReachesPastTheEdge(t *testing.T) {
	for high, runs := range map[int]int{600: 0, 611: 1} {
		w := drawWall(fmt.Sprintf("2000x%d 300x100+2 niche=500,400,540..560,206", high))
		require.Len(t, optionAt(t, w.Places.Upright(0, 0), 540, 746).Runs, runs, "30 of 510 to 610 under a head at %d", high)
	}
}

// Merit.md, term 15: what an option gives of the distance from the place wished for.
func TestOptionsKnowThePlaceWishedFor(t *testing.T) {
	room, found := sketch("2000x1200 300x100+2 niche=850..950,304,400..460,206")
	x, y := 1000*mm, 530*mm
	found.Openings[0].Near = survey.Near{X: &x, Y: &y}
	w := NewWall(&room, found, survey.Left)
	require.Equal(t, 56*mm, optionAt(t, w.Places.Level(0, 0), 904, 1208).Near, "1056 from 1000")
	require.Equal(t, 21*mm, optionAt(t, w.Places.Upright(0, 0), 406, 612).Near, "509 from 530")
	require.Zero(t, optionAt(t, w.Places.Level(0, 0), 850, 1154).Near-2*mm, "1002 from 1000")
	require.Zero(t, optionAt(t, w.Places.Upright(0, 0), 427, 633).Near, "where it is wished, it is an option")
	plain := drawWall("2000x1200 300x100+2 niche=850..950,304,400..460,206")
	require.Equal(t, 54*mm, optionAt(t, plain.Places.Level(0, 0), 904, 1208).Near, "else as near the middle of the field as its range lets it: 1002")
	require.Zero(t, optionAt(t, plain.Places.Upright(0, 0), 406, 612).Near, "and anywhere in height")
}

// A free opening is alone where it stands farther from all else than a tile and what sealant, joint and the tile of the
// next wall reach, on each of its sides, to the unit: tile of 300 by 100 with joints of 2.
func TestWhenAnOpeningStandsAlone(t *testing.T) {
	w := drawWall("4000x2400 300x100+2 niche=900..2800,200..900,500..1500,200..600 window=1800,300,1100,300")
	window := plane.Rect{Left: 1800 * mm, Right: 2100 * mm, Bottom: 1100 * mm, Top: 1400 * mm}
	along, across := 300*mm+w.facts.margin(), 100*mm+w.facts.margin()
	for name, box := range map[string]func(far length.Length) plane.Rect{
		"on the left": func(far length.Length) plane.Rect {
			return plane.Rect{Left: window.Left - along - far - 300*mm, Right: window.Left - along - far, Bottom: 1150 * mm, Top: 1350 * mm}
		},
		"on the right": func(far length.Length) plane.Rect {
			return plane.Rect{Left: window.Right + along + far, Right: window.Right + along + far + 300*mm, Bottom: 1150 * mm, Top: 1350 * mm}
		},
		"under it": func(far length.Length) plane.Rect {
			return plane.Rect{Left: 1800 * mm, Right: 2000 * mm, Bottom: window.Bottom - across - far - 300*mm, Top: window.Bottom - across - far}
		},
		"over it": func(far length.Length) plane.Rect {
			return plane.Rect{Left: 1800 * mm, Right: 2000 * mm, Bottom: window.Top + across + far, Top: window.Top + across + far + 300*mm}
		},
		"at a corner": func(far length.Length) plane.Rect {
			return plane.Rect{Left: window.Right + along + far, Right: 2800 * mm, Bottom: window.Top + across, Top: 1900 * mm}
		},
	} {
		for far, clear := range []bool{false, true} {
			b := box(length.Length(far))
			_, is := w.Alone(0, Pair{b.Left, b.Right}, Pair{b.Bottom, b.Top}, 0, 0)
			require.Equal(t, clear, is, "%s, %d", name, far)
		}
	}
}
