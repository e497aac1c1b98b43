package phase

import (
	"slices"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"
)

// sure adds what is sure of these terms for every start and line no farther than so much
// from a phase, wherever the free marks stand.
func (l *lines) sure(m *merit.Merit, line, start, along, up length.Length) {
	at := l.w.Pattern.Origin(line, start)
	ends := [...]survey.Span{l.w.Found.Left.Stops, l.w.Found.Right.Stops}
	for i := range ends {
		ends[i].From, ends[i].To = ends[i].From-along, ends[i].To+along
	}
	m.Exposed = l.exposed(at.X, ends[0], ends[1])
	l.openings(m, at, nil, l.tiled.Least(), along, up)
	for _, a := range l.w.axes {
		if a.opening >= 0 && along == 0 && !l.clear(a, &l.plumb, at.X, false) {
			m.Openings++
		}
		if a.opening >= 0 && up == 0 && !l.clear(a, &l.level, at.Y, true) {
			m.Openings++
		}
	}
	if along == 0 && len(l.w.axes) == 0 {
		m.Find = l.find(at.X, l.w.ground(l.w.outer).box)
	}
}

// clear tells whether among the ways to place a free opening in one direction is one that leaves
// it clear of cuts, or with equal ones, where the lattice's origin stands at from.
func (l *lines) clear(a *axis, lines *bond.Lines, from length.Length, up bool) bool {
	o := l.w.typed.Openings[a.opening]
	if lines.None() || !up && !o.Left.Free() && !o.Width.Free() || up && !o.Bottom.Free() && !o.Height.Free() {
		return true
	}
	known := &a.clear[boolean(up)]
	if is, there := (*known)[from]; there {
		return is
	}
	ways := l.w.waysAcross
	if up {
		ways = l.w.waysUp
	}
	clear := func(s survey.Span) bool { return lines.Clear(s.From-from, s.To-from) }
	is := slices.ContainsFunc(ways(a, from, coarsely), clear) || slices.ContainsFunc(l.w.onAnyTile(a, lines, from, up), clear)
	if *known == nil {
		*known = map[length.Length]bool{}
	}
	(*known)[from] = is
	return is
}
