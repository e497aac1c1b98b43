package doubt

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// moved asks about marks that were measured far from where the set-out is held: what is built stands a little off, and
// who reads a tape wrong by an inch loses a set-out that is on the wall.
func (a *asker) moved() {
	for i, w := range a.room.Walls {
		p := fmt.Sprintf("walls[%d]", i)
		a.movedTo(i, survey.EndLeft, p+".left.stops", "left end of "+w.Name, w.Left.Stops.From)
		a.movedTo(i, survey.EndRight, p+".right.stops", "right end of "+w.Name, w.Right.Stops.From)
		a.movedTo(i, survey.HeadMark, p+".head.stops", "head of "+w.Name, w.Head.Stops.From)
		for k, o := range w.Openings {
			if o.Kind != survey.Pipe && ofSurvey(o) {
				o := movedOpening{o, i, fmt.Sprintf("%s.openings[%d]", p, k)}
				wide, high := o.Inside != nil && o.Inside.Wide, o.Inside != nil && o.Inside.High
				a.movedAlong(o, survey.LeftEdge, survey.RightEdge, asBuilt(o.Left, wide), asBuilt(o.Width, wide), [...]string{"left", "width"})
				a.movedAlong(o, survey.BottomEdge, survey.TopEdge, asBuilt(o.Bottom, high), asBuilt(o.Height, high), [...]string{"bottom", "height"})
			}
		}
	}
}

// movedOpening is an opening with its wall and its field.
type movedOpening struct {
	survey.OpeningFound
	wall int
	path string
}

// asBuilt is what was measured of what is built: the middle of what a tolerance leaves it.
func asBuilt(s survey.Span, tolerant bool) survey.Span {
	if !tolerant {
		return s
	}
	middle := (s.From + s.To).Half()
	return survey.Span{From: middle, To: middle}
}

// movedAlong asks about the place of an opening, else about its size.
func (a *asker) movedAlong(o movedOpening, low, high survey.EdgeName, place, size survey.Span, fields [2]string) {
	w := a.room.Walls[o.wall]
	from, movedFrom := w.Moved[o.Mark(low)]
	_, movedTo := w.Moved[o.Mark(high)]
	ask := func(field, what string, held, is length.Length) {
		by := a.asTyped(o, o.path+"."+field, is)
		a.askMoved(o.wall, o.path+"."+field, o.Called()+", "+what+",", held+by, is+by)
	}
	switch {
	case movedFrom && !place.Free():
		ask(fields[0], string(low)+" edge", from, place.From)
	case movedTo && !size.Free():
		ask(fields[1], fields[1], w.HeldAt(o.Mark(high))-w.HeldAt(o.Mark(low)), size.From)
	}
}

// asTyped is what is to be added to a figure for it to be as it was typed: of an opening that was typed between its boards or
// studs, what stands between these and the edges of its tile.
func (a *asker) asTyped(o movedOpening, path string, is length.Length) length.Length {
	if !elsewhere(o.OpeningFound) {
		return 0
	}
	typed, err := length.Parse(a.texts[a.markPath(path)], a.room.Units)
	if err != nil {
		return 0
	}
	return typed - is
}

// movedTo asks about a mark that stands elsewhere than it is held.
func (a *asker) movedTo(wall int, mark survey.MarkName, path, what string, is length.Length) {
	if held, moved := a.room.Walls[wall].Moved[mark]; moved {
		a.askMoved(wall, path, what, held, is)
	}
}

// askMoved asks where what is measured is further from what is held than anybody builds.
func (a *asker) askMoved(wall int, path, what string, held, is length.Length) {
	if (held - is).Abs() <= a.astray() {
		return
	}
	a.ask(Doubt{Rule: Moved, Path: a.markPath(path), Wall: wall, Fits: a.typed(held),
		Text: fmt.Sprintf("The %s is measured at %s; the set-out is held with %s. All else stays where it is held.", what, a.say(is), a.say(held))})
}

// astray is the furthest that what is built stands from where it was marked, 1 in (25 mm). Common practice, no source.
func (a *asker) astray() length.Length { return a.either(length.Inch, 25*length.Millimetre) }
