package trim_test

import (
	"os"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/steady"
	"coursewright/layout/survey"
	"coursewright/layout/trim"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestMain keeps the random walls the same from run to run.
func TestMain(m *testing.M) { os.Exit(steady.Run(m, "100")) }

const (
	in = length.Inch
	mm = length.Millimetre
)

// wall is a wall of 60 in over a level floor, to be trimmed.
func wall(left, right, head *survey.TrimFound) survey.WallFound {
	w := survey.WallFound{Letter: "A", Width: 60 * in}
	w.Left = survey.EndFound{Meets: true, Gap: in / 8, Beyond: -1}
	w.Right = survey.EndFound{Meets: true, Gap: in / 8, Beyond: -1}
	if left != nil {
		w.Left = survey.EndFound{Stops: survey.Span{From: 10 * in, To: 10 * in}, Trim: left, Beyond: -1}
	}
	if right != nil {
		w.Right = survey.EndFound{Stops: survey.Span{From: 50 * in, To: 50 * in}, Trim: right, Beyond: -1}
	}
	w.Head = survey.HeadFound{Stops: survey.Span{From: 84 * in, To: 84 * in}, Trim: head}
	w.Base = []survey.SegmentFound{{Meets: survey.Floor, Readings: []survey.Reading{{At: 0}, {At: 60 * in}}}}
	return w
}

func placed(w survey.WallFound) survey.Placed {
	return survey.Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.From, Head: w.Head.Stops.From}
}

func bullnose(wide, long length.Length) *survey.TrimFound {
	return &survey.TrimFound{Name: "b", Kind: survey.Bullnose, Width: wide, Length: long}
}

var running = trim.Tile{Units: length.Imperial, Width: 8 * in, Height: 4 * in, Joint: in / 8, Level: true}

// A leg 84 in high of pieces 6 in long with joints of 1/8 in takes
// ceil((84 + 1/8) / 6 1/8) = 14 pieces, 13 of them whole, and 84 - 13 × 6 1/8 =
// 4 3/8 in is left for the last. The sum is plain arithmetic; 2×6 in bullnose is a
// size in dealers' price books.
func TestALegOf84In(t *testing.T) {
	w := wall(nil, bullnose(2*in, 6*in), nil)
	pieces := trim.Of(w, placed(w), running)
	require.Len(t, pieces, 14)
	whole := 0
	for _, p := range pieces {
		if p.Whole {
			whole++
		}
	}
	assert.Equal(t, 13, whole)
	assert.Equal(t, "T-A-01", pieces[0].ID)
	assert.Equal(t, 4*in+3*in/8, pieces[0].Long, "cut at the floor, whole at the top")
	assert.Equal(t, plane.Rect{Left: 50*in + in/8, Right: 52*in + in/8, Top: 4*in + 3*in/8}, pieces[0].Face.Bounds())
	assert.Equal(t, 84*in, pieces[13].Face.Bounds().Top)
}

// An edge of 84 in takes one bar of 8 ft, of which 12 in are left.
func TestABar(t *testing.T) {
	bar := &survey.TrimFound{Kind: survey.Profile, Width: in / 8, Length: 96 * in, Mitred: true}
	w := wall(nil, bar, nil)
	pieces := trim.Of(w, placed(w), running)
	require.Len(t, pieces, 1)
	assert.Equal(t, 84*in, pieces[0].Long)
	assert.Equal(t, 12*in, bar.Length-pieces[0].Long)
}

// A leftover under a quarter of a piece is shared by both ends: of 13 in in pieces
// of 6 in without joints neither 6 + 6 + 1 but 3 1/2 + 6 + 3 1/2.
func TestAShortRestIsShared(t *testing.T) {
	w := wall(nil, bullnose(2*in, 6*in), nil)
	w.Head.Stops = survey.Span{From: 13 * in, To: 13 * in}
	tile := running
	tile.Joint = 0
	var long []length.Length
	for _, p := range trim.Of(w, placed(w), tile) {
		long = append(long, p.Long)
	}
	assert.Equal(t, []length.Length{7 * in / 2, 6 * in, 7 * in / 2}, long)
}

