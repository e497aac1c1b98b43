package survey_test

import (
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
)

// under is a wall of 60 in under a roof that rises from 20 in at its left to 60 in at its
// right, with a niche 12 in wide and 10 in high whose sill is at a height.
func under(left, bottom *survey.Mark, inside *survey.Inside) survey.Job {
	job := sketch("in", "a")
	job.Walls[0].Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: "20"}, {At: "60", Rise: "60"}}}
	job.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "shelf", Left: left, Width: mark("12"), Bottom: bottom,
		Height: &survey.Measure{Mark: mark("10")}, Inside: inside}}
	return job
}

// At 15 in from the left the roof is 30 in high: a niche there whose top is at 30 1/4 in, twice the
// doubt of 1/8 in over that, is asked about; one at 30 5/16 in is refused, if it is to be tiled inside.
func TestAnOpeningThroughTheCeilingIsRefused(t *testing.T) {
	boxed := &survey.Inside{Depth: "3 1/2"}
	free := &survey.Mark{From: "15", To: "30"}
	for _, c := range []struct {
		what string
		job  survey.Job
		want string
	}{
		{"under the ceiling", under(mark("15"), mark("20"), boxed), ""},
		{"through it by what may be wrong", under(mark("15"), mark("20 1/4"), boxed), ""},
		{"through it", under(mark("15"), mark("20 5/16"), boxed), "walls[0].openings[0].bottom: found niche shelf with its top at 30 5/16; write a top no higher than the ceiling over it, which is at 30 where it stands best, from 15"},
		{"through it, but with nothing inside", under(mark("15"), mark("40"), nil), ""},
		{"free, and under it further right", under(free, mark("29 1/2"), boxed), ""},
		{"free, and through it everywhere", under(free, mark("31"), boxed), "walls[0].openings[0].bottom: found niche shelf with its top at 41; write a top no higher than the ceiling over it, which is at 40 where it stands best, from 30"},
	} {
		_, faults := c.job.Resolve()
		if c.want == "" {
			assert.Empty(t, faults, c.what)
		} else if assert.Len(t, faults, 1, c.what) {
			assert.Equal(t, c.want, faults[0].String(), c.what)
		}
	}
}

// Under a ridge at 30 in, 60 in high over 20 in at both ends, a niche 12 in wide is as high as can
// be where its middle is under the ridge: 6 in beside it the roof is 60 - 6 × 40/30 = 52 in high.
func TestANicheUnderARidge(t *testing.T) {
	for bottom, fits := range map[string]bool{"42 1/4": true, "42 5/16": false} {
		job := under(&survey.Mark{From: "5", To: "40"}, mark(bottom), &survey.Inside{Depth: "3 1/2"})
		job.Walls[0].Head.Readings = []survey.Rise{{At: "0", Rise: "20"}, {At: "30", Rise: "60"}, {At: "60", Rise: "20"}}
		_, faults := job.Resolve()
		assert.Equal(t, fits, len(faults) == 0, "%s: %v", bottom, faults)
	}
}

// On a wall whose ceiling falls from 50 in at its left to 10 at its right, 40 in further, a
// fixture is refused where it would stand through the ceiling by more than twice the doubt.
func TestAFixtureThroughTheCeilingIsRefused(t *testing.T) {
	at := func(h string) survey.Measure { return survey.Measure{Plain: h} }
	for _, c := range []struct {
		what    string
		fixture survey.Fixture
		want    string
	}{
		{"a shelf under it", survey.Fixture{Kind: "corner shelf", Corner: "right", Width: "8", Height: at("10")}, ""},
		{"a shelf through it", survey.Fixture{Kind: "corner shelf", Corner: "right", Width: "8", Height: at("10 5/16")},
			"height: found s with its top at 10 5/16; write a top no higher than the ceiling over it, which is at 10"},
		{"a shelf whose range begins under it", survey.Fixture{Kind: "corner shelf", Corner: "right", Width: "8", Height: survey.Measure{Mark: &survey.Mark{From: "8", To: "20"}}}, ""},
		{"in the left corner it may stand 8 in lower than the ceiling there", survey.Fixture{Kind: "foot rest", Corner: "left", Width: "8", Height: at("42 5/16")},
			"height: found s with its top at 42 5/16; write a top no higher than the ceiling over it, which is at 42"},
		{"a dish 4 in high, its right end 33 in along", survey.Fixture{Kind: "soap dish", At: "30", Width: "6", High: "4", Height: at("15 1/4")}, ""},
		{"a dish through it", survey.Fixture{Kind: "soap dish", At: "30", Width: "6", High: "4", Height: at("15 5/16")},
			"height: found s with its top at 17 5/16; write a top no higher than the ceiling over it, which is at 17"},
		{"a bar whose right plate is 32 in along", survey.Fixture{Kind: "grab bar", At: "20", Width: "24", Height: at("19")},
			"height: found s with its top at 19; write a top no higher than the ceiling over it, which is at 18"},
		{"a hole of a glass line 20 in along", survey.Fixture{Kind: "glass line", At: "20", Holes: []survey.Drilled{{Height: "30"}, {Height: "31"}}},
			"holes[1].height: found 31; write a height under the ceiling, which is at 30 over s"},
	} {
		job := sketch("in", "a")
		w := &job.Walls[0]
		w.Width, w.Right = "40", survey.End{Meets: "corner"}
		w.Base[0].Readings = drops("0", "40")
		w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: "50"}, {At: "40", Rise: "10"}}}
		c.fixture.Name = "s"
		if c.fixture.Corner == "left" {
			w.Left = survey.End{Meets: "corner"}
		}
		w.Fixtures = []survey.Fixture{c.fixture}
		refused(t, c.what, job, "walls[0].fixtures[0].", c.want)
	}
}

