package sheet

import (
	"slices"
	"strings"

	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/web/drawing"
)

// unfolded is something folded out of the plane of a wall: the inside of an opening, or
// its top.
type unfolded struct {
	title string
	near  int // how many scales of the ladder it may be read at beside its wall
	draw  func(drawing.Options) drawing.Scene
	faces []plan.Face
}

// unfolded lists what is folded out of a wall.
func (b *book) unfolded(wall int) []unfolded {
	var all []unfolded
	w := b.plan.Walls[wall]
	for k, in := range w.Insides {
		all = append(all, unfolded{"Inside " + in.Letter, nearScales, func(o drawing.Options) drawing.Scene { return drawing.FoldOut(b.plan, wall, k, o) }, in.Faces})
	}
	if t := w.Top; t != nil {
		all = append(all, unfolded{"Top " + t.Wall.Found.Letter, nearScales + 2, func(o drawing.Options) drawing.Scene { return drawing.FoldTop(b.plan, wall, o) }, []plan.Face{t.Face}})
	}
	return all
}

// insides draws what is inside the niches and windows of a wall, folded out, and its
// top, each with its cut list: on what is left of the wall's own leaf, or on one of its own.
func (f *flow) insides(wall int) {
	for _, u := range f.book.unfolded(wall) {
		if !f.inside(u) {
			f.book.insideLeaf(wall, u)
		}
	}
}

// nearScales are the scales of the ladder at which the sizes in an inside are
// still read at arm's length.
const nearScales = 2

// inside puts one on what is left of the leaf, its list under it or, of a top, beside it,
// and tells whether it found room.
func (f *flow) inside(u unfolded) bool {
	t := f.book.insideCuts(u)
	scales := ladder(f.book.plan.Room.Units)[:u.near]
	for _, scale := range scales {
		s := u.draw(drawing.Options{Sheet: true, Scale: scale})
		if s.Width > f.breadth() || s.Height+f.high(t)+2000 > f.left() {
			continue
		}
		f.lay(drawing.Point{X: f.lo.X, Y: f.y}, s)
		if said := f.ownScale(scale); f.breadth()-s.Width > small.width(said) {
			f.text(drawing.Point{X: f.lo.X + f.breadth(), Y: f.y + 2*small.size}, small.to(drawing.Right), said)
		}
		f.y += s.Height + 1000
		f.table(t)
		return true
	}
	return u.near > nearScales && f.listBeside(u, scales)
}

// insideLeaf gives one a leaf of its own, at the largest scale that leaves room for
// its list, which is written smaller where that helps; where none of the scales that are
// read well does, the list goes on to another.
func (b *book) insideLeaf(wall int, u unfolded) {
	scales, list := ladder(b.plan.Room.Units), b.insideCuts(u)
	before := b.mark()
	for _, list.text = range []style{body, plain} {
		for _, scale := range scales[:nearScales+1] {
			for _, wide := range []bool{false, true} {
				if f := b.insideAt(wall, u, scale, wide); f != nil && f.holds(list, 0, 0, noWall) {
					f.table(list)
					return
				}
				b.back(before)
			}
		}
	}
	list.text = body
	b.insideOnFewest(wall, u, list)
}

// insideOnFewest draws one with a list that goes on, on as few leaves as that takes at a scale that is read well
// or, of what is too large for these, at any: as large as it goes on these, and so its text.
func (b *book) insideOnFewest(wall int, u unfolded, list table) {
	fewest, best, before := 0, func() {}, b.mark()
	for i, scale := range ladder(b.plan.Room.Units) {
		if i > nearScales && fewest > 0 {
			break
		}
		for _, percent := range append(slices.Clone(percents), smallest) {
			write := func() {
				if f := b.insideAt(wall, u, scale, false); f != nil {
					f.percent = percent
					f.table(list)
				}
			}
			write()
			if n := len(b.leaves) - before.leaves; n > 0 && (fewest == 0 || n < fewest) {
				fewest, best = n, write
			}
			b.back(before)
		}
	}
	best()
}

