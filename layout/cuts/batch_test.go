package cuts

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// column is pieces over each other that are cut at the left into a corner, each
// so wide; the tile of the next wall laps over them by cover.
func column(cover length.Length, wides ...length.Length) Input {
	var pieces []piece.Piece
	for i, wide := range wides {
		pieces = append(pieces, end(fmt.Sprintf("B-%02d-01", i+1), wide))
	}
	w := wall("back", 0, pieces...)
	w.Found.Letter, w.Found.Left.Meets, w.Found.Left.Cover = "B", true, cover
	w.Shape.Sides[1].Meets = true
	return Input{Room: survey.Room{Sealant: inch / 8}, Walls: []plan.Wall{w}}
}

// lines writes a schedule in few words: "2 cross cut 3\"".
func lines(s Schedule) []string {
	var out []string
	for _, g := range s.Groups {
		size, _ := g.Fence()
		text := fmt.Sprint(g.Count, " ", g.Kind, " ", size.Fine(length.Imperial))
		if g.Spread > 0 {
			text += " + " + g.Spread.Fine(length.Imperial)
		}
		if how := g.How.Words(); how != "" {
			text += ", " + how
		}
		out = append(out, text)
	}
	return out
}

func TestCutsIntoALeaningCorner(t *testing.T) {
	s := length.Length(inch / 32)
	for _, c := range []struct {
		name  string
		cover length.Length
		wides []length.Length
		want  []string
	}{
		{"within 1/16 in are one batch at the smallest", 0, []length.Length{3 * inch, 3*inch + s, 3*inch + 2*s}, []string{`3 cross cut 3" + 1/16"`}},
		{"where a lap hides the difference they are measured in place", inch / 2, []length.Length{3 * inch, 3*inch + 4*s, 3*inch + 8*s}, []string{`3 cross cut 3" + 1/4", measure in place`}},
		{"sealant of 1/8 in hides 1/8 in", 0, []length.Length{3 * inch, 3*inch + 4*s}, []string{`2 cross cut 3" + 1/8", measure in place`}},
		{"where nothing hides it there are a few batches", 0, []length.Length{3 * inch, 3*inch + 2*s, 3*inch + 5*s}, []string{`2 cross cut 3" + 1/16"`, `1 cross cut 3 5/32"`}},
		{"but not many", 0, []length.Length{3 * inch, 3*inch + 3*s, 3*inch + 6*s, 3*inch + 9*s}, []string{`4 cross cut 3" + 9/32", measure in place`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, lines(Of(column(c.cover, c.wides...), Usual(length.Imperial))))
		})
	}
}

func TestAnEndThatStopsIsCutExactly(t *testing.T) {
	in := column(0, 3*inch, 3*inch+inch/32)
	in.Walls[0].Shape.Sides[1].Meets = false
	assert.Len(t, Of(in, Usual(length.Imperial)).Groups, 2)
}

func TestLeftAndRightAreOneCutWhereATileMayBeTurned(t *testing.T) {
	both := []piece.Piece{end("B-01-01", 3*inch), rightEnd("B-01-09", 3*inch)}
	assert.Equal(t, []string{`2 cross cut 3"`}, lines(scheduled(both...)))
	grained := Of(Input{Room: survey.Room{Tile: survey.TileSize{Grain: true}}, Walls: []plan.Wall{wall("back", 0, both...)}}, Usual(length.Imperial))
	assert.Equal(t, []string{`1 cross cut 3"`, `1 cross cut 3"`}, lines(grained))
}

// raked is a piece over a raked base with the two heights.
func raked(id string, left, right length.Length) piece.Piece {
	return cut(id, piece.Taper, []plane.Side{4}, plane.Ring{
		{Point: plane.Point{Y: 4*inch - left}, On: 4}, {Point: plane.Point{X: 8 * inch, Y: 4*inch - right}},
		corner(8, 4, 0), corner(0, 4, 0)})
}

func TestATaperUnderTheStepIsAStraightCut(t *testing.T) {
	assert.Equal(t, []string{`1 rip 2 31/32"`}, lines(scheduled(raked("B-01-01", 3*inch, 3*inch-inch/40))))
	assert.Equal(t, []string{`1 taper 3"`}, lines(scheduled(raked("B-01-01", 3*inch, 3*inch-inch/32))))
	whole := scheduled(raked("B-01-01", 4*inch, 4*inch-inch/40))
	assert.Equal(t, []string{`1 none 4", set it whole`}, lines(whole))
	assert.Equal(t, Uncut, whole.Groups[0].How)
}

