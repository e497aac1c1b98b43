package layout_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// plan is the plan file as formats.md has it, read with nothing of the core.
type plan struct {
	Course struct {
		Line, Pitch float64
		Hand        string
	}
	Merit struct {
		Bare, Mirror                         float64 // mm
		Unworkable, Slivers, Openings, Built int
	}
	Smallest *struct {
		Wall, Piece  string
		Least, Share float64
	}
	Walls []planWall
}

type planWall struct {
	Name  string
	Start struct {
		X  float64
		Is string
	}
	Laid   string
	Region shape
	Marks  marks
	Pieces []planPiece
}

type planPiece struct {
	ID                       string
	Course                   int
	Whole, Sliver            bool
	Unworkable               bool
	Tile                     [4]float64
	Face                     shape
	Wide, High, Least, Share float64
}

type shape [][][2]float64

type marks map[string]any

func (m marks) at(name string) float64 {
	v, _ := m[name].(float64)
	return units(v)
}

// edges are left, bottom, right and top of a niche or window.
func (m marks) edges(name string) (e [4]float64) {
	v, _ := m[name].(map[string]any)
	for i, side := range [...]string{"left", "bottom", "right", "top"} {
		mm, _ := v[side].(float64)
		e[i] = units(mm)
	}
	return e
}

// units turns 0.001 mm back into the whole unit it was rounded from.
func units(mm float64) float64 { return math.Round(mm * perMM) }

// geometry is a plan's rings as one shape: outer rings counter-clockwise.
func (s shape) geometry(t require.TestingT) geom.Geometry {
	g := geom.Polygon{}.AsGeometry()
	for _, hole := range [...]bool{false, true} {
		for _, ring := range s {
			var c []xy
			for _, p := range ring {
				c = append(c, xy{units(p[0]), units(p[1])})
			}
			switch area := signed(c); {
			case area > 0 && !hole:
				g = must(geom.Union(g, polygon(c)))
			case area < 0 && hole:
				g = must(geom.Difference(g, polygon(c)))
			}
		}
	}
	return g
}

func signed(c []xy) (twice float64) {
	for i, a := range c {
		b := c[(i+1)%len(c)]
		twice += (a.x-c[0].x)*(b.y-c[0].y) - (b.x-c[0].x)*(a.y-c[0].y)
	}
	return twice
}

// planOf gives the plan file of a job, and reads it again.
func planOf(t require.TestingT, job survey.Job) (plan, []byte) {
	solved, err := layout.Now(job)
	require.NoError(t, err)
	file, err := solved.File()
	require.NoError(t, err)
	var p plan
	require.NoError(t, json.Unmarshal(file, &p))
	return p, file
}

// The plan file of every job that ships holds by formats.md alone.
func TestPlansOfTheShippedJobsHoldByTheContract(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			if testing.Short() && filepath.Base(file) == "mosaic.json" {
				t.Skip("a large wall")
			}
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			job, err := survey.Read(data)
			require.NoError(t, err)
			p, file := planOf(t, job)
			switch {
			case len(job.Bands) > 0: // rooms of several tiles: TestPatternsInFieldsBandsAndNichesMakeUpTheRoom
			case inCourses(job):
				check(t, job, p)
			default:
				checkLaid(t, file)
			}
			_, again := planOf(t, job)
			require.Equal(t, file, again, "the same job gives the same bytes")
		})
	}
}

// So does the plan file of any small job, set out anywhere.
func TestPlansOfRandomJobsHoldByTheContract(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := turned(t, pinned(t, randomJob(t)))
		typed, err := survey.Write(job)
		require.NoError(t, err)
		t.Logf("%s", typed)
		p, _ := planOf(t, job)
		check(t, job, p)
		require.Equal(t, said(job.Pins.Course.Line, job.Units), units(p.Course.Line), "a pinned line never moves")
		for _, w := range p.Walls {
			joint, half := said(job.Pins.Walls[w.Name].Joint, job.Units), math.Floor(roomOf(job).joint/2)
			require.Equal(t, joint+half, units(w.Start.X), "a pinned start never moves: its edge is half a joint on")
			require.Equal(t, "edge", w.Start.Is)
		}
	})
}

