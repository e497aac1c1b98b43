package plan

import (
	"slices"

	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// Flat gives what is laid in one tile as flat walls: the walls themselves, each followed by
// those of its strips, of the faces of its niches and windows, and of its top that are taken,
// all without the tile of bands.
func Flat(walls []Wall, take func(*Face) bool) []Wall {
	var out []Wall
	for i := range walls {
		out = append(out, walls[i].laid(0))
		for _, f := range walls[i].faces() {
			if take(f) {
				out = append(out, f.Wall.laid(0))
			}
		}
	}
	return out
}

// faces are the strips of the wall, the faces of its niches and windows, and its top.
func (w *Wall) faces() (out []*Face) {
	for i := range w.Strips {
		out = append(out, &w.Strips[i].Face)
	}
	return append(out, w.Folded()...)
}

// Folded are the faces that are folded out of the plane of the wall: those of its niches
// and windows, and its top.
func (w *Wall) Folded() (out []*Face) {
	for i := range w.Insides {
		for k := range w.Insides[i].Faces {
			out = append(out, &w.Insides[i].Faces[k])
		}
	}
	if w.Top != nil {
		out = append(out, &w.Top.Face)
	}
	return out
}

// Find gives the piece of an id, on the wall or on what is laid on it: a strip, a face of a
// niche or window, or the top; on is nil on the wall itself. Nil where there is none.
func (w *Wall) Find(id string) (p *piece.Piece, on *Face) {
	for i := range w.Pieces {
		if w.Pieces[i].ID == id {
			return &w.Pieces[i], nil
		}
	}
	for _, f := range w.faces() {
		for i := range f.Pieces {
			if f.Pieces[i].ID == id {
				return &f.Pieces[i], f
			}
		}
	}
	return nil, nil
}

// OfRoom tells whether a face is laid in the room's own tile, and in no others that the room's
// pattern and its bands have not.
func (f *Face) OfRoom(room survey.Room) bool {
	return !f.Slab && f.Tile == room.Tile && (len(f.Bond.Others) == 0 || slices.Equal(f.Bond.Others, room.Bond.Others))
}

// laid is the wall with only the pieces of the room's tile n.
func (w Wall) laid(n int) Wall {
	if slices.ContainsFunc(w.Pieces, func(p piece.Piece) bool { return p.Laid != n }) {
		w.Pieces = slices.DeleteFunc(slices.Clone(w.Pieces), func(p piece.Piece) bool { return p.Laid != n })
	}
	return w
}

// Others lists the tiles that are not the room's own: those of bands, in the job's
// order, then those that faces have of their own, each once, with its faces, in the
// order of the walls. A band counts with what of it goes on upon the backs of niches.
func Others(room survey.Room, walls []Wall) []Other {
	var out []Other
	for i, b := range room.Bands {
		o := Other{Name: "tile for the " + b.Name, Tile: b.Tile, Bond: b.Bond}
		for _, w := range b.Walls {
			o.Faces = append(o.Faces, walls[w].laid(i+1))
			for _, f := range walls[w].Folded() {
				if on := f.Wall.laid(i + 1); len(on.Pieces) > 0 {
					o.Faces = append(o.Faces, on)
				}
			}
		}
		out = append(out, o)
	}
	for i := range walls {
		for _, f := range walls[i].faces() {
			if !f.Slab && !f.OfRoom(room) {
				out = joined(out, f)
			}
		}
	}
	return out
}

// Other is a tile beside the room's own: that of a band, or one that is laid on
// faces of niches and windows alone.
type Other struct {
	Name  string // its own, or that of the first face it is laid on
	Tile  survey.TileSize
	Bond  survey.BondRule // of the first face, or of the first that is laid in a pattern
	Faces []Wall
}

func joined(all []Other, f *Face) []Other {
	for i := range all {
		if all[i].Tile == f.Tile && slices.Equal(all[i].Bond.Others, f.Bond.Others) {
			if all[i].Faces = append(all[i].Faces, f.Wall); all[i].Bond.Coursed() {
				all[i].Bond = f.Bond
			}
			return all
		}
	}
	name := f.Tile.Name
	if name == "" {
		name = "tile for the " + f.Name()
	}
	return append(all, Other{Name: name, Tile: f.Tile, Bond: f.Bond, Faces: []Wall{f.Wall}})
}

// Count counts the pieces of walls as the cut schedule does, with those of what is folded
// out of them, and how many of them are cut.
func Count(walls []Wall) (cut, all int) {
	add := func(pieces []piece.Piece) {
		for _, p := range pieces {
			if all++; !p.Whole {
				cut++
			}
		}
	}
	for i := range walls {
		add(walls[i].All())
		for _, f := range walls[i].Folded() {
			add(f.Pieces)
		}
	}
	return cut, all
}
