// Package niche lays what is folded out of the plane of a wall: the inside of
// niches and windows, and the top of a wall that stops at a height. From a wall
// that is set out and what was surveyed it makes the faces and cuts their pieces.
//
// Laws, each with a test:
//
//  1. Conservation: the pieces of a face, the joints between them and the soft
//     joints round it make up the face exactly.
//  2. Without a tile or bond of its own the back goes on with the bond of the
//     wall: its joints stand where those of the wall would, and in the same
//     courses. The sides carry the heights of the courses, sill and top the
//     plumb joints of the course they lie at.
//  3. A side in rows that comes to the front keeps a factory edge there: what is cut, is
//     cut at the back. Only behind the lap of the wall's tile, and where a sliver would be left at the
//     back, are the first and the last row cut alike.
//  4. A wall whose openings have no inside, and whose head has no top, stays as it
//     was.
//  5. Without a tile or bond of its own the top of a wall goes on with it: its first
//     row is the course after the highest one, or where that leaves slivers another of
//     the bond that leaves fewer, whole from the front edge on, or cut there as much as at the back where that
//     leaves fewer and the edge does not show it. One in the corner of two
//     walls goes on as well, but no wall is set out by what that leaves on it.
//  6. Bands that lie across an opening go on upon its back and its sides too: each of the wall's tiles at the heights
//     that it has on the wall, on the back with the joints that it has beside the opening, on the sides whole at the front, in
//     rows or, of a band laid in a pattern, in that pattern. A side that begins anew on the sill goes its own way, and stays in
//     the tile of the field. So do sill and top: a band is a stretch of heights and they lie at its edge or across it, and on a
//     sill the small tile of a band would bring joints to where water stands; who wants it there gives them a tile of their own. Only
//     where the whole opening is within one band, with band under the sill and over the top, are they in its tile as
//     well, with its plumb joints, because there is no field there to go on from.
//  7. A pattern without courses, and a running bond on sheets of mosaic, goes on round the edge of an opening upon sides, sill
//     and top: what the edge cuts off a tile stands a joint behind it, as if the return were folded out into the wall
//     (common practice, no source). So joints run on over the edge, and those of rows come to the back at its own heights. A side that begins anew on the sill
//     goes on round the edge along its rows alone. A tile or bond of its own stays as it is said, and a set-out that is held from before this law keeps its plain rows.
//  8. The tile of a band begins on a side a joint behind the wall's tile of that band, and is as much shorter or longer as that is
//     thicker or thinner than the field: thinner tile is brought out flush with more mortar; thicker stands as far out of the back as
//     out of the wall and out of the sides, where it takes so much of the back at both ends (common practice, no source).
//
// Where two faces meet, both keep the gap from each other, so that a niche whose
// edges lie on joints has whole tiles on its back: common practice, no source.
// The corners are sealed, not grouted (TCNA EJ171).
package niche

