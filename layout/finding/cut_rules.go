package finding

import (
	"cmp"
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// cutRules judge where the cuts fall.
func cutRules() []Rule {
	return []Rule{
		{
			Name: BareWall, Grade: Fault, judge: bare,
			Why:    "A tile can be cut shorter, never stretched: sealant cannot fill this gap.",
			Do:     "Lower the course line, move the start, or add a course.",
			Source: practice,
		},
		{
			Name: UnworkablePiece, Grade: Fault, judge: unworkable,
			Why:    "Nobody cuts and sets a piece as small as this; it breaks, or it does not hold.",
			Do:     "Look at what would help: another joint, the gap at that edge, an end that may move, or another start.",
			Source: practice,
		},
		{
			Name: Sliver, Grade: Warning, judge: slivers,
			Why:    "A thin piece is hard to cut, breaks easily and shows.",
			Do:     "Look at what would help, where each change is solved before it is told: another joint, the gap at that edge, an end that may move, or a pin let go.",
			Leg:    "Lay the leg in single tiles cut to its width, or leave it out; else let the tile end further out, or choose another joint.",
			Source: cited("ANSI A108.02 4.3 (centre and balance; usually nothing under half a tile)", "CTEF") + "; the limit itself is " + practice,
		},
		{
			Name: EdgeOffTheJointLines, Grade: Warning, judge: offLine,
			Why:    "Tiles round the opening then need notches or thin rips.",
			Do:     "Let the niche move to the joint lines, or the courses to the window.",
			Strip:  "Let its middle or its heights be a range with joint lines in it, or give it another number of columns, and else plan on notches.",
			Built:  "It is measured: let the course line and the start go to it, or another joint, and else plan on notches. Only what is not built yet may move.",
			Source: practice,
		},
		{
			Name: HoleNearAnEdge, Grade: Warning, judge: holes,
			Why:    "The strip between hole and edge breaks while drilling.",
			Do:     "Cut the hole open to that edge, or shift the start so that the pipe falls on a joint or well inside a tile.",
			Source: practice,
		},
		{
			Name: SmallEndInEverySecondCourse, Grade: Advice, judge: smallEnds,
			Why:    "In a running bond one course of two always has the smaller end, and the eye follows the column of small pieces.",
			Do:     "Look at the classic starts; a quarter-centred start evens the two courses out.",
			Source: "geometry; the limit of a quarter is " + practice,
		},
		{
			Name: NotProvenBest, Grade: Advice, judge: unproven,
			Why:    "So much is free in this room that not every set-out could be looked at.",
			Do:     "Pin or measure a mark, and the rest is searched.",
			Source: "the order of merit",
		},
	}
}

// bare tells of each wall how many places are bare; the mark stands at the first.
func bare(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		switch n := len(w.Bare); {
		case n == 1:
			all = append(all, onPoint(i, w.Bare[0], fmt.Sprintf("On %s a gap is wider than sealant may fill (%s).", w.Found.Name, in.fine(in.Room.Sealant))))
		case n > 1:
			all = append(all, onPoint(i, w.Bare[0], fmt.Sprintf("On %s the gap is wider than sealant may fill (%s) at %s.", w.Found.Name, in.fine(in.Room.Sealant), count(n, "place"))))
		}
	}
	return all
}

// toSet lists the pieces of a wall that are still to be set: of those that stand
// nothing can be cut another way.
func toSet(w plan.Wall) []piece.Piece {
	if w.Found.Set == nil {
		return w.Pieces
	}
	return slices.DeleteFunc(slices.Clone(w.Pieces), func(p piece.Piece) bool { return w.Found.Stands(p.Row) })
}

// unworkable tells of pieces that nobody can cut and set.
func unworkable(in Input) []place {
	return in.thin(in.unworkable, "too small to cut and set")
}