// Pieces as long as the tile is high have their joints where the courses have
// theirs: course line at 1 in, pitch 4 1/8 in.
func TestPiecesFollowTheCourses(t *testing.T) {
	w := wall(bullnose(2*in, 4*in), nil, nil)
	tile := running
	tile.Line = in
	pieces := trim.Of(w, placed(w), tile)
	for i, p := range pieces {
		box := p.Face.Bounds()
		if i > 0 {
			assert.Zero(t, length.Mod(box.Bottom-in, 4*in+in/8), "piece %s begins at %s", p.ID, box.Bottom.Fine(length.Imperial))
		}
	}
	assert.Equal(t, 7*in/8, pieces[0].Long, "what the course leaves under the line")
}

// Pieces of two tiles and the joint between them follow every second course, so
// that the least cut is as large as can be.
func TestPiecesOfTwoCourses(t *testing.T) {
	w := wall(bullnose(2*in, 8*in+in/8), nil, nil)
	tile := running
	tile.Line = 4*in + in/8
	pieces := trim.Of(w, placed(w), tile)
	assert.Equal(t, 4*in, pieces[0].Long, "whole from the floor would leave 84 - 10 × 8 1/4 = 1 1/2 in at the head")
	assert.Equal(t, 5*in+5*in/8, pieces[len(pieces)-1].Long, "84 - 4 1/8 - 9 × 8 1/4")
}

// Corners: a corner piece as wide as the trim, or a mitre of 45°.
func TestCorners(t *testing.T) {
	w := wall(bullnose(2*in, 6*in), nil, bullnose(2*in, 6*in))
	pieces := trim.Of(w, placed(w), running)
	corners := 0
	for _, p := range pieces {
		if p.Corner {
			corners++
			assert.Equal(t, plane.Rect{Left: 10*in - in/8 - 2*in, Bottom: 84*in + in/8, Right: 10*in - in/8, Top: 86*in + in/8}, p.Face.Bounds())
		}
	}
	assert.Equal(t, 1, corners, "one where bullnose meets bullnose at an outer corner, none in the room's corner")

	bar := &survey.TrimFound{Kind: survey.Profile, Width: in / 2, Length: 96 * in, Mitred: true}
	w = wall(bar, nil, bar)
	pieces = trim.Of(w, placed(w), running)
	require.Len(t, pieces, 2)
	for _, p := range pieces {
		assert.Equal(t, 1, p.Mitres, p.ID)
		assert.Equal(t, in/2, p.Outer-p.Inner, "a mitre of 45° is as long as the bar is wide: %s", p.ID)
	}

	w = wall(bar, nil, bullnose(2*in, 6*in))
	for _, p := range trim.Of(w, placed(w), running) {
		assert.False(t, p.Corner || p.Mitres > 0, "unlike trim: the head's runs over the end's")
	}
}

// Round the back of a cap, where trim goes along the base as up the ends, corners are made as
// at the head. Found on the cap of a knee wall, whose back corner showed a cut end.
func TestCornersAtTheFoot(t *testing.T) {
	cap := func(of *survey.TrimFound) survey.WallFound {
		w := wall(nil, of, of)
		w.Base[0].Cove, w.Base[0].Gap, w.Base[0].Rise = of, of.Width+in/8, of.Width+in/8
		return w
	}
	nose := bullnose(2*in, 6*in)
	w := cap(nose)
	var corners []plane.Rect
	for _, p := range trim.Of(w, placed(w), running) {
		if p.Corner {
			corners = append(corners, p.Face.Bounds())
		} else if p.Edge == survey.RightEnd {
			assert.GreaterOrEqual(t, p.Face.Bounds().Bottom, 2*in+in/8, "it stands a joint off the corner piece")
		}
	}
	out := plane.Rect{Left: 50*in + in/8, Right: 52*in + in/8, Bottom: 84*in + in/8, Top: 86*in + in/8}
	assert.Equal(t, []plane.Rect{out, {Left: out.Left, Right: out.Right, Bottom: 0, Top: 2 * in}}, corners)

	w = cap(&survey.TrimFound{Kind: survey.Profile, Width: in / 2, Length: 96 * in, Mitred: true})
	pieces := trim.Of(w, placed(w), running)
	require.Len(t, pieces, 3)
	for _, p := range pieces {
		ends := 1
		if p.Edge == survey.RightEnd {
			ends = 2
		}
		assert.Equal(t, ends, p.Mitres, p.ID)
		assert.Equal(t, length.Length(ends)*in/2, p.Outer-p.Inner, "a mitre of 45° is as long as the bar is wide: %s", p.ID)
	}

	w = cap(nose)
	w.Base[0].Readings[1].Value = -in
	for _, p := range trim.Of(w, placed(w), running) {
		assert.False(t, p.Corner && p.Edge == survey.BaseSegment, "a base that slants meets the end at no right angle")
	}
}

