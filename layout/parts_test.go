package layout_test

import (
	"encoding/json"
	"maps"
	"slices"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// mixer puts parts of real showers into a job, each by chance.
type mixer struct {
	chooser
	inches bool
}

// say gives a length in millimetres as the job writes it, or about as much in whole inches.
func (m mixer) say(mm, inches string) string {
	if m.inches {
		return inches
	}
	return mm
}

func (m mixer) bond(name string) survey.Bond {
	kind := oneOf(m, name, survey.Bonds...)
	b := survey.Bond{Kind: string(kind)}
	if least, _ := kind.Tiles(); least > 0 {
		b.Tiles = []survey.Tile{{Width: m.say("40", "1 1/2"), Height: m.say("40", "1 1/2")}}
	}
	return b
}

func (m mixer) mix(j *survey.Job) {
	if m.yes("another bond") {
		j.Bond = m.bond("bond")
	}
	if m.yes("trim") {
		j.Trims = []survey.TrimTile{{Name: "edge", Kind: string(survey.Bullnose), Width: m.say("50", "2"), Length: m.say("150", "6")}}
	}
	if m.yes("band") {
		j.Bands = []survey.Band{{Name: "band", Tile: survey.Tile{Width: m.say("48", "2"), Height: m.say("48", "2")},
			ToHead: m.yes("to the head"), Bottom: survey.Mark{From: m.say("150", "6"), To: m.say("450", "18")}}}
		if b := &j.Bands[0]; m.yes("band in a pattern") {
			b.Bond, b.Tile.Width = survey.Bond{Kind: oneOf(m, "its pattern", "herringbone", "hexagon", "picket", "diagonal")}, b.Tile.Height
			if !b.ToHead {
				b.Height = m.say("150", "6")
			}
			if m.yes("measured band") {
				b.Bottom = survey.Mark{At: m.say("300", "12")}
			}
		}
	}
	if m.yes("cove") {
		j.Trims = append(j.Trims, survey.TrimTile{Name: "foot", Kind: string(survey.Cove), Width: m.say("100", "4"), Length: m.say("150", "6")})
		for i := range j.Walls {
			if len(j.Walls[i].Base) == 1 {
				j.Walls[i].Base[0].Trim = "foot"
			}
		}
	}
	for i := range j.Walls {
		w := &j.Walls[i]
		if m.yes("strip") {
			m.strip(w)
		}
		for _, e := range []*survey.End{&w.Left, &w.Right} {
			if e.Stops != nil && len(j.Trims) > 0 && j.Trims[0].Name == "edge" {
				e.Finish, e.Trim = "", "edge"
			}
		}
		if m.yes("dish") {
			w.Fixtures = append(w.Fixtures, survey.Fixture{Kind: string(survey.SoapDish), Name: "dish", At: m.say("600", "24"), Width: m.say("150", "6"), High: m.say("100", "4"),
				Flush: m.yes("flush"), Height: survey.Measure{Mark: &survey.Mark{From: m.say("-200", "-8"), To: m.say("0", "0")}}})
		}
		if w.Left.Meets != "" && m.yes("shelf") {
			w.Fixtures = append(w.Fixtures, survey.Fixture{Kind: string(survey.CornerShelf), Name: "shelf", Corner: "left", Width: m.say("200", "8"),
				Height: survey.Measure{Mark: &survey.Mark{From: m.say("0", "0"), To: m.say("300", "12")}}})
		}
		for k := range w.Openings {
			m.inside(&w.Openings[k])
		}
		if w.Head.Stops != nil && m.yes("top") {
			w.Top = m.top()
		}
	}
}

// top lays something level on a wall that stops at a height.
func (m mixer) top() *survey.Top {
	t := &survey.Top{Kind: oneOf(m, "kind of top", "ledge", "seat", "cap", "curb"), Depth: m.say("200", "8"), Corner: oneOf(m, "edge of the top", "", "lap", "mitre", "profile")}
	if m.yes("a slab") {
		t.Face = survey.InsideFace{Slab: m.say("20", "3/4")}
	}
	return t
}

// strip stands a strip up a wall, from base to head or from or to a height.
func (m mixer) strip(w *survey.Wall) {
	s := survey.Strip{Name: "strip", Columns: m.number("columns", 1, 3), Tile: survey.Tile{Width: m.say("48", "2"), Height: m.say("60", "2 3/8")},
		Middle: survey.Mark{From: m.say("350", "14"), To: m.say("450", "17")}}
	if m.yes("measured strip") {
		s.Middle = survey.Mark{At: m.say("400", "16")}
	}
	if m.yes("strip from a height") {
		s.Bottom = &survey.Mark{From: m.say("-300", "-12"), To: m.say("-200", "-8")}
	}
	if m.yes("strip to a height") {
		s.Top = &survey.Mark{At: m.say("100", "4")}
	}
	w.Strips = append(w.Strips, s)
}

// inside gives a niche an inside, with a back of its own.
func (m mixer) inside(o *survey.Opening) {
	if o.Kind != string(survey.Niche) || !m.yes("inside") {
		return
	}
	o.Inside = &survey.Inside{Depth: m.say("90", "3 1/2")}
	if m.yes("another back") {
		b := m.bond("bond of the back")
		o.Inside.Back = survey.InsideFace{Tile: &survey.Tile{Width: m.say("48", "2"), Height: m.say("48", "2")}, Bond: &b}
	}
}

// Bands, trim, patterns, insides of niches and fixtures go together as they come: a
// job that has them is refused by its fields, or laid out, and the same each time.
func TestPartsOfRealShowersGoTogether(t *testing.T) {
	jobs := shippedJobs(t)
	names := slices.DeleteFunc(slices.Sorted(maps.Keys(jobs)), func(name string) bool { return name == "mosaic.json" || len(jobs[name]) > 8000 })
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(names).Draw(t, "job")
		job, err := survey.Read(jobs[name])
		require.NoError(t, err)
		mixer{byRapid{t}, job.Units == "in"}.mix(&job)
		if _, faults := job.Resolve(); len(faults) > 0 {
			return
		}
		plan, err := layout.Now(job)
		require.NoError(t, err)
		file, err := plan.File()
		require.NoError(t, err)
		require.True(t, json.Valid(file))
		again, err := layout.Now(job)
		require.NoError(t, err)
		twice, err := again.File()
		require.NoError(t, err)
		require.Equal(t, string(file), string(twice))
	})
}
