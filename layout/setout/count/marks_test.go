package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// Merit.md, term 16: a start is found again from the middle of the field, then from a
// full tile at an end.
func TestHowHardAStartIsToFindAgain(t *testing.T) {
	stack, halves := drawWall("1000x600 300x100+2"), drawWall("1000x600 300x100+2 1/2")
	for name, c := range map[string]struct {
		w    *Wall
		edge length.Length
		find int
	}{
		"joint on the middle":                    {stack, 501 * mm, 0},
		"joint on the middle, two tiles further": {stack, (501 - 604) * mm, 0},
		"tile on the middle":                     {stack, 350 * mm, 0},
		"full tile at the left":                  {stack, 0, 1},
		"full tile at the right":                 {stack, 700 * mm, 1},
		"neither":                                {stack, 420 * mm, 2},
		"a joint of course 1 on the middle":      {halves, 350 * mm, 0},
		"full tile at the left in course 1":      {halves, 151 * mm, 1},
		"a millimetre off the middle":            {stack, 502 * mm, 2},
		"a unit off the middle":                  {stack, 501*mm + 1, 2},
	} {
		got := c.w.Marks.find(c.w.facts.level(c.edge), c.w.Box())
		require.Equal(t, c.find, got, name)
	}
}

// Merit.md, term 5: an exposed end is one that stops where the other end meets a corner.
func TestExposedEnds(t *testing.T) {
	for name, c := range map[string]struct {
		sketch  string
		edge, x length.Length
		right   bool
		exposed int
	}{
		"a tile begins at the left end":         {"1000x600 300x100+2 left=20", 20, 20, false, 0},
		"none does":                             {"1000x600 300x100+2 left=20", 21, 20, false, 1},
		"in half bond one of course 1 does":     {"1000x600 300x100+2 1/2 left=20", 171, 20, false, 0},
		"a tile ends at the right end":          {"1000x600 300x100+2 right=904", 0, 904, true, 0},
		"none does at the right":                {"1000x600 300x100+2 right=904", 0, 903, true, 1},
		"the end that meets is not exposed":     {"1000x600 300x100+2 left=20", 21, 1000, true, 0},
		"where both ends stop neither counts":   {"1000x600 300x100+2 left=20 right=900", 21, 20, false, 0},
		"where both ends stop, from the right":  {"1000x600 300x100+2 left=20 right=900", 21, 900, true, 0},
		"in columns the edges of tiles are one": {"1000x600 300x100+2 1/2 columns left=20", 171, 20, false, 1},
	} {
		w := drawWall(c.sketch)
		require.Equal(t, c.exposed, w.Marks.ExposedAt(c.edge*mm, c.x*mm, c.right), name)
	}
}

func TestLeastExposedIsThatOfTheBestPlace(t *testing.T) {
	for _, line := range []string{
		"1000x600 300x100+2 left=0..80", "1000x600 300x100+2 left=0..400", "1000x600 300x100+2 right=920..1000",
		"1000x600 300x100+2 1/2 right=600..1000", "1000x600 300x100+2",
	} {
		w := drawWall(line)
		for edge := length.Length(0); edge < 302; edge += 7 {
			least := 1
			for _, right := range []bool{false, true} {
				for _, x := range w.Places.Ends(edge*mm, right) {
					if right != w.Found.Left.Meets {
						continue // not the end that may be exposed
					}
					least = min(least, w.Marks.ExposedAt(edge*mm, x, right))
				}
			}
			require.Equal(t, least, w.Marks.leastExposed(w.facts.level(edge*mm)), "%s at %d", line, edge)
		}
	}
}

// Of a measured opening each edge off the lines counts one; of a free one, Openings does.
func TestMeasuredOpeningsCountEdgeByEdge(t *testing.T) {
	for name, c := range map[string]struct {
		sketch     string
		line, edge length.Length
		built      int
	}{
		"all four on lines":       {"1000x600 300x100+2 niche=300,304,100,104", 0, 0, 0},
		"moved along":             {"1000x600 300x100+2 niche=300,304,100,104", 0, 5, 2},
		"moved up":                {"1000x600 300x100+2 niche=300,304,100,104", 5, 0, 2},
		"moved both ways":         {"1000x600 300x100+2 niche=300,304,100,104", 5, 5, 4},
		"free along, off upwards": {"1000x600 300x100+2 niche=300..310,304,100,104", 5, 5, 2},
		"free both ways":          {"1000x600 300x100+2 niche=300..310,304,100..101,104", 5, 5, 0},
		"two windows":             {"2000x600 300x100+2 window=300,304,100,104 window=1000,50,100,104", 0, 0, 2},
		"a pipe has no edges":     {"1000x600 300x100+2 pipe=500,300,40", 5, 5, 0},
		"its top alone is off":    {"1000x600 300x100+2 niche=300,304,100,105", 0, 0, 1},
		"a window over the head":  {"1000x600 300x100+2 window=300,304,105,600", 0, 0, 1},
		"a window to the floor":   {"1000x600 300x100+2 window=301,304,-5,209", 0, 0, 2},
		"where the head may be":   {"1000x600 300x100+2 head=500..600 window=300,304,100,450", 0, 0, 0},
		"under the free head":     {"1000x600 300x100+2 head=560..600 window=300,304,100,450", 0, 0, 1},
		"past a stop":             {"1000x600 300x100+2 right=900 window=700,250,100,104", 0, 0, 1},
	} {
		w := drawWall(c.sketch)
		require.Equal(t, c.built, w.Marks.Fixed(c.line*mm, c.edge*mm).Built, name)
	}
}

// Merit.md, term 15: a niche without a wish belongs on the middle of the field, as far as
// its range lets it; a window stands where it stands.
func TestWherePlacesAreWished(t *testing.T) {
	for name, c := range map[string]struct {
		sketch string
		middle length.Length
		wished bool
	}{
		"a niche on the middle":           {"1000x600 300x100+2 niche=300..500,200,100,100", 500, true},
		"its range ends before":           {"1000x600 300x100+2 niche=100..200,200,100,100", 300, true},
		"its range begins after":          {"1000x600 300x100+2 niche=600..700,200,100,100", 700, true},
		"a window has no place":           {"1000x600 300x100+2 window=300..500,200,100,100", 0, false},
		"the field begins at a free stop": {"1000x600 300x100+2 left=100..200 niche=300..500,200,100,100", 550, true},
	} {
		w := drawWall(c.sketch)
		twice, is := w.Marks.wishX(w.Found.Openings[0], w.Box())
		require.Equal(t, c.wished, is, name)
		require.Equal(t, 2*c.middle*mm, twice, name)
	}
	measured := drawWall("1000x600 300x100+2 niche=300,200,100,100")
	require.Zero(t, measured.Marks.near(measured.Outer(), measured.Box()), "what is measured is not wished for elsewhere")
	w := drawWall("1000x600 300x100+2 niche=300..500,200,100..300,100")
	x, y := 420*mm, 250*mm
	w.facts.typed.Openings[0].Near = survey.Near{X: &x, Y: &y}
	at := w.Outer()
	at.Openings[0] = survey.Edges{Left: 330 * mm, Right: 530 * mm, Bottom: 190 * mm, Top: 290 * mm}
	require.Equal(t, 10*mm+10*mm, w.Marks.near(at, w.Box()), "10 right of the wish and 10 under it")
}
