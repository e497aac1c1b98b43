package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// grid is where tiles begin in one direction of a wall: at first plus any whole
// number of pitches, moved by the shift of each class of the bond.
type grid struct {
	first, tile, pitch length.Length
	shifts             []length.Length
}

// begins tells whether a tile of some class begins at x, and ends whether one ends there.
func (g grid) begins(x length.Length) bool {
	for _, s := range g.shifts {
		if length.Mod(x-g.first-s, g.pitch) == 0 {
			return true
		}
	}
	return false
}

func (g grid) ends(x length.Length) bool { return g.begins(x - g.tile) }

// into is how far x lies in the tile of a class that it falls in, at most the tile.
func (g grid) into(x length.Length, class int) length.Length {
	return min(g.tile, length.Mod(x-g.first-g.shifts[class], g.pitch))
}

// off is 0 where the two edges of an opening both lie on joint lines, or leave
// equal cuts of at least half a tile in every class, else 1.
func (g grid) off(low, high length.Length) int {
	if g.ends(low) && g.begins(high) || g.equal(low, high) {
		return 0
	}
	return 1
}

func (g grid) equal(low, high length.Length) bool {
	n := len(g.shifts)
	before, after := make([]length.Length, 0, 8), make([]length.Length, 0, 8)
	for c := range n {
		before = append(before, g.before(low, c))
		after = append(after, g.after(high, c))
	}
	slices.Sort(before)
	slices.Sort(after)
	return 2*before[0] >= g.tile && slices.Equal(before, after)
}

// before is what the tile that x falls in leaves before it: the whole tile where
// x falls in a joint. after is what it leaves after it.
func (g grid) before(x length.Length, class int) length.Length {
	if into := g.into(x, class); into > 0 {
		return into
	}
	return g.tile
}

func (g grid) after(x length.Length, class int) length.Length {
	if into := g.into(x, class); into < g.tile {
		return g.tile - into
	}
	return g.tile
}

// most bounds how many places are listed for one mark.
const most = 400

// within lists, ascending, every place in the span where a tile of some class
// begins, each moved by add.
func (g grid) within(span survey.Span, add length.Length) []length.Length {
	var out []length.Length
	for _, s := range g.shifts {
		for x := span.From + length.Mod(g.first+s+add-span.From, g.pitch); x <= span.To && len(out) < most; x += g.pitch {
			out = append(out, x)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// edges lists, ascending, every place in the span where a tile of some class begins or
// ends.
func (g grid) edges(span survey.Span) []length.Length {
	out := append(g.within(span, 0), g.within(span, g.tile)...)
	slices.Sort(out)
	return slices.Compact(out)
}

// equalCuts lists where an opening of one size leaves the same of a tile of one
// class before it as of a tile of another class after it.
func (g grid) equalCuts(low survey.Span, size length.Length) []length.Length {
	var out []length.Length
	for _, s := range g.shifts {
		for _, t := range g.shifts {
			// before = a - first - s, after = tile - (a + size - first - t), modulo the pitch.
			twice := 2*g.first + s + t + g.tile - size
			from := 2 * low.From
			for x := from + length.Mod(twice-from, g.pitch); x <= 2*low.To && len(out) < most; x += g.pitch {
				out = append(out, x.Half())
			}
		}
	}
	return out
}

// level and upright are where tiles begin along the wall and up it.
func (w *facts) level(edge length.Length) grid {
	g := grid{edge, w.room.Tile.Width, w.room.Tile.Width + w.room.Joint, w.shifts}
	if w.frame.plumb {
		g.shifts = g.shifts[:1]
	}
	return g
}

func (w *facts) upright(line length.Length) grid {
	g := grid{line, w.room.Tile.Height, w.room.Tile.Height + w.room.Joint, w.shifts}
	if !w.frame.plumb {
		g.shifts = g.shifts[:1]
	}
	return g
}
