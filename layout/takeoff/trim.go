package takeoff

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// bars is the line of the trim: its edges packed into stock bars.
func (in Input) bars(set Settings) Line {
	lengths := in.finished(survey.Trim)
	if set.Niche.Trim {
		for _, e := range in.nicheEdges(func(survey.OpeningFound) bool { return true }) {
			lengths = append(lengths, e.Right-e.Left, e.Right-e.Left, e.Top-e.Bottom, e.Top-e.Bottom)
		}
	}
	if set.Trim <= 0 || len(lengths) == 0 {
		return Line{}
	}
	full, rest := splitUp(lengths, set.Trim)
	bars := pack(rest, set.Trim, set.Kerf)
	return Line{Item: "trim", Unit: "bar of " + set.Trim.Tape(in.Room.Units), Net: full + len(bars), Count: full + len(bars),
		Because: in.barPlan(lengths, full, bars, set.Kerf)}
}

// mostBars is how many bars are told by what is cut from them.
const mostBars = 8

// barPlan says what is cut from which bar, and what is not counted.
func (in Input) barPlan(lengths []length.Length, full int, bars [][]length.Length, kerf length.Length) string {
	u := in.Room.Units
	text := fmt.Sprintf("%s in %s", sum(lengths).Tape(u), counted(len(lengths), "edge"))
	if full > 0 {
		text += ", " + counted(full, "whole bar")
	}
	if 0 < len(bars) && len(bars) <= mostBars {
		plan := make([]string, len(bars))
		for i, bar := range bars {
			cut := make([]string, len(bar))
			for k, l := range bar {
				cut[k] = l.Tape(u)
			}
			plan[i] = strings.Join(cut, " + ")
		}
		text += "; cut from a bar each: " + strings.Join(plan, ", ")
	}
	return text + fmt.Sprintf("; %s lost at each cut; a mitre takes more", kerf.Fine(u))
}

// bullnose is bought by the piece: every edge in pieces with joints between
// them, what an edge leaves over not used again, because a bullnose piece keeps
// its rounded end.
func (in Input) bullnose(set Settings) Line {
	lengths := in.finished(survey.Bullnose)
	if set.Bullnose <= 0 || len(lengths) == 0 {
		return Line{}
	}
	n, u := 0, in.Room.Units
	for _, l := range lengths {
		n += along(l, set.Bullnose, in.Room.Joint)
	}
	return bought("bullnose", "piece of "+set.Bullnose.Fine(u), n, set.Breakage,
		fmt.Sprintf("%s in %s, with joints, and %d %% spare", sum(lengths).Tape(u), counted(len(lengths), "edge"), set.Breakage))
}

// bullnoseCorners are the pieces with two rounded sides: one where two bullnose
// edges meet at an outer corner.
func (in Input) bullnoseCorners() Line {
	n := 0
	for _, w := range plan.WithTops(in.Walls) {
		for _, ring := range w.Shape.Region { // bullnose in pieces has corners of its own: trim_pieces.go
			for i, c := range ring {
				before := ring[(i+len(ring)-1)%len(ring)]
				next := ring[(i+1)%len(ring)]
				outer := (c.X-before.X).Times(next.Y-c.Y)-(c.Y-before.Y).Times(next.X-c.X) > 0
				if outer && before.On != c.On && in.bullnosed(w, before.On) && in.bullnosed(w, c.On) {
					n++
				}
			}
		}
	}
	return Line{Item: "bullnose corner", Unit: "piece", Net: n, Count: n, Because: "rounded on two sides, where two bullnose edges meet; or mitre two pieces"}
}

func (in Input) bullnosed(w plan.Wall, side plane.Side) bool {
	return int(side) < len(w.Shape.Sides) && w.Shape.Sides[side].Kind == survey.Bullnose && w.Shape.Sides[side].Trim == nil
}

// finished lists the lengths of the edges with a finish that no trim in pieces makes.
func (in Input) finished(finish survey.Kind) []length.Length {
	var all []length.Length
	in.Walls = plan.WithTops(in.Walls)
	in.sides(func(b survey.Boundary) bool { return b.Kind == finish && b.Trim == nil }, func(w plan.Wall, side plane.Side, _ survey.Boundary) {
		all = append(all, runs(w, side)...)
	})
	return all
}

// splitUp takes full bars off lengths longer than one, and gives how many and
// what is left to cut.
func splitUp(lengths []length.Length, stock length.Length) (full int, rest []length.Length) {
	for _, l := range lengths {
		n := l / stock
		full += int(n)
		if r := l - n*stock; r > 0 {
			rest = append(rest, r)
		}
	}
	return full, rest
}

// pack puts lengths into bars, the longest first, each into the first bar with
// room, a kerf after every cut, and gives what is cut from each. No length may exceed stock.
func pack(lengths []length.Length, stock, kerf length.Length) (bars [][]length.Length) {
	order := slices.Clone(lengths)
	slices.Sort(order)
	slices.Reverse(order)
	var room []length.Length // left in each bar
	for _, l := range order {
		i := slices.IndexFunc(room, func(left length.Length) bool { return left >= l })
		if i < 0 {
			i, room, bars = len(room), append(room, stock), append(bars, nil)
		}
		room[i] -= l + kerf
		bars[i] = append(bars[i], l)
	}
	return bars
}

func sum(lengths []length.Length) length.Length {
	var all length.Length
	for _, l := range lengths {
		all += l
	}
	return all
}