// Laws 1 to 4 on random walls, with a raked floor and a leaning neighbour.
func TestPiecesMakeUpTheStrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high int) length.Length {
			return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm / 2
		}
		kinds := []survey.Kind{survey.Bullnose, survey.QuarterRound, survey.Pencil, survey.Profile}
		of := func(name string) *survey.TrimFound {
			if !rapid.Bool().Draw(t, name) {
				return nil
			}
			return &survey.TrimFound{Kind: rapid.SampledFrom(kinds).Draw(t, name+" kind"), Mitred: rapid.Bool().Draw(t, name+" mitred"),
				Width: draw(name+" width", 2, 160), Length: draw(name+" length", 60, 4000)}
		}
		one := of("all")
		w := wall(one, of("right"), one)
		if rapid.Bool().Draw(t, "unlike") {
			w = wall(of("left"), of("right"), of("head"))
		}
		if rapid.Bool().Draw(t, "raked") {
			w.Base[0].Readings[1].Value = draw("rake", -60, 60)
		}
		tile := running
		tile.Joint, tile.Line, tile.Plumb = draw("joint", 0, 12), draw("line", -200, 200), rapid.Bool().Draw(t, "stack")
		at := placed(w)
		pieces := trim.Of(w, at, tile)
		require.Equal(t, pieces, trim.Of(w, at, tile))

		makesUp(t, w, tile, pieces)
		region := w.Shape(length.Imperial, at).Region
		grown := region.Bounds()
		for i, p := range pieces {
			require.LessOrEqual(t, p.Long, max(p.Trim.Length, p.Trim.Width), p.ID)
			box := p.Face.Bounds()
			require.True(t, box.Right <= grown.Left-tile.Joint || box.Left >= grown.Right+tile.Joint || box.Bottom >= grown.Top+tile.Joint,
				"%s keeps a joint from the tile", p.ID)
			for _, q := range pieces[i+1:] {
				require.Equal(t, p.Face.Area2(), p.Face.Less(q.Face[0], 1).Area2(), "%s and %s lie apart", p.ID, q.ID)
			}
			if p.Mitres > 0 || p.Corner || p.Edge != survey.RightEnd {
				continue
			}
			if i+1 < len(pieces) && pieces[i+1].Mitres == 0 {
				gap := tile.Joint
				if p.Trim.Bar() {
					gap = 0
				}
				require.Equal(t, gap, pieces[i+1].Face.Bounds().Bottom-box.Top, "a joint between %s and the next", p.ID)
			}
		}
	})
}

// makesUp wants the pieces and joints of the right end over a level floor to make
// up its 84 in, less a joint of the tile at the floor.
func makesUp(t *rapid.T, w survey.WallFound, tile trim.Tile, pieces []trim.Piece) {
	if w.Right.Trim == nil || w.Base[0].Readings[1].Value != 0 {
		return
	}
	sum, gap, mitred := -tile.Joint, tile.Joint, length.Length(0)
	if w.Right.Trim.Bar() {
		sum, gap = 0, 0
	}
	for _, p := range pieces {
		if p.Edge == survey.RightEnd {
			sum += p.Inner + gap
			mitred += length.Length(p.Mitres)
		}
	}
	if mitred == 0 {
		require.LessOrEqual(t, sum, 84*in)
		require.GreaterOrEqual(t, sum, 84*in-tile.Joint)
	}
}

