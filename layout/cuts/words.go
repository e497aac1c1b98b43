package cuts

import (
	"fmt"
	"strings"

	"coursewright/layout/length"
)

// Words say what to cut, one line a thing: how many, sizes, notches, holes,
// and which edges are cut and which stay as made. Within a size no line may be
// broken, so its spaces are such as hold.
func (g Group) Words(s length.System) []string {
	w := words{s}
	out := []string{fmt.Sprintf("%d like this: %s", g.Count, g.Kind)}
	if g.Count == 1 {
		out[0] = "1 of this: " + g.Kind
	}
	out = append(out, "wide "+w.two(g.Size.Width, g.Size.Bottom, g.Size.Top, "below", "above")+
		", high "+w.two(g.Size.Height, g.Size.Left, g.Size.Right, "left", "right"))
	for _, n := range g.Size.Notches {
		out = append(out, "notch leaves "+w.notch(n))
	}
	for _, h := range g.Size.Holes {
		out = append(out, "hole "+h.Name+": ⌀ "+w.fine(h.Diameter)+", centre "+w.away(h.FromLeft, "the left edge")+", "+w.away(h.Up, "the bottom edge"))
	}
	if len(g.Cut) > 0 {
		out = append(out, "cut: "+strings.Join(g.Cut, ", "))
	}
	if len(g.Factory) > 0 {
		out = append(out, "factory: "+strings.Join(g.Factory, ", "))
	}
	return out
}

// words write lengths for the saw.
type words struct{ units length.System }

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
