// Package cuts turns the cut pieces of a plan into work: what to cut, how many
// alike, and which two come out of one tile.
package cuts

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Input is the plan whose pieces are cut.
type Input struct {
	Room  survey.Room
	Walls []plan.Wall // in the job's order
}

// Settings are what a person may choose about cutting.
type Settings struct {
	Kerf  length.Length // what one cut costs: the width of the blade, 0 for a snapped cut
	Turn  bool          // tiles may be turned round; a tile with grain never is
	Least length.Length // an off-cut gives no piece that is smaller than this either way
}

// Usual gives the settings for a wet saw: a kerf of 1/8 in (3 mm), no piece
// under 1 in (25 mm) from an off-cut. Common practice, no source.
func Usual(s length.System) Settings {
	if s == length.Metric {
		return Settings{Kerf: 3 * length.Millimetre, Turn: true, Least: 25 * length.Millimetre}
	}
	return Settings{Kerf: length.Inch / 8, Turn: true, Least: length.Inch}
}

// Schedule is the list of cuts of a room.
type Schedule struct {
	Groups  []Group // batches first, the largest first; then in setting order
	Offcuts Offcuts
}

// Group is one kind of piece and how many of it are needed.
type Group struct {
	ID      string // "C1", "C2", … in the order of the schedule
	Count   int
	Kind    string // "cross cut", "rip", "taper", "notch", "hole", or several
	Size    Size
	Factory []string     // the edges that stay as made: "left", "right", "bottom", "top"
	Cut     []string     // the edges that are cut; one that is cut in part stands in both
	Pieces  []string     // their ids in setting order
	Sketch  plane.Region // the face of the first of them, its lower left corner at 0, 0
}

// Of makes the schedule of a plan. Laws:
//
//  1. Every piece that is cut and not yet set stands in exactly one group.
//  2. No size of a group exceeds that of any of its pieces, and it falls short
//     by less than the fine step (1/32 in, 0.5 mm).
//  3. Batches come before single pieces.
func Of(in Input, set Settings) Schedule {
	cut, stood := inSettingOrder(in)
	off := pair(cut, in, set)
	if len(stood) > 0 {
		off.count(pair(append(stood, cut...), in, set))
	}
	return Schedule{Groups: groups(cut, in.Room.Units.FineStep()), Offcuts: off}
}

// work is one cut piece on its wall, with its face moved to 0, 0 and the outer
// ring first.
type work struct {
	piece piece.Piece
	wall  *plan.Wall
	face  plane.Region
	box   plane.Rect
	clear length.Length // what tile keeps away from a pipe
}

// inSettingOrder lists the cut pieces by setting order of the walls, then as
// they stand on the wall: those still to be cut, and those set already.
func inSettingOrder(in Input) (cut, stood []work) {
	walls := make([]*plan.Wall, len(in.Walls))
	for i := range in.Walls {
		walls[i] = &in.Walls[i]
	}
	slices.SortStableFunc(walls, func(a, b *plan.Wall) int { return cmp.Compare(a.Found.Order, b.Found.Order) })
	for _, w := range walls {
		for _, p := range w.Pieces {
			switch {
			case p.Whole:
			case w.Found.Stands(p.Row):
				stood = append(stood, newWork(p, w, survey.PipeClear(in.Room.Units)))
			default:
				cut = append(cut, newWork(p, w, survey.PipeClear(in.Room.Units)))
			}
		}
	}
	return cut, stood
}

func newWork(p piece.Piece, w *plan.Wall, clear length.Length) work {
	box := p.Face.Bounds()
	face := make(plane.Region, 0, len(p.Face))
	for _, ring := range p.Face.Straight() {
		moved := make(plane.Ring, 0, len(ring))
		for _, c := range ring {
			c.X, c.Y = c.X-box.Left, c.Y-box.Bottom
			moved = append(moved, c)
		}
		face = append(face, fromLowest(moved))
	}
	slices.SortStableFunc(face, func(a, b plane.Ring) int { return cmp.Compare(b.Area2(), a.Area2()) })
	return work{piece: p, wall: w, face: face, box: box, clear: clear}
}

// fromLowest turns a ring so that its lowest, then leftmost corner comes first.
func fromLowest(r plane.Ring) plane.Ring {
	first := 0
	for i, c := range r {
		if c.Y < r[first].Y || c.Y == r[first].Y && c.X < r[first].X {
			first = i
		}
	}
	return append(slices.Clone(r[first:]), r[:first]...)
}

// groups puts equal pieces together and sorts them.
func groups(cut []work, step length.Length) []Group {
	var all []Group
	index := map[string]int{}
	for _, w := range cut {
		g := w.group(step)
		key := g.key() + w.outline(step)
		if i, known := index[key]; known {
			all[i].Pieces = append(all[i].Pieces, w.piece.ID)
			continue
		}
		index[key] = len(all)
		all = append(all, g)
	}
	for i := range all {
		all[i].Count = len(all[i].Pieces)
	}
	slices.SortStableFunc(all, func(a, b Group) int { return cmp.Compare(b.Count, a.Count) })
	for i := range all {
		all[i].ID = fmt.Sprintf("C%d", i+1)
	}
	return all
}

func (w work) group(step length.Length) Group {
	factory, cut := w.edges()
	return Group{
		Kind: kindText(w.piece.Kind), Size: w.size(step), Factory: factory, Cut: cut,
		Pieces: []string{w.piece.ID}, Sketch: w.face,
	}
}

// key is equal for groups of equal sizes, kinds and edges.
func (g Group) key() string {
	s := g.Size
	key := append(make([]byte, 0, 256), g.Kind...)
	for _, l := range []length.Length{s.Width, s.Height, s.Left, s.Right, s.Bottom, s.Top} {
		key = strconv.AppendInt(append(key, ' '), int64(l), 10)
	}
	if len(s.Notches)+len(s.Holes) > 0 {
		key = fmt.Append(key, s.Notches, s.Holes)
	}
	return string(key) + strings.Join(g.Factory, ",") + "|" + strings.Join(g.Cut, ",")
}

// outline is equal for faces whose corners round down to the same places; the
// rims of holes do not count, their size does.
func (w work) outline(step length.Length) string {
	var text []byte
	for _, c := range w.face[0] {
		if !w.pipe(c.On) {
			text = strconv.AppendInt(append(text, ' '), int64(c.X.FloorTo(step)), 10)
			text = strconv.AppendInt(append(text, ','), int64(c.Y.FloorTo(step)), 10)
		}
	}
	return string(text)
}

// kindText names the cuts of a piece.
func kindText(k piece.Kind) string {
	names := []struct {
		kind piece.Kind
		name string
	}{{piece.Rip, "rip"}, {piece.Cross, "cross cut"}, {piece.Taper, "taper"}, {piece.Notch, "notch"}, {piece.Hole, "hole"}}
	text := ""
	for _, n := range names {
		if k&n.kind != 0 {
			text += ", " + n.name
		}
	}
	if text == "" {
		return "cut"
	}
	return text[2:]
}
