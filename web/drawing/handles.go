package drawing

import (
	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// handles lists what a person may drag on a wall: the course line, the start,
// free marks and pipes. Free marks are named as the plan file names them.
func (b *board) handles(f frame, w layout.Wall) {
	add := func(id, axis, text string, x, y length.Length) {
		b.Handles = append(b.Handles, Handle{ID: id, Wall: f.wall, Axis: axis, X: x, Y: y, At: f.at(x, y), Text: text})
	}
	r, line := w.Shape.Region.Bounds(), b.plan.Setout.Line
	add("course", "y", "course line", r.Left, line)
	add("start", "x", "start", w.Start.X, line)
	if !w.Found.Left.Meets && w.Found.Left.Stops.Free() {
		add("end left", "x", "left end of the tile", w.Start.Placed.Left, (r.Bottom+r.Top)/2)
	}
	if !w.Found.Right.Meets && w.Found.Right.Stops.Free() {
		add("end right", "x", "right end of the tile", w.Start.Placed.Right, (r.Bottom+r.Top)/2)
	}
	if !w.Found.Head.Meets && w.Found.Head.Stops.Free() {
		add("head", "y", "head of the tile", (r.Left+r.Right)/2, w.Start.Placed.Head)
	}
	for i, o := range w.Found.Openings {
		if o.Kind == "pipe" {
			add("pipe "+o.Name, "xy", "pipe "+o.Name, o.At, o.Up)
			continue
		}
		openingHandles(add, o, placed(w, i))
	}
}

func openingHandles(add func(id, axis, text string, x, y length.Length), o survey.OpeningFound, e survey.Edges) {
	id := o.Kind + " " + o.Name
	x, y := (e.Left+e.Right)/2, (e.Bottom+e.Top)/2
	if o.Left.Free() {
		add(id+" left", "x", "left edge of "+id, e.Left, y)
	}
	if o.Left.Free() || o.Width.Free() {
		add(id+" right", "x", "right edge of "+id, e.Right, y)
	}
	if o.Bottom.Free() {
		add(id+" bottom", "y", "bottom edge of "+id, x, e.Bottom)
	}
	if o.Bottom.Free() || o.Height.Free() {
		add(id+" top", "y", "top edge of "+id, x, e.Top)
	}
}
