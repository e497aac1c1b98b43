package layout_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// exactly writes a length, in units of 1/960 mm, so that it reads back as itself.
func exactly(n float64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, rest := math.Floor(n/perMM), math.Mod(n, perMM)
	if rest == 0 {
		return fmt.Sprintf("%s%.0f mm", sign, whole)
	}
	return fmt.Sprintf("%s%.0f %.0f/960 mm", sign, whole, rest)
}

// pinning is what is pinned of one room.
type pinning struct {
	line   string
	starts map[string]object // by wall
}

// pinned gives the job with pins.
func (p pinning) on(t require.TestingT, job []byte) []byte {
	var doc object
	require.NoError(t, json.Unmarshal(job, &doc))
	pins := object{}
	if len(p.starts) > 0 {
		pins["walls"] = p.starts
	}
	if p.line != "" {
		pins["course"] = object{"line": p.line}
	}
	doc["pins"] = pins
	out, err := json.Marshal(doc)
	require.NoError(t, err)
	return out
}

// lines are the course lines people know by name, and slips of the one found.
func (j *judge) lines() (out []float64) {
	found := units(j.plan.Course.Line)
	for _, marks := range [...]float64{0, -2, -1, 1, 2} {
		out = append(out, found+marks*j.tape)
	}
	for _, w := range j.walls {
		for _, l := range w.limits {
			if l.way != wayUp {
				continue
			}
			low := math.Inf(1)
			for _, c := range l.chain {
				low = min(low, math.Round(c.y))
			}
			if l.side < 0 {
				low -= j.height
			}
			out = append(out, low)
		}
		for _, h := range w.holes {
			out = append(out, h.bottom-j.height, h.top)
		}
	}
	return out
}

// starts are the ways to begin a wall that people know by name: a joint or a
// tile on the middle of the tile field, in running bond the quarter point
// between them, a full tile at either end.
func (j *judge) starts(w *judgedWall) []object {
	middle := w.middle()
	quarter := (j.width + j.joint) / 4
	out := []object{{"joint": exactly(math.Floor(middle))}, {"tile": exactly(math.Floor(middle))},
		{"edge": exactly(w.left)}, {"edge": exactly(w.right - j.width)}}
	if j.den > 1 {
		out = append(out, object{"joint": exactly(math.Floor(middle - quarter))}, object{"joint": exactly(math.Floor(middle + quarter))})
	}
	return out
}

// onTape is a tile edge at a mark of the tape on a wall.
func (j *judge) onTape(t *rapid.T, w *judgedWall) object {
	mark := rapid.IntRange(0, int((j.width+j.joint)/j.tape)).Draw(t, "mark")
	return object{"edge": exactly((math.Ceil(w.left/j.tape) + float64(mark)) * j.tape)}
}

// marks pins free ends, heads and openings of a wall at marks of the tape.
func (j *judge) marks(t *rapid.T, w *judgedWall) object {
	out := object{}
	mark := func(m *markDoc, what string) float64 {
		from, to := j.span(m)
		steps := int((to - math.Ceil(from/j.tape)*j.tape) / j.tape)
		if from == to || steps < 0 {
			return from
		}
		return (math.Ceil(from/j.tape) + float64(rapid.IntRange(0, steps).Draw(t, what))) * j.tape
	}
	pin := func(name string, m *markDoc) {
		if m != nil && j.free(m) {
			out[name] = exactly(mark(m, name))
		}
	}
	pin("end left", w.found.Left.Stops)
	pin("end right", w.found.Right.Stops)
	pin("head", w.found.Head.Stops)
	for _, h := range w.holes {
		for _, d := range [...]struct {
			place, size *markDoc
			low, high   string
		}{{h.doc.Left, h.doc.Width, " left", " right"}, {h.doc.Bottom, h.doc.tall(), " bottom", " top"}} {
			if j.free(d.place) || j.free(d.size) {
				low := mark(d.place, h.name+d.low)
				out[h.name+d.low], out[h.name+d.high] = exactly(low), exactly(low+mark(d.size, h.name+d.high))
			}
		}
	}
	return out
}

