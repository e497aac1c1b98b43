package layout_test

import (
	"fmt"
	"math/big"

	"coursewright/layout/survey"

	"pgregory.net/rapid"
)

// draws writes the lengths of a random job as people write them, in 1/16 in or
// in half millimetres.
type draws struct {
	t      *rapid.T
	metric bool
}

// text is a length of so many sixteenths, or half millimetres.
func (d draws) text(n int) string {
	den := int64(16)
	if d.metric {
		den = 2
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, rest := int64(n)/den, big.NewRat(int64(n)%den, den)
	switch {
	case d.metric && rest.Sign() != 0:
		return fmt.Sprintf("%s%d.5", sign, whole)
	case rest.Sign() == 0:
		return fmt.Sprintf("%s%d", sign, whole)
	case whole == 0:
		return sign + rest.String()
	}
	return fmt.Sprintf("%s%d %s", sign, whole, rest)
}

// mm draws steps that make about low to high millimetres.
func (d draws) mm(name string, low, high int) int {
	per := 2.0
	if !d.metric {
		per = 16 / 25.4
	}
	return rapid.IntRange(int(float64(low)*per), int(float64(high)*per)).Draw(d.t, name)
}

func (d draws) maybe(name string) bool { return rapid.Bool().Draw(d.t, name) }

// mark is measured, or free in a range.
func (d draws) mark(name string, from, spread int) *survey.Mark {
	if spread > 0 && d.maybe(name+" free") {
		return &survey.Mark{From: d.text(from), To: d.text(from + spread)}
	}
	return &survey.Mark{At: d.text(from)}
}

// randomJob is a room of one to three small walls with everything a wall can have.
func randomJob(t *rapid.T) survey.Job {
	d := draws{t, rapid.Bool().Draw(t, "metric")}
	job := survey.Job{Format: survey.Format, Title: "any", Units: "in", Bond: survey.Bond{Kind: "stack"}}
	if d.metric {
		job.Units = "mm"
	}
	job.Tile = survey.Tile{Width: d.text(d.mm("tile width", 90, 400)), Height: d.text(d.mm("tile height", 70, 300))}
	job.Joint.Plain = d.text(d.mm("joint", 1, 6))
	if offset := rapid.SampledFrom([]string{"", "1/2", "1/3"}).Draw(t, "offset"); offset != "" {
		job.Bond = survey.Bond{Kind: "running", Offset: offset, Hand: rapid.SampledFrom([]string{"", "left", "right"}).Draw(t, "hand")}
	}
	if d.maybe("plumb bond") {
		job.Bond.Along = "plumb"
	}
	if d.maybe("own sliver limit") {
		job.Limits.Sliver = d.text(d.mm("sliver", 10, 60))
	}
	n := rapid.IntRange(1, 3).Draw(t, "walls")
	for i := range n {
		job.Walls = append(job.Walls, d.wall(fmt.Sprintf("wall %d", i+1), i > 0, i < n-1))
	}
	if d.maybe("set from the right") {
		for i := range n {
			job.SetOrder = append(job.SetOrder, job.Walls[n-1-i].Name)
		}
	}
	return job
}

func (d draws) wall(name string, cornerLeft, cornerRight bool) survey.Wall {
	width := d.mm("width", 600, 1000)
	w := survey.Wall{Name: name, Width: d.text(width)}
	w.Left, w.Right = d.end("left", cornerLeft, 0, d.mm("spread", 0, 60)), d.end("right", cornerRight, width-d.mm("spread", 0, 60), 0)
	if w.Right.Stops != nil && d.maybe("free right") {
		w.Right.Stops = &survey.Mark{From: d.text(width - d.mm("spread", 10, 60)), To: d.text(width)}
	}
	w.Base = d.base(width)
	if d.maybe("ceiling") {
		high := d.mm("high", 500, 700)
		w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: d.text(high)}, {At: d.text(width), Rise: d.text(high + d.mm("rake", -9, 9))}}}
	} else {
		w.Head = survey.Head{Stops: d.mark("head", d.mm("high", 450, 600), d.mm("spread", 0, 120))}
	}
	w.Openings = d.openings(width)
	return w
}