// Pieces that are cut alike are one line: the last piece of two legs of 84 in, and
// of a raked floor both sides are given.
func TestCuts(t *testing.T) {
	w := wall(bullnose(2*in, 6*in), bullnose(2*in, 6*in), nil)
	groups := trim.Cuts(trim.Of(w, placed(w), running), length.Imperial)
	require.Len(t, groups, 1)
	assert.Equal(t, trim.Group{ID: "T1", Name: "b", Size: `4 3/8"`, Long: 35 * in / 8, Pieces: []string{"T-A-01", "T-A-15"}}, groups[0])

	// A rake of 3 in over 60 in is 1/20: over a strip 2 in wide it is 1/10 in.
	w.Base[0].Readings[1].Value = 3 * in
	groups = trim.Cuts(trim.Of(w, placed(w), running), length.Imperial)
	require.Len(t, groups, 2)
	assert.Equal(t, `3 7/8" beside the tile, 3 31/32" at the outer side`, groups[0].Size, "84 - 13 × 6 1/8 - 9 7/8 / 20 = 3.88 and 84 - 13 × 6 1/8 - 7 7/8 / 20 = 3.98")
}

// A strip that a tub front stands in is notched at the rim, and ripped under it.
func TestTrimOverATubFront(t *testing.T) {
	w := wall(nil, bullnose(2*in, 6*in), nil)
	w.Base = []survey.SegmentFound{{Meets: survey.Tub, Gap: in / 8, Readings: []survey.Reading{{At: 0, Value: 20 * in}, {At: 51 * in, Value: 20 * in}}},
		{Meets: survey.Floor, Gap: in / 8, Readings: []survey.Reading{{At: 51 * in}, {At: 60 * in}}}}
	var sizes []string
	for _, g := range trim.Cuts(trim.Of(w, placed(w), running), length.Imperial) {
		sizes = append(sizes, g.Size)
	}
	// The front with its gap stands at 51 1/8 in, the trim from 50 1/8 to 52 1/8: 1 in is left beside it.
	assert.Equal(t, []string{`4 1/4" long, ripped to 1" with the finished edge kept`, `6" long, ripped to 1" with the finished edge kept`,
		`6" long, notched: held to its place and marked`}, sizes)
}

// A bar runs on over a strip of other tile that goes from the base to the head, and a
// window that goes past the head parts it: between ends at 10 and 40 in it is one of 30 in,
// and beside a window from 20 to 30 in two of 10 in.
func TestTrimRunsOnOverAStrip(t *testing.T) {
	bar := &survey.TrimFound{Kind: survey.Profile, Width: in / 8, Length: 96 * in, Mitred: true}
	long := func(o survey.OpeningFound, at survey.Edges) (all []length.Length) {
		w := wall(nil, nil, bar)
		w.Left, w.Right = survey.EndFound{Stops: survey.Span{From: 10 * in, To: 10 * in}, Beyond: -1}, survey.EndFound{Stops: survey.Span{From: 40 * in, To: 40 * in}, Beyond: -1}
		w.Openings = []survey.OpeningFound{o}
		p := placed(w)
		p.Openings = []survey.Edges{at}
		for _, piece := range trim.Of(w, p, running) {
			all = append(all, piece.Long)
		}
		return all
	}
	hole := survey.Edges{Left: 20 * in, Bottom: -in, Right: 30 * in, Top: 100 * in}
	assert.Equal(t, []length.Length{30 * in}, long(survey.OpeningFound{Kind: survey.PlumbStrip, Strip: &survey.StripFound{Low: true, High: true}}, hole))
	assert.Equal(t, []length.Length{10 * in, 10 * in}, long(survey.OpeningFound{Kind: survey.Window}, hole))
}
