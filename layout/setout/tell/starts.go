package tell

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
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
	s.Slide = slide(r, i)
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

// slide is the worst run against the start over one period. Where all that stands on the wall was measured
// it is counted from the pieces; what is free goes where each start has it best, and there it is as far
// as the edges that stand decide it. Of a fine tape it has many points: it stops where nobody waits for it.
func slide(r *search.Result, wall int) []plan.SlidePoint {
	var out []plan.SlidePoint
	w, line, placed := r.Wall(wall), r.Line, r.Walls[wall].Placed
	given := func(edge length.Length) merit.Merit { return w.Bounds.OfBoth(line, edge) }
	if len(w.Free()) == 0 && w.FixedEnds() && slices.ContainsFunc(w.Found.Openings, func(o survey.OpeningFound) bool { return o.Kind != survey.Pipe }) {
		given = func(edge length.Length) merit.Merit {
			return w.Count(count.Setting{Line: line, Edge: edge, Placed: placed}).Merit
		}
	}
	for _, edge := range w.Starts.All() {
		if r.Ended() {
			return nil
		}
		m := given(edge)
		p := plan.SlidePoint{Edge: edge, Share: piece.Half, Slivers: m.Slivers + m.Unworkable}
		if m.Bare > 0 {
			p.Slivers++
		}
		if len(m.Runs) > 0 {
			p.Share = m.Runs[0]
		}
		out = append(out, p)
	}
	return straighten(out)
}

// straighten drops points in the middle of a straight stretch.
func straighten(p []plan.SlidePoint) []plan.SlidePoint {
	var out []plan.SlidePoint
	for i, q := range p {
		if i > 0 && i < len(p)-1 && inLine(out[len(out)-1], q, p[i+1]) {
			continue
		}
		out = append(out, q)
	}
	return out
}

// inLine tells whether b lies on the way from a to c to within a thousandth of
// a tile: good enough to draw.
func inLine(a, b, c plan.SlidePoint) bool {
	if a.Slivers != b.Slivers || b.Slivers != c.Slivers || a.Edge == c.Edge {
		return false
	}
	want := a.Share.Float() + (c.Share.Float()-a.Share.Float())*float64(b.Edge-a.Edge)/float64(c.Edge-a.Edge)
	got := b.Share.Float()
	return want-got < 0.001 && got-want < 0.001
}

// slip is how far the start may move, both ways, before more slivers appear.
func slip(slide []plan.SlidePoint, edge, pitch length.Length) (from, to length.Length) {
	if len(slide) == 0 {
		return edge, edge
	}
	at := slide[0].Edge + length.Mod(edge-slide[0].Edge, pitch)
	i := 0
	for i+1 < len(slide) && slide[i+1].Edge <= at {
		i++
	}
	limit := slide[i].Slivers
	low, high := i, i
	for low > 0 && slide[low-1].Slivers <= limit {
		low--
	}
	for high+1 < len(slide) && slide[high+1].Slivers <= limit {
		high++
	}
	return edge + slide[low].Edge - at, edge + slide[high].Edge - at
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
