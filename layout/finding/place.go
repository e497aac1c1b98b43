package finding

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// room is a place that is the whole room.
func room(text string) []place { return []place{{wall: -1, text: text}} }

// always judges nothing: it says the same of every room.
func always(text string) func(Input) []place {
	return func(Input) []place { return room(text) }
}

// onPiece is the place of a piece.
func onPiece(wall int, p piece.Piece, text string) place {
	mid := middle(p.Visible.Bounds())
	if len(p.Visible) == 0 {
		mid = middle(p.Tile)
	}
	return place{wall: wall, at: &mid, piece: p.ID, text: text}
}

// onPoint is a place on a wall without a piece.
func onPoint(wall int, at plane.Point, text string) place {
	return place{wall: wall, at: &at, text: text}
}

// of says which opening a place speaks of: one that is measured all round may be built, and
// then it cannot be moved. A strip is tile, and is never built before the rest.
func (p place) of(o survey.OpeningFound) place {
	free := o.Left.Free() || o.Width.Free() || o.Bottom.Free() || o.Height.Free()
	p.built, p.strip = !free && o.Strip == nil, o.Strip != nil
	return p
}

func middle(r plane.Rect) plane.Point {
	return plane.Point{X: r.Left + (r.Right-r.Left)/2, Y: r.Bottom + (r.Top-r.Bottom)/2}
}

// tape writes a length as the room's tape shows it.
func (in Input) tape(l length.Length) string { return l.Tape(in.Room.Units) }

// fine writes the size of a piece or a gap.
func (in Input) fine(l length.Length) string { return l.Fine(in.Room.Units) }

// exact writes a measure that is compared with a limit: to 1/64 in or 0.1 mm,
// or exactly where that would read like the limit itself.
func (in Input) exact(l, limit length.Length) string {
	if text := in.close(l); l == limit || text != in.close(limit) {
		return text
	}
	return l.Format(in.Room.Units, 0)
}

// close writes a joint or a variation, to 1/64 in or 0.1 mm.
func (in Input) close(l length.Length) string {
	step := length.Inch / 64
	if in.Room.Units == length.Metric {
		step = length.Millimetre / 10
	}
	return l.Format(in.Room.Units, step)
}

// edges are the placed edges of opening i; empty when the wall has none placed.
func edges(w plan.Wall, i int) survey.Edges {
	if i >= len(w.Start.Placed.Openings) {
		return survey.Edges{}
	}
	return w.Start.Placed.Openings[i]
}

// lowest finds the lowest base reading of the given kinds in the room.
func (in Input) lowest(kinds ...survey.Kind) (length.Length, bool) {
	var low length.Length
	found := false
	for _, w := range in.Walls {
		for _, s := range w.Found.Base {
			for _, r := range s.Readings {
				if slices.Contains(kinds, s.Meets) && (!found || r.Value < low) {
					low, found = r.Value, true
				}
			}
		}
	}
	return low, found
}

// opening is one opening with the wall it is in.
type opening struct {
	wall  int
	found survey.OpeningFound
	edges survey.Edges
}

// openings lists the openings of one kind in the job's order.
func (in Input) openings(kind survey.Kind) []opening {
	var all []opening
	for i, w := range in.Walls {
		for k, o := range w.Found.Openings {
			if o.Kind == kind {
				all = append(all, opening{wall: i, found: o, edges: edges(w, k)})
			}
		}
	}
	return all
}

func (o opening) middle() plane.Point {
	return middle(plane.Rect{Left: o.edges.Left, Bottom: o.edges.Bottom, Right: o.edges.Right, Top: o.edges.Top})
}

// list writes names in a row: a, b and c.
func list(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// count writes a number with its noun.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