// check holds a plan against the oracle.
func check(t require.TestingT, job survey.Job, p plan) {
	r := roomOf(job)
	require.Len(t, p.Walls, len(job.Walls))
	ids := map[string]bool{}
	for i, w := range p.Walls {
		require.Equal(t, job.Walls[i].Name, w.Name, "walls in the order of the job")
		ranges(t, r, i, w)
		found := r.wall(i, w.Marks)
		region := w.Region.geometry(t)
		// A unit of rounding all the way round the wall.
		near(t, found.region, region, 960*960+found.region.Boundary().Length()+pipeSlack(found), "region of "+w.Name)
		inOrder(t, ids, w)
		checkPieces(t, r, p, w, found, region)
	}
}

// shareSlack is two units as a part of the tile: what rounding a raked edge may do.
func shareSlack(r room) float64 { return 4/min(r.width, r.height) + 1e-6 }

// pipeSlack is the area by which a ring of 64 sides round a circle may exceed it.
func pipeSlack(w wall) (area float64) {
	for _, p := range w.pipes {
		area += 0.004*math.Pi*p.r*p.r + 7*p.r*2
	}
	return area
}

// near holds two shapes to be the same but for a small area.
func near(t require.TestingT, want, got geom.Geometry, slack float64, what string) {
	apart := must(geom.SymmetricDifference(want, got)).Area()
	require.LessOrEqual(t, apart, slack, "%s: %.3f mm² apart of %.1f", what, apart/perMM/perMM, want.Area()/perMM/perMM)
}

// inOrder holds ids to be unique, and pieces to come by course and then in order.
func inOrder(t require.TestingT, ids map[string]bool, w planWall) {
	last, place := 0, 0
	for _, p := range w.Pieces {
		require.False(t, ids[p.ID], "%s twice", p.ID)
		ids[p.ID] = true
		require.GreaterOrEqual(t, p.Course, last, "%s comes by course", p.ID)
		if p.Course > last {
			last, place = p.Course, 0
		}
		place++
		require.Regexp(t, fmt.Sprintf(`^[A-Z]+-%02d-%02d$`, p.Course, place), p.ID)
	}
}

// trim is how far trim that stands inside a stop keeps tile from it.
func (r room) trim(name string) float64 {
	for _, t := range r.job.Trims {
		if t.Name == name && t.Place != "beyond" {
			return r.said(t.Width) + r.joint
		}
	}
	return 0
}

// underTop is how far under the finished edge of a top the tile of its wall ends: a joint
// under the back of the top's tile where that laps over it.
func (r room) underTop(top *survey.Top) float64 {
	if top == nil {
		return 0
	}
	thick := r.or(r.job.Tile.Thickness, "5/16", "8")
	if top.Face.Slab != "" {
		thick = r.said(top.Face.Slab)
	}
	boards := 0.0
	if top.Sizes == "lined" {
		boards = r.deep - r.or(r.job.Tile.Thickness, "5/16", "8") + thick
	}
	switch {
	case top.Corner == "mitre":
		return -boards
	case top.Corner == "profile" || top.Laps == "front":
		return r.trim(top.Trim) - boards
	}
	return thick + r.joint - boards
}

// ranges holds that no mark stands outside its range.
func ranges(t require.TestingT, r room, i int, w planWall) {
	within := func(m *survey.Mark, got float64, what string) {
		from, to := m.From, m.To
		if m.At != "" {
			from, to = m.At, m.At
		}
		require.True(t, got >= r.said(from) && got <= r.said(to), "%s of %s at %v mm, outside %s to %s", what, w.Name, got/perMM, from, to)
	}
	found := r.job.Walls[i]
	for _, e := range []struct {
		name string
		m    *survey.Mark
		edge float64 // from where tile ends to the finished edge
	}{{"end left", found.Left.Stops, -r.trim(found.Left.Trim)}, {"end right", found.Right.Stops, r.trim(found.Right.Trim)}, {"head", found.Head.Stops, r.trim(found.Head.Trim) + r.underTop(found.Top)}} {
		if e.m != nil {
			within(e.m, w.Marks.at(e.name)+e.edge, e.name)
		}
	}
	for _, o := range found.Openings {
		if o.Kind == "pipe" {
			continue
		}
		e := w.Marks.edges(o.Kind + " " + o.Name)
		within(o.Left, e[0], o.Name+" left")
		within(o.Width, e[2]-e[0], o.Name+" width")
		within(o.Bottom, e[1], o.Name+" bottom")
		within(o.Height.Mark, e[3]-e[1], o.Name+" height")
	}
}
