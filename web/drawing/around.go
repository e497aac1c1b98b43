package drawing

import (
	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// ground is how deep the hatched band under the base is drawn.
const ground = 3500

// extents is the rectangle a wall takes on the drawing, in wall units.
func extents(w layout.Wall) plane.Rect {
	r := w.Shape.Region.Bounds()
	r.Left, r.Right = min(r.Left, 0), max(r.Right, w.Found.Width)
	if o := w.Found.Left.Outside; o != nil {
		r.Left = min(r.Left, -o.Past)
	}
	if o := w.Found.Right.Outside; o != nil {
		r.Right = max(r.Right, w.Found.Width+o.Past)
	}
	for _, s := range w.Found.Base {
		for _, x := range s.Readings {
			r.Bottom = min(r.Bottom, x.Value)
		}
	}
	for _, x := range w.Found.Head.Readings {
		r.Top = max(r.Top, x.Value)
	}
	for i, e := range w.Start.Placed.Openings {
		if e.Left < e.Right && e.Bottom < e.Top && w.Found.Openings[i].Strip == nil { // a window may stand over where the tile stops
			r = plane.Rect{Left: min(r.Left, e.Left), Bottom: min(r.Bottom, e.Bottom), Right: max(r.Right, e.Right), Top: max(r.Top, e.Top)}
		}
	}
	for _, p := range w.Fixtures {
		t := p.Box
		if p.Found.Kind == survey.GrabBar { // its plates are round
			t.Left, t.Right = t.Left-t.Height()/2, t.Right+t.Height()/2
		}
		for _, h := range p.Holes {
			t.Bottom, t.Top = min(t.Bottom, h.At.Y), max(t.Top, h.At.Y)
		}
		r = plane.Rect{Left: min(r.Left, t.Left), Bottom: min(r.Bottom, t.Bottom), Right: max(r.Right, t.Right), Top: max(r.Top, t.Top)}
	}
	if w.Top != nil {
		r.Top = max(r.Top, w.Top.Front)
	}
	for _, p := range w.Trim {
		t := p.Face.Bounds()
		r = plane.Rect{Left: min(r.Left, t.Left), Bottom: min(r.Bottom, t.Bottom), Right: max(r.Right, t.Right), Top: max(r.Top, t.Top)}
	}
	return r
}

// base draws what the tile comes down to as hatched ground, the longest stretch with its name;
// the others have theirs under them (legs).
func (b *board) base(f frame, w layout.Wall, names bool) {
	tag := Tag{Kind: Base, Wall: f.wall}
	main, _ := footOf(f, w)
	for _, s := range w.Found.Base {
		pts := profile(f, s.Readings)
		if len(pts) < 2 {
			continue
		}
		b.band(tag, pts, ground)
		mid := Point{third(pts), pts[0].Y + ground/2}
		if names && s.Readings[0] == main.base.Readings[0] && TextWidth(string(s.Meets), b.texts.note) < pts[len(pts)-1].X-pts[0].X {
			b.plate(Label{Tag: tag, Text: string(s.Meets), Size: b.texts.note, Colour: Black}, mid, White)
		}
	}
}

// head draws the ceiling as a hatched band; a head that stops has none.
func (b *board) head(f frame, w layout.Wall, names bool) {
	pts := profile(f, w.Found.Head.Readings)
	if !w.Found.Head.Meets || len(pts) < 2 {
		return
	}
	tag := Tag{Kind: Head, Wall: f.wall}
	b.band(tag, pts, -ground)
	if names {
		mid := Point{third(pts), pts[0].Y - ground/2}
		b.plate(Label{Tag: tag, Text: "ceiling", Size: b.texts.note, Colour: Black}, mid, White)
	}
}

// third is the place of a band's name: a third along, clear of the centre line.
func third(pts []Point) Micron { return pts[0].X + (pts[len(pts)-1].X-pts[0].X)/3 }

// band is a hatched strip along a line, depth below it.
func (b *board) band(t Tag, pts []Point, depth Micron) {
	strip := append([]Point(nil), pts...)
	for i := len(pts) - 1; i >= 0; i-- {
		strip = append(strip, Point{pts[i].X, pts[i].Y + depth})
	}
	b.path(t, Ink{Fill: None, Hatch: Earth, Line: None}, strip)
	b.chain(t, line(Black, 500), pts...)
}

func profile(f frame, readings []survey.Reading) []Point {
	var pts []Point
	for _, r := range readings {
		pts = append(pts, f.at(r.At, r.Value))
	}
	return pts
}

// ends draws the corners of the boards.
func (b *board) ends(f frame, w layout.Wall) {
	top := extents(w).Top
	b.corner(f, w.Found.Left, 0, baseAt(w, 0), top)
	b.corner(f, w.Found.Right, w.Found.Width, baseAt(w, w.Found.Width), top)
}

// lap draws dashed where the next wall's tile will hide the tile of this one.
func (b *board) lap(f frame, w layout.Wall) {
	hidden := func(s plane.Side) bool {
		return s == survey.SideLeft && w.Found.Left.Cover > 0 || s == survey.SideRight && w.Found.Right.Cover > 0
	}
	edges(w.Shape.Visible, hidden, func(p, q plane.Corner) {
		b.chain(Tag{Kind: Lap, Wall: f.wall}, broken(Black, 350, Hidden), f.at(p.X, p.Y), f.at(q.X, q.Y))
	})
}

// corner draws one corner at x as it leans, from low to high.
func (b *board) corner(f frame, e survey.EndFound, x, low, high length.Length) {
	if !e.Meets {
		return
	}
	pts := []Point{f.at(x+leaning(e, low), low)}
	for _, l := range e.Lean {
		if l.At > low && l.At < high {
			pts = append(pts, f.at(x+l.Value, l.At))
		}
	}
	pts = append(pts, f.at(x+leaning(e, high), high))
	b.chain(Tag{Kind: Corner, Wall: f.wall}, line(Black, 350), pts...)
}

// baseAt is the height of the base at x; of the two at a step, the higher.
func baseAt(w layout.Wall, x length.Length) length.Length {
	y, found := length.Length(0), false
	for _, s := range w.Found.Base {
		n := len(s.Readings)
		if n == 0 || x < s.Readings[0].At || x > s.Readings[n-1].At {
			continue
		}
		if v := survey.At(s.Readings, x); !found || v > y {
			y, found = v, true
		}
	}
	if !found {
		return w.Shape.Region.Bounds().Bottom
	}
	return y
}

// leaning is how far a corner stands to the right at a height.
func leaning(e survey.EndFound, at length.Length) length.Length {
	if len(e.Lean) == 0 {
		return 0
	}
	return survey.At(e.Lean, at)
}

// outline draws the outer edge of the tiled region.
func (b *board) outline(f frame, w layout.Wall) {
	ink := line(Black, 700)
	if b.guessed(b.wallPath(w)) {
		ink.Dash = Hidden
	}
	for _, ring := range f.rings(w.Shape.Region) {
		if area(ring) > 0 { // paper's y runs down: outer rings turn positive here
			b.path(Tag{Kind: Outline, Wall: f.wall}, ink, ring)
		}
	}
}

// area is twice the signed area of a ring on paper, positive for the outer
// rings of a region.
func area(ring []Point) Micron {
	var a Micron
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		a -= (p.X*q.Y - p.Y*q.X)
	}
	return a
}
