package setout

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// describe turns the best set-out on the tape into what a person is told, with
// the exact best beside it.
func (s *solver) describe(t, exact result) plan.Setout {
	out := plan.Setout{Line: t.line, Hand: s.hand, Pinned: s.room.Line != nil, Merit: plan.Merit(t.merit), Exact: plan.Merit(exact.merit)}
	s.limit = s.work + mostWork/8 // for all that follows
	for w, c := range t.choices {
		out.Walls = append(out.Walls, s.start(w, t.line, c))
	}
	out.Lines = s.classicLines()
	out.Loss = loss(t.merit, exact.merit)
	out.Short = s.short
	return out
}

func (s *solver) start(w int, line length.Length, c choice) plan.Start {
	f := s.fields[w]
	out := plan.Start{Edge: c.edge, Placed: c.placed, Pinned: f.pinned()}
	out.X, out.OnTile = s.mark(w, c.edge)
	for _, k := range f.classics(c.placed) {
		out.Classic = append(out.Classic, s.figure(w, line, k))
	}
	best := classic{name: "best", x: out.X, onTile: out.OnTile}
	out.Classic = append(out.Classic, s.figure(w, line, best))
	out.Slide = s.slide(w, line)
	out.From, out.To = slip(out.Slide, c.edge, s.room.Tile.Width+s.room.Joint)
	return out
}

// mark says where the middle of a joint or of a tile stands: as pinned, or as
// close to the wall's centre as it can be, on the tape where that is possible.
func (s *solver) mark(w int, edge length.Length) (x length.Length, onTile bool) {
	f := s.fields[w]
	tile, joint := s.room.Tile.Width, s.room.Joint
	switch p := f.found.Pin; {
	case p == nil:
	case p.Is == survey.OnEdge:
		return p.X - joint.Half(), false
	default:
		return p.X, p.Is == survey.OnTile
	}
	pitch := tile + joint
	near := func(x length.Length) length.Length {
		if s.room.Bond.Plumb {
			return x // columns count from the start: another joint is another bond
		}
		from := f.found.Width.Half() - pitch.Half()
		return from + length.Mod(x-from, pitch)
	}
	onJoint, inTile := near(edge-joint.Half()), near(edge+tile.Half())
	centre := f.found.Width.Half()
	tape := s.room.Tape
	switch {
	case onJoint == centre:
		return onJoint, false
	case inTile == centre:
		return inTile, true
	case length.Mod(onJoint, tape) != 0 && length.Mod(inTile, tape) == 0:
		return inTile, true
	}
	return onJoint, false
}

// figure is what a start by name would give on one wall, with the course line as it is.
func (s *solver) figure(w int, line length.Length, k classic) plan.Classic {
	f := s.fields[w]
	edge := k.edge(s.room.Tile.Width, s.room.Joint)
	across, _ := f.frame(line, edge)
	m := f.weigh(line, edge, s.compiled(w, across, line)).merit
	return plan.Classic{Name: k.name, X: k.x, OnTile: k.onTile, Smallest: s.size(m.Smallest), Share: m.Smallest, Slivers: m.Slivers, Bare: m.Bare}
}

// size is a share as a length, of the tile's width.
func (s *solver) size(share piece.Share) length.Length {
	return length.Length(share.Num * int64(s.room.Tile.Width) / share.Den)
}

// slide is the smallest cut against the start over one period: on the tape, on
// either side of every place where it may turn or jump. Where that takes too
// long, fewer places give a coarser curve.
func (s *solver) slide(w int, line length.Length) []plan.SlidePoint {
	f := s.fields[w]
	var out []plan.SlidePoint
	edges := s.edgesAt(w, f.startFeatures, true)
	for _, i := range coarseFirst(len(edges)) {
		if s.spent() && len(out) > fewest {
			break
		}
		across, _ := f.frame(line, edges[i])
		m := f.weigh(line, edges[i], s.compiled(w, across, line)).merit
		out = append(out, plan.SlidePoint{Edge: edges[i], Share: m.Smallest, Slivers: m.Slivers + m.Bare})
	}
	slices.SortFunc(out, func(a, b plan.SlidePoint) int { return cmp.Compare(a.Edge, b.Edge) })
	return straighten(out)
}

// fewest is how many places of a slide curve are always weighed.
const fewest = 16

// coarseFirst orders n places so that any beginning of the list is spread over all.
func coarseFirst(n int) []int {
	out := make([]int, 0, n)
	seen := make([]bool, n)
	step := 1
	for step < n {
		step *= 2
	}
	for ; step > 0; step /= 2 {
		for i := 0; i < n; i += step {
			if !seen[i] {
				seen[i] = true
				out = append(out, i)
			}
		}
	}
	return out
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

// classicLines are the course lines of the trade with the best starts on each.
// Lines whole pitches apart are one line.
func (s *solver) classicLines() []plan.ClassicLine {
	var out []plan.ClassicLine
	period := (s.room.Tile.Height + s.room.Joint) * s.periods()
	known := map[length.Length]Merit{}
	for _, k := range s.linesByName() {
		m, there := known[length.Mod(k.line, period)]
		if !there {
			m = s.bestOn(k.line)
			known[length.Mod(k.line, period)] = m
		}
		out = append(out, plan.ClassicLine{Name: k.name, Line: k.line, Smallest: s.size(m.Smallest), Share: m.Smallest, Slivers: m.Slivers, Bare: m.Bare})
	}
	return out
}

// bestOn is the merit of a course line with the best starts, in its first four terms.
func (s *solver) bestOn(line length.Length) Merit {
	t := trial{line: line}
	t.bounds, t.merit = s.lineBounds(line, true)
	s.deepest(&t, true, firstFour)
	return t.merit
}

type namedLine struct {
	name string
	line length.Length
}

func (s *solver) linesByName() []namedLine {
	var out []namedLine
	for _, kind := range []survey.Kind{survey.Tub, survey.ShowerBase, survey.Curb, survey.Floor} {
		if low, found := s.lowPoint(kind); found {
			out = append(out, namedLine{"full course at the " + string(kind) + "'s low point", low})
		}
	}
	for _, f := range s.fields {
		name, tile := f.found.Name, s.room.Tile.Height
		out = append(out, namedLine{"full course at the head of " + name, f.shape.Solid.Bounds().Top - tile})
		for i, o := range f.found.Openings {
			if o.Kind == "pipe" || slices.Contains(f.free, i) {
				continue
			}
			e := f.placed.Openings[i]
			out = append(out, namedLine{"a line at the bottom of " + o.Name, e.Bottom - tile}, namedLine{"a line at the top of " + o.Name, e.Top})
		}
	}
	return out
}

// lowPoint is the lowest place a tile may come down to over bases of one kind.
func (s *solver) lowPoint(kind survey.Kind) (low length.Length, found bool) {
	for _, f := range s.fields {
		for _, b := range f.found.Base {
			if b.Meets != kind {
				continue
			}
			for _, r := range b.Readings {
				if y := r.Value + b.Gap; !found || y < low {
					low, found = y, true
				}
			}
		}
	}
	return low, found
}

func loss(tape, exact Merit) string {
	order, term := exact.Compare(tape)
	if order >= 0 {
		return ""
	}
	return "With marks rounded to the tape one term is a little worse than it could be: " + Terms[term] + "."
}