// pins draws one way to pin a room: a line, starts on some or all walls, and
// marks at times.
func (j *judge) pins(t *rapid.T) pinning {
	p := pinning{starts: map[string]object{}}
	lines := j.lines()
	switch rapid.SampledFrom([]string{"classic", "classic", "on the tape", "free"}).Draw(t, "line") {
	case "classic":
		p.line = exactly(rapid.SampledFrom(lines).Draw(t, "line at"))
	case "on the tape":
		p.line = exactly((math.Floor(lines[0]/j.tape) + float64(rapid.IntRange(0, int((j.height+j.joint)/j.tape)).Draw(t, "mark of the line"))) * j.tape)
	}
	marks := rapid.IntRange(0, 2).Draw(t, "marks pinned") == 0
	for i := range j.walls {
		w := &j.walls[i]
		start := object{}
		switch rapid.SampledFrom([]string{"classic", "classic", "on the tape", "free"}).Draw(t, "start") {
		case "classic":
			start = maps.Clone(rapid.SampledFrom(j.starts(w)).Draw(t, "start at"))
		case "on the tape":
			start = j.onTape(t, w)
		}
		if marks {
			if at := j.marks(t, w); len(at) > 0 {
				start["marks"] = at
			}
		}
		if len(start) > 0 {
			p.starts[w.found.Name] = start
		}
	}
	return p
}

// No pinned set-out beats the free one: whatever is pinned, the free solve is
// no worse by the order of merit.
func TestNoPinsBeatTheFreeSetOut(t *testing.T) {
	jobs := shippedJobs(t)
	// A base read steeper than 45° is no rake, and its runs are not those of the plan.
	delete(jobs, "dubious-sign-error-mid-reading.json")
	for _, name := range slices.Sorted(maps.Keys(jobs)) {
		job := jobs[name]
		if strings.Contains(string(job), `"pins"`) || strings.Contains(string(job), `"set"`) {
			continue
		}
		t.Run(name, func(t *testing.T) {
			free := judged(t, job, freePlan(t, name, job))
			rapid.Check(t, func(t *rapid.T) {
				if rare(t, 20) {
					free.noWorse(t, job, free.pins(t))
				}
			})
		})
	}
	t.Run("random rooms", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) {
			if !rare(t, 10) {
				return
			}
			job := rooms.Draw(t, "room")
			free := judged(t, job, planned(t, job))
			if !free.plan.Proven {
				return // of a room of chance that is not proven nothing is promised but the bound
			}
			for range 3 {
				free.noWorse(t, job, free.pins(t))
			}
		})
	})
}

// Set-outs known to be better than what once was found are no better now.
func TestTheFreeSetOutIsAsGoodAsTheKnownOne(t *testing.T) {
	files, err := filepath.Glob("../testdata/cases/*-pinned.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			pinned, err := os.ReadFile(file)
			require.NoError(t, err)
			job, err := os.ReadFile(strings.Replace(file, "-pinned", "", 1))
			require.NoError(t, err)
			free := judged(t, job, freePlan(t, strings.Replace(filepath.Base(file), "-pinned", "", 1), job))
			free.isNoWorseThan(t, pinned)
		})
	}
}

func (j *judge) noWorse(t require.TestingT, job []byte, pins pinning) {
	pinned := pins.on(t, job)
	if !accepted(pinned) { // pins that clash
		return
	}
	j.isNoWorseThan(t, pinned)
}

// isNoWorseThan wants the free set-out no worse than a pinned one. One that is
// not proven may be worse, but not in what spoils a wall: terms 1 to 4.
func (j *judge) isNoWorseThan(t require.TestingT, pinned []byte) {
	other := judged(t, pinned, planned(t, pinned))
	if other.runsTogether() {
		return
	}
	c, at, why := better(j.compared(t), other.compared(t), j.job.Prefer)
	const spoils = 4
	if c > 0 && at >= spoils && !j.plan.Proven {
		return
	}
	require.LessOrEqual(t, c, 0, "the pinned set-out is better by %s; free: line %v, %s\n%s", why, j.plan.Course.Line, j.plan.begins(), pinned)
}

// compared is the merit worked out here, but for term 13, round the corners, which is
// taken from the plan.
func (j *judge) compared(t require.TestingT) terms {
	m := j.terms()
	var told meritDoc
	require.NoError(t, json.Unmarshal(j.plan.Merit, &told))
	m.smallCorners, m.bondBreaks = told.Corners, told.Alike
	return m
}

// runsTogether tells whether pins put an opening of a wall into another, which no free
// solve does.
func (j *judge) runsTogether() bool {
	for _, w := range j.walls {
		for i, a := range w.holes {
			for _, b := range w.holes[:i] {
				if a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top {
					return true
				}
			}
		}
	}
	return false
}

// begins says where the walls of a plan begin.
func (p planDoc) begins() string {
	var out []string
	for _, w := range p.Walls {
		out = append(out, fmt.Sprintf("%s %s at %v %v", w.Name, w.Start.Is, w.Start.X, w.Marks))
	}
	return strings.Join(out, ", ")
}
