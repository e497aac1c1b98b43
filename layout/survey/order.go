package survey

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout/length"
)

// order gives every wall its place in the order of setting: those named first,
// then the widest first, of equal ones the first in the list. A name that no
// wall has is refused, unless it may be that of a wall whose name is missing.
func (r *resolver) order(names []string, walls []WallFound) {
	var order []int
	unnamed := slices.ContainsFunc(walls, func(w WallFound) bool { return strings.TrimSpace(w.Name) == "" })
	for i, name := range names {
		at := slices.IndexFunc(walls, func(w WallFound) bool { return w.Name == name })
		switch {
		case at < 0 && (unnamed || len(walls) == 0):
		case at < 0:
			r.faults.add(path("setOrder").at(i), quote(name), "the name of a wall: "+wallNames(walls))
		case slices.Contains(order, at):
			r.faults.add(path("setOrder").at(i), quote(name)+" a second time", "each wall once")
		default:
			order = append(order, at)
		}
	}
	var rest []int
	for i := range walls {
		if !slices.Contains(order, i) {
			rest = append(rest, i)
		}
	}
	slices.SortStableFunc(rest, func(a, b int) int { return cmp.Compare(walls[b].Width, walls[a].Width) })
	for place, i := range append(order, rest...) {
		walls[i].Order = place
	}
}

func wallNames(walls []WallFound) string {
	names := make([]string, len(walls))
	for i, w := range walls {
		names[i] = w.Name
	}
	return clip(strings.Join(names, ", "))
}

// letter gives every wall the initial of its name where these are letters and
// all differ, otherwise A, B, C and on by the list; after Z come AA, AB.
func letter(walls []WallFound) {
	seen := map[string]bool{}
	for _, w := range walls {
		seen[initial(w.Name)] = true
	}
	own := len(seen) == len(walls) && !seen[""]
	for i := range walls {
		if own {
			walls[i].Letter = initial(walls[i].Name)
		} else {
			walls[i].Letter = column(i)
		}
	}
}

// initial is the first letter of a name in upper case, or empty where the name
// does not begin with a letter from A to Z.
func initial(name string) string {
	if name == "" {
		return ""
	}
	first := strings.ToUpper(name[:1])
	if first < "A" || first > "Z" {
		return ""
	}
	return first
}

func column(i int) string {
	last := string(rune('A' + i%26))
	if i < 26 {
		return last
	}
	return column(i/26-1) + last
}

// neighbours ties the right end of a wall to the left end of the next one
// where both meet a corner, and the last to the first in a closed room, which
// takes four walls. The fronts of benches and curbs, which meet the runs of two others, come after
// them in the list and go round nothing.
func neighbours(walls []WallFound) {
	last, round := 0, 0
	for i, w := range walls {
		if !w.Left.Against || !w.Right.Against {
			last, round = i, round+1
		}
	}
	for i := range walls {
		next := i + 1
		if i == last {
			if round < 4 {
				return
			}
			next = 0
		}
		if next == len(walls) {
			return
		}
		if a, b := walls[i].Right, walls[next].Left; a.Meets && b.Meets && !a.Against && !b.Against {
			walls[i].Right.Beyond = next
			walls[next].Left.Beyond = i
		}
	}
}

// lap says at every corner of two walls whose tile is covered and whose runs
// behind: the wall set first runs into the corner, the other laps over it.
func lap(walls []WallFound, deep length.Length) {
	for i := range walls {
		w := &walls[i]
		for side, end := range []*EndFound{&w.Left, &w.Right} {
			switch {
			case end.Against:
				end.Behind = deep
				if t := w.Head.Top; t != nil && t.Corner != nil {
					end.Behind = t.Corner.Takes[side]
				}
			case end.Beyond < 0:
			case w.Order < walls[end.Beyond].Order:
				end.Cover = deep
			default:
				end.Behind = deep
			}
		}
	}
}
