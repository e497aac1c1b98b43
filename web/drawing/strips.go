package drawing

import (
	"coursewright/layout"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
)

// strip draws the tile of the strip that stands in an opening of the field: pieces as
// those of the field are, whole ones in a shade of their own.
func (b *board) strip(f frame, w layout.Wall, opening int) {
	for i := range w.Strips {
		if s := &w.Strips[i]; s.Opening == opening {
			b.stripTiles(f, s, Grout, b.stripShade(i))
			b.stripCuts(f, s)
		}
	}
}

// stripTiles draws the whole tiles of a strip on the ground of their joints.
func (b *board) stripTiles(f frame, s *plan.Strip, grout, tile Colour) {
	box := f.rect(s.Box)
	joint := f.scale.On(b.plan.Room.Joint)
	b.path(Tag{Kind: Joints, Wall: f.wall}, fill(grout), corners(Point{box[0].X - joint, box[0].Y}, Point{box[2].X + joint, box[2].Y}))
	var whole []*piece.Piece
	for i := range s.Pieces {
		if s.Pieces[i].Whole {
			whole = append(whole, &s.Pieces[i])
		}
	}
	up := s.Bond.Plumb
	for _, size := range bySize(whole, up) {
		e := Tiles{Tag: Tag{Kind: Whole, Wall: f.wall}, Fill: tile, Up: up}
		e.sized(f, size[0].Tile, s.Joint)
		for _, run := range inRuns(size, s.Joint, up) {
			e.Runs = append(e.Runs, e.run(f, run))
		}
		b.Elements = append(b.Elements, e)
	}
}

// stripCuts draws the pieces of a strip that are cut, their cut edges heavier.
func (b *board) stripCuts(f frame, s *plan.Strip) {
	for _, p := range s.Pieces {
		if !p.Whole {
			k := CutKind(p)
			b.path(Tag{Kind: k, Wall: f.wall, Piece: p.ID}, cutInk(k), f.rings(p.Face)...)
		}
	}
	b.cutEdges(f, s.Pieces)
}

// stripsFinished draws the strips of a wall as they will look.
func (b *board) stripsFinished(f frame, w layout.Wall) {
	for i := range w.Strips {
		s := &w.Strips[i]
		tile := Colour(s.Tile.Colour)
		b.stripTiles(f, s, Colour(b.plan.Room.Grout), tile)
		var cut [][]Point
		for _, p := range s.Pieces {
			if !p.Whole {
				cut = append(cut, f.rings(p.Face)...)
			}
		}
		if len(cut) > 0 {
			b.path(Tag{Kind: Finish, Wall: f.wall}, fill(tile), cut...)
		}
	}
}

// stripShade tells the whole tiles of a strip from those of field and bands.
func (b *board) stripShade(i int) Colour {
	return []Colour{0xe8e3ef, 0xdcd3e3, 0xcec4d8}[i%3]
}

// stripHeights are the lower and the upper edge of a strip, where it does not go on
// to base or head.
func stripHeights(w layout.Wall, opening int) []station {
	var out []station
	o := w.Found.Openings[opening]
	for i := range w.Strips {
		s := &w.Strips[i]
		if s.Opening != opening {
			continue
		}
		name := openingShort(w, opening)
		if !o.Strip.Low {
			out = append(out, station{l: s.Box.Bottom, name: name + " foot", colour: decided(o.Bottom.Free()), rank: rankOpening})
		}
		if !o.Strip.High {
			out = append(out, station{l: s.Box.Top, name: name + " top", colour: decided(o.Bottom.Free() || o.Height.Free()), rank: rankOpening})
		}
	}
	return out
}

// strip hangs the handles of a strip on it: its left edge where it is free, its middle
// where that was measured, and its heights where they are free.
func (h hands) strip(w layout.Wall, opening int, full bool) {
	o, e := w.Found.Openings[opening], placed(w, opening)
	id, r := o.Key(), w.Shape.Region.Bounds()
	low, high := max(e.Bottom, r.Bottom), min(e.Top, r.Top)
	switch middle := (e.Left + e.Right).Half(); {
	case o.Left.Free():
		h.edge(id+" left", Ends, "x", "left edge of the field's gap for "+id, plane.Point{X: e.Left, Y: low}, plane.Point{X: e.Left, Y: high})
	case full:
		y := (low + high) / 2
		h.measured("move "+id, "x", "middle of "+id, middle, y, h.f.at(middle, y))
	}
	if !o.Strip.Low && o.Bottom.Free() {
		h.edge(id+" bottom", Ends, "y", "bottom edge of the field's gap for "+id, plane.Point{X: e.Left, Y: e.Bottom}, plane.Point{X: e.Right, Y: e.Bottom})
	}
	if !o.Strip.High && (o.Bottom.Free() || o.Height.Free()) {
		h.edge(id+" top", Begins, "y", "top edge of the field's gap for "+id, plane.Point{X: e.Left, Y: e.Top}, plane.Point{X: e.Right, Y: e.Top})
	}
}
