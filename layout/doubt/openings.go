package doubt

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// openings asks about openings and pipes that reach out of the tile or into
// each other.
func (a *asker) openings() {
	for i, w := range a.room.Walls {
		for k, o := range w.Openings {
			if !ofSurvey(o) {
				continue // refused where it cannot be
			}
			p, before := fmt.Sprintf("walls[%d].openings[%d]", i, k), len(a.found)
			if o.Kind == survey.Pipe {
				a.pipe(i, o, p)
			} else {
				a.hole(i, o, p)
			}
			a.out[p] = len(a.found) > before
			for j, other := range w.Openings[:k] {
				if a.out[p] || a.out[fmt.Sprintf("walls[%d].openings[%d]", i, j)] {
					continue // that it sticks out is said already
				}
				if by := o.Overlap(other); by > 0 && o.Measured() && other.Measured() {
					a.ask(Doubt{Rule: Into, Path: a.placePath(i, k), Wall: i,
						Text: fmt.Sprintf("On %s %s reaches into %s by %s.", w.Name, o.Called(), other.Called(), a.fine(by.CeilTo(a.room.Units.FineStep())))},
						a.placePath(i, j))
				}
			}
		}
	}
}

// ofSurvey tells whether an opening stands in the list of openings: a strip, and the hole for a dish, have fields of their own.
func ofSurvey(o survey.OpeningFound) bool { return o.Strip == nil && o.Kind != survey.SoapDish }

// placePath is the field that says where along the wall an opening is.
func (a *asker) placePath(wall, opening int) string {
	p := fmt.Sprintf("walls[%d].openings[%d]", wall, opening)
	if a.room.Walls[wall].Openings[opening].Kind == survey.Pipe {
		return p + ".at"
	}
	return a.markPath(p + ".left")
}

// field is how far tile may reach on a wall, with free ends at their furthest.
type field struct{ left, right length.Length }

func fieldOf(w survey.WallFound) field {
	f := field{0, w.Width}
	if !w.Left.Meets {
		f.left = w.Left.Stops.From
	}
	if !w.Right.Meets {
		f.right = w.Right.Stops.To
	}
	return f
}

// top is the least height of the head between two places.
func top(w survey.WallFound, from, to length.Length) length.Length {
	if !w.Head.Meets {
		return w.Head.Stops.To
	}
	low := min(survey.At(w.Head.Readings, from), survey.At(w.Head.Readings, to))
	for _, r := range w.Head.Readings {
		if from < r.At && r.At < to {
			low = min(low, r.Value)
		}
	}
	return low
}

// bottom is the greatest height of the base between two places, and what the
// base is there.
func bottom(w survey.WallFound, from, to length.Length) (high length.Length, what survey.Kind) {
	for k, s := range w.Base {
		left, right := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
		if k == 0 {
			left = min(left, from)
		}
		if k == len(w.Base)-1 {
			right = max(right, to)
		}
		if right <= from || left >= to {
			continue
		}
		spots := []length.Length{max(left, from), min(right, to)}
		for _, r := range s.Readings {
			if from < r.At && r.At < to {
				spots = append(spots, r.At)
			}
		}
		for _, x := range spots {
			if y := survey.At(s.Readings, x); what == "" || y > high {
				high, what = y, s.Meets
			}
		}
	}
	return high, what
}

// hole asks about a niche or window that no place in its ranges brings into the
// tile. A window may reach past an edge at which tile merely stops.
func (a *asker) hole(i int, o survey.OpeningFound, p string) {
	w := a.room.Walls[i]
	f := fieldOf(w)
	passes := func(stops bool) bool { return o.Kind == survey.Window && stops }
	out := func(field, text, fits string) {
		if elsewhere(o) {
			fits = ""
		}
		a.ask(Doubt{Rule: Outside, Path: a.markPath(p + "." + field), Wall: i, Fits: fits, Text: text})
	}
	left, right := o.Left.To, o.Left.From+o.Width.From
	switch {
	case left < f.left && !(passes(!w.Left.Meets) && left+o.Width.To > f.left):
		out("left", fmt.Sprintf("The %s begins at %s on %s, where tile begins at %s.", o.Called(), a.say(left), w.Name, a.say(f.left)), a.typed(f.left))
		return
	case right > f.right && !(passes(!w.Right.Meets) && o.Left.From < f.right):
		fits := ""
		if room := f.right - o.Width.From; room >= f.left {
			fits = a.typed(room)
		}
		out("left", fmt.Sprintf("The %s ends at %s on %s, where tile ends at %s.", o.Called(), a.say(right), w.Name, a.say(f.right)), fits)
		return
	}
	a.upright(i, o, p)
}

