package layout_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout"
	"coursewright/layout/survey"
)

// topDoc is the top of a wall as a job file has it, and planTopDoc as a plan file has it.
type topDoc struct {
	Kind   string `json:"kind"`
	Gap    string `json:"gap"`
	Behind string `json:"behind"`
	Depth  string `json:"depth"`
	Right  string `json:"right"`
	Corner string `json:"corner"`
	Laps   string `json:"laps"`
	Face   struct {
		Tile json.RawMessage `json:"tile"`
		Bond json.RawMessage `json:"bond"`
		Slab string          `json:"slab"`
	} `json:"face"`
}

type planTopDoc struct {
	Region [][][2]float64 `json:"region"`
	Pieces []pieceDoc     `json:"pieces"`
	Runs   []planRunDoc   `json:"runs"`
}

// top reads the top of wall i as a room of one wall, where the wall's bond goes on upon it;
// nil where there is none. Its base is the front and its head the back. Along an open edge
// tile ends where its region does; where it meets a wall it keeps the soft joint.
func (j *judge) top(t require.TestingT, i int) *judge {
	doc, top := j.job.Walls[i], j.plan.Walls[i].Top
	if top == nil || doc.Top.Face.Tile != nil || doc.Top.Face.Bond != nil || doc.Top.Face.Slab != "" || doc.Top.Behind == "corner" {
		return nil
	}
	left, right := math.Inf(1), math.Inf(-1)
	low, back := math.Inf(1), map[float64]float64{} // by x, how deep the region is
	for _, ring := range top.Region {
		for _, c := range ring {
			x, y := units(c[0]), units(c[1])
			left, right, low = min(left, x), max(right, x), min(low, y)
			back[x] = max(back[x], y)
		}
	}
	gap := j.joint
	if doc.Top.Gap != "" {
		gap = j.said(doc.Top.Gap)
	}
	mm := func(at float64) string { return fmt.Sprintf("%.6f mm", at/perMM) }
	end := func(e endDoc, at float64) endDoc {
		if e.Meets != "" {
			return endDoc{Meets: "corner", Gap: mm(gap)}
		}
		return endDoc{Stops: &markDoc{At: mm(at)}}
	}
	wide := right
	if doc.Right.Meets != "" {
		wide += gap
	}
	if doc.Left.Meets != "" {
		require.Equal(t, gap, left, "the soft joint at the left end of the top of %s", doc.Name)
	}
	behind, openBack := gap, false
	if doc.Top.Kind == "curb" || doc.Top.Kind == "cap" {
		behind, openBack = j.sealant, true
	}
	flat := wallDoc{Name: "top of " + doc.Name, Width: mm(wide), Left: end(doc.Left, left), Right: end(doc.Right, right)}
	front, depth := `{"meets": "seat", "gap": %q, "readings": [{"at": "0", "drop": %q}]}`, `{"meets": "wall", "gap": %q, "readings": [{"at": %q, "rise": %q}, {"at": %q, "rise": %q}]}`
	require.NoError(t, json.Unmarshal(fmt.Appendf(nil, "["+front+"]", mm(j.sealant), mm(j.sealant-low)), &flat.Base))
	require.NoError(t, json.Unmarshal(fmt.Appendf(nil, depth, mm(behind), mm(left), mm(back[left]+behind), mm(right), mm(back[right]+behind)), &flat.Head))
	sub := *j
	sub.walls, sub.tops = nil, nil
	sub.job.Walls = []wallDoc{flat}
	sub.plan.Course.Line = math.Inf(1)
	plan := planWallDoc{Name: flat.Name, Pieces: top.Pieces, Runs: slices.Clone(top.Runs)}
	for _, p := range top.Pieces {
		if p.Tile[1] < sub.plan.Course.Line {
			sub.plan.Course.Line, plan.Start.X, plan.Start.Is = p.Tile[1], p.Tile[0], "edge"
		}
	}
	less := low - units(sub.plan.Course.Line)
	require.True(t, less <= 1 || doc.Top.Corner != "lap" && doc.Top.Corner != "" || doc.Top.Laps == "front", "the front row of the top of %s shows no cut", doc.Name)
	if back[left] == back[right] && less > 1 { // else the front row is whole; here it is cut as the last one is
		require.InDelta(t, j.height-less, math.Mod(back[left]-low+less, j.height+j.joint), 2, "first and last row of the top of %s", doc.Name)
	}
	for k := range plan.Runs {
		r := &plan.Runs[k]
		r.Edges = slices.Clone(r.Edges)
		for n, e := range r.Edges {
			r.Edges[n] = map[string]string{"front": "base 0", "back": "head"}[e]
			if r.Edges[n] == "" {
				r.Edges[n] = e
			}
		}
	}
	plan.Marks = marks{"end left": left / perMM, "end right": right / perMM}
	sub.plan.Walls = []planWallDoc{plan}
	if sub.plumb { // plumb joints go on upon a top, the rows of columns do not
		sub.plumb, sub.num, sub.den = false, 0, 1
	}
	sub.walls = []judgedWall{sub.wall(0)}
	for k := range sub.walls[0].limits { // nothing is sealed along an open edge
		if l := &sub.walls[0].limits[k]; l.name == "base 0" || l.name == "head" && openBack {
			l.meets = false
		}
	}
	sub.pieces(t, 0)
	sub.runs(0)
	return &sub
}

