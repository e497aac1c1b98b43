package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// between is the box of two points, and so much more on every side.
func between(a, b plane.Point, more length.Length) plane.Rect {
	return plane.Rect{Left: min(a.X, b.X) - more, Bottom: min(a.Y, b.Y) - more, Right: max(a.X, b.X) + more, Top: max(a.Y, b.Y) + more}
}

// everywhere holds every tile.
var everywhere = plane.Rect{Left: -length.Longest, Bottom: -length.Longest, Right: length.Longest, Top: length.Longest}

// nowhere overlaps nothing.
var nowhere = plane.Rect{Left: length.Longest, Bottom: length.Longest, Right: -length.Longest, Top: -length.Longest}

// round is the box round two boxes.
func round(a, b plane.Rect) plane.Rect {
	return plane.Rect{Left: min(a.Left, b.Left), Bottom: min(a.Bottom, b.Bottom), Right: max(a.Right, b.Right), Top: max(a.Top, b.Top)}
}

func wider(r plane.Rect, by length.Length) plane.Rect {
	return plane.Rect{Left: r.Left - by, Bottom: r.Bottom - by, Right: r.Right + by, Top: r.Top + by}
}

// moved is a box seen from an edge that was moved.
func moved(r plane.Rect, by plane.Point) plane.Rect {
	return plane.Rect{Left: r.Left - by.X, Bottom: r.Bottom - by.Y, Right: r.Right - by.X, Top: r.Top - by.Y}
}

// meet is what two boxes have in common.
func meet(a, b plane.Rect) plane.Rect {
	return plane.Rect{Left: max(a.Left, b.Left), Bottom: max(a.Bottom, b.Bottom), Right: min(a.Right, b.Right), Top: min(a.Top, b.Top)}
}

// rounded is by how much more a cut may be wide than the tables say, because it is
// rounded to the unit.
const rounded length.Length = 2

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}