// room is the heights between which an opening may stand. One that may still
// move along the wall need not stand over the highest base or under the lowest
// head.
func room(w survey.WallFound, o survey.OpeningFound) (base length.Length, what survey.Kind, head length.Length) {
	from, to := o.Left.From, o.Left.To+o.Width.To
	base, what = bottom(w, from, to)
	head = top(w, from, to)
	if o.Left.Free() || o.Width.Free() {
		base, head = lowest(w, base), highest(w, head)
	}
	return base, what, head
}

// lowest is the least height of the base, or low where that is less.
func lowest(w survey.WallFound, low length.Length) length.Length {
	for _, s := range w.Base {
		for _, r := range s.Readings {
			low = min(low, r.Value)
		}
	}
	return low
}

// highest is the greatest height of the head, or high where that is more.
func highest(w survey.WallFound, high length.Length) length.Length {
	for _, r := range w.Head.Readings {
		high = max(high, r.Value)
	}
	return high
}

// upright asks about an opening that reaches under the base or over the head,
// unless one of those is in doubt itself.
func (a *asker) upright(i int, o survey.OpeningFound, p string) {
	if a.rough[i] {
		return
	}
	w := a.room.Walls[i]
	base, what, head := room(w, o)
	path := a.markPath(p + ".bottom")
	if o.Down {
		path = p + ".height"
	}
	passes := o.Kind == survey.Window && !w.Head.Meets && o.Bottom.From < head
	var text string
	switch over := o.Bottom.From + o.Height.From; {
	case o.Bottom.To < base && !o.Down:
		text = fmt.Sprintf("The %s begins %s on %s, and the %s lies %s.", o.Called(), a.height(o.Bottom.To), w.Name, what, a.height(base))
	case over > head && !passes:
		text = fmt.Sprintf("The %s ends %s on %s, and tile ends %s.", o.Called(), a.height(over), w.Name, a.height(head))
	default:
		return
	}
	inside := func(text string) bool {
		l, err := length.Parse(text, a.room.Units)
		return err == nil && base <= l && l+o.Height.From <= head
	}
	rule, fits := Outside, ""
	switch turned := turned(a.texts[path]); {
	case o.Down: // which is measured over the line, where tile may end too low
	case inside(turned):
		rule, fits = Sign, turned
	case head-o.Height.From >= base:
		fits = a.typed(min(max(o.Bottom.From, base.CeilTo(a.room.Tape)), (head - o.Height.From).FloorTo(a.room.Tape)))
	}
	if !inside(fits) || elsewhere(o) {
		fits = ""
	}
	a.ask(Doubt{Rule: rule, Path: path, Wall: i, Text: text, Fits: fits})
}

// elsewhere tells whether an opening was typed between board or studs: what would
// fit between its tiles is not what would be typed.
func elsewhere(o survey.OpeningFound) bool { return o.Inside != nil && !o.Inside.AsTyped }

// markPath is the field of a mark in which it was typed.
func (a *asker) markPath(p string) string {
	for _, field := range []string{".at", ".from"} {
		if _, typed := a.texts[p+field]; typed {
			return p + field
		}
	}
	return p
}

// pipe asks about a pipe whose hole is not wholly in the tile.
func (a *asker) pipe(i int, o survey.OpeningFound, p string) {
	w := a.room.Walls[i]
	f, r := fieldOf(w), o.Diameter.Half()
	left, right := o.At-r, o.At+r
	switch {
	case left < f.left:
		a.ask(Doubt{Rule: Outside, Path: p + ".at", Wall: i,
			Text: fmt.Sprintf("The hole for %s begins at %s on %s, where tile begins at %s.", o.Name, a.say(left), w.Name, a.say(f.left))})
		return
	case right > f.right:
		a.ask(Doubt{Rule: Outside, Path: p + ".at", Wall: i,
			Text: fmt.Sprintf("The hole for %s ends at %s on %s, where tile ends at %s.", o.Name, a.say(right), w.Name, a.say(f.right))})
		return
	}
	base, what := bottom(w, left, right)
	head := top(w, left, right)
	inside := func(up length.Length) bool { return up-r >= base && up+r <= head }
	if inside(o.Up) || a.rough[i] {
		return
	}
	where := fmt.Sprintf("tile ends %s", a.height(head))
	if o.Up-r < base {
		where = fmt.Sprintf("the %s lies %s", what, a.height(base))
	}
	d := Doubt{Rule: Outside, Path: p + ".height", Wall: i,
		Text: fmt.Sprintf("The middle of the hole for %s is read %s on %s, and %s.", o.Name, a.height(o.Up), w.Name, where)}
	if inside(-o.Up) {
		d.Rule, d.Fits = Sign, turned(a.texts[d.Path])
	}
	a.ask(d)
}