// end meets a corner, maybe leaning, or stops.
func (d draws) end(name string, corner bool, at, spread int) survey.End {
	if !corner && d.maybe(name+" stops") {
		return survey.End{Stops: d.mark(name, at, spread)}
	}
	e := survey.End{Meets: "corner"}
	if !corner && d.maybe(name+" meets the run of a wall") {
		e.Meets = "wall"
	}
	if d.maybe(name + " leans") {
		e.Lean = []survey.Lean{{Height: d.text(d.mm("low", -400, -300)), Off: d.text(d.mm("off", -9, 9))}, {Height: d.text(d.mm("height", 0, 100)), Off: d.text(d.mm("off", -9, 9))}, {Height: d.text(d.mm("top", 350, 400)), Off: d.text(d.mm("off", -9, 9))}}
	}
	return e
}

// base is a tub, raked, with a floor beside it at times.
func (d draws) base(width int) []survey.Segment {
	drop := d.mm("drop", 300, 500)
	reading := func(at, drop int) survey.Drop { return survey.Drop{At: d.text(at), Drop: d.text(drop)} }
	if d.maybe("step") {
		front, floor := d.mm("front", 60, 300), drop+d.mm("tub", 60, 300)
		return []survey.Segment{
			{Meets: "floor", Readings: []survey.Drop{reading(0, floor), reading(front, floor+d.mm("rake", -9, 9))}},
			{Meets: "tub", Readings: []survey.Drop{reading(front, drop), reading(width, drop+d.mm("rake", -9, 9))}}}
	}
	return []survey.Segment{{Meets: "tub", Readings: []survey.Drop{reading(0, drop), reading(width/2, drop+d.mm("rake", -9, 9)), reading(width, drop+d.mm("rake", -9, 9))}}}
}

// openings are a niche or window and a pipe, apart from each other.
func (d draws) openings(width int) (out []survey.Opening) {
	if d.maybe("hole") {
		out = append(out, survey.Opening{Kind: rapid.SampledFrom([]string{"niche", "window"}).Draw(d.t, "kind"), Name: "shelf",
			Left: d.mark("hole left", d.mm("hole left", 150, 250), d.mm("spread", 0, 100)), Width: d.mark("hole width", d.mm("hole width", 150, 250), d.mm("spread", 0, 60)),
			Bottom: d.mark("hole bottom", d.mm("hole bottom", 0, 80), d.mm("spread", 0, 60)), Height: &survey.Measure{Mark: d.mark("hole height", d.mm("hole height", 100, 200), d.mm("spread", 0, 60))}})
	}
	if d.maybe("pipe") {
		out = append(out, survey.Opening{Kind: "pipe", Name: "valve", At: d.text(min(d.mm("pipe at", 150, 550), width-d.mm("pipe from the end", 60, 100))), Height: &survey.Measure{Plain: d.text(d.mm("pipe height", -220, -90))}, Diameter: d.text(d.mm("diameter", 20, 120))})
	}
	return out
}

// turned makes some corners of a job outside ones.
func turned(t *rapid.T, job survey.Job) survey.Job {
	for i := range len(job.Walls) - 1 {
		if rapid.Bool().Draw(t, "turns outward") {
			end := survey.End{Meets: "outside corner", Corner: rapid.SampledFrom([]string{"lap", "mitre", "bullnose"}).Draw(t, "corner")}
			job.Walls[i].Right, job.Walls[i+1].Left = end, survey.End{Meets: "outside corner"}
		}
	}
	return job
}

// pinned fixes the course line and every start somewhere on the tape.
func pinned(t *rapid.T, job survey.Job) survey.Job {
	d := draws{t, job.Units == "mm"}
	job.Pins = survey.Pins{Course: survey.CoursePin{Line: d.text(d.mm("line", -500, 0))}, Walls: map[string]survey.WallPin{}}
	for _, w := range job.Walls {
		job.Pins.Walls[w.Name] = survey.WallPin{Joint: d.text(d.mm("start", 0, 700))}
	}
	return job
}

// smallJob is one wall of few tiles.
func smallJob(t *rapid.T) survey.Job {
	job := randomJob(t)
	d := draws{t, job.Units == "mm"}
	job.Walls, job.SetOrder = job.Walls[:1], nil
	job.Tile.Width, job.Tile.Height = d.text(d.mm("large tile", 200, 400)), d.text(d.mm("tall tile", 150, 300))
	return job
}

// pinnedAt fixes the course line and the start of a small job on a grid of six
// by ten places, all on the tape.
func pinnedAt(job survey.Job, line, start int) survey.Job {
	d, step := draws{metric: job.Units == "mm"}, 3
	if d.metric {
		step = 10
	}
	job.Pins = survey.Pins{Course: survey.CoursePin{Line: d.text(-5 * line * step)},
		Walls: map[string]survey.WallPin{job.Walls[0].Name: {Joint: d.text((4*start + 1) * step)}}}
	return job
}