// onTops adds what is judged of tops: all that their pieces are, and their ends.
func (j *judge) onTops(m *terms) {
	for _, top := range j.tops {
		w := &top.walls[0]
		top.sighted(w, &m.sight, false)
		m.exposed += top.exposed(w)
		m.mirror += top.mirror(w)
		m.work += top.work(w)
	}
}

// TestPlansStateTheMeritOfTheirTops reads showers with a bench and a curb, of any depth and
// edge, with tiles of many sizes, as the pieces on their walls and tops have it.
func TestPlansStateTheMeritOfTheirTops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := toppedJob(t)
		doc, err := json.Marshal(job)
		require.NoError(t, err)
		plan := planned(t, doc)
		statesItsMerit(t, doc, plan)
		j := judged(t, doc, plan)
		says := func(what string) string { return what + "\n" + string(doc) }
		for _, top := range j.tops {
			top.standsInTheBond(t, 0, says)
			top.measuresAlike(t, 0, says)
			top.sameTopRuns(t, says)
		}
	})
}

// Where a shower with tops is proven, no start of a low wall at a mark of the tape is better.
func TestNoStartBeatsAWallWithItsTop(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := toppedJob(t)
		found, err := layout.Now(job)
		require.NoError(t, err)
		if !found.Setout.Proven {
			t.Skip("not proven")
		}
		pins := map[string]survey.WallPin{}
		for _, w := range job.Walls {
			pins[w.Name] = survey.WallPin{Edge: fmt.Sprintf("%d/16", rapid.IntRange(0, 16*14).Draw(t, "start of "+w.Name))}
		}
		job.Pins.Walls = pins
		pinned, err := layout.Now(job)
		require.NoError(t, err)
		require.False(t, found.Setout.Order.Better(&pinned.Setout.Merit, &found.Setout.Merit), "%v", pins)
	})
}

// sameTopRuns wants the runs of a top as they are here, whatever its classes are called.
func (j *judge) sameTopRuns(t require.TestingT, says func(string) string) {
	sizes := func(of func(add func(way string, edges []string, least float64))) (out []string) {
		of(func(way string, edges []string, least float64) {
			edges = slices.Clone(edges)
			slices.Sort(edges)
			out = append(out, fmt.Sprintf("%s %v %.1f", way, edges, least))
		})
		slices.Sort(out)
		return out
	}
	here := sizes(func(add func(string, []string, float64)) {
		for _, r := range j.walls[0].runs {
			add(wayNames[r.way], r.edges, r.least/perMM)
		}
	})
	there := sizes(func(add func(string, []string, float64)) {
		for _, r := range j.plan.Walls[0].Runs {
			add(r.Way, r.Edges, r.Least)
		}
	})
	require.Equal(t, here, there, says("runs of "+j.walls[0].found.Name))
}

