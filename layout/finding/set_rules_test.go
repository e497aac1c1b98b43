package finding

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// standing says that course 1 of the quiet room stands, its top edge so far off
// 4 in at both ends, and that rows more are to be set over it.
func standing(rows int, left, right length.Length) func(*Input) {
	return func(in *Input) {
		in.Walls[0].Found.Set = &survey.Standing{Course: 1, Left: 4*inch + left, Right: 4*inch + right}
		for k := 1; k <= rows; k++ {
			p := tile("B-03-01", k+1, 0, 4, 8, 8)
			p.Row = k
			in.Walls[0].Pieces = append(in.Walls[0].Pieces, p)
		}
	}
}

// beside adds a second wall whose course 1 stands so much higher.
func beside(in *Input, up length.Length) {
	standing(8, 0, 0)(in)
	w := in.Walls[0]
	w.Found.Name, w.Found.Set = "left", &survey.Standing{Course: 1, Left: 4*inch + up, Right: 4*inch + up}
	in.Walls = append(in.Walls, plan.Wall{Found: w.Found, Shape: w.Shape, Start: w.Start, Pieces: w.Pieces})
}

// setCases are the rules for tile that stands; a joint of 1/8 in has 1/16 in to
// spare over the least joint of 1/16 in (ANSI A108.02 4.3.8).
func setCases() []ruleCase {
	line := 3 * inch
	return []ruleCase{
		{"no tile stands", "set course out of level", func(*Input) {}, nil},
		{"a course that stands as planned", "set course out of level", standing(8, 0, 0), nil},
		{"a course 1/8 in out from end to end", "set course out of level", standing(8, -inch/16, inch/16),
			[]string{`Course 1 of back stands 1/8" higher at its right end than at its left; against the line that the rest is set to it is 1/16" low at the left and 1/16" high at the right. The joint under course 2 can take that up: it has 1/16" to spare.`}},
		{"a course 3/8 in out", "set course out of level", standing(8, 3*inch/16, -3*inch/16),
			[]string{`Course 1 of back stands 3/8" lower at its right end than at its left; against the line that the rest is set to it is 3/16" high at the left and 3/16" low at the right. With 1/16" to spare in each, the joints under courses 2 to 4 can take that up.`}},
		{"a level course off the line of the room", "set course out of level", standing(8, inch/8, inch/8),
			[]string{`Course 1 of back is level; against the line that the rest is set to it is 1/8" high at the left and 1/8" high at the right. With 1/16" to spare in each, the joints under courses 2 to 3 can take that up.`}},
		{"three joints asked for and two there", "set courses that the joints cannot take up", standing(2, 3*inch/16, -3*inch/16),
			[]string{`Course 1 of back stands 3/8" lower at its right end than at its left; against the line that the rest is set to it is 3/16" high at the left and 3/16" low at the right. With 1/16" to spare in a joint that takes 3 courses; 2 are still to be set.`}},
		{"three joints asked for and three there", "set courses that the joints cannot take up", standing(3, 3*inch/16, -3*inch/16), nil},
		{"a joint with nothing to spare", "set courses that the joints cannot take up",
			func(in *Input) { in.Room.Joint = inch / 16; standing(8, inch/8, 0)(in) },
			[]string{`Course 1 of back stands 1/8" lower at its right end than at its left; against the line that the rest is set to it is 1/8" high at the left and on it at the right. A joint of 1/16" has nothing to spare over the least joint of 1/16".`}},
		{"two walls 1/8 in apart", "set courses of two walls apart", func(in *Input) { beside(in, inch/8) }, nil},
		{"two walls 3/16 in apart", "set courses of two walls apart", func(in *Input) { beside(in, 3*inch/16) },
			[]string{`By their middles the set courses of left stand 3/16" higher than those of back: more than one joint of 1/8" on each wall can take up. The rest is set to a line between them.`}},
		{"a course by its number", "number of a set course", standing(8, 0, 0), nil},
		{"a course that is another by its height", "number of a set course", func(in *Input) { standing(8, 0, 0)(in); in.Walls[0].Found.Set.Course = 3 },
			[]string{"The course of back typed as 3 is course 1 by its height."}},
		{"a measured end where tile stands", "free mark where tile stands", standing(8, 0, 0), nil},
		{"a free end where tile stands", "free mark where tile stands", func(in *Input) {
			standing(8, 0, 0)(in)
			in.Walls[0].Found.Left.Stops = survey.Span{To: inch}
		}, []string{"The left end of back is still free to move, and tile stands there."}},
		{"a free end that is pinned", "free mark where tile stands", func(in *Input) {
			standing(8, 0, 0)(in)
			in.Walls[0].Found.Left.Stops = survey.Span{To: inch}
			in.Walls[0].Found.MarkPins = map[survey.MarkName]length.Length{survey.EndLeft: 0}
		}, nil},
		{"a free niche that set tile reaches", "free mark where tile stands", func(in *Input) {
			standing(8, 0, 0)(in)
			opens(in, survey.OpeningFound{Kind: "niche", Name: "shelf", Left: survey.Span{To: inch}}, 8, 3, 16, 8)
		}, []string{"The niche shelf of back is still free to move, and tile stands beside it."}},
		{"a free niche over set tile", "free mark where tile stands", func(in *Input) {
			standing(8, 0, 0)(in)
			opens(in, survey.OpeningFound{Kind: "niche", Name: "shelf", Left: survey.Span{To: inch}}, 8, 4, 16, 8)
		}, nil},
		{"a pinned line that tile stands off", "pin given up to set tile", func(in *Input) { standing(8, 0, 0)(in); in.Room.Passed = &line },
			[]string{`The course line is pinned at 3"; the tile that stands puts it at 0", and that counts.`}},
		{"a pinned line a whole course off", "pin given up to set tile", func(in *Input) {
			standing(8, 0, 0)(in)
			pitch := 4*inch + inch/8
			in.Room.Passed = &pitch
		}, nil},
		{"a pinned start", "pin given up to set tile", func(in *Input) {
			standing(8, 0, 0)(in)
			in.Walls[0].Found.Set.Passed = &survey.StartPin{}
		}, []string{"The start of back is pinned, and tile stands: the start as set counts."}},
		{"a sliver that stands already", "sliver", func(in *Input) {
			in.Walls[0].Pieces = append(in.Walls[0].Pieces, thin("B-01-02", 1, inch, true))
			standing(8, 0, 0)(in)
		}, nil},
		{"a sliver over the course that stands", "sliver", func(in *Input) {
			p := thin("B-02-02", 2, inch, true)
			p.Row = 1
			in.Walls[0].Pieces = append(in.Walls[0].Pieces, p)
			standing(8, 0, 0)(in)
		}, []string{`B-02-02 at the left end of back is only 1" at its thinnest.`}},
		{"tile measured a little off its size", "tile measured far from its size", func(in *Input) {
			in.Room.Tile.Real = survey.Real{Used: true, Width: 8 * inch, Sold: [2]length.Length{8*inch + inch/4, 4 * inch}}
		}, nil},
		{"a tile too many in the row", "tile measured far from its size", func(in *Input) {
			in.Room.Tile.Real = survey.Real{Used: true, Width: 8 * inch, Sold: [2]length.Length{7 * inch, 4 * inch}}
		}, []string{`As measured the tile is 8" wide, as typed 7".`}},
	}
}

func TestASideIsMeasuredByTheTapeThatIsFine(t *testing.T) {
	in := quiet()
	in.Limits = Usual(length.Imperial)
	assert.Equal(t, "on it", in.side(inch/128))
	assert.Equal(t, `1/64" low`, in.side(-inch/64))
}
