// Package sample is a small plan made by hand, for tests of drawings: two
// walls of a shower over a tub, with a niche, a valve, slivers, a taper and
// findings. Nothing of it comes from the solver.
package sample

import (
	"fmt"

	"coursewright/layout"
	"coursewright/layout/finding"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/setout"
	"coursewright/layout/survey"
)

const in = length.Inch

// Sizes of the sample: a 12 by 6 in tile with a 1/8 in joint in half bond.
const (
	width  = 12 * in
	height = 6 * in
	joint  = in / 8
	line   = -38 * in
)

// Plan is the sample.
func Plan() layout.Plan {
	p := layout.Plan{Room: room()}
	p.Setout = setout.Setout{Line: line}
	p.Walls = []layout.Wall{side(), back()}
	p.Findings = []finding.Finding{
		{Rule: "sliver", Grade: finding.Warning, Wall: 1, At: &plane.Point{X: 64 * in, Y: -20 * in}, Text: "a sliver in the right corner"},
		{Rule: "power near water", Grade: finding.Caution, Wall: -1, Text: "turn off the supply first"},
		{Rule: "hole near an edge", Grade: finding.Advice, Wall: 0, At: &plane.Point{X: 19 * in, Y: -7 * in}, Text: "the valve is near a joint"},
	}
	return p
}

func room() survey.Room {
	return survey.Room{Title: "Sample", Units: length.Imperial, Joint: joint, Bed: 3 * in / 16,
		Tile: survey.TileSize{Width: width, Height: height, Thickness: 5 * in / 16},
		Bond: survey.BondRule{Kind: "running", Num: 1, Den: 2}}
}

func side() layout.Wall {
	f := survey.WallFound{Name: "left", Letter: "L", Width: 35*in + in/4,
		Left:  survey.EndFound{Stops: survey.Span{From: 0, To: 3 * in}, Finish: "trim", Beyond: -1},
		Right: survey.EndFound{Meets: true, Gap: in / 8, Behind: in / 2, Beyond: 1},
		Base: []survey.SegmentFound{
			{Meets: "floor", Gap: in / 8, Readings: []survey.Reading{{At: 0, Value: -58 * in}, {At: 4 * in, Value: -58 * in}}},
			{Meets: "tub", Gap: in / 8, Readings: []survey.Reading{{At: 4 * in, Value: -38*in - in/8}, {At: 35*in + in/4, Value: -38*in - in/8}}}},
		Head:     survey.HeadFound{Stops: survey.Span{From: 40 * in, To: 48 * in}, Finish: "trim"},
		Openings: []survey.OpeningFound{{Kind: "pipe", Name: "valve", At: 19 * in, Up: -7 * in, Diameter: 4 * in}},
		Order:    1}
	b := builder{letter: "L", left: 0, right: f.Width - in/2 - in/8, bottom: -58*in + in/8, top: 41 * in,
		step: 4 * in, rim: -38 * in, edge: f.Width - in/2 - in/8 - width}
	w := b.wall(f)
	w.Start.X, w.Start.OnTile = b.edge+width/2, true
	w.Start.Placed = survey.Placed{Left: 0, Head: b.top, Openings: []survey.Edges{{}}}
	return w
}