// slivers tells of the other pieces that are under the sliver limit.
func slivers(in Input) []place {
	return in.thin(func(p piece.Piece) bool { return p.Sliver && !in.unworkable(p) }, "slivers")
}

// unworkable tells whether a piece is, in a direction in which it is cut, under
// 1/2 in (13 mm) or one and a half times its thickness, whichever is more, but
// never more than half the tile; in a pattern it is as the piece was judged, by its least width. Common
// practice, no source.
func (in Input) unworkable(p piece.Piece) bool {
	laid := in.Room.Laid(p.Laid)
	if !laid.Bond.Coursed() {
		return p.Unworkable && p.Least > 0
	}
	t := laid.Tile
	least := length.Inch / 2
	if in.Room.Units == length.Metric {
		least = 13 * length.Millimetre
	}
	under := func(size, full length.Length) bool {
		return size < full && 2*size < min(max(2*least, 3*t.Thickness), full)
	}
	return !p.Whole && len(p.Visible) > 0 && (p.Wide > 0 && under(p.Wide, t.Width) || p.High > 0 && under(p.High, t.Height))
}

// thin tells of all small pieces of one cause in one sentence; the mark stands
// at the thinnest of them. The worst cause of a wall comes first.
func (in Input) thin(small func(piece.Piece) bool, what string) []place {
	var all []place
	for i, w := range in.Walls {
		var causes []string
		pieces := map[string][]piece.Piece{}
		for _, p := range thinnest(toSet(w), small) {
			cause := whereCut(w, p)
			if pieces[cause] == nil {
				causes = append(causes, cause)
			}
			pieces[cause] = append(pieces[cause], p)
		}
		for _, cause := range causes {
			of := pieces[cause]
			text := fmt.Sprintf("%s %s is only %s at its thinnest.", of[0].ID, cause, in.seen(w, of[0], of[0].Least))
			if n := len(of); n > 1 {
				text = fmt.Sprintf("%d pieces %s are %s; the thinnest, %s, is only %s.", n, cause, what, of[0].ID, in.seen(w, of[0], of[0].Least))
			}
			said := onPiece(i, of[0], text)
			said.leg = in.mayBeSingle(w, of[0])
			all = append(all, said)
		}
	}
	return all
}

// seen writes a size of a piece, and what that is cut to where the tile of the next wall laps over some of it.
func (in Input) seen(w plan.Wall, p piece.Piece, size length.Length) string {
	hidden := lapped(w, p)
	if hidden == 0 || size != p.Wide {
		return in.fine(size)
	}
	cut := (size + hidden).FloorTo(in.Room.Units.FineStep())
	return in.fine(size) + " as seen (" + in.fine(cut) + " as cut)"
}

// lapped is how much of the width of a piece the tile of the next wall laps over.
func lapped(w plan.Wall, p piece.Piece) (wide length.Length) {
	for _, end := range bothEnds {
		e := w.Found.Left
		if end.is == survey.RightEnd {
			e = w.Found.Right
		}
		if cutTo(w, p, end.is) {
			wide += max(0, e.Cover-e.Gap-e.Behind)
		}
	}
	return wide
}

// thinnest lists the small pieces, the smallest share first, else in wall order.
func thinnest(pieces []piece.Piece, small func(piece.Piece) bool) []piece.Piece {
	var thin []piece.Piece
	for _, p := range pieces {
		if small(p) {
			thin = append(thin, p)
		}
	}
	slices.SortStableFunc(thin, func(a, b piece.Piece) int {
		return cmp.Compare(a.Share.Num*b.Share.Den, b.Share.Num*a.Share.Den)
	})
	return thin
}