// insideAt draws one on a leaf of its own, at one scale, upright or on its long side, and gives what is left of
// it; nil where it does not fit.
func (b *book) insideAt(wall int, u unfolded, scale drawing.Scale, wide bool) *flow {
	s, before := u.draw(drawing.Options{Sheet: true, Scale: scale}), b.mark()
	f := b.flow(subject{title: u.title, wall: wallText(b.plan.Walls[wall].Found), scale: scale}, wide)
	if s.Width > f.breadth() || s.Height+2000 > f.left() {
		b.back(before)
		return nil
	}
	f.lay(drawing.Point{X: f.lo.X, Y: f.y}, s)
	f.y += s.Height + 1000
	return f
}

// insideCuts is the cut list of what is folded out: one row for the pieces of one line
// of the schedule on one face, and for its trim.
func (b *book) insideCuts(in unfolded) table {
	t := table{text: body, columns: []column{{name: "face", share: 14}, {name: "numbers", share: 34}, {name: "size to cut" + b.inMillimetres(), share: 30, bold: true},
		{share: 44}, {name: "pieces", share: 12, right: true}, {name: "line", share: 11}, {name: "set", share: 8, box: true}}}
	for i := range in.faces {
		face := &in.faces[i]
		if face.Slab {
			p := face.Pieces[0]
			t.rows = append(t.rows, row{cells: []string{face.Is.String(), "", b.bare(p.Wide) + " × " + b.bare(p.High), "one slab", "1", "", ""}})
			continue
		}
		t.rows = append(t.rows, b.faceRows(face)...)
		for _, e := range b.trimEntries(face.Wall) {
			t.rows = append(t.rows, row{cells: []string{face.Is.String(), e.where, e.big, e.small, number(e.pieces), e.line, ""}})
		}
	}
	return t
}

func (b *book) faceRows(face *plan.Face) []row {
	var rows []row
	for laid := range len(b.plan.Room.Bands) + 1 {
		var whole []string
		for _, p := range face.Pieces {
			if p.Whole && p.Laid == laid {
				whole = append(whole, p.ID)
			}
		}
		if len(whole) > 0 {
			rows = append(rows, row{cells: []string{face.Is.String(), numbers(face, whole), "whole", b.inBand("", face, whole[0]), number(len(whole)), "", ""}})
		}
	}
	for _, g := range b.cuts.Groups {
		var ids []string
		for _, p := range g.Places {
			if p.Wall == face.Found.Letter {
				ids = append(ids, p.Pieces...)
			}
		}
		if len(ids) > 0 {
			big, small := b.fence(g)
			rows = append(rows, row{cells: []string{face.Is.String(), numbers(face, ids), big, b.inBand(small, face, ids[0]), number(len(ids)), g.ID, ""}})
		}
	}
	return rows
}

// inBand adds to what is said of pieces of a face which band's tile they are cut from, where
// they are of one.
func (b *book) inBand(said string, face *plan.Face, id string) string {
	i := slices.IndexFunc(face.Pieces, func(p piece.Piece) bool { return p.ID == id })
	if i < 0 || face.Pieces[i].Laid == 0 {
		return said
	}
	return strings.TrimPrefix(said+", "+b.plan.Room.Bands[face.Pieces[i].Laid-1].Name, ", ")
}

// numbers are those of pieces, where the drawing bears them.
func numbers(face *plan.Face, ids []string) string {
	if len(face.Pieces) > drawing.MostNumbered {
		return ""
	}
	return numbersText(ids)
}

// numbersText writes the last parts of ids in few signs.
func numbersText(ids []string) string {
	var n []int
	for _, id := range ids {
		k := 0
		for _, r := range id[strings.LastIndex(id, "-")+1:] {
			k = 10*k + int(r-'0')
		}
		n = append(n, k)
	}
	slices.Sort(n)
	return coursesText(slices.Compact(n))
}