func back() layout.Wall {
	f := survey.WallFound{Name: "back", Letter: "B", Width: 65*in + 3*in/8,
		Left:  survey.EndFound{Meets: true, Gap: in / 8, Cover: in / 2, Lean: []survey.Reading{{At: -38 * in, Value: 0}, {At: 45 * in, Value: in / 4}}, Beyond: 0},
		Right: survey.EndFound{Meets: true, Gap: in / 8, Cover: in / 2, Beyond: -1},
		Base: []survey.SegmentFound{{Meets: "tub", Gap: in / 8, Readings: []survey.Reading{
			{At: 0, Value: -38*in + in/2}, {At: 65*in + 3*in/8, Value: -38*in - in/8}}}},
		Head: survey.HeadFound{Meets: true, Gap: in / 8, Readings: []survey.Reading{{At: 0, Value: 57 * in}, {At: 65*in + 3*in/8, Value: 57*in + in/4}}},
		Openings: []survey.OpeningFound{{Kind: "niche", Name: "shelf", Left: survey.Span{From: 34 * in, To: 50 * in},
			Width: survey.Span{From: 11 * in, To: 14 * in}, Bottom: survey.Span{From: 2 * in, To: 12 * in}, Height: survey.Span{From: 12 * in, To: 20 * in}}}}
	pitch := height + joint
	niche := plane.Rect{Left: 38 * in, Right: 51 * in, Bottom: line + 7*pitch, Top: line + 10*pitch - joint}
	b := builder{letter: "B", left: in / 8, right: f.Width - in/8, bottom: -38*in + in/8, top: 57 * in, rim: -38*in + in/8,
		edge: in, niche: niche, rake: 5 * in / 8, cover: in / 2}
	w := b.wall(f)
	w.Start.X = in - joint/2
	w.Start.Placed = survey.Placed{Openings: []survey.Edges{survey.Edges(niche)}}
	w.Start.Slide, w.Start.Classic = slide(), classic()
	return w
}

func slide() []setout.SlidePoint {
	half, low := piece.Share{Num: 1, Den: 2}, piece.Share{Num: 1, Den: 24}
	return []setout.SlidePoint{{Edge: 0, Share: low, Slivers: 8}, {Edge: 5 * in, Share: half}, {Edge: 6 * in, Share: half},
		{Edge: 6 * in, Share: piece.Share{Num: 1, Den: 5}}, {Edge: 9 * in, Share: piece.Share{Num: 2, Den: 5}}, {Edge: width + joint, Share: low, Slivers: 8}}
}

func classic() []setout.Classic {
	return []setout.Classic{
		{Name: "joint on centre", X: 32*in + 11*in/16, Share: piece.Share{Num: 7, Den: 24}},
		{Name: "tile on centre", X: 32*in + 11*in/16, OnTile: true, Share: piece.Share{Num: 1, Den: 4}},
		{Name: "full tile at left", X: 0, Share: piece.Share{Num: 1, Den: 24}, Slivers: 8},
		{Name: "full tile at right", X: 65 * in, Share: piece.Share{Num: 3, Den: 10}},
		{Name: "best", X: 5*in - joint/2, Share: half()},
	}
}

func half() piece.Share { return piece.Share{Num: 1, Den: 2} }

// builder lays rectangles in half bond and trims them to the wall.
type builder struct {
	letter                   string
	left, right, bottom, top length.Length
	step, rim                length.Length // left of step the wall goes down to bottom, right of it to rim
	edge                     length.Length
	niche                    plane.Rect
	rake, cover              length.Length // how far the base falls over the width; the lap at both ends
}

// Sides of the sample's walls.
const (
	sideLeft plane.Side = iota + 1
	sideRight
	sideBase
	sideHead
	sideNiche
	sideLap
)

func (b builder) wall(f survey.WallFound) layout.Wall {
	w := layout.Wall{Found: f, Start: setout.Start{Edge: b.edge}}
	w.Shape.Sides = []survey.Boundary{{}, {Name: "left", Meets: f.Left.Meets}, {Name: "right", Meets: true}, {Name: "base", Meets: true},
		{Name: "head", Meets: f.Head.Meets}, {Name: "niche shelf"}, {Name: "lap"}}
	w.Shape.Region = b.region(b.left, b.right, sideLeft, sideRight)
	w.Shape.Visible = w.Shape.Region
	if b.cover > 0 {
		w.Shape.Visible = b.region(b.left+b.cover, b.right-b.cover, sideLap, sideLap)
	}
	pitch := height + joint
	for k, n := -4, 1; ; k++ {
		y := line + length.Length(k)*pitch
		if y >= b.top {
			break
		}
		if y+height > b.bottom {
			w.Pieces = append(w.Pieces, b.course(k, n, y)...)
			n++
		}
	}
	return w
}

func (b builder) fall(x length.Length) length.Length { return b.rim - b.rake*x/(65*in) }

