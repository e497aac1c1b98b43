package finding

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// boxed opens a niche in the quiet room with an inside as nothing objects to: an
// inside wall, a fall of 1/4 in to the foot, a joint of 1/8, bed and tile of 1/2 in
// and a board of 1/2 in a side.
func boxed(change func(*survey.InsideFound, *plan.Face)) func(*Input) {
	return func(in *Input) {
		inside := &survey.InsideFound{Depth: 3 * inch, Fall: survey.UsualFall(in.Room.Units), Behind: "inside"}
		for i := range inside.Faces {
			inside.Faces[i] = survey.FaceFound{Tiled: true, Depth: 3 * inch, Cover: inch / 2, Lining: inch / 2}
		}
		face := plan.Face{Is: survey.LeftFace, Wall: plan.Wall{Found: survey.WallFound{Name: "left of niche shelf"}}}
		change(inside, &face)
		opens(in, survey.OpeningFound{Kind: survey.Niche, Name: "shelf", Inside: inside}, 8, 4, 20, 8)
		in.Walls[0].Insides = append(in.Walls[0].Insides, plan.Inside{Opening: len(in.Walls[0].Found.Openings) - 1, Faces: []plan.Face{face}})
	}
}

// nicheCases are what the rules for the inside of openings say.
func nicheCases() []ruleCase {
	sound := boxed(func(*survey.InsideFound, *plan.Face) {})
	with := func(f func(*survey.InsideFound)) func(*Input) {
		return boxed(func(in *survey.InsideFound, _ *plan.Face) { f(in) })
	}
	// The tile of the wall stops 40 in over the level line; the window is 16 in high.
	window := func(bottom length.Length, face survey.FaceName) func(*Input) {
		return func(in *Input) {
			opens(in, survey.OpeningFound{Kind: survey.Window, Name: "light", Inside: &survey.InsideFound{}}, 20, bottom, 40, bottom+16)
			in.Walls[0].Insides = append(in.Walls[0].Insides, plan.Inside{Opening: len(in.Walls[0].Found.Openings) - 1, Faces: []plan.Face{{Is: face}}})
		}
	}
	strip := func(small, worse bool) piece.Piece {
		return piece.Piece{ID: "B-N1-left-01", Least: inch / 2, Sliver: small, Unworkable: worse}
	}
	return []ruleCase{
		{"whole pieces", "small piece in an opening", sound, nil},
		{"a window through the head", LinedOverTheTile, window(30, survey.LeftFace), []string{`Window light is lined with tile for 6" over where the tile of back stops.`}},
		{"a window under the head", LinedOverTheTile, window(20, survey.LeftFace), nil},
		{"of a window through the head the sill alone is lined", LinedOverTheTile, window(30, survey.SillFace), nil},
		{"a window through the head of a wall that goes up to the ceiling", LinedOverTheTile, func(in *Input) {
			window(30, survey.LeftFace)(in)
			in.Walls[0].Found.Head.Meets = true
		}, nil},
		{"a strip on a side", "small piece in an opening", boxed(func(_ *survey.InsideFound, f *plan.Face) {
			f.Pieces = []piece.Piece{strip(true, false), strip(false, true)}
		}), []string{`The left of niche shelf has 2 small pieces; the smallest, B-N1-left-01, is 1/2".`}},
		{"a fall of 1/4 in", "fall of a sill", sound, nil},
		{"a fall of 1/8 in", "fall of a sill", with(func(in *survey.InsideFound) { in.Fall = inch / 8 }),
			[]string{`The sill of niche shelf falls 1/8" per ft to the room, less than 1/4".`}},
		{"a sill that is cased", "fall of a sill", with(func(in *survey.InsideFound) { in.Fall, in.Faces[survey.SillFace].Tiled = 0, false }), nil},
		{"joints of 1/8 in", "soft joints in a niche", sound, nil},
		{"a gap of 1/16 in", "soft joints in a niche", with(func(in *survey.InsideFound) { gap := inch / 16; in.Gap = &gap }),
			[]string{`The soft joints in niche shelf are 1/16" wide, less than 1/8".`}},
		{"an inside wall", "niche in an outside wall", sound, nil},
		{"an outside wall", "niche in an outside wall", with(func(in *survey.InsideFound) { in.Behind = "outside" }), []string{"Niche shelf is in an outside wall."}},
		{"what is behind is known", "wall behind a niche", sound, nil},
		{"nobody knows what is behind", "wall behind a niche", with(func(in *survey.InsideFound) { in.Behind = "" }),
			[]string{"Is the wall of niche shelf an outside wall? Nobody has said."}},
		{"no inside", "waterproofing in an opening", func(*Input) {}, nil},
		{"an inside", "waterproofing in an opening", sound, []string{"Waterproofing runs through the inside of niche shelf."}},
		// 12 in clear, 1 in of lining and tile a side.
		{"a niche in a bay of 14 in", "niche wider than a stud bay", with(func(in *survey.InsideFound) { in.Bay = &survey.Span{From: 7 * inch, To: 21 * inch} }), nil},
		{"a niche in a bay of 13 in", "niche wider than a stud bay", with(func(in *survey.InsideFound) { in.Bay = &survey.Span{From: 7 * inch, To: 20 * inch} }),
			[]string{`Niche shelf is 12" wide between the tiles, about 14" with its tile and lining; its studs are 13" apart.`}},
	}
}

// What is measured all round may be built, and is not told to move; what is free is.
func TestWhatIsBuiltIsNotToldToMove(t *testing.T) {
	for _, free := range []bool{true, false} {
		in := quiet()
		boxed(func(inside *survey.InsideFound, f *plan.Face) {
			inside.Behind = "outside"
			inside.Bay = &survey.Span{From: 7 * inch, To: 20 * inch}
			f.Pieces = []piece.Piece{{ID: "B-N1-left-01", Least: inch / 2, Sliver: true}}
		})(&in)
		w := &in.Walls[0]
		w.Start.Placed.Openings[0].Left -= inch / 4
		if free {
			w.Found.Openings[0].Left = survey.Span{From: 7 * inch, To: 9 * inch}
		}
		said := map[Name]string{}
		for _, f := range Judge(in) {
			said[f.Rule] = f.Do
		}
		for _, r := range Rules() {
			if r.Built == "" {
				continue
			}
			require.Contains(t, said, r.Name)
			if free {
				assert.Equal(t, r.Do, said[r.Name])
			} else {
				assert.Equal(t, r.Built, said[r.Name])
			}
		}
	}
}