// refused checks the one fault of a job, at a field under a path, or that there is none.
func refused(t *testing.T, what string, job survey.Job, under, want string) {
	t.Helper()
	_, faults := job.Resolve()
	if want == "" {
		assert.Empty(t, faults, what)
	} else if assert.Len(t, faults, 1, what) {
		assert.Equal(t, under+want, faults[0].String(), what)
	}
}

// A bench or a half wall cannot stand higher than the ceiling goes where it stands: in the
// corner with the wall it begins at, or, where it meets the run of walls, anywhere.
func TestATopThroughTheCeilingIsRefused(t *testing.T) {
	roofed := func(spoil func(back, front *survey.Wall)) survey.Job {
		job := sketch("in", "back", "front")
		back, front := &job.Walls[0], &job.Walls[1]
		back.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: "50"}, {At: back.Width, Rise: "10"}}}
		back.Right = survey.End{Meets: "corner"}
		front.Left, front.Right = survey.End{Meets: "wall"}, survey.End{Meets: "wall"}
		front.Top = &survey.Top{Kind: "seat", Depth: "16", Corner: "mitre"}
		spoil(back, front)
		return job
	}
	for _, c := range []struct {
		what  string
		spoil func(back, front *survey.Wall)
		want  string
	}{
		{"a bench no higher than the highest of the ceiling", func(_, f *survey.Wall) { f.Head = survey.Head{Stops: mark("50 1/4")} }, ""},
		{"a bench over it", func(_, f *survey.Wall) { f.Head = survey.Head{Stops: mark("50 5/16")} },
			"at: found the seat of front at 50 5/16; write a height no higher than the ceiling, which is at 50 at its highest, on back"},
		{"a bench beside a wall on which tile stops, so that nobody knows of a ceiling", func(b, f *survey.Wall) {
			b.Head, f.Head = survey.Head{Stops: mark("50")}, survey.Head{Stops: mark("60")}
		}, ""},
		{"a cap no higher than the ceiling in its corner", func(_, f *survey.Wall) {
			f.Head, f.Left, f.Top.Kind = survey.Head{Stops: mark("10 1/4")}, survey.End{Meets: "corner"}, "cap"
		}, ""},
		{"a cap over it", func(_, f *survey.Wall) {
			f.Head, f.Left, f.Top.Kind = survey.Head{Stops: mark("10 5/16")}, survey.End{Meets: "corner"}, "cap"
		}, "at: found the cap of front at 10 5/16; write a height no higher than the ceiling, which is at 10 in the corner with back"},
		{"a free height from under it", func(_, f *survey.Wall) {
			f.Head, f.Left, f.Top.Kind = survey.Head{Stops: free("8", "12")}, survey.End{Meets: "corner"}, "cap"
		}, ""},
		{"a free height over it", func(_, f *survey.Wall) {
			f.Head, f.Left, f.Top.Kind = survey.Head{Stops: free("11", "12")}, survey.End{Meets: "corner"}, "cap"
		}, "from: found the cap of front at 11; write a height no higher than the ceiling, which is at 10 in the corner with back"},
		{"round an outside corner", func(b, f *survey.Wall) {
			b.Right = survey.End{Meets: "outside corner", Corner: "mitre"}
			f.Head, f.Left, f.Top.Kind = survey.Head{Stops: mark("20")}, survey.End{Meets: "outside corner"}, "curb"
		}, "at: found the curb of front at 20; write a height no higher than the ceiling, which is at 10 in the corner with back"},
	} {
		refused(t, c.what, roofed(c.spoil), "walls[1].head.stops.", c.want)
	}
}

// Where the wall behind a bench has no room between seat and ceiling the fault names the seat.
func TestASeatUnderTheCeiling(t *testing.T) {
	job := sketch("in", "a")
	job.Walls[0].Base[0].Meets = "seat"
	job.Walls[0].Head = survey.Head{Meets: "ceiling", Gap: "1/8", Readings: []survey.Rise{{At: "0", Rise: "10"}, {At: "60", Rise: "-41"}}}
	_, faults := job.Resolve()
	if assert.NotEmpty(t, faults) {
		assert.Contains(t, faults[0].String(), "where the seat with its gap stands at")
	}
}
