package cuts

import (
	"fmt"
	"strings"

	"coursewright/layout/length"
)

// Words say what to cut, one line a thing: how many and how, sizes, notches,
// holes, and which edges are cut and which stay as made. Within a size no line
// may be broken, so its spaces are such as hold.
func (g Group) Words(s length.System) []string {
	w := words{s}
	out := []string{fmt.Sprintf("%d like this: %s", g.Count, g.Kind)}
	if g.Count == 1 {
		out[0] = "1 of this: " + g.Kind
	}
	if g.Tile != "" {
		out[0] += ", of " + g.Tile
	}
	if how := g.How.Words(); how != "" {
		out[0] += ", " + how
	}
	switch {
	case g.Spread > 0 && len(g.Saws) > 0:
		out = append(append(out, w.size(g.Size)...), "their places are up to "+w.fine(g.Spread)+" larger")
	case g.Spread > 0:
		out = append(out, w.spread(g))
	case g.How == InPlace && g.Count > 1:
		size := g.Size
		size.Holes = nil
		out = append(append(out, w.size(size)...), "hold each to its place and mark the hole")
	default:
		out = append(out, w.size(g.Size)...)
	}
	if len(g.Saws) > 0 {
		return append(out, w.saws(g.Saws)...)
	}
	return append(out, edgeWords(g.Factory, g.Cut)...)
}

// saws say where each cut of a piece of a pattern enters its tile and leaves it.
func (w words) saws(all []Saw) (out []string) {
	mark := func(m Mark) string {
		if w.fine(m.From) == w.fine(0) {
			return "corner " + m.At()
		}
		return w.fine(m.From) + " on the way " + m.String()
	}
	stops := ""
	for _, s := range all {
		line := "saw from " + mark(s.Enters) + " to " + mark(s.Leaves)
		if s.Stops {
			line, stops = line+Crossing, ", and saw no further than that"
		}
		out = append(out, line)
	}
	if len(all) > 1 {
		out = append(out, "mark all lines before the first cut"+stops)
	}
	return out
}

// Crossing is said of a cut that ends inside the tile.
const Crossing = ", as far as where it crosses the other line"

// Marks say where each cut of a piece of a pattern enters its tile and leaves it; none of a piece
// of a course.
func (c Cut) Marks(s length.System) []string { return words{s}.saws(c.Saws) }

// Corners says how the corners of a tile are named in the marks of a pattern's cuts.
const Corners = "The tile lies on its longest edge, A to B; its other corners follow round to the left. A mark is so far from the first corner on the way to the second."

func cornerName(n int) string { return string(rune('A' + n)) }

// Words say what to cut for one piece, as those of a Group.
func (c Cut) Words(s length.System) []string {
	out := []string{"1 of this: " + c.Kind}
	if len(c.Saws) > 0 {
		w := words{s}
		return append(append(append(out, w.size(c.Size)...), w.saws(c.Saws)...), Corners)
	}
	return append(append(out, words{s}.size(c.Size)...), edgeWords(c.Factory, c.Cut)...)
}

// Words say how a line is cut where it is not at one setting of the fence.
func (h How) Words() string {
	switch h {
	case InPlace:
		return "measure in place"
	case FirstCourse:
		return "by the first-course sheet"
	case Uncut:
		return "set it whole"
	case Unworkable:
		return "do not cut: change the set-out"
	}
	return ""
}

func edgeWords(factory, cut []string) (out []string) {
	if len(cut) > 0 {
		out = append(out, "cut: "+strings.Join(cut, ", "))
	}
	if len(factory) > 0 {
		out = append(out, "factory: "+strings.Join(factory, ", "))
	}
	return out
}

// words write lengths for the saw.
type words struct{ units length.System }

// size says width and height, both of a taper, notches and holes.
func (w words) size(s Size) []string {
	out := []string{"wide " + w.two(s.Width, s.Bottom, s.Top, "below", "above") +
		", high " + w.two(s.Height, s.Left, s.Right, "left", "right")}
	for _, n := range s.Notches {
		out = append(out, "notch leaves "+w.notch(n))
	}
	for _, h := range s.Holes {
		out = append(out, "hole "+h.Name+": ⌀ "+w.fine(h.Diameter)+", centre "+w.away(h.FromLeft, "the left edge")+", "+w.away(h.Up, "the bottom edge"))
	}
	return out
}

// spread says between which sizes the pieces of a line lie: cut at one setting,
// or each for itself.
func (w words) spread(g Group) string {
	small, name := g.Fence()
	large := small + g.Spread
	if g.How == Fence {
		return name + " " + w.fine(small) + "; their places are up to " + w.fine(g.Spread) + " larger"
	}
	return name + " " + w.fine(small) + " to " + w.fine(large)
}

// Fence is the measure that a line with one cut is set to, and what it
// measures: "wide" or "high".
func (g Group) Fence() (size length.Length, name string) {
	sawn := strings.Join(g.Cut, " ")
	if strings.Contains(sawn, "left") || strings.Contains(sawn, "right") {
		if !strings.Contains(sawn, "bottom") && !strings.Contains(sawn, "top") {
			return g.Size.Width, "wide"
		}
	}
	return g.Size.Height, "high"
}

func (w words) fine(l length.Length) string {
	return strings.ReplaceAll(l.Fine(w.units), " ", "\u00a0")
}

// two writes one size, or that of both sides where they differ.
func (w words) two(all, a, b length.Length, first, second string) string {
	if a == b || a == 0 || b == 0 {
		return w.fine(all)
	}
	return w.side(a, first) + ", " + w.side(b, second)
}

func (w words) side(l length.Length, of string) string { return w.fine(l) + "\u00a0" + of }

// away says how far inside an edge of the piece a place is, or outside it.
func (w words) away(l length.Length, edge string) string {
	if l < 0 {
		return w.fine(-l) + " outside " + edge
	}
	return w.fine(l) + " from " + edge
}

// notch says what a notch leaves on its sides.
func (w words) notch(n Notch) string {
	var arms []string
	for _, arm := range []struct {
		left length.Length
		of   string
	}{{n.Left, "left"}, {n.Right, "right"}, {n.Below, "below"}, {n.Above, "above"}} {
		if arm.left > 0 {
			arms = append(arms, w.side(arm.left, arm.of))
		}
	}
	return strings.Join(arms, ", ")
}
