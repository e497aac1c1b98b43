package doubt

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// reach is how far the readings of one boundary go along a wall.
type reach struct {
	what        string
	first, last reading
}

// ends asks about walls whose readings stop short of where tile may end.
func (a *asker) ends() {
	for i, w := range a.room.Walls {
		low, high := length.Length(0), w.Width
		if !w.Left.Meets {
			low = w.Left.Stops.From
		}
		if !w.Right.Meets {
			high = w.Right.Stops.To
		}
		all := a.reaches(i)
		for _, r := range all {
			left, right := r.first.at-low, high-r.last.at
			if a.short(left, right) {
				a.ask(Doubt{Rule: Short, Path: r.first.place, Wall: i,
					Text: fmt.Sprintf("The readings of the %s of %s begin %s from where tile may begin; nothing tells how it goes on to there.", r.what, w.Name, a.say(left))})
			}
			if a.short(right, left) {
				a.askShort(i, r, right, w.Right.Meets && agree(all))
			}
		}
	}
}

// askShort asks for the wall's width where all its readings stop at one place:
// then it is more likely typed wrong than all of them.
func (a *asker) askShort(i int, r reach, by length.Length, wide bool) {
	w := a.room.Walls[i]
	d := Doubt{Rule: Short, Path: r.last.place, Wall: i,
		Text: fmt.Sprintf("The readings of the %s of %s stop %s short of where tile may end; nothing tells how it goes on to there.", r.what, w.Name, a.say(by))}
	if wide {
		likely := r.last.at + min(r.first.at, a.kept()) // as far from this corner as from the other
		d.Path, d.Fits = fmt.Sprintf("walls[%d].width", i), a.typed(likely)
		d.Text = fmt.Sprintf("The width of %s is read %s, and its readings stop %s short of that. Either the width is about %s, or a reading in the corner is missing.",
			w.Name, a.say(w.Width), a.say(by), a.say(likely))
	}
	a.ask(d, r.last.place)
}

// kept is the most that anybody keeps from a corner with the tape, 4 in (100 mm). Common practice, no source.
func (a *asker) kept() length.Length { return a.either(4*length.Inch, 100*length.Millimetre) }

// short tells whether readings stop short on one side. Who cannot reach into the
// corners keeps the same distance from both.
func (a *asker) short(here, there length.Length) bool {
	return here > a.kept() || here > a.inch() && here > 4*there
}

// reaches gives the reach of the base and of the ceiling, where more than one
// reading tells how it runs.
func (a *asker) reaches(wall int) []reach {
	var all []reach
	var base []line
	for _, l := range a.lines() {
		switch {
		case l.wall != wall:
		case l.segment >= 0:
			base = append(base, l)
		case len(l.readings) > 1:
			all = append(all, reach{"ceiling", l.readings[0], *l.last()})
		}
	}
	first, last := base[0], base[len(base)-1]
	if len(first.readings) > 1 && len(last.readings) > 1 {
		all = append([]reach{{string(last.kind), first.readings[0], *last.last()}}, all...)
	}
	return all
}

// agree tells whether the readings of base and ceiling stop at about one place.
func agree(all []reach) bool {
	for _, r := range all {
		if (r.last.at - all[0].last.at).Abs() > 4*length.Inch {
			return false
		}
	}
	return true
}

// leans asks about corners that lean more than 3/8 in for 32 in of height, 1 1/8
// in for 8 ft: the most that guidelines for new framing allow (NAHB, as
// woodworks.org tells it). Under 1/4 in (6 mm) nothing is asked.
func (a *asker) leans() {
	for i, w := range a.room.Walls {
		a.lean(i, "left", w.Left.Lean)
		a.lean(i, "right", w.Right.Lean)
	}
}

// lean looks from reading to reading, and from the level line to the first: at
// the level line a corner is where the wall ends, by definition. One gap over and
// under the line is looked at over it, where it is read.
func (a *asker) lean(wall int, end string, found []survey.Reading) {
	last := survey.Reading{}
	for n, r := range found {
		if n == 0 && len(found) == 2 && found[1] == (survey.Reading{At: -r.At, Value: -r.Value}) {
			continue
		}
		rise, off := (r.At - last.At).Abs(), (r.Value - last.Value).Abs()
		if 256*off > 3*rise && off > a.either(length.Inch/4, 6*length.Millimetre) {
			a.ask(Doubt{Rule: Lean, Path: fmt.Sprintf("walls[%d].%s.lean[%d].off", wall, end, n), Wall: wall,
				Text: fmt.Sprintf("The %s corner of %s leans %s in %s of height; more than %s in that is rare even in old houses.",
					end, a.wall(wall), a.fine(off), a.say(rise), a.fine(rise*3/256))})
			return
		}
		last = r
	}
}
