package bathroom

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// withParts gives a job a strip, a niche with an inside and trim in pieces and bars.
func withParts(j *survey.Job) {
	inches := func(in, mm string) string {
		if j.Units == "mm" {
			return mm
		}
		return in
	}
	j.Trims = []survey.TrimTile{{Name: "edge", Kind: string(survey.Bullnose), Width: inches("2", "50"), Length: inches("6", "150")},
		{Name: "bar", Kind: "profile", Width: inches("3/8", "10"), Length: inches("96", "2500")}}
	for i := range j.Walls {
		w := &j.Walls[i]
		if w.Head.Stops != nil {
			w.Head.Finish, w.Head.Trim = "", "edge"
		}
		for _, e := range []*survey.End{&w.Left, &w.Right} {
			if e.Stops != nil {
				e.Finish, e.Trim = "", "bar"
			}
		}
		for k := range w.Openings {
			if o := &w.Openings[k]; o.Kind == string(survey.Niche) {
				o.Inside = &survey.Inside{Depth: inches("3 1/2", "90")}
			}
		}
	}
	w := &j.Walls[0]
	w.Strips = []survey.Strip{{Name: "slate", Columns: 2, Middle: survey.Mark{At: inches("16", "400")},
		Tile: survey.Tile{Width: inches("1 7/8", "48"), Height: inches("1 7/8", "48")}}}
}

// What is on strips, inside niches and along edges is set too: each piece once, in the
// order of the trade, with a mark of its own that stays when other things change.
func TestStripsInsidesAndTrimHaveStepsAndMarks(t *testing.T) {
	plan := planOf(t, "alcove", withParts)
	o := orderOf(plan, page.Schedule(plan))
	want := map[string]bool{}
	for i := range plan.Walls {
		w := &plan.Walls[i]
		for _, p := range w.All() {
			want[p.ID] = true
		}
		for _, p := range w.Trim {
			want[p.ID] = true
		}
		for _, in := range w.Insides {
			for _, f := range in.Faces {
				for _, p := range f.Pieces {
					want[p.ID] = true
				}
			}
		}
	}
	marks, parts := map[string]string{}, map[stages.Part]int{}
	last := stages.Part(0)
	for _, s := range o.steps {
		require.GreaterOrEqual(t, s.Part, last)
		last = s.Part
		parts[s.Part]++
		for _, p := range s.Pieces {
			require.True(t, want[p.ID], "%s once", p.ID)
			delete(want, p.ID)
			require.Empty(t, marks[o.marks[p.ID]], "%s and %s", p.ID, marks[o.marks[p.ID]])
			marks[o.marks[p.ID]] = p.ID
			require.LessOrEqual(t, len(s.Pieces), s.of, p.ID)
		}
	}
	assert.Empty(t, want)
	for _, part := range []stages.Part{stages.Profiles, stages.OnBatten, stages.Upwards, stages.InStrip, stages.Within, stages.Edging} {
		assert.NotZero(t, parts[part], "part %d", part)
	}
	renamed := planOf(t, "alcove", func(j *survey.Job) {
		withParts(j)
		j.Walls[0].Strips[0].Name, j.Trims[0].Name = "another", "rim"
		for i := range j.Walls {
			if j.Walls[i].Head.Trim != "" {
				j.Walls[i].Head.Trim = "rim"
			}
		}
	})
	assert.Equal(t, o.marks, orderOf(renamed, page.Schedule(renamed)).marks, "names are no marks")
}

func TestStepsSayWhatTheyAreOn(t *testing.T) {
	plan := planOf(t, "alcove", withParts)
	b := bathroom{order: orderOf(plan, page.Schedule(plan)), set: map[string]bool{}}
	said := map[string]bool{}
	for at, s := range b.steps {
		var out Bathroom
		out.Plan, out.Wall = plan, s.Wall
		b.step(&out, at)
		require.NotNil(t, out.Drawing)
		require.NotEmpty(t, out.edges())
		said[out.where()], said[out.what()] = true, true
	}
	for _, text := range []string{"strip slate, row 2, all 2 pieces, from the start outwards", "2 whole tiles"} {
		assert.True(t, said[text], text)
	}
}

// The pieces of tops and of their trim are set too, each once, after the walls, with a
// mark of its own and its place on the top.
func TestTopsHaveStepsAndMarks(t *testing.T) {
	plan := planOf(t, "bench", func(*survey.Job) {})
	o := orderOf(plan, page.Schedule(plan))
	b := bathroom{order: o, set: map[string]bool{}}
	said, marks := map[string]bool{}, map[string]bool{}
	for at, s := range o.steps {
		var out Bathroom
		out.Plan, out.Wall = plan, s.Wall
		b.step(&out, at)
		require.NotNil(t, out.Drawing)
		said[out.where()], said[out.mitred()] = true, true
		for _, p := range s.Pieces {
			require.False(t, marks[o.marks[p.ID]], p.ID)
			marks[o.marks[p.ID]] = true
			if s.On != nil && s.Trim == nil {
				require.Equal(t, stages.OnTop, s.Part, p.ID)
				require.Contains(t, out.edges()[1].From, "behind the finished front edge")
			}
		}
	}
	for _, w := range plan.Walls {
		if w.Top == nil {
			continue
		}
		for _, p := range w.Top.Pieces {
			require.True(t, marks[o.marks[p.ID]], p.ID)
		}
		for _, p := range w.Top.Trim {
			require.True(t, marks[o.marks[p.ID]], p.ID)
		}
	}
	for _, text := range []string{"seat of bench, row 1, one of 5 pieces", "trim of the curb, the only piece", "Mitre B-T-01 front at 45°: the face stays full."} {
		assert.True(t, said[text], text)
	}
}