func TestARakedFirstCourseIsOneLine(t *testing.T) {
	w := wall("back", 0, raked("B-01-01", 3*inch, 3*inch-inch/8), raked("B-01-02", 3*inch-inch/8, 3*inch-inch/4))
	w.Shape.Sides[4].Meets = true
	s := Of(Input{Walls: []plan.Wall{w}}, Usual(length.Imperial))
	assert.Equal(t, []string{`2 rip 2 3/4" + 1/4", by the first-course sheet`}, lines(s))
	require.Len(t, s.Cuts, 2)
	assert.Equal(t, 3*inch-inch/8, s.Cuts[0].Size.Right, "each keeps its own heights")
}

func TestALineSaysWhereItsPiecesGo(t *testing.T) {
	s := scheduled(end("B-01-01", 3*inch), end("B-02-01", 3*inch), rightEnd("B-01-09", 3*inch))
	assert.Equal(t, []Place{{Side: "left", Pieces: []string{"B-01-01", "B-02-01"}}, {Side: "right", Pieces: []string{"B-01-09"}}}, s.Groups[0].Places)
}

func TestHolesOfOnePipeAreOneLine(t *testing.T) {
	ring := plane.Ring{corner(3, 2, 6), corner(4, 3, 6), corner(5, 2, 6), corner(4, 1, 6)}
	face := plane.Rect{Right: 8 * inch, Top: 4 * inch}.Ring(0)
	s := scheduled(cut("a", piece.Hole, []plane.Side{6}, face, ring), cut("b", piece.Hole, []plane.Side{6}, face, ring))
	assert.Equal(t, []string{`2 hole 4", measure in place`}, lines(s))
	assert.Contains(t, strings.Join(s.Groups[0].Words(length.Imperial), "\n"), "mark the hole")
}

func TestOffcutsThatNearlyPairAreCounted(t *testing.T) {
	s := scheduled(end("a", 4*inch-inch/16), rightEnd("b", 4*inch-inch/32), end("c", 2*inch))
	assert.Equal(t, 1, s.Offcuts.TilesSaved, "a kerf of 1/8 in parts the tile")
	s = scheduled(end("a", 4*inch), rightEnd("b", 4*inch))
	assert.Equal(t, 0, s.Offcuts.TilesSaved)
	assert.Equal(t, 1, s.Offcuts.Nearly, "1/16 in less at both")
}

// gather keeps every pair and brings alike ones together.
func TestGather(t *testing.T) {
	kind := []int{1, 2, 1, 2}
	alike := func(i, j int) bool { return kind[i] == kind[j] }
	all := func(i, j int) bool { return true }
	mate := []int{1, 0, 3, 2}
	gather(mate, all, alike)
	assert.Equal(t, []int{2, 3, 0, 1}, mate)
	mate = []int{1, 0, 3, 2}
	gather(mate, func(i, j int) bool { return kind[i] != kind[j] }, alike)
	assert.Equal(t, []int{1, 0, 3, 2}, mate, "what does not fit stays")
}

// What nobody can cut is named, first of all, and shares no line with what can.
func TestWhatIsUnworkableIsNamedFirst(t *testing.T) {
	bad := end("B-02-01", inch/4)
	bad.Unworkable = true
	in := column(inch/2, 3*inch, 3*inch)
	in.Walls[0].Pieces = append(in.Walls[0].Pieces, bad)
	s := Of(in, Usual(length.Imperial))
	assert.Equal(t, []string{`1 cross cut 1/4", do not cut: change the set-out`, `2 cross cut 3"`}, lines(s))
	assert.Equal(t, Unworkable, s.Groups[0].How)
	assert.Contains(t, s.Groups[0].Words(length.Imperial)[0], "do not cut")
}

// Beside a step of the base a piece is looked for at the front of what rises there, one that
// is also cut over it at the base: by its kind, where the wall stands on several.
func TestPiecesAtASeatsFrontAreSaidToBeThere(t *testing.T) {
	beside, corner := end("B-01-01", 3*inch), end("B-02-01", 3*inch)
	for _, p := range []*piece.Piece{&beside, &corner} {
		p.Cuts, p.Across = []plane.Side{survey.SideBase}, []piece.Edge{piece.EdgeOf(survey.SideBase, piece.OnLeft)}
	}
	corner.Up = []piece.Edge{piece.EdgeOf(survey.SideBase, piece.Under)}
	w := wall("back", 0, beside, corner)
	w.Shape.Sides[survey.SideBase].Kind = survey.Seat
	for over, base := range map[string][]survey.SegmentFound{"base": {{Meets: survey.Seat}}, "the seat": {{Meets: survey.Seat}, {Meets: survey.ShowerBase}}} {
		w.Found.Base = base
		s := Of(Input{Walls: []plan.Wall{w}}, Usual(length.Imperial))
		require.Len(t, s.Groups, 1)
		assert.Equal(t, []Place{{Side: "seat's front", Pieces: []string{"B-01-01"}}, {Side: over, Pieces: []string{"B-02-01"}}}, s.Groups[0].Places)
	}
}
