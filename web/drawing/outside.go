package drawing

import (
	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// turned is one outside corner as it is seen from a wall.
type turned struct {
	*survey.OutsideFound
	right         bool
	boards, edge  length.Length // the corner of the boards, and the finished edge
	tile, hatched length.Length // where tile ends, and where what is seen beside it begins; alike where nothing is
}

// turns lists the outside corners of a wall.
func (b *board) turns(w layout.Wall) []turned {
	var all []turned
	if o := w.Found.Left.Outside; o != nil {
		all = append(all, b.turn(turned{OutsideFound: o, edge: -o.Past, tile: w.Start.Placed.Left}))
	}
	if o := w.Found.Right.Outside; o != nil {
		all = append(all, b.turn(turned{OutsideFound: o, right: true, boards: w.Found.Width, edge: w.Found.Width + o.Past, tile: w.Start.Placed.Right}))
	}
	return all
}

// turn finds what is seen at the corner beside this wall's own tile and trim: the
// side of a tile that laps over it, or the profile that stands on the other wall.
func (b *board) turn(t turned) turned {
	t.hatched = t.edge
	if t.Laps || t.How == survey.Mitre {
		return t
	}
	deep := b.plan.Room.Tile.Thickness
	if t.How == survey.Profile && t.Strip != nil {
		deep = t.Strip.Width
	}
	if t.right {
		t.hatched -= deep
	} else {
		t.hatched += deep
	}
	return t
}

// turnedEdges draws the outside corners of a wall: the finished edge, the corner of
// the boards behind the tile, and what is seen beside it.
func (b *board) turnedEdges(f frame, w layout.Wall) {
	box := w.Shape.Region.Bounds()
	tag := Tag{Kind: Corner, Wall: f.wall}
	for _, t := range b.turns(w) {
		if t.hatched != t.edge {
			b.path(tag, Ink{Fill: Pale, Line: Black, Width: 250}, f.rings(t.strip(box))...)
		}
		b.chain(tag, line(Black, 700), f.at(t.edge, box.Bottom), f.at(t.edge, box.Top))
		b.chain(tag, broken(Black, 250, Hidden), f.at(t.boards, box.Bottom), f.at(t.boards, box.Top))
	}
}

// turnedFinished draws what is seen beside the tile as it will look.
func (b *board) turnedFinished(f frame, w layout.Wall, tile Colour) {
	box := w.Shape.Region.Bounds()
	for _, t := range b.turns(w) {
		if t.hatched == t.edge {
			continue
		}
		ink := Ink{Fill: tile, Line: Grey, Width: 250}
		if t.How == survey.Profile {
			ink.Fill = Ground
		}
		b.path(Tag{Kind: Finish, Wall: f.wall}, ink, f.rings(t.strip(box))...)
	}
}

func (t turned) strip(box plane.Rect) plane.Region {
	box.Left, box.Right = min(t.hatched, t.edge), max(t.hatched, t.edge)
	return plane.Region{box.Ring(0)}
}

// turnsText says of a wall how its outside corners are made: " · outside corner H–P: bullnose
// on this wall".
func (b *board) turnsText(w layout.Wall) (text string) {
	for _, t := range b.turns(w) {
		next := b.plan.Walls[t.Next].Found.Letter
		text += " · outside " + b.cornerName(w, !t.right) + ": " + string(t.How)
		switch {
		case t.How == survey.Mitre:
			text += " " + survey.HalfDegrees(t.Bevel())
		case t.How == survey.Profile:
		case t.Laps:
			text += " on this wall"
		default:
			text += " on " + next
		}
	}
	return text
}

// fold marks in a wrap where it is folded away from the room, between a wall and the next.
func (w *wrap) fold(i int) {
	wall := w.plan.Walls[i]
	if o := wall.Found.Right.Outside; o == nil || o.Next != i+1 {
		return
	}
	r, next := extents(wall), extents(w.plan.Walls[i+1])
	x := (w.frames[i].at(r.Right, 0).X + w.frames[i+1].at(next.Left, 0).X) / 2
	low, high := max(r.Bottom, next.Bottom), min(r.Top, next.Top)
	w.chain(Tag{Kind: Corner, Wall: i}, broken(Grey, 350, DashDot), Point{x, w.frames[i].at(0, high).Y}, Point{x, w.frames[i].at(0, low).Y})
}
