package tell

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// Starts says of every wall where it starts, and what the classic starts would give.
func Starts(room *survey.Room, r *search.Result) []plan.Start {
	out := make([]plan.Start, len(r.Walls))
	for i := range r.Walls {
		out[i] = startOf(room, r, i)
	}
	return out
}

// Begins says of every wall where it starts, and no more.
func Begins(room *survey.Room, r *search.Result) []plan.Start {
	out := make([]plan.Start, len(r.Walls))
	for i := range r.Walls {
		out[i] = begins(room, r, i)
	}
	return out
}

func begins(room *survey.Room, r *search.Result, i int) plan.Start {
	w, c := r.Wall(i), r.Walls[i]
	s := plan.Start{Edge: c.Edge, Placed: c.Placed, Pinned: w.Found.Pin != nil && !w.Found.Single, From: c.Edge, To: c.Edge}
	s.X, s.OnTile = struck(room, w, c.Edge)
	s.Classic = []plan.Classic{{Name: "best", Edge: c.Edge, X: s.X, OnTile: s.OnTile, Figures: figures(room, r.Order(), &r.Merit, &r.Merit, c.Runs)}}
	return s
}

func startOf(room *survey.Room, r *search.Result, i int) plan.Start {
	w, c := r.Wall(i), r.Walls[i]
	s := begins(room, r, i)
	if w.Found.IsPart() || w.Found.Single {
		return s
	}
	best := s.Classic[0]
	s.Classic = nil
	for _, k := range w.Starts.Classics(c.Placed) {
		its, whole := c, r.Merit
		if k.Edge != c.Edge { // of the one chosen all is known already
			its, whole = r.Start(i, k.Edge)
		}
		s.Classic = append(s.Classic, classic(room, k, figures(room, r.Order(), &whole, &r.Merit, its.Runs)))
	}
	s.Classic = append(s.Classic, best)
	s.Slide = slide(room, r, i)
	s.From, s.To = slip(s.Slide, c.Edge, room.Tile.Width+room.Joint)
	return s
}

func classic(room *survey.Room, k count.Classic, f plan.Figures) plan.Classic {
	c := plan.Classic{Name: k.Name, Edge: k.Edge, OnTile: k.Name == "tile on centre", Figures: f}
	c.X = k.Edge - room.Joint.Half()
	if c.OnTile {
		c.X = k.Edge + room.Tile.Width.Half()
	}
	return c
}

// struck says where the middle of a joint or of a tile of course 0 stands: as
// pinned, or the joint before the tile that is struck.
func struck(room *survey.Room, w *count.Wall, edge length.Length) (x length.Length, onTile bool) {
	if p := w.Found.Pin; p != nil {
		switch p.Is {
		case survey.OnTile:
			return p.X, true
		case survey.OnJoint:
			return p.X, false
		}
	}
	return edge - room.Joint.Half(), false
}

// Lines says what the course lines of the trade would give. Lines whole pitches
// apart are one line, unless a start is pinned, which belongs to a course. Of the line that was chosen
// all is known already.
func Lines(room *survey.Room, r *search.Result) []plan.ClassicLine {
	var out []plan.ClassicLine
	one := func(line length.Length) length.Length { return length.Mod(line, room.Tile.Height+room.Joint) }
	if slices.ContainsFunc(room.Walls, func(w survey.WallFound) bool { return w.Pin != nil }) {
		one = func(line length.Length) length.Length { return line }
	}
	known := map[length.Length]plan.Figures{one(r.Line): figures(room, r.Order(), &r.Merit, &r.Merit, runsOf(r.Walls))}
	for _, k := range r.Classic() {
		f, there := known[one(k.Line)]
		if !there {
			walls, whole := r.OnLine(k.Line)
			f = figures(room, r.Order(), &whole, &r.Merit, runsOf(walls))
			known[one(k.Line)] = f
		}
		out = append(out, plan.ClassicLine{Name: k.Name, Line: k.Line, Figures: f})
	}
	return out
}

func runsOf(walls []count.Counted) (runs []count.Run) {
	for _, w := range walls {
		runs = append(runs, w.Runs...)
	}
	return runs
}

// Joint says what one joint of a range would give.
func Joint(room *survey.Room, size length.Length, r, best *search.Result) plan.Joint {
	return plan.Joint{Size: size, Line: r.Line, Figures: figures(room, r.Order(), &r.Merit, &best.Merit, runsOf(r.Walls))}
}
