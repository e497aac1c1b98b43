package doubt

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// tubSizes are the lengths in which tubs are made. 60 in and 1700 mm by sizes
// that makers and dealers give; the others from memory. The tub of 5 ft is sold
// where rooms are measured in millimetres too, as one of 152 or 153 cm.
func (a *asker) tubSizes() []length.Length {
	if a.room.Units == length.Metric {
		return []length.Length{1400 * length.Millimetre, 1500 * length.Millimetre, 60 * length.Inch, 1600 * length.Millimetre, 1700 * length.Millimetre, 1800 * length.Millimetre}
	}
	return []length.Length{48 * length.Inch, 54 * length.Inch, 60 * length.Inch, 66 * length.Inch, 72 * length.Inch}
}

// tubs asks about alcoves that no tub fits, and about tubs that are nobody's size.
func (a *asker) tubs() {
	for i, w := range a.room.Walls {
		if w.Left.Beyond >= 0 && w.Right.Beyond >= 0 && len(w.Base) == 1 && w.Base[0].Meets == survey.Tub && !a.shortEnd(i) {
			a.alcove(i)
		}
		for k := 1; k < len(w.Base) && !a.rough[i]; k++ {
			a.step(i, k)
		}
	}
}

// alcove asks about a back wall that a tub fills from corner to corner and that
// is far from the sizes of tubs: boards stand up to 1/2 in (13 mm) farther apart
// than the tub is long, or 2 in (50 mm) less where they and the tile stand over
// its rim (sources disagree; facts of framing and of finished walls).
func (a *asker) alcove(i int) {
	w := a.room.Walls[i]
	best, off := length.Length(0), w.Width
	for _, size := range a.tubSizes() {
		if a.takesTub(w.Width, size) {
			return
		}
		if over := (w.Width - size).Abs(); over < off {
			best, off = size, over
		}
	}
	path := fmt.Sprintf("walls[%d].width", i)
	fits, _ := mend(a.texts[path], best-a.either(length.Inch/2, 12*length.Millimetre), a.either(length.Inch, 25*length.Millimetre), a.room.Units)
	if fits == "" {
		fits = a.tubInOtherUnit(a.texts[path])
	}
	a.ask(Doubt{Rule: Tub, Path: path, Wall: i, Fits: fits,
		Text: fmt.Sprintf("A tub fills %s from corner to corner, and no usual tub is near %s long; the nearest is %s.", w.Name, a.say(w.Width), a.say(best))})
}

// takesTub tells whether a tub of a length fits between two walls so far apart: 1/2 in as a tape in millimetres shows it, 13 mm.
func (a *asker) takesTub(wide, size length.Length) bool {
	over := wide - size
	return over <= 13*length.Millimetre && -over <= a.either(2*length.Inch, 50*length.Millimetre)
}

// tubInOtherUnit is what was typed with the unit that the job does not count in, where a tub fits then: a tape shows
// both. It is empty where none does.
func (a *asker) tubInOtherUnit(text string) string {
	unit := " mm"
	if a.room.Units == length.Metric {
		unit = " in"
	}
	wide, err := length.Parse(text+unit, a.room.Units)
	fits := func(size length.Length) bool { return a.takesTub(wide, size) }
	if err != nil || !slices.ContainsFunc(a.tubSizes(), fits) {
		return ""
	}
	return text + unit
}

// shortEnd tells whether a wall stands at the narrow end of a tub: one is no wider than 42 in (1.07 m), and on a wall beside
// it the same tub goes on for longer, as where its head stands under a gable.
func (a *asker) shortEnd(i int) bool {
	w := a.room.Walls[i]
	if w.Width > a.either(42*length.Inch, 1070*length.Millimetre) {
		return false
	}
	for _, beside := range []int{w.Left.Beyond, w.Right.Beyond} {
		for _, s := range a.room.Walls[beside].Base {
			if n := len(s.Readings); s.Meets == survey.Tub && n > 1 && s.Readings[n-1].At-s.Readings[0].At > w.Width+a.either(6*length.Inch, 150*length.Millimetre) {
				return true
			}
		}
	}
	return false
}

