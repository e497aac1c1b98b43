package doubt

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// reading is one height over or under the level line, with where it was typed.
type reading struct {
	wall      int
	at        length.Length // from the wall's left end
	up        length.Length // over the level line; a drop counts down
	path      string
	place     string // path of where it was read
	down      bool   // typed as a drop
	suspected bool
}

// line is a boundary that is straight or nearly so: one segment of a base, or a
// ceiling, of one wall.
type line struct {
	wall     int
	segment  int // of the base, or -1 for the head
	kind     survey.Kind
	readings []reading
	found    []survey.Reading // as the room has it
}

// lines lists the boundaries that were read, walls from left to right, the base
// before the head.
func (a *asker) lines() []line {
	var all []line
	for i, w := range a.room.Walls {
		for k, s := range w.Base {
			l := line{wall: i, segment: k, kind: s.Meets, found: s.Readings}
			for n := range a.job.Walls[i].Base[k].Readings {
				p := fmt.Sprintf("walls[%d].base[%d].readings[%d].", i, k, n)
				l.add(p+"at", p+"drop", n, true)
			}
			all = append(all, l)
		}
		if !w.Head.Meets {
			continue
		}
		l := line{wall: i, segment: -1, kind: survey.Ceiling, found: w.Head.Readings}
		for n := range a.job.Walls[i].Head.Readings {
			p := fmt.Sprintf("walls[%d].head.readings[%d].", i, n)
			l.add(p+"at", p+"rise", n, false)
		}
		all = append(all, l)
	}
	return all
}

// measured are the lines without what is only guessed of them: that was not read, and gainsays nothing.
func (a *asker) measured() []line {
	var all []line
	for _, l := range a.lines() {
		l.readings = slices.DeleteFunc(l.readings, func(r reading) bool { return slices.Contains(a.room.Guesses, r.path) })
		if len(l.readings) > 0 {
			all = append(all, l)
		}
	}
	return all
}

// add takes reading n as typed. A segment of one reading is level, and the room
// has it at both its ends.
func (l *line) add(at, value string, n int, down bool) {
	r := l.found[min(n, len(l.found)-1)]
	l.readings = append(l.readings, reading{wall: l.wall, at: r.At, up: r.Value, path: value, place: at, down: down})
}

// last is the reading furthest to the right.
func (l *line) last() *reading { return &l.readings[len(l.readings)-1] }

// group is lines that are one thing in the room: a rim or a ceiling that runs
// round the corners.
type group []*line

// groups joins lines of one kind that meet in a corner.
func (a *asker) groups() []group {
	lines := a.measured()
	var all []group
	for i := range lines {
		joined := group{&lines[i]}
		all = slices.DeleteFunc(all, func(g group) bool {
			if !slices.ContainsFunc(g, func(o *line) bool { return a.joined(o, &lines[i]) }) {
				return false
			}
			joined = slices.Concat(g, joined)
			return true
		})
		all = append(all, joined)
	}
	return all
}

// joined tells whether line l goes on where line o ends, round a corner.
func (a *asker) joined(o, l *line) bool {
	return o.kind == l.kind && (a.follows(o, l) || a.follows(l, o))
}

// follows tells whether l begins in the corner in which o ends.
func (a *asker) follows(o, l *line) bool {
	w := a.room.Walls[o.wall]
	next := w.Right.Beyond
	if o := w.Right.Outside; o != nil {
		next = o.Next
	}
	if next != l.wall {
		return false
	}
	return o.segment < 0 && l.segment < 0 || o.segment == len(w.Base)-1 && l.segment == 0
}

// readings lists what was read in a group.
func (g group) readings() []*reading {
	var all []*reading
	for _, l := range g {
		for i := range l.readings {
			all = append(all, &l.readings[i])
		}
	}
	return all
}
