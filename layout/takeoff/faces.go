package takeoff

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
)

// field is the plan as far as it is laid in the room's own tile: its walls, and
// the faces of niches and windows and the tops that go on with it.
func (in Input) field() Input {
	in.Walls = plan.Flat(in.Walls, func(f *plan.Face) bool { return f.OfRoom(in.Room) })
	return in
}

// faces is the plan with every face that is tiled, whatever it is laid in: what
// is bought by area and by joints. A soft joint between two faces counts once, and
// a slab as large as it is seen.
func (in Input) faces() Input {
	var out []plan.Wall
	for _, w := range in.Walls {
		out = append(out, w)
		for _, s := range w.Strips {
			out = append(out, once(s.Face))
		}
		for _, inside := range w.Insides {
			for _, f := range inside.Faces {
				out = append(out, once(f))
			}
		}
		if w.Top != nil {
			out = append(out, once(w.Top.Face))
		}
	}
	in.Walls = out
	return in
}

// once is a face of which each soft joint that another face counts has no width.
func once(f plan.Face) plan.Wall {
	w := f.Wall
	w.Shape.Sides = slices.Clone(w.Shape.Sides)
	for i := range w.Shape.Sides {
		if !slices.Contains(f.Soft, plane.Side(i)) {
			w.Shape.Sides[i].Gap = 0
		}
	}
	if f.Slab {
		w.Pieces = slices.Clone(w.Pieces)
		for i := range w.Pieces {
			w.Pieces[i].Face = w.Shape.Region
		}
	}
	return w
}

// others are the lines of the tiles that only faces of niches and windows have.
func (in Input) others(set Settings) []Line {
	var all []Line
	for i, o := range plan.Others(in.Room, in.Walls) {
		of := in
		of.Room.Tile, of.Room.Bond, of.Walls = o.Tile, o.Bond, o.Faces
		if i < len(in.Others) {
			of.Cuts = in.Others[i]
		}
		band := ""
		if i < len(in.Room.Bands) { // they stand first
			band = in.Room.Bands[i].Name
		}
		all = append(all, of.named(o, band, set)...)
	}
	for i := range all {
		all[i].Other = true
	}
	return all
}

// named are the lines of the tile of bands or of faces, or of each tile of the pattern that they are laid in.
func (in Input) named(o plan.Other, band string, set Settings) []Line {
	if len(o.Bond.Others) == 0 || o.Tile.Sheet.Any() {
		l := in.lineOf(band, set.of(o.Tile, o.Bond))
		l.Item = o.Name
		return []Line{l}
	}
	lines := in.kinds(set.of(o.Tile, o.Bond), set)
	for i := range lines {
		if lines[i].Item, lines[i].Further = o.Name, 0; i > 0 {
			lines[i].Item = fmt.Sprintf("%s, tile %d of its %s", o.Name, i+1, o.Bond.Kind)
		}
	}
	return lines
}

// lineOf is the line of the room's tile, or of that of a band, by the piece or by the sheet.
func (in Input) lineOf(band string, set Settings) Line {
	if in.Room.Tile.Sheet.Any() {
		return in.sheets(in.Room.Tile, band, set)
	}
	return in.tiles(set)
}

// slabs are cut to size by whoever sells them.
func (in Input) slabs() []Line {
	var all []Line
	for _, w := range in.Walls {
		for _, inside := range w.Insides {
			for _, f := range inside.Faces {
				if f.Slab && len(f.Pieces) > 0 {
					all = append(all, in.slab(&f, w.Found.Openings[inside.Opening].Inside.Faces[f.Is].Slab))
				}
			}
		}
		if t := w.Top; t != nil && t.Slab && len(t.Pieces) > 0 {
			all = append(all, in.slab(&t.Face, t.Found.Face.Slab))
		}
	}
	return all
}

// slab is the line of one slab.
func (in Input) slab(f *plan.Face, thick length.Length) Line {
	p, u := f.Pieces[0], in.Room.Units
	return Line{Item: "slab for the " + f.Name(), Unit: "piece", Net: 1, Count: 1,
		Because: fmt.Sprintf("%s × %s, %s thick, cut to size", p.Wide.Fine(u), p.High.Fine(u), thick.Fine(u))}
}

// bands is the area of the pieces of all bands, on walls and on what is folded out of them.
func (in Input) bands() length.Area {
	var twice length.Area
	for i := range in.Walls {
		on := [][]piece.Piece{in.Walls[i].Pieces}
		for _, f := range in.Walls[i].Folded() {
			on = append(on, f.Pieces)
		}
		for _, p := range slices.Concat(on...) {
			if p.Laid > 0 {
				twice += p.Face.Area2()
			}
		}
	}
	return twice / 2
}
