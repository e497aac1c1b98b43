package form

import (
	"slices"
	"strings"

	"coursewright/layout/survey"
)

// Tidy drops what a choice has made meaningless (the lean of an end that no
// longer meets a corner), fills what it has made necessary with a plain
// default, and lets go of pins whose wall or mark is gone.
func Tidy(job *survey.Job) {
	tidyReadings(job)
	dropLegs(job)
	tidySheets(job)
	for i := range job.Walls {
		tidyWall(job, &job.Walls[i])
	}
	tidyTrims(job)
	tidyBond(job)
	tidyBands(job)
	tidyOrder(job)
	tidyHeld(job)
	for _, pins := range allPins(job) {
		*pins = tidyPins(job.Walls, *pins)
	}
	tidySample(&job.Tile)
	tidyGuesses(job)
	if b := job.Tile.Box; b != nil && *b == (survey.Box{}) {
		job.Tile.Box = nil
	}
}

// tidyReadings leaves out what stood between two other readings of a base or a ceiling and has both of its figures emptied.
func tidyReadings(job *survey.Job) {
	for i, w := range job.Walls {
		wall := At("walls", i)
		for k, s := range w.Base {
			dropEmpty(job, At(wall+".base", k)+".readings", s.Readings)
		}
		dropEmpty(job, wall+".head.readings", w.Head.Readings)
	}
}

func dropEmpty[T comparable](job *survey.Job, list string, readings []T) {
	var empty T
	for n := len(readings) - 2; n > 0; n-- {
		if readings[n] == empty {
			_ = remove(job, At(list, n)) // it is there
		}
	}
}

// tidyGuesses drops the guesses of figures that are gone, as that of a line at which tile
// stops once it may stop in a range.
func tidyGuesses(job *survey.Job) {
	texts := job.Texts()
	kept := slices.DeleteFunc(slices.Clone(job.Guess), func(path string) bool { return texts[path] == "" })
	if len(kept) == 0 {
		kept = nil
	}
	job.Guess = kept
}

func tidyWall(job *survey.Job, w *survey.Wall) {
	if w.Set != nil && *w.Set == (survey.AsSet{}) {
		w.Set = nil
	}
	for i := range w.Openings {
		tidyInside(job, &w.Openings[i])
	}
	tidyLegs(w)
	if legged(w) { // no cove stands beside a leg
		for i := range w.Base {
			w.Base[i].Trim = ""
		}
	}
	tidyFixtures(w)
	tidyStrips(w)
	tidyEnd(job, &w.Left, "0", false)
	tidyEnd(job, &w.Right, w.Width, true)
	tidyTop(job, w)
	if w.Head.Meets != "" {
		w.Head.Stops, w.Head.Finish, w.Head.Trim = nil, "", ""
		if len(w.Head.Readings) == 0 {
			w.Head.Readings = []survey.Rise{{At: "0", Rise: pick(job, "57", "1450")}, {At: w.Width, Rise: pick(job, "57", "1450")}}
		}
		return
	}
	w.Head.Gap, w.Head.Readings = "", nil
	if w.Head.Stops == nil {
		w.Head.Stops = &survey.Mark{At: pick(job, "48", "1200")}
	}
}

// tidyLegs drops how a leg is laid where there is none (any more).
func tidyLegs(w *survey.Wall) {
	for i := range w.Base {
		if !w.IsLeg(i) {
			w.Base[i].Leg = ""
		}
	}
}

func tidyEnd(job *survey.Job, e *survey.End, stop string, right bool) {
	if turnsOut(*e) {
		tidyOutside(job, e, right)
		return
	}
	e.Corner, e.Laps, e.Angle = "", "", ""
	if e.Meets != "" {
		e.Stops, e.Finish, e.Trim = nil, "", ""
		return
	}
	e.Gap, e.Lean = "", nil
	if e.Stops == nil {
		e.Stops = &survey.Mark{At: stop}
	}
}

func tidyBond(job *survey.Job) {
	if job.Bond.Kind == "stack" {
		job.Bond.Offset, job.Bond.Hand = "", ""
	}
	if job.Bond.Kind == "running" && job.Bond.Offset == "" {
		job.Bond.Offset = "1/2"
	}
	tidyPattern(&job.Bond, ofJob(job))
}

// tidyOrder keeps a setting order, where there is one, complete and free of
// walls that are gone.
func tidyOrder(job *survey.Job) {
	if len(job.SetOrder) == 0 {
		return
	}
	names := wallNames(*job)
	var order []string
	for _, name := range slices.Concat(job.SetOrder, names) {
		if slices.Contains(names, name) && !slices.Contains(order, name) {
			order = append(order, name)
		}
	}
	job.SetOrder = order
}

func tidyPins(found []survey.Wall, pins map[string]survey.WallPin) map[string]survey.WallPin {
	walls := map[string]survey.WallPin{}
	for _, w := range found {
		pin := pins[w.Name]
		pin.Marks = tidyMarks(w, pin.Marks)
		if w.Laid == "single" { // which has no start to pin
			pin.Edge, pin.Joint, pin.Tile = "", "", ""
		}
		if pin.Edge != "" || pin.Joint != "" || pin.Tile != "" || pin.Marks != nil || pin.Single || len(pin.Legs) > 0 || len(pin.Beyond) > 0 {
			walls[w.Name] = pin
		}
	}
	if len(walls) == 0 {
		return nil
	}
	return walls
}

func tidyMarks(w survey.Wall, marks map[string]string) map[string]string {
	kept := map[string]string{}
	for name, value := range marks {
		if value != "" && hasMark(w, name) {
			kept[name] = value
		}
	}
	if len(kept) == 0 {
		return nil
	}
	return kept
}

// hasMark tells whether a wall has the mark a pin names.
func hasMark(w survey.Wall, name string) bool {
	switch name {
	case "end left":
		return w.Left.Stops != nil
	case "end right":
		return w.Right.Stops != nil
	case "head":
		return w.Head.Stops != nil
	}
	if slices.ContainsFunc(w.Fixtures, func(f survey.Fixture) bool { return f.Flush && strings.HasPrefix(name, f.Kind+" "+f.Name+" ") }) {
		return true
	}
	if slices.ContainsFunc(w.Strips, func(s survey.Strip) bool { return strings.HasPrefix(name, string(survey.PlumbStrip)+" "+s.Name+" ") }) {
		return true
	}
	return slices.ContainsFunc(w.Openings, func(o survey.Opening) bool {
		return strings.HasPrefix(name, o.Kind+" "+o.Name+" ")
	})
}

// pick gives a default in the job's own units.
func pick(job *survey.Job, inches, millimetres string) string {
	if job.Units == "mm" {
		return millimetres
	}
	return inches
}
