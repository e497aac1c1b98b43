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
			Name: "bare wall", Grade: Fault, judge: bare,
			Why:    "A tile can be cut shorter, never stretched: sealant cannot fill this gap.",
			Do:     "Lower the course line, move the start, or add a course.",
			Source: practice,
		},
		{
			Name: "sliver", Grade: Warning, judge: slivers,
			Why:    "A thin piece is hard to cut, breaks easily and shows.",
			Do:     "Take the best start, slip the course line or the start, or choose another joint.",
			Source: cited("ANSI A108.02 4.3.1 and 4.3.2 (usually nothing under half a tile)", "CTEF") + "; the limit itself is " + practice,
		},
		{
			Name: "edge off the joint lines", Grade: Warning, judge: offLine,
			Why:    "Tiles round the opening then need notches or thin rips.",
			Do:     "Let the niche move to the joint lines, or the courses to the window.",
			Source: practice,
		},
		{
			Name: "hole near an edge", Grade: Warning, judge: holes,
			Why:    "The strip between hole and edge breaks while drilling.",
			Do:     "Cut the hole open to that edge, or shift the start so that the pipe falls on a joint or well inside a tile.",
			Source: practice,
		},
		{
			Name: "small end in every second course", Grade: Advice, judge: smallEnds,
			Why:    "In a running bond one course of two always has the smaller end, and the eye follows the column of small pieces.",
			Do:     "Look at the classic starts; a quarter-centred start evens the two courses out.",
			Source: "geometry; the limit of a third is " + practice,
		},
		{
			Name: "rounded to the tape", Grade: Advice, judge: loss,
			Why:    "A mark must be findable on the tape, so it was rounded to its smallest step.",
			Do:     "Pin the exact place if your tape shows finer steps.",
			Source: "geometry",
		},
	}
}

// bare tells each bare place, or their number where only that is known.
func bare(in Input) []place {
	limit := in.fine(in.Room.Sealant)
	var all []place
	for i, w := range in.Walls {
		for _, at := range w.Bare[:min(len(w.Bare), single)] {
			all = append(all, onPoint(i, at, fmt.Sprintf("On %s a gap is wider than sealant may fill (%s).", w.Found.Name, limit)))
		}
		if more := len(w.Bare) - single; more > 0 {
			all = append(all, place{wall: i, text: fmt.Sprintf("%s has %s more that sealant may not fill.", w.Found.Name, count(more, "gap"))})
		}
	}
	if len(all) == 0 && in.Setout.Merit.Bare > 0 {
		return room(fmt.Sprintf("The gap to the tile is wider than sealant may fill (%s) at %s.", limit, count(in.Setout.Merit.Bare, "place")))
	}
	return all
}

// single is how many slivers, or gaps, of a wall are told one by one.
const single = 6

func slivers(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		thin := thinnest(toSet(w))
		for _, p := range thin[:min(len(thin), single)] {
			all = append(all, onPiece(i, p, fmt.Sprintf("%s on %s is only %s at its thinnest.", p.ID, w.Found.Name, in.fine(p.Least))))
		}
		if more := len(thin) - single; more > 0 {
			all = append(all, place{wall: i, text: fmt.Sprintf("%s has %s more.", w.Found.Name, count(more, "sliver"))})
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

// thinnest lists the slivers, the smallest share first, else in wall order.
func thinnest(pieces []piece.Piece) []piece.Piece {
	var thin []piece.Piece
	for _, p := range pieces {
		if p.Sliver {
			thin = append(thin, p)
		}
	}
	slices.SortStableFunc(thin, func(a, b piece.Piece) int {
		return cmp.Compare(a.Share.Num*b.Share.Den, b.Share.Num*a.Share.Den)
	})
	return thin
}

// offLine finds edges of niches and windows that coincide with no tile edge of
// the wall, as formats.md defines it.
func offLine(in Input) []place {
	var all []place
	for _, kind := range []survey.Kind{survey.Niche, survey.Window} {
		for _, o := range in.openings(kind) {
			plumb, level := tileEdges(in.Walls[o.wall].Pieces)
			mid := o.middle()
			say := func(side string, off bool, at plane.Point) {
				if off {
					all = append(all, onPoint(o.wall, at, fmt.Sprintf("The %s edge of %s %s is on no joint line.", side, kind, o.found.Name)))
				}
			}
			say("left", !plumb[o.edges.Left], plane.Point{X: o.edges.Left, Y: mid.Y})
			say("right", !plumb[o.edges.Right], plane.Point{X: o.edges.Right, Y: mid.Y})
			say("bottom", !level[o.edges.Bottom], plane.Point{X: mid.X, Y: o.edges.Bottom})
			say("top", !level[o.edges.Top], plane.Point{X: mid.X, Y: o.edges.Top})
		}
	}
	return all
}

// tileEdges collects where the plumb and level edges of the uncut tiles lie.
func tileEdges(pieces []piece.Piece) (plumb, level map[length.Length]bool) {
	plumb, level = map[length.Length]bool{}, map[length.Length]bool{}
	for _, p := range pieces {
		plumb[p.Tile.Left], plumb[p.Tile.Right] = true, true
		level[p.Tile.Bottom], level[p.Tile.Top] = true, true
	}
	return plumb, level
}

func loss(in Input) []place {
	if in.Setout.Loss == "" {
		return nil
	}
	return room(in.Setout.Loss)
}

// smallEnds finds ends of a running bond where one course of two has less than
// a third of a tile and the other at least half. Plumb columns have no ends of
// this kind.
func smallEnds(in Input) []place {
	b := in.Room.Bond
	if b.Num == 0 || b.Plumb {
		return nil
	}
	var all []place
	for i, w := range in.Walls {
		for _, end := range bothEnds {
			small, large := endSizes(w, end.is)
			if small == nil || large == nil || 3*small.Wide >= in.Room.Tile.Width || 2*large.Wide < in.Room.Tile.Width {
				continue
			}
			all = append(all, onPiece(i, *small, fmt.Sprintf("At the %s end of %s every second course ends in %s, the others in %s.",
				end.name, w.Found.Name, in.fine(small.Wide), in.fine(large.Wide))))
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
		if cutTo(w, *p, end) && (least[p.Course&1] == nil || p.Wide < least[p.Course&1].Wide) {
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

// count writes a number with its noun.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
