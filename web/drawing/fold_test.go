package drawing

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/survey"
)

// insides solves the job of testdata with a niche and a window, after a change.
func insides(t *testing.T, change func(*survey.Job)) layout.Plan {
	t.Helper()
	file, err := os.ReadFile("../../testdata/insides/shower.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	change(&job)
	p, err := layout.Now(job)
	require.NoError(t, err)
	return p
}

// Every piece that is cut, and large enough to be written in, says on the drawing what
// it is cut to, and the sides lie beside the back at its own heights.
func TestFoldOutSaysWhatIsCut(t *testing.T) {
	p := insides(t, func(*survey.Job) {})
	in := p.Walls[0].Insides[0]
	s := FoldOut(p, 0, 0, Options{})
	said := map[string]string{}
	for _, l := range append(labels(s, Size), labels(s, Size.on(Ramp1))...) {
		said[l.Piece] += l.Text + " "
	}
	for _, is := range []survey.FaceName{survey.LeftFace, survey.RightFace, survey.TopFace} {
		for _, piece := range in.Find(is).Pieces {
			assert.Contains(t, said[piece.ID], "3", piece.ID)
		}
	}
	assert.Contains(t, said["B-N1-sill-01"], "slab 13 1/4 × 3 7/16")
	var names []string
	for _, l := range labels(s, Name) {
		names = append(names, l.Text)
	}
	assert.Subset(t, names, []string{"B-N1, inside of niche shelf", "left 3 9/16 × 12 1/2", "top 12 1/2 × 3 9/16"})
	assert.Contains(t, strings.Join(names, "|"), `falls 3/32" to the room`)
	assert.Contains(t, s.Describe, "left 3 9/16 × 12 1/2: 3 pieces, 3 cut pieces")
	assert.Empty(t, FoldOut(p, 0, 1, Options{}).Elements, "there is one inside on that wall")
	assert.Empty(t, FoldOut(p, 9, 0, Options{}).Elements)
}

// What a niche is framed to is said as long as it is to be framed.
func TestABuiltNicheIsNotFramed(t *testing.T) {
	for tolerance, says := range map[string]bool{"": true, "1/8": false} {
		p := insides(t, func(job *survey.Job) { job.Walls[0].Openings[0].Inside.Tolerance = tolerance })
		var names []string
		for _, l := range labels(FoldOut(p, 0, 0, Options{}), Name) {
			names = append(names, l.Text)
		}
		assert.Equal(t, says, strings.Contains(strings.Join(names, " "), "framed "), names)
	}
}

// Looking into a niche one sees the pieces of its back, where the drawing of the wall
// is not of a wall alone.
func TestTheWallShowsTheBackOfItsNiche(t *testing.T) {
	p := insides(t, func(job *survey.Job) { job.Walls[0].Openings[0].Inside.Back = survey.InsideFace{} })
	rings := 0
	for _, e := range Elevation(p, 0, Options{}).Elements {
		if path, ok := e.(Path); ok && path.Kind == Niche && len(path.Rings) > 1 {
			rings += len(path.Rings)
		}
	}
	assert.Equal(t, 9, rings, "three columns and three courses")
}

// No text of a fold-out lies on another or off the paper, on screens of any width
// and on paper, whatever the niche.
func TestFoldOutKeepsItsTextsApart(t *testing.T) {
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 7))
		p := insides(t, func(job *survey.Job) {
			n := func(low, high int) string { return fmt.Sprintf("%d mm", low+r.IntN(high-low)) }
			job.Tile.Width, job.Tile.Height = n(40, 300), n(40, 300)
			job.Bond = survey.Bond{Kind: "running", Offset: []string{"1/2", "1/3"}[r.IntN(2)], Along: []string{"level", "plumb"}[r.IntN(2)]}
			o := &job.Walls[0].Openings[0]
			o.Inside.Depth = n(60, 200)
			if r.IntN(2) == 0 {
				o.Inside.Back = survey.InsideFace{}
			}
			if r.IntN(2) == 0 {
				o.Inside.Sill = survey.InsideFace{}
			}
			o.Left, o.Width, o.Inside.Studs = &survey.Mark{At: n(300, 500)}, &survey.Mark{At: n(120, 600)}, nil
			o.Bottom, o.Height = &survey.Mark{At: n(-100, 100)}, &survey.Measure{Mark: &survey.Mark{At: n(120, 600)}}
			job.Walls = job.Walls[:1]
			job.Walls[0].Right = survey.End{Stops: &survey.Mark{At: "60"}}
			job.Pins.Course.Line = "0"
			job.Pins.Walls = map[string]survey.WallPin{"back": {Edge: "20"}}
		})
		for _, wide := range []Micron{0, 340 * px, 700 * px, 1900 * px} {
			keepApart(t, fmt.Sprintf("seed %d, %d wide", seed, wide), FoldOut(p, 0, 0, Options{Wide: wide}), wallTexts.least)
		}
		for _, scale := range []Scale{{1, 4}, {1, 8}, {1, 20}} {
			keepApart(t, fmt.Sprintf("seed %d, on paper", seed), FoldOut(p, 0, 0, Options{Sheet: true, Scale: scale}), sheetTexts.least)
		}
	}
}

