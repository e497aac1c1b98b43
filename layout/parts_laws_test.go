package layout_test

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/piece"
	laid "coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// crowd puts several parts of real showers into a job at once, beyond what mix does: legs
// by themselves, niches between studs, bars and a glass line, a bench in a corner.
func (m mixer) crowd(j *survey.Job) {
	m.mix(j)
	for i := range j.Walls {
		w := &j.Walls[i]
		w.Laid = oneOf(m, "laid", "", "", "single", "bond")
		for k := range w.Base {
			if s := &w.Base[k]; s.Meets == string(survey.Floor) && len(w.Base) > 1 {
				s.Leg = oneOf(m, "leg", "", "single", "none", "best")
			}
		}
		if len(w.Openings) == 0 && m.yes("a niche") {
			o := survey.Opening{Kind: string(survey.Niche), Name: "shelf", Width: &survey.Mark{At: m.say("300", "12")}, Left: &survey.Mark{From: m.say("250", "10"), To: m.say("500", "20")},
				Bottom: &survey.Mark{From: m.say("-100", "-4"), To: m.say("200", "8")}, Height: &survey.Measure{Mark: &survey.Mark{From: m.say("250", "10"), To: m.say("400", "16")}}}
			m.inside(&o)
			w.Openings = append(w.Openings, o)
		}
		if m.yes("bar") {
			w.Fixtures = append(w.Fixtures, survey.Fixture{Kind: string(survey.GrabBar), Name: "bar", At: m.say("300", "12"), Width: m.say("400", "16"),
				Height: survey.Measure{Mark: &survey.Mark{From: m.say("-200", "-8"), To: m.say("200", "8")}}})
		}
	}
	n := len(j.Walls)
	for i := range n - 1 {
		if j.Walls[i].Right.Meets == string(survey.Corner) && j.Walls[i+1].Left.Meets == string(survey.Corner) && m.yes("a bench in the corner") {
			gap := m.say("3", "1/8")
			j.Walls = append(j.Walls, survey.Wall{Name: "corner bench", Width: m.say("679", "26 11/16"), Left: survey.End{Meets: "wall", Gap: gap}, Right: survey.End{Meets: "wall", Gap: gap},
				Base: []survey.Segment{{Meets: string(survey.ShowerBase), Gap: gap, Readings: []survey.Drop{{At: "0", Drop: m.say("1000", "40")}}}},
				Head: survey.Head{Stops: &survey.Mark{At: m.say("-550", "-22")}},
				Top:  &survey.Top{Kind: string(survey.SeatTop), Behind: "corner", Depth: m.say("480", "18 7/8"), Corner: oneOf(m, "its edge", "", "mitre", "bullnose")}})
			return
		}
	}
}

// place is a field of the job file with its wall and its part: "walls[1].strips[0].middle".
var place = regexp.MustCompile(`^(?:walls\[(\d+)\]\.)?([a-z]+)(?:\[(\d+)\])?(?:\.([a-z]+))?`)

// relent takes the part away that a fault names, so that the others may be tried.
func relent(j *survey.Job, f survey.Fault, was survey.Job) bool {
	at := place.FindStringSubmatch(string(f.Path))
	if at == nil {
		return false
	}
	k, _ := strconv.Atoi(at[3])
	if at[1] == "" {
		switch at[2] {
		case "bands":
			j.Bands = nil
		case "bond", "tile":
			j.Bond, j.Tile = was.Bond, was.Tile
		default:
			return false
		}
		return true
	}
	i, _ := strconv.Atoi(at[1])
	w := &j.Walls[i]
	switch at[2] {
	case "strips":
		w.Strips = nil
	case "fixtures":
		w.Fixtures = slices.Delete(w.Fixtures, k, k+1)
	case "openings":
		w.Openings = slices.Delete(w.Openings, k, k+1)
	case "laid":
		w.Laid = ""
	case "top":
		w.Top = nil
	case "head":
		if w.Head.Finish == "" && w.Head.Trim == "" {
			return false
		}
		w.Head.Finish, w.Head.Trim = "", ""
	case "base":
		w.Base[k].Leg, w.Base[k].Trim = "", ""
	default:
		return false
	}
	return true
}

