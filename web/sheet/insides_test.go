package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// Every inside stands on a sheet, drawn to a scale of the ladder, with each of its cut
// pieces in the list under it: poppler reads them.
func TestEveryInsideHasItsSheet(t *testing.T) {
	plan := solved(t, "../insides/shower")
	text := printedText(t, plan, Elevations)
	for _, want := range []string{"B-N1, inside of niche shelf", "W-W1, inside of window north", "slab 13 1/4 × 3 7/16", "one slab", `falls 3/32" to the room`} {
		says(t, text, want)
	}
	b := newBook(plan, Options{Kinds: []Kind{Elevations}})
	found := 0
	for _, l := range b.leaves {
		for _, p := range l.parts {
			if strings.HasPrefix(p.scene.Title, "Inside of") {
				found++
				lo, hi := l.area()
				assert.True(t, p.at.X >= lo.X && p.at.X+p.scene.Width <= hi.X && p.at.Y+p.scene.Height <= hi.Y, "within the margins")
				assert.Contains(t, ladder(plan.Room.Units), p.scene.Scale)
			}
		}
	}
	assert.Equal(t, 2, found)
	for _, w := range plan.Walls {
		for _, in := range w.Insides {
			listed := 0
			for _, r := range b.insideCuts(unfolded{faces: in.Faces}).rows {
				require.Len(t, r.cells, 7)
				for n := range strings.SplitSeq(r.cells[4], " ") {
					k := 0
					for _, c := range n {
						k = 10*k + int(c-'0')
					}
					listed += k
				}
			}
			pieces := 0
			for _, f := range in.Faces {
				pieces += len(f.Pieces)
			}
			assert.Equal(t, pieces, listed, "all pieces of %s are in its list", in.Letter)
		}
	}
}

// The list under an inside tells the pieces of a band's tile from those of the field.
func TestTheListOfABackTellsItsBand(t *testing.T) {
	plan := solved(t, "../insides/shower", func(job *survey.Job) {
		o := &job.Walls[0].Openings[0]
		o.Inside.Back = survey.InsideFace{}
		o.Bottom, o.Height = &survey.Mark{At: "-2 7/8"}, &survey.Measure{Mark: &survey.Mark{At: "11 5/8"}}
		job.Pins.Course.Line = "1 3/8"
		job.Bands = []survey.Band{{Name: "stripe", Walls: []string{job.Walls[0].Name}, Bottom: survey.Mark{At: "5 1/2"},
			Tile: survey.Tile{Width: "4", Height: "2", Thickness: "5/16"}}}
	})
	b := newBook(plan, Options{Kinds: []Kind{Elevations}})
	var back []string
	for _, r := range b.insideCuts(unfolded{faces: plan.Walls[0].Insides[0].Faces[:1]}).rows {
		back = append(back, strings.Join(r.cells[2:5], " | "))
	}
	assert.Contains(t, back, "whole |  | 3", "of the field, over a course that the fall of the sill cuts")
	assert.Contains(t, back, "whole | stripe | 3")
	assert.Len(t, back, 4, "%v", back)
	var sides []string
	for _, r := range b.insideCuts(unfolded{faces: plan.Walls[0].Insides[0].Faces[1:3]}).rows {
		if strings.Contains(r.cells[3], "stripe") {
			sides = append(sides, r.cells[0])
		}
	}
	assert.Equal(t, []string{"left", "right"}, sides, "one piece of the band on each side")
}

// A wall whose niches have no inside prints as it did: no leaf more.
func TestAWallWithoutAnInsideHasNoSheetMore(t *testing.T) {
	plan := solved(t, "../insides/shower", func(job *survey.Job) {
		o := &job.Walls[0].Openings[0]
		o.Inside, o.Left, o.Width = nil, &survey.Mark{At: "23"}, &survey.Mark{At: "12 1/2"}
		job.Walls[1].Openings[0].Inside = nil
	})
	b := newBook(plan, Options{Kinds: []Kind{Elevations, Stages}})
	assert.Equal(t, 2, leavesOf(b)[Elevations])
	assert.Empty(t, drawing.FoldOut(plan, 0, 0, drawing.Options{}).Elements)
}