import (
	"context"
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Lay lays the inside of every opening that has one, and the top of every wall. The walls are those of the
// set-out, with the room's joint. The error is the context's.
func Lay(ctx context.Context, room survey.Room, s plan.Setout, walls []plan.Wall) error {
	for i := range walls {
		w := &walls[i]
		count := map[survey.Kind]int{}
		for k, o := range w.Found.Openings {
			if o.Inside == nil {
				continue
			}
			count[o.Kind]++
			laid, at, edge := s.At(room, i, w.Start.At(w.Start.Placed.Openings[k].Left), w.Start.Placed.Openings[k].Bottom)
			on := *w
			on.Start.Edge = edge
			b := newBox(laid, at, &on, k)
			if b.over = overLine(room, s, i, b.hole.Bottom); b.over == 0 {
				b.layers = layersOf(room, s, i, w, b.hole)
			}
			b.letter = fmt.Sprintf("%s-%s%d", w.Found.Letter, initial(o.Kind), count[o.Kind])
			in, err := b.inside(ctx)
			if err != nil {
				return err
			}
			w.Insides = append(w.Insides, in)
		}
		w.Top = topOf(room, s, i, w)
	}
	return nil
}

func initial(k survey.Kind) string {
	if k == survey.Window {
		return "W"
	}
	return "N"
}

// box is the inside of one opening, or the top of a wall, in the making.
type box struct {
	room    survey.Room
	setout  plan.Setout
	wall    *plan.Wall
	opening int
	found   survey.OpeningFound
	in      *survey.InsideFound
	hole    survey.Edges // that the tile of the wall leaves
	clear   survey.Edges // between the finished faces
	gap     length.Length
	front   length.Length // how far behind the wall's face the tile begins
	rise    length.Length
	letter  string
	lies    *survey.FaceFound // what is laid on the top of a wall
	skip    int               // courses of the bond that are passed over under it
	less    length.Length     // what is cut off the front row of a top
	start   *length.Length    // where a tile of its first row begins, with a tile of its own
	over    int               // the band that goes up to the head over whose line it is, counted from 1; or 0
	layers  []layer           // what the wall is laid in beside the opening, where that is several tiles
}

func newBox(room survey.Room, s plan.Setout, w *plan.Wall, opening int) *box {
	o := w.Found.Openings[opening]
	b := &box{room: room, setout: s, wall: w, opening: opening, found: o, in: o.Inside, hole: w.Start.Placed.Openings[opening], gap: room.Joint}
	b.clear = b.in.Clear(b.hole)
	b.rise = b.in.Rise(room.Units)
	if b.in.Gap != nil {
		b.gap = *b.in.Gap
	}
	if !b.in.Flush {
		b.front = room.Tile.Thickness + room.Joint
	}
	return b
}

// inside lays every face that is tiled.
func (b *box) inside(ctx context.Context) (plan.Inside, error) {
	in := plan.Inside{Opening: b.opening, Letter: b.letter, Clear: b.clear, Rough: b.in.Rough(b.hole), Depth: b.in.Depth, Rise: b.rise}
	for _, is := range survey.FaceNames() {
		if !b.in.Faces[is].Tiled {
			continue
		}
		f := b.face(is)
		layers := b.across(&f)
		switch {
		case b.in.Faces[is].Slab > 0:
			b.slab(&f)
		case is == survey.BackFace && f.Own:
			if err := b.solve(ctx, &f); err != nil {
				return in, err
			}
		case layers != nil:
			b.layered(&f, layers)
		default:
			b.cut(&f)
		}
		b.number(&f)
		in.Faces = append(in.Faces, f)
	}
	return in, nil
}

// face is a face before anything is laid on it.
func (b *box) face(is survey.FaceName) plan.Face {
	found := b.in.Faces[is]
	f := plan.Face{Is: is, Tile: b.room.Tile, Joint: b.room.Joint, Bond: b.room.Bond, Own: found.Own(), Slab: found.Slab > 0}
	f.Found = survey.WallFound{Name: is.String() + " of " + b.found.Called(), Letter: b.letter + "-" + is.String(), Order: b.wall.Found.Order,
		Left: survey.EndFound{Beyond: -1}, Right: survey.EndFound{Beyond: -1}}
	if found.Tile != nil {
		f.Tile, f.Joint = *found.Tile, found.Joint
	}
	if found.Bond != nil {
		f.Bond = *found.Bond
	}
	b.shape(&f)
	f.Found.Width = f.Outline.Bounds().Width()
	return f
}

// number gives the pieces of a face their ids and, where the wall goes on, the
// number of its courses.
func (b *box) number(f *plan.Face) {
	first := 0
	for i, p := range f.Pieces {
		if i == 0 || p.Row+p.Lift < first {
			first = p.Row + p.Lift
		}
	}
	crossed := b.across(f) != nil
	runs := f.Is <= survey.RightFace && !f.Own
	if f.Is != survey.BackFace && (b.room.Bond.Plumb || crossed && !b.room.Bond.Coursed()) {
		runs = false
	}
	if p := b.beside(); p != nil && runs {
		switch first = p.Row - p.Course + 1; {
		case b.over > 0:
			first = int(length.DivFloor(p.Tile.Bottom-b.line(), b.room.Tile.Height+b.room.Joint)) - p.Course + 1
		case crossed:
			first += p.Lift
		}
	}
	for i := range f.Pieces {
		f.Pieces[i].Course = f.Pieces[i].Row + f.Pieces[i].Lift - first + 1
		f.Pieces[i].ID = fmt.Sprintf("%s-%02d", f.Found.Letter, i+1)
	}
}

// slab is one piece of stone. A sill of one runs under the tile of the sides.
func (b *box) slab(f *plan.Face) {
	box := f.Shape.Region.Bounds()
	if f.Is == survey.SillFace {
		out := func(is survey.FaceName) length.Length {
			if c := b.in.Faces[is].Cover; c > 0 {
				return c
			}
			return b.gap
		}
		box.Left, box.Right = -out(survey.LeftFace)+b.gap, f.Found.Width+out(survey.RightFace)-b.gap
	}
	face := plane.Region{box.Ring(0)}
	f.Pieces = []piece.Piece{{Tile: box, Face: face, Visible: f.Shape.Region, Whole: true,
		Wide: box.Width(), High: box.Height(), Least: min(box.Width(), box.Height()), Share: piece.Share{Num: 1, Den: 1}}}
}
