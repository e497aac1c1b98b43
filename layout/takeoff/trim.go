package takeoff

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// bars is the line of one finish: its edges packed into stock bars, or into
// bullnose pieces with joints between them.
func (in Input) bars(set Settings, finish survey.Kind) Line {
	stock, joint := set.Trim, length.Length(0)
	if finish == survey.Bullnose {
		stock, joint = set.Bullnose, in.Room.Joint
	}
	lengths := in.finished(finish)
	if finish == survey.Trim && set.Niche.Trim {
		for _, e := range in.nicheEdges() {
			lengths = append(lengths, e.Right-e.Left, e.Right-e.Left, e.Top-e.Bottom, e.Top-e.Bottom)
		}
	}
	if stock <= 0 || len(lengths) == 0 {
		return Line{}
	}
	full, rest := splitUp(lengths, stock, joint)
	packed, least := pack(rest, stock, set.Kerf)
	u := in.Room.Units
	return Line{
		Item: string(finish), Unit: "bar of " + stock.Tape(u), Net: full + packed, Count: full + packed,
		Because: fmt.Sprintf("%s in %s; at least %d by length alone", sum(lengths).Tape(u), counted(len(lengths), "edge"), full+least),
	}
}

// finished lists the lengths of the edges with a finish.
func (in Input) finished(finish survey.Kind) []length.Length {
	var all []length.Length
	in.sides(func(b survey.Boundary) bool { return b.Kind == finish }, func(w plan.Wall, side plane.Side, _ survey.Boundary) {
		all = append(all, runs(w, side)...)
	})
	return all
}

// splitUp takes full bars off lengths longer than one, and gives how many and
// what is left to cut.
func splitUp(lengths []length.Length, stock, joint length.Length) (full int, rest []length.Length) {
	for _, l := range lengths {
		n := (l + joint) / (stock + joint)
		full += int(n)
		if r := l - n*(stock+joint); r > 0 {
			rest = append(rest, r)
		}
	}
	return full, rest
}

// pack puts lengths into bars, the longest first, each into the first bar with
// room, a kerf after every cut. It gives the number of bars and the least that
// any packing needs: the sum of lengths and kerfs over a bar and its kerf. No
// length may exceed stock.
func pack(lengths []length.Length, stock, kerf length.Length) (bars, least int) {
	order := slices.Clone(lengths)
	slices.Sort(order)
	slices.Reverse(order)
	var room []length.Length // left in each bar
	var need length.Length
	for _, l := range order {
		need += l + kerf
		i := slices.IndexFunc(room, func(left length.Length) bool { return left >= l })
		if i < 0 {
			i, room = len(room), append(room, stock)
		}
		room[i] -= l + kerf
	}
	return len(room), int(ceil(need, stock+kerf))
}

func sum(lengths []length.Length) length.Length {
	var all length.Length
	for _, l := range lengths {
		all += l
	}
	return all
}
