package drawing

import (
	"coursewright/layout"
	"coursewright/layout/mosaic"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// FoldTop draws the top of a wall as it is seen from above, its front edge below: the
// seat of a bench, the top of a curb, the cap of a half wall, with its trim and the
// sizes to cut in the pieces. A wall without a top gives an empty scene.
func FoldTop(p layout.Plan, wall int, o Options) Scene {
	if wall < 0 || wall >= len(p.Walls) || p.Walls[wall].Top == nil {
		return Scene{}
	}
	t := p.Walls[wall].Top
	box := t.Outline.Bounds()
	f := &fold{top: t, name: t.Name(), in: plan.Inside{Letter: t.Wall.Found.Letter, Faces: []plan.Face{t.Face}, Rise: t.Rise}}
	f.in.Clear = survey.Edges{Left: t.Origin.X, Bottom: t.Origin.Y, Right: t.Origin.X + box.Width(), Top: t.Origin.Y + box.Height()}
	face := p
	face.Walls = []layout.Wall{t.Wall}
	f.board = &board{plan: face, texts: o.texts(wallTexts), folded: t.Outline, faces: f.in.Faces}
	for _, m := range mosaic.Of(p.Room, p.Walls) {
		if m.Face == &t.Face {
			m.Wall, m.Face = 0, nil
			f.mosaic = append(f.mosaic, m)
		}
	}
	f.Title = "The " + t.Name() + ", " + t.Wall.Found.Letter
	return f.drawn(wall, o)
}

// topLines say of a top how it is made, and what is framed for it: its boards.
func (f *fold) topLines() []string {
	t, room := f.top, f.plan.Room
	front := room.Bed + room.Tile.Thickness
	wide := f.room - 2*edgeRoom
	if t.Found.Corner != nil {
		return f.cornerLines(wide)
	}
	deep := f.bare(t.Found.Left)
	framed := t.Found.Left
	if t.Found.Open() {
		framed -= 2 * front
	}
	if t.Found.Right != t.Found.Left {
		deep += " to " + f.bare(t.Found.Right)
	}
	out := linesOf("finished edge "+f.signed(t.Front)+" from the level line, "+deep+" deep, "+f.edgeText(), f.texts.note, wide)
	if t.Found.Right == t.Found.Left {
		out = append(out, linesOf("boards "+f.signed(t.Front-t.Found.Face.Cover)+" at the front, "+f.bare(framed)+" deep from board to board", f.texts.note, wide)...)
	}
	return append(out, linesOf("seen from above, its front below · heavy edge: the front · sizes to cut", f.texts.note, wide)...)
}

// cornerLines say of a top in a corner how it is made, and its boards.
func (f *fold) cornerLines(wide Micron) []string {
	t := f.top
	c, front := t.Found.Corner, t.Found.Corner.Wide+t.Found.Corner.Takes[0]+t.Found.Corner.Takes[1]
	out := linesOf("finished edge "+f.signed(t.Front)+" from the level line, "+f.bare(c.Peak.Y)+" from there to the corner, "+f.edgeText(), f.texts.note, wide)
	out = append(out, linesOf("boards "+f.signed(t.Front-t.Found.Face.Cover)+" at the front, "+f.bare(front)+" wide there, "+
		f.bare(c.Along[0])+" along the left wall, "+f.bare(c.Along[1])+" along the right", f.texts.note, wide)...)
	return append(out, linesOf("seen from above, its front below · heavy edge: the front · sizes to cut", f.texts.note, wide)...)
}

// edgeText says how the edge of a top is made.
func (f *fold) edgeText() string {
	t := f.top.Found
	switch {
	case t.How == survey.Mitre:
		return "edge mitred at 45°"
	case t.How == survey.Profile:
		return "edge with the profile " + t.Strip.Name
	}
	text := "edge lapped by the top"
	if !t.Laps {
		text = "edge lapped by the front"
	}
	if t.How == survey.Bullnose {
		text += ", bullnose"
	}
	return text
}

// topCaption names a top with its size and its fall.
func (f *fold) topCaption() string {
	box := f.top.Outline.Bounds()
	text := string(f.top.Found.Kind) + " " + f.bare(box.Width()) + " × " + f.bare(box.Height())
	if f.in.Rise > 0 {
		text += ", falls " + f.fineRise() + " to the front"
	}
	return text
}

// topText says of a wall which top it has: " · seat F-T on it".
func topText(w layout.Wall) string {
	if w.Top == nil {
		return ""
	}
	return " · " + string(w.Top.Found.Kind) + " " + w.Top.Wall.Found.Letter + " on it: " + string(w.Top.Found.How)
}

// topOver marks on its wall the edge of a top: where its finished edge stands, and what
// is seen of its tile over the wall's.
func (b *board) topOver(f frame, w layout.Wall) {
	t := w.Top
	if t == nil {
		return
	}
	box := t.Outline.Bounds()
	left, right := t.Origin.X, t.Origin.X+box.Width()
	tag := Tag{Kind: Corner, Wall: f.wall}
	if t.Found.Laps && t.Found.How != survey.Profile {
		strip := plane.Rect{Left: left, Bottom: t.Front - t.Found.Thick(b.plan.Room), Right: right, Top: t.Front}
		b.path(tag, Ink{Fill: Pale, Line: Black, Width: 250}, f.rings(plane.Region{strip.Ring(0)})...)
	}
	b.chain(tag, line(Black, 700), f.at(left, t.Front), f.at(right, t.Front))
}