// Rooms in which several parts meet: a job is refused by its fields, or every piece stands
// within its region and off the others by a general geometry library (simplefeatures),
// is whole or in one line of the cut schedule, is set once, and is bought; and what the plan
// prints can be pinned as it is printed.
func TestCrowdedRoomsKeepTheLaws(t *testing.T) {
	jobs := shippedJobs(t)
	names := slices.DeleteFunc(slices.Sorted(maps.Keys(jobs)), func(name string) bool { return name == "mosaic.json" || len(jobs[name]) > 8000 })
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 12) {
			return
		}
		name := rapid.SampledFrom(names).Draw(t, "job")
		job, err := survey.Read(jobs[name])
		require.NoError(t, err)
		was := job
		mixer{byRapid{t}, job.Units == "in"}.crowd(&job)
		for n := 0; ; n++ {
			_, faults := job.Resolve()
			if len(faults) == 0 {
				break
			}
			if n > 20 || !relent(&job, faults[0], was) {
				return
			}
		}
		p, printed := printOf(t, job)
		text := string(mustWrite(job))
		for i := range p.Walls {
			piecesMakeUp(t, &p.Walls[i])
			for _, f := range p.Walls[i].Folded() {
				if !f.Slab { // a slab runs under what stands on it
					piecesMakeUp(t, &f.Wall)
				}
			}
		}
		accounted(t, p, text)
		job.Pins = printed.pins(t)
		_, faults := job.Resolve()
		require.Empty(t, faults, text)
		again, _ := printOf(t, job)
		require.Equal(t, p.Setout.Line, again.Setout.Line, text)
		for i, w := range p.Walls {
			require.Equal(t, w.Start.Edge, again.Walls[i].Start.Edge, "%s\n%s", w.Found.Name, text)
			require.Equal(t, w.Start.Placed, again.Walls[i].Start.Placed, "%s\n%s", w.Found.Name, text)
			require.Equal(t, ids(w.Pieces), ids(again.Walls[i].Pieces), "%s\n%s", w.Found.Name, text)
		}
	})
}

func ids(pieces []piece.Piece) (out []string) {
	for _, p := range pieces {
		out = append(out, p.ID)
	}
	return out
}

// accounted holds the cut schedule, the steps of setting and what is bought to the pieces.
func accounted(t require.TestingT, p layout.Plan, text string) {
	s := cuts.Of(cuts.Input{Room: p.Room, Walls: p.Walls}, cuts.Usual(p.Room.Units))
	lines, set := map[string]int{}, map[string]int{}
	for _, g := range s.Groups {
		for _, id := range g.Pieces {
			lines[id]++
		}
	}
	for _, step := range stages.Order(stages.Input{Room: p.Room, Walls: p.Walls, Cuts: s}) {
		for _, q := range step.Pieces {
			set[q.ID]++
		}
	}
	whole, seen := 0, map[string]bool{}
	flat := func(*laid.Face) bool { return true }
	for _, w := range laid.Flat(p.Walls, flat) {
		for _, q := range w.Pieces {
			require.False(t, seen[q.ID], "%s twice\n%s", q.ID, text)
			seen[q.ID] = true
			require.Equal(t, 1, set[q.ID], "%s is set once\n%s", q.ID, text)
			if !q.Whole {
				require.Equal(t, 1, lines[q.ID], "%s stands in one line\n%s", q.ID, text)
			} else {
				require.Zero(t, lines[q.ID], "%s is whole\n%s", q.ID, text)
			}
		}
	}
	for _, w := range laid.Flat(p.Walls, func(f *laid.Face) bool { return f.OfRoom(p.Room) }) {
		for _, q := range w.Pieces {
			if q.Whole {
				whole++
			}
		}
	}
	buy := takeoff.Of(takeoff.Input{Room: p.Room, Walls: p.Walls, Cuts: s.Offcuts, Others: s.Others}, takeoff.Usual(p.Room.Units))
	require.Equal(t, whole, buy.Whole, text)
}
