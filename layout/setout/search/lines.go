package search

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"
)

// ClassicLine is a course line people know by name.
type ClassicLine struct {
	Name string
	Line length.Length
}

// Lines are the course lines of the trade in a room: a full course at the low
// point of each kind of base, a full course at each head, and lines at built openings.
func (s *solver) Lines() []ClassicLine { return Lines(s.room, s.walls) }

// Lines are the course lines of the trade in a room.
func Lines(room *survey.Room, walls []*count.Wall) []ClassicLine {
	var out []ClassicLine
	tile := room.Tile.Height
	for _, kind := range []survey.Kind{survey.Tub, survey.ShowerBase, survey.Curb, survey.Seat, survey.Floor} {
		if low, found := lowPoint(walls, kind); found {
			out = append(out, ClassicLine{"full course at the " + string(kind) + "'s low point", low})
		}
	}
	for _, w := range walls {
		if w.Found.Head.Meets || !w.Found.Head.Stops.Free() {
			out = append(out, ClassicLine{"full course at the head of " + w.Found.Name, w.Box().Top - tile})
		}
		for i, o := range w.Found.Openings {
			if o.Kind == survey.Pipe || slices.Contains(w.Free(), i) {
				continue
			}
			e := w.Outer().Openings[i]
			out = append(out, ClassicLine{"line at the bottom of " + o.Name, e.Bottom - tile}, ClassicLine{"line at the top of " + o.Name, e.Top})
		}
	}
	return out
}

// lowPoint is the lowest place a tile may come down to over bases of one kind.
func lowPoint(walls []*count.Wall, kind survey.Kind) (low length.Length, found bool) {
	for _, w := range walls {
		for _, b := range w.Found.Base {
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

func unique(out []length.Length) []length.Length {
	slices.SortFunc(out, cmp.Compare)
	return slices.Compact(out)
}