// toppedJob is a bench between two walls and a half wall with a cap, drawn at random: one
// end of each may be free.
func toppedJob(t *rapid.T) survey.Job {
	sixteenths := func(name string, low, high int) string {
		return fmt.Sprintf("%d/16", rapid.IntRange(16*low, 16*high).Draw(t, name))
	}
	job := survey.Job{Format: "coursewright-job/1", Units: "in", Joint: survey.Measure{Plain: "1/8"}, Bed: "3/16",
		Tile: survey.Tile{Width: sixteenths("tile wide", 3, 13), Height: sixteenths("tile high", 2, 7), Thickness: "5/16"},
		Bond: survey.Bond{Kind: "running", Offset: rapid.SampledFrom([]string{"1/2", "1/3"}).Draw(t, "offset"), Hand: "left"}}
	if rapid.Bool().Draw(t, "stack") {
		job.Bond = survey.Bond{Kind: "stack"}
	}
	if rapid.Bool().Draw(t, "columns") {
		job.Bond.Along = "plumb"
	}
	for n := range rapid.IntRange(1, 2).Draw(t, "walls") {
		name := fmt.Sprintf("low %d", n)
		width, high := rapid.IntRange(14, 60).Draw(t, "width"), rapid.IntRange(8, 40).Draw(t, "high")
		w := survey.Wall{Name: name, Width: fmt.Sprint(width), Left: survey.End{Meets: "wall", Gap: "1/8"}, Right: survey.End{Meets: "wall", Gap: "1/8"},
			Base: []survey.Segment{{Meets: "shower base", Gap: "1/8", Readings: []survey.Drop{{At: "0", Drop: "48"}}}},
			Head: survey.Head{Stops: &survey.Mark{At: fmt.Sprint(high - 48)}},
			Top: &survey.Top{Kind: rapid.SampledFrom(survey.TopKinds()).Draw(t, "kind"), Depth: sixteenths("deep", 4, 18),
				Corner: rapid.SampledFrom([]string{"", "mitre", "bullnose"}).Draw(t, "corner")}}
		if rapid.Bool().Draw(t, "free end") {
			w.Right = survey.End{Stops: &survey.Mark{At: fmt.Sprint(width)}, Finish: "trim"}
		}
		if w.Top.Corner != "mitre" && rapid.Bool().Draw(t, "front laps") {
			w.Top.Laps = "front"
		}
		// What is bare along a back at a slant that is sealed is read in two ways, as along any rake.
		if k := survey.Kind(w.Top.Kind); (k == survey.CurbTop || k == survey.CapTop) && rapid.Bool().Draw(t, "slant") {
			w.Top.Right = sixteenths("deep right", 4, 18)
		}
		if rapid.Bool().Draw(t, "gap") {
			w.Top.Gap = rapid.SampledFrom([]string{"1/16", "3/16"}).Draw(t, "soft joint")
		}
		job.Walls = append(job.Walls, w)
	}
	if _, faults := job.Resolve(); len(faults) > 0 {
		t.Skip(faults.Error())
	}
	return job
}

// The ends of a cap by hand (common practice, no source). A half wall 30 1/8 in wide from a
// corner, stack bond of 6 by 6 in tile, joint 1/8: the exposed end takes a whole tile and the corner is cut.
// The cap laps over the end too, where its tile stands 1/2 in further out, so that with
// whole tiles at the wall's end a strip of 3/8 in would be left on the cap. Its start moves.
func TestATopIsJudgedWithItsWall(t *testing.T) {
	job := survey.Job{Format: "coursewright-job/1", Units: "in", Joint: survey.Measure{Plain: "1/8"}, Bed: "3/16",
		Tile: survey.Tile{Width: "6", Height: "6", Thickness: "5/16"}, Bond: survey.Bond{Kind: "stack"}}
	base := func(wide string) []survey.Segment {
		return []survey.Segment{{Meets: "shower base", Gap: "1/8", Readings: []survey.Drop{{At: "0", Drop: "40"}, {At: wide, Drop: "40"}}}}
	}
	turned, over := survey.End{Meets: "outside corner"}, survey.End{Meets: "outside corner", Corner: "lap", Laps: "right"}
	job.Walls = []survey.Wall{
		{Name: "half wall", Width: "30 1/8", Left: survey.End{Meets: "wall", Gap: "1/8"}, Right: over, Base: base("30 1/8"), Head: survey.Head{Stops: &survey.Mark{At: "-4"}}},
		{Name: "end", Width: "5", Left: turned, Right: survey.End{Stops: &survey.Mark{At: "5"}, Finish: "trim"}, Base: base("5"), Head: survey.Head{Stops: &survey.Mark{At: "-4"}, Finish: "trim"}},
	}
	without, err := layout.Now(job)
	require.NoError(t, err)
	job.Walls[0].Top = &survey.Top{Kind: "cap", Depth: "5 1/4", Corner: "lap"}
	with, err := layout.Now(job)
	require.NoError(t, err)
	require.NotEqual(t, without.Walls[0].Start.Edge, with.Walls[0].Start.Edge, "the start makes room for the cap")
	for _, p := range with.Walls[0].Top.Pieces {
		require.False(t, p.Sliver || p.Unworkable, "%s is %v wide", p.ID, p.Wide)
	}
	job.Pins.Walls = map[string]survey.WallPin{"half wall": {Edge: without.Walls[0].Start.Edge.MillimetreText() + " mm"}}
	pinned, err := layout.Now(job)
	require.NoError(t, err)
	require.True(t, with.Setout.Order.Better(&with.Setout.Merit, &pinned.Setout.Merit))
}
