package elevation

import (
	"fmt"
	"strings"

	"coursewright/web/drawing"
)

// reach is the radius of a handle: 24 px across on a screen (WCAG 2.2, 2.5.8)
// at four px to the millimetre.
const reach = 3000

// Grips of what the set-out decides are blue, of what was measured black.
const (
	decided  = `fill="#0b4a8f" stroke="#ffffff" stroke-width="300"`
	measured = `fill="#000000" stroke="#ffffff" stroke-width="300"`
)

// handles writes what a person may drag as sliders over the drawing. Places
// are in millimetres on the wall, as in a plan file, and in micrometres on paper.
func (p *pen) handles(all []drawing.Handle) {
	for _, h := range all {
		p.leave()
		value, ink := h.X, decided
		if h.Axis == "y" {
			value = h.Y
		}
		if h.Measured {
			ink = measured
		}
		class, text := "handle", h.Text
		if h.Pinned {
			class, text = "handle pinned", h.Text+", pinned"
		}
		x, y := int(h.At.X), int(h.At.Y)
		p.canvas.Group(attr("class", class), `role="slider" tabindex="-1"`,
			attr("aria-label", text), attr("aria-valuenow", value.MillimetreText()), attr("aria-valuetext", h.Stands),
			attr("data-handle", h.ID), attr("data-axis", h.Axis), number("data-wall", int64(h.Wall)),
			attr("data-x", h.X.MillimetreText()), attr("data-y", h.Y.MillimetreText()), fmt.Sprintf(`data-at="%d %d"`, x, y)+snaps(h))
		p.canvas.Circle(x, y, reach, `fill="#ffffff" fill-opacity="0"`)
		p.canvas.Path(grip(x, y, h.Axis), ink)
		if h.Pinned {
			p.canvas.Circle(x, y, 1100, decided)
		}
		p.canvas.Gend()
	}
}

// grip is a pair of arrow heads along the axis, or four for both.
func grip(x, y int, axis string) string {
	d := ""
	if axis != "y" {
		d += fmt.Sprintf("M%d %dl-2000 -1500v3000zM%d %dl2000 -1500v3000z", x+3200, y, x-3200, y)
	}
	if axis != "x" {
		d += fmt.Sprintf("M%d %dl-1500 -2000h3000zM%d %dl-1500 2000h3000z", x, y+3200, x, y-3200)
	}
	return d
}

// snaps names the joint lines that a handle goes to, axis by axis: "x ends 0" is
// where tiles end along the wall, counted from 0. What was measured is kept as a tape reads.
func snaps(h drawing.Handle) string {
	if len(h.Snaps) == 0 {
		return ""
	}
	axes := make([]string, len(h.Snaps))
	for i, s := range h.Snaps {
		axes[i] = s.Axis + " " + s.Side.String() + " " + s.From.MillimetreText()
	}
	out := " " + attr("data-snaps", strings.Join(axes, ";"))
	if h.Measured {
		out += " data-measured"
	}
	return out
}

// joints are the joint lines of a wall, in millimetres on it.
func joints(j *drawing.JointLines) string {
	if j == nil {
		return ""
	}
	return " " + attr("data-joint", j.Width.MillimetreText()) + " " + attr("data-level", listed(j.Level)) + " " + attr("data-plumb", listed(j.Plumb))
}

func listed[L interface{ MillimetreText() string }](all []L) string {
	texts := make([]string, len(all))
	for i, l := range all {
		texts[i] = l.MillimetreText()
	}
	return strings.Join(texts, " ")
}