func (b builder) region(left, right length.Length, l, r plane.Side) plane.Region {
	outer := plane.Ring{corner(left, b.fall(left), sideBase)}
	if b.step > left {
		outer = plane.Ring{corner(left, b.bottom, sideBase), corner(b.step, b.bottom, sideBase), corner(b.step, b.rim, sideBase)}
	}
	outer = append(outer, corner(right, b.fall(right), r), corner(right, b.top, sideHead), corner(left, b.top, l))
	if b.niche == (plane.Rect{}) {
		return plane.Region{outer}
	}
	n := b.niche
	return plane.Region{outer, {corner(n.Left, n.Bottom, sideNiche), corner(n.Left, n.Top, sideNiche),
		corner(n.Right, n.Top, sideNiche), corner(n.Right, n.Bottom, sideNiche)}}
}

func corner(x, y length.Length, on plane.Side) plane.Corner {
	return plane.Corner{Point: plane.Point{X: x, Y: y}, On: on}
}

func (b builder) course(k, n int, y length.Length) []piece.Piece {
	var out []piece.Piece
	shift := length.Length(((k%2)+2)%2) * (width + joint) / 2
	for i := -7; i < 8; i++ {
		x := b.edge + shift + length.Length(i)*(width+joint)
		t := plane.Rect{Left: x, Right: x + width, Bottom: y, Top: y + height}
		for _, r := range b.trim(t) {
			p := b.piece(t, r)
			p.Course, p.ID = n, fmt.Sprintf("%s-%02d-%02d", b.letter, n, len(out)+1)
			out = append(out, p)
		}
	}
	return out
}

// trim cuts a tile to the wall and to the sides of the niche.
func (b builder) trim(t plane.Rect) []plane.Rect {
	t.Left, t.Right, t.Top = max(t.Left, b.left), min(t.Right, b.right), min(t.Top, b.top)
	if b.step > 0 && t.Bottom < b.rim-joint {
		t.Right = min(t.Right, b.step)
	}
	t.Bottom = max(t.Bottom, b.bottom)
	if t.Left >= t.Right || t.Bottom >= t.Top {
		return nil
	}
	n := b.niche
	if n == (plane.Rect{}) || t.Bottom >= n.Top || t.Top <= n.Bottom {
		return []plane.Rect{t}
	}
	var out []plane.Rect
	if t.Left < n.Left {
		out = append(out, plane.Rect{Left: t.Left, Right: min(t.Right, n.Left), Bottom: t.Bottom, Top: t.Top})
	}
	if t.Right > n.Right {
		out = append(out, plane.Rect{Left: max(t.Left, n.Right), Right: t.Right, Bottom: t.Bottom, Top: t.Top})
	}
	return out
}

func (b builder) piece(t, r plane.Rect) piece.Piece {
	p := piece.Piece{Tile: t, Face: b.face(r), Visible: b.face(r)}
	if b.cover > 0 {
		v := r
		v.Left, v.Right = max(r.Left, b.left+b.cover), min(r.Right, b.right-b.cover)
		p.Visible, r = b.face(v), v
	}
	low := max(b.fall(r.Left), r.Bottom)
	p.Wide, p.High = r.Right-r.Left, r.Top-low
	p.Whole = r == t && low == t.Bottom
	p.Least, p.Share = p.Wide, piece.Share{Num: int64(p.Wide), Den: int64(width)}
	if p.High*2 < p.Wide {
		p.Least, p.Share = p.High, piece.Share{Num: int64(p.High), Den: int64(height)}
	}
	p.Sliver = p.Wide < 2*in || p.High < 2*in
	return p
}

func (b builder) face(r plane.Rect) plane.Region {
	left, right := r.Bottom, r.Bottom
	if b.rake > 0 {
		left, right = max(left, b.fall(r.Left)), max(right, b.fall(r.Right))
	}
	on := func(side plane.Side, cut bool) plane.Side {
		if cut {
			return side
		}
		return 0
	}
	n := b.niche
	return plane.Region{{
		corner(r.Left, left, on(sideBase, left > r.Bottom || right > r.Bottom || r.Bottom == b.bottom)),
		corner(r.Right, right, on(sideRight, r.Right == b.right || r.Right == n.Left)),
		corner(r.Right, r.Top, on(sideHead, r.Top == b.top)),
		corner(r.Left, r.Top, on(sideLeft, r.Left == b.left || n.Right > 0 && r.Left == n.Right))}}
}