// offLine finds edges of niches, windows and strips that lie on no joint line of the wall; one
// sentence to an opening. An edge beyond the tile cuts none, as the sill of a doorway, and an edge within the breadth of a joint cuts no tile, so it is on the line here,
// while the order of merit asks for the edge of a tile (formats.md). Two facing edges that were placed where
// both leave equal cuts of at least half a tile are where merit wants them, and are passed over.
func offLine(in Input) []place {
	if !in.Room.Bond.Coursed() {
		return nil // a pattern has no line from end to end
	}
	var all []place
	for _, kind := range []survey.Kind{survey.Niche, survey.Window, survey.PlumbStrip, survey.SoapDish} {
		for _, o := range in.openings(kind) {
			if c := in.Walls[o.wall].Start.Cut; o.found.Strip != nil && c != nil && slices.Contains(c.Beside, o.found.Name) {
				continue // of which cutBeside says why
			}
			field := in.Walls[o.wall].Shape.Region.Bounds()
			plumb, level := jointLines(in.Walls[o.wall].Pieces, in.Room.Joint)
			mid := o.middle()
			across, up := placedEven(in.Walls[o.wall].Pieces, in.Room.Joint, o)
			var sides []string
			var first plane.Point
			for _, side := range []struct {
				name string
				on   bool
				at   plane.Point
			}{
				{"left", across || plumb(o.edges.Left), plane.Point{X: o.edges.Left, Y: mid.Y}},
				{"right", across || plumb(o.edges.Right), plane.Point{X: o.edges.Right, Y: mid.Y}},
				{"bottom", up || level(o.edges.Bottom) || o.found.Doorway || o.edges.Bottom <= field.Bottom || o.found.Strip != nil && o.found.Strip.Low, plane.Point{X: mid.X, Y: o.edges.Bottom}},
				{"top", up || level(o.edges.Top) || o.edges.Top >= field.Top && !field.Empty() || o.found.Strip != nil && o.found.Strip.High, plane.Point{X: mid.X, Y: o.edges.Top}},
			} {
				if side.on {
					continue
				}
				if sides == nil {
					first = side.at
				}
				sides = append(sides, side.name)
			}
			if sides == nil {
				continue
			}
			text := fmt.Sprintf("The %s edges of %s are on no joint line.", list(sides), o.found.Called())
			if len(sides) == 1 {
				text = fmt.Sprintf("The %s edge of %s is on no joint line.", sides[0], o.found.Called())
			}
			all = append(all, onPoint(o.wall, first, text).of(o.found))
		}
	}
	return all
}

// placedEven tells of the plumb and of the level edges of an opening whether they were free to be
// placed and leave equal cuts of at least half a tile on both sides: the same sizes over the courses or
// columns that the opening meets.
func placedEven(pieces []piece.Piece, joint length.Length, o opening) (across, up bool) {
	var left, right, under, over, wide, high []length.Length
	for _, p := range pieces {
		t := p.Tile
		if t.Bottom < o.edges.Top && o.edges.Bottom < t.Top {
			left, right, wide = cutAt(left, o.edges.Left, t.Left, t.Right, joint), cutAt(right, -o.edges.Right, -t.Right, -t.Left, joint), append(wide, t.Width())
		}
		if t.Left < o.edges.Right && o.edges.Left < t.Right {
			under, over, high = cutAt(under, o.edges.Bottom, t.Bottom, t.Top, joint), cutAt(over, -o.edges.Top, -t.Top, -t.Bottom, joint), append(high, t.Height())
		}
	}
	f := o.found
	return (f.Left.Free() || f.Width.Free()) && even(left, right, wide), (f.Bottom.Free() || f.Height.Free()) && even(under, over, high)
}

// cutAt adds what an edge at x leaves of a tile that it falls in, or of the one whole before it.
func cutAt(list []length.Length, x, from, to, joint length.Length) []length.Length {
	if from < x && x <= to+joint {
		list = append(list, min(x, to)-from)
	}
	return list
}

// even tells whether cuts on two sides are of the same sizes, all at least half a tile.
func even(a, b, tiles []length.Length) bool {
	slices.Sort(a)
	slices.Sort(b)
	a, b = slices.Compact(a), slices.Compact(b)
	return len(a) > 0 && 2*a[0] >= slices.Max(tiles) && slices.Equal(a, b)
}