// step asks about the front of a tub: a rim that is not 12 to 26 in (300 to 660
// mm) over the floor, or a floor that lies over a rim. Tubs are 14 to 16 in high,
// deep ones up to 24.
func (a *asker) step(i, k int) {
	w := a.room.Walls[i]
	floor, rim := k-1, k
	if w.Base[floor].Meets != survey.Floor {
		floor, rim = rim, floor
	}
	if w.Base[floor].Meets != survey.Floor || !w.Base[rim].Meets.Rim() {
		return
	}
	x := w.Base[k].Readings[0].At
	low, high := survey.At(w.Base[floor].Readings, x), survey.At(w.Base[rim].Readings, x)
	n := 0
	if floor < rim {
		n = len(a.job.Walls[i].Base[floor].Readings) - 1
	}
	path := fmt.Sprintf("walls[%d].base[%d].readings[%d].drop", i, floor, n)
	what := w.Base[rim].Meets
	switch {
	case low > high:
		a.ask(Doubt{Rule: Tub, Path: path, Wall: i,
			Text: fmt.Sprintf("On %s the floor is read %s, over the %s at %s.", w.Name, a.height(low), what, a.height(high))})
	case what == survey.Tub && (high-low < a.either(12*length.Inch, 300*length.Millimetre) || high-low > a.either(26*length.Inch, 660*length.Millimetre)):
		a.ask(Doubt{Rule: Tub, Path: path, Wall: i,
			Text: fmt.Sprintf("On %s the rim of the tub stands %s over the floor; tubs are 14 to 16 in (36 to 41 cm) high, deep ones up to 24 in (61 cm).", w.Name, a.say(high-low))})
	}
}

// fronts asks where one tub is read deeper at one end of its alcove than at the
// other, by more than 2 in (50 mm): most have a straight front (common practice,
// no source), and one that narrows is confirmed. Where one depth is no tub's, it
// is asked about, else that on the last wall.
func (a *asker) fronts() {
	if len(a.room.Walls) != 3 || len(a.room.Walls[1].Base) != 1 || a.room.Walls[1].Base[0].Meets != survey.Tub {
		return
	}
	left, right := a.room.Walls[0], a.room.Walls[2]
	k := len(left.Base) - 1
	if left.Right.Beyond != 1 || right.Left.Beyond != 1 || k < 1 || len(right.Base) < 2 || left.Base[k].Meets != survey.Tub || right.Base[0].Meets != survey.Tub {
		return
	}
	here, there := left.Width-left.Base[k].Readings[0].At, right.Base[1].Readings[0].At
	if (here - there).Abs() <= a.either(2*length.Inch, 50*length.Millimetre) {
		return
	}
	text := fmt.Sprintf("The front of the tub stands %s from the corner on %s, and %s on %s.", a.say(here), left.Name, a.say(there), right.Name)
	path, other := "walls[2].base[1].readings[0].at", fmt.Sprintf("walls[0].base[%d].readings[0].at", k)
	d := Doubt{Rule: Tub, Path: path, Wall: 2, Read: a.say(there), Text: text}
	if !a.deep(here) && a.deep(there) {
		d = Doubt{Rule: Tub, Path: other, Wall: 0, Read: a.say(here), Text: text}
		path, other = other, path
	} else if fits, how := mend(a.texts[path], here, a.either(length.Inch, 25*length.Millimetre), a.room.Units); how != noSlip {
		end := fmt.Sprintf("walls[2].base[0].readings[%d].at", len(a.job.Walls[2].Base[0].Readings)-1)
		d.Fits, d.Use = fits, []Use{{path, fits}, {end, fits}}
	}
	a.ask(d, other, "walls[0].width")
}