// A band that lies across the back of a niche shows there: folded out in the shade that it has on the wall, in
// the look of the finished wall in its own colour, in shade; by itself, and one path for the field's tile.
func TestABandShowsOnTheBackOfANiche(t *testing.T) {
	p := insides(t, func(job *survey.Job) {
		job.Walls[0].Openings[0].Inside.Back = survey.InsideFace{}
		job.Walls[0].Openings[0].Bottom, job.Walls[0].Openings[0].Height = &survey.Mark{At: "1 1/4"}, &survey.Measure{Mark: &survey.Mark{At: "14 5/8"}}
		job.Pins.Course.Line = "1 3/8"
		job.Bands = []survey.Band{{Name: "stripe", Walls: []string{job.Walls[0].Name}, Bottom: survey.Mark{At: "5 1/2"},
			Tile: survey.Tile{Width: "4", Height: "2", Thickness: "5/16", Colour: "#336699"}}}
	})
	whole := map[Colour]int{}
	for _, e := range FoldOut(p, 0, 0, Options{}).Elements {
		if tiles, is := e.(Tiles); is {
			for _, r := range tiles.Runs {
				whole[tiles.Fill] += r.Count
			}
		}
	}
	assert.Equal(t, map[Colour]int{White: 6, shades[0]: 3}, whole, "the fall of the sill takes of the lowest course")
	within := func(o Options) map[Colour]int {
		out := map[Colour]int{}
		for _, e := range Elevation(p, 0, o).Elements {
			if path, is := e.(Path); is && path.Kind == Niche {
				out[path.Fill] = len(path.Rings)
			}
		}
		return out
	}
	assert.Subset(t, within(Options{}), map[Colour]int{Pale: 9, shades[0].darker(): 3})
	assert.Subset(t, within(Options{Finish: true}), map[Colour]int{Colour(0x336699).darker(): 3})
}

// Plumb through a chevron the saw goes along an edge of the tile: how wide and high such a piece stands is no size to cut, and is
// not written in it. It was once, across the joint beside a narrow one.
func TestAPieceOfAChevronBearsNoSize(t *testing.T) {
	p := insides(t, func(job *survey.Job) {
		job.Tile.Width, job.Tile.Height, job.Bond = "7 1/2", "2 3/8", survey.Bond{Kind: "chevron"}
		job.Walls[0].Openings[0].Inside.Back, job.Walls[0].Openings[0].Inside.Depth = survey.InsideFace{}, "4 1/2"
	})
	plumb := 0
	for _, face := range p.Walls[0].Insides[0].Faces {
		for i := range face.Pieces {
			if piece := &face.Pieces[i]; !piece.Whole && piece.Outline != nil && toldByLine(piece) {
				plumb++
			}
		}
	}
	assert.Greater(t, plumb, 10)
	for _, e := range FoldOut(p, 0, 0, Options{}).Elements {
		if l, is := e.(Label); is && l.Piece != "" {
			assert.Contains(t, l.Text, "slab", l.Piece)
		}
	}
}