// jointLines tells where the plumb and level joints beside the uncut tiles lie, as broad as a joint.
func jointLines(pieces []piece.Piece, joint length.Length) (plumb, level func(length.Length) bool) {
	beside := func(at, low, high length.Length) bool {
		return low-joint <= at && at <= low || high <= at && at <= high+joint
	}
	plumb = func(x length.Length) bool {
		return slices.ContainsFunc(pieces, func(p piece.Piece) bool { return beside(x, p.Tile.Left, p.Tile.Right) })
	}
	level = func(y length.Length) bool {
		return slices.ContainsFunc(pieces, func(p piece.Piece) bool { return beside(y, p.Tile.Bottom, p.Tile.Top) })
	}
	return plumb, level
}

func unproven(in Input) []place {
	if in.Setout.Bound == "" {
		return nil
	}
	return room(in.Setout.Bound + in.pointed())
}

// pointed says how many of the pieces that are counted as unworkable only run out to a point, which can be cut.
func (in Input) pointed() string {
	n := 0
	for _, w := range in.Walls {
		for i := range w.Pieces {
			if p := &w.Pieces[i]; p.Unworkable && !p.NoSaw() {
				n++
			}
		}
	}
	switch n {
	case 0:
		return ""
	case 1:
		return " One piece that counts as unworkable only runs out to a point, as under a roof, and can be cut."
	}
	return fmt.Sprintf(" %d pieces that count as unworkable only run out to a point, as under a roof, and can be cut.", n)
}

// smallEnds finds ends of a half bond where one course of two has less than
// a quarter of a tile and the other at least half. Plumb columns have no ends of
// this kind.
func smallEnds(in Input) []place {
	b := in.Room.Bond
	if 2*b.Num != b.Den || b.Plumb || !b.Coursed() {
		return nil
	}
	var all []place
	for i, w := range in.Walls {
		var last place
		for _, end := range bothEnds {
			small, large := endSizes(w, end.is)
			if small == nil || large == nil || 4*small.Wide >= in.Room.Tile.Width || 2*large.Wide < in.Room.Tile.Width {
				continue
			}
			sizes := fmt.Sprintf(" of %s every second course ends in %s, the others in %s.", w.Found.Name, in.seen(w, *small, small.Wide), in.seen(w, *large, large.Wide))
			if last.text == "At the left end"+sizes {
				all[len(all)-1].text = "At both ends" + sizes
				continue
			}
			last = onPiece(i, *small, "At the "+end.name+" end"+sizes)
			all = append(all, last)
		}
	}
	return all
}

// endSizes gives, of the pieces at an end, the smallest of the odd and of the
// even courses, the smaller of the two first; nil where a kind is missing.
func endSizes(w plan.Wall, end survey.PartIs) (small, large *piece.Piece) {
	var least [2]*piece.Piece
	pieces := toSet(w)
	for k := range pieces {
		p := &pieces[k]
		if p.Laid == 0 && cutTo(w, *p, end) && (least[p.Course&1] == nil || p.Wide < least[p.Course&1].Wide) {
			least[p.Course&1] = p
		}
	}
	small, large = least[0], least[1]
	if small != nil && large != nil && large.Wide < small.Wide {
		small, large = large, small
	}
	return small, large
}

// bothEnds are the two ends of a wall with their names.
var bothEnds = [2]struct {
	is   survey.PartIs
	name string
}{{survey.LeftEnd, "left"}, {survey.RightEnd, "right"}}

// cutTo tells whether a piece is cut to a boundary of that kind.
func cutTo(w plan.Wall, p piece.Piece, is survey.PartIs) bool {
	for _, side := range p.Cuts {
		if int(side) < len(w.Shape.Sides) && w.Shape.Sides[side].Part.Is == is {
			return true
		}
	}
	return false
}
