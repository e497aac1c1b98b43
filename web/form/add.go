package form

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// add puts one more element into a list. What it holds at first is a plain
// default that solves, to be typed over.
func add(job *survey.Job, rest string) error {
	path, what, _ := strings.Cut(rest, " ")
	way, err := steps(path)
	if err != nil {
		return err
	}
	if path == "walls" && what == "round" {
		return beforeBenches(job, addWallRound, func(w survey.Wall) bool { return w.Top != nil && w.Top.Behind != "" })
	}
	if path == "walls" && what == "corner bench" {
		return addCornerBench(job)
	}
	if path == "walls" && (what == "bench" || what == "curb") {
		if err := addWallBetween(job, what); err != nil {
			return err
		}
		if what == "bench" {
			seatAcross(job, len(job.Walls)-1)
		}
		return nil
	}
	if path == "walls" {
		return beforeBenches(job, addWallAsHigh, func(survey.Wall) bool { return true })
	}
	if path == "trims" {
		return addTrim(job, what)
	}
	if path == "bands" {
		return addBand(job, what)
	}
	if len(way) < 3 || way[0].name != "walls" || way[1].index < 0 || way[1].index >= len(job.Walls) {
		return fmt.Errorf("nothing can be added to %q", path)
	}
	if err := addToWall(job, &job.Walls[way[1].index], way[2:], what); err != nil {
		return err
	}
	switch last := way[len(way)-1].name; {
	case last == "readings": // the new one stands before the last
		if n := count(*job, path); n > 1 {
			shift(job, path, n-2, 1)
			if added := At(path, n-2); n > 2 && strings.Contains(path, ".head.") { // where it stands, and how high: nobody has measured yet
				return guess(job, added+".at "+added+".rise")
			}
		}
	case last == "top" && !slices.Contains(job.Guess, path+".depth"):
		job.Guess = append(job.Guess, path+".depth")
	case last == "inside":
		guessInside(job, path, what)
	case last == "base" && what == "left":
		shift(job, path, 0, 1)
	}
	return nil
}

// count tells how many elements a list of readings has.
func count(job survey.Job, path string) int {
	n := 0
	for Get(job, At(path, n)+".at") != "" {
		n++
	}
	return n
}

func addToWall(job *survey.Job, w *survey.Wall, way []step, what string) error {
	switch way[0].name {
	case "base":
		return addBase(job, w, way, what)
	case "head":
		w.Head.Readings = between(w.Head.Readings, func(a, b survey.Rise) survey.Rise {
			return survey.Rise{At: middle(job, a.At, b.At), Rise: middle(job, a.Rise, b.Rise)}
		})
		return nil
	case "openings":
		if len(way) > 2 {
			return addInside(job, w, way, what)
		}
		return addOpening(job, w, what)
	case "top":
		return addTop(job, w, way, what)
	case "strips":
		return addStrip(job, w)
	case "fixtures":
		if len(way) > 1 {
			return addDrilled(job, w, way)
		}
		return addFixture(job, w, what)
	case "left":
		w.Left.Lean = addLean(job, w.Left.Lean)
		return nil
	case "right":
		w.Right.Lean = addLean(job, w.Right.Lean)
		return nil
	}
	return fmt.Errorf("nothing can be added to a wall's %q", way[0].name)
}

// addBase adds a reading to a segment, or a segment at one end of the wall.
func addBase(job *survey.Job, w *survey.Wall, way []step, what string) error {
	if len(way) == 1 {
		addSegment(job, w, what == "left")
		return nil
	}
	if way[1].index < 0 || way[1].index >= len(w.Base) {
		return fmt.Errorf("there is no such segment")
	}
	s := &w.Base[way[1].index]
	s.Readings = between(s.Readings, func(a, b survey.Drop) survey.Drop {
		return survey.Drop{At: middle(job, a.At, b.At), Drop: middle(job, a.Drop, b.Drop)}
	})
	return nil
}

// addSegment cuts a strip off the outermost segment and makes it floor: the
// leg of tile beside a tub.
func addSegment(job *survey.Job, w *survey.Wall, left bool) {
	strip := survey.Segment{Meets: "floor", Leg: survey.BestLeg} // which Tidy drops where it is no leg
	wide := pick(job, "4", "100")
	if len(w.Base) == 0 || len(edge(w, left).Readings) == 0 {
		strip.Readings = []survey.Drop{{At: "0", Drop: "0"}, {At: w.Width, Drop: "0"}}
		w.Base = append(w.Base, strip)
		return
	}
	next := edge(w, left)
	strip.Gap = next.Gap
	wide = narrower(job, wide, half(job, next.Readings))
	if left {
		first := &next.Readings[0]
		strip.Readings = []survey.Drop{*first, {At: wide, Drop: first.Drop}}
		first.At = wide
		w.Base = append([]survey.Segment{strip}, w.Base...)
		return
	}
	last := &next.Readings[len(next.Readings)-1]
	step := survey.Drop{At: less(job, last.At, wide), Drop: last.Drop}
	strip.Readings = []survey.Drop{step, *last}
	*last = step
	w.Base = append(w.Base, strip)
}

// half gives half the stretch of a segment's readings.
func half(job *survey.Job, r []survey.Drop) string {
	return middle(job, "0", less(job, r[len(r)-1].At, r[0].At))
}

// narrower gives the smaller of two lengths, or the lower of two heights; the first where one does not read.
func narrower(job *survey.Job, a, b string) string {
	return compute(job, a, b, func(x, y length.Length) length.Length { return min(x, y) })
}

// edge gives the outermost segment of a base that has one.
func edge(w *survey.Wall, left bool) *survey.Segment {
	if left {
		return &w.Base[0]
	}
	return &w.Base[len(w.Base)-1]
}

// between adds a reading before the last one, halfway to the one before it.
func between[R any](list []R, halfway func(a, b R) R) []R {
	n := len(list)
	switch n {
	case 0:
		var zero R
		return append(list, zero)
	case 1:
		return append(list, list[0])
	}
	last := list[n-1]
	return append(append(list[:n-1:n-1], halfway(list[n-2], last)), last)
}

func addLean(job *survey.Job, lean []survey.Lean) []survey.Lean {
	if len(lean) == 0 {
		return []survey.Lean{{Height: "0", Off: "0"}, {Height: pick(job, "48", "1200"), Off: "0"}}
	}
	last := lean[len(lean)-1]
	return append(lean, survey.Lean{Height: less(job, last.Height, pick(job, "-12", "-300")), Off: last.Off})
}

// middle gives the text halfway between two lengths, on the tape; the first
// text where one of them does not read.
func middle(job *survey.Job, a, b string) string {
	return compute(job, a, b, func(x, y length.Length) length.Length { return (x + y).Half() })
}

func less(job *survey.Job, a, b string) string {
	return compute(job, a, b, func(x, y length.Length) length.Length { return x - y })
}

func compute(job *survey.Job, a, b string, f func(x, y length.Length) length.Length) string {
	system, _ := System(job.Units)
	x, err := length.Parse(a, system)
	y, other := length.Parse(b, system)
	if err != nil || other != nil {
		return a
	}
	return f(x, y).Plain(system, system.Step())
}