// deep tells whether a tub may be so deep: 24 to 42 in (600 to 1070 mm), as tubs
// for one and for two are (from memory).
func (a *asker) deep(l length.Length) bool {
	return l >= a.either(24*length.Inch, 600*length.Millimetre) && l <= a.either(42*length.Inch, 1070*length.Millimetre)
}

// facing asks about the end walls of an alcove that differ by more than a
// quarter, and about facing walls between the same two corners each, as in a
// closed room, that differ by more than what two readings may be off: 1/4 in
// (JLC: lengths under 10 ft are framed to 1/8 in), 6 mm.
func (a *asker) facing() {
	n := len(a.room.Walls)
	for i := 0; i+2 < n; i++ {
		left, right := a.room.Walls[i], a.room.Walls[i+2]
		closed := left.Left.Beyond >= 0 && left.Right.Beyond >= 0 && right.Left.Beyond >= 0 && right.Right.Beyond >= 0
		off := (left.Width - right.Width).Abs()
		path, other := fmt.Sprintf("walls[%d].width", i+2), fmt.Sprintf("walls[%d].width", i)
		switch {
		case n == 4 && closed && off > max(2*a.room.Doubt, a.either(length.Inch/4, 6*length.Millimetre)):
			a.ask(Doubt{Rule: Facing, Path: path, Wall: i + 2,
				Text: fmt.Sprintf("The walls %s and %s face each other between the same corners, and are read %s and %s wide.", left.Name, right.Name, a.say(left.Width), a.say(right.Width))}, other)
		case n == 3 && left.Right.Beyond == 1 && right.Left.Beyond == 1 && 4*off > min(left.Width, right.Width):
			wall, fits := a.misread(i, i+2)
			if wall == i {
				path, other = other, path
			}
			d := Doubt{Rule: Facing, Path: path, Wall: wall, Use: fits,
				Text: fmt.Sprintf("The walls %s and %s face each other in one alcove, and are read %s and %s wide.", left.Name, right.Name, a.say(left.Width), a.say(right.Width))}
			if fits != nil {
				d.Fits = fits[0].Text
			}
			a.ask(d, other)
		}
	}
}

// misread gives the one of two facing walls whose width was read wrong, as it should have been typed with all that
// stands at it. Of two that may be, it is the wider one; where nobody can tell, none is told of the second.
func (a *asker) misread(i, k int) (wall int, fits []Use) {
	wider, narrower := i, k
	if a.room.Walls[k].Width > a.room.Walls[i].Width {
		wider, narrower = k, i
	}
	for _, pair := range [][2]int{{wider, narrower}, {narrower, wider}} {
		if fits := a.slipOf(pair[0], a.room.Walls[pair[1]].Width); fits != nil {
			return pair[0], fits
		}
	}
	return k, nil
}

// slipOf gives a width where two of its figures were swapped or its point is at another place, and the wall is
// then within an inch (25 mm) of the one that faces it. Two end walls may well differ, so nothing else is called
// a slip; nor is anything where more stands on the wall that may have been measured from its other end.
func (a *asker) slipOf(wall int, facing length.Length) []Use {
	own := fmt.Sprintf("walls[%d].", wall)
	typed := a.texts[own+"width"]
	fits, how := mend(typed, facing, a.either(length.Inch, 25*length.Millimetre), a.room.Units)
	if how != pairSlip && how != pointSlip {
		return nil
	}
	use := []Use{{own + "width", fits}}
	for path, text := range a.texts {
		switch {
		case !strings.HasPrefix(path, own) || !strings.HasSuffix(path, ".at") || strings.HasPrefix(path, own+"head.stops"):
		case text == typed:
			use = append(use, Use{path, fits})
		case text != "0":
			return nil
		}
	}
	slices.SortFunc(use[1:], func(x, y Use) int { return strings.Compare(x.Path, y.Path) })
	return use
}
