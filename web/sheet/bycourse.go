package sheet

import (
	"maps"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/cuts"
)

// manyCuts is from how many rows on the cuts of a pattern at one place stand in one: in a
// pattern nearly every piece along an edge is cut to a size of its own.
const manyCuts = 4

// simple tells whether a cut is told by the one figure of its fence, and with which word.
func simple(e entry, g cuts.Group) (word string, ok bool) {
	switch {
	case e.small == "" || e.small == "high":
		return strings.TrimRight(" "+e.small, " "), g.Kind == "cross cut" || g.Kind == "rip"
	}
	return "", false
}

// inPattern tells which pieces of a wall are laid in a pattern.
func inPattern(w layout.Wall) map[string]bool {
	out := map[string]bool{}
	for i := range w.Pieces {
		if p := &w.Pieces[i]; p.Outline != nil {
			out[p.ID] = true
		}
	}
	return out
}

// placeTogether makes one row of the cuts of a pattern at one place, where they are many:
// for every course the sizes and the lines of the schedule, in the order of the courses.
func (b *book) placeTogether(all []entry) []entry {
	many := map[string]int{}
	for _, e := range all {
		if e.pattern {
			many[e.where]++
		}
	}
	var out []entry
	first := map[string]int{}
	told := map[string]map[int][]string{}
	for _, e := range all {
		if !e.pattern || many[e.where] < manyCuts {
			out = append(out, e)
			continue
		}
		i, known := first[e.where]
		if !known {
			i = len(out)
			first[e.where], told[e.where] = i, map[int][]string{}
			out = append(out, entry{where: e.where})
		}
		o := &out[i]
		o.courses, o.pieces, o.lines = append(o.courses, e.courses...), o.pieces+e.pieces, append(o.lines, e.lines...)
		o.ids = slices.Concat(o.ids, e.ids)
		for _, c := range e.courses {
			told[e.where][c] = append(told[e.where][c], e.called)
		}
	}
	for where, i := range first {
		o := &out[i]
		slices.Sort(o.courses)
		o.courses = slices.Compact(o.courses)
		o.byCourse = coursesTold(told[where])
	}
	return out
}

// coursesTold says what is cut in which courses: those in which it is the same together, in the order of the first of them.
func coursesTold(told map[int][]string) string {
	courses := map[string][]int{}
	var order, parts []string
	for _, c := range slices.Sorted(maps.Keys(told)) {
		what := strings.Join(told[c], ", ")
		if courses[what] == nil {
			order = append(order, what)
		}
		courses[what] = append(courses[what], c)
	}
	for _, what := range order {
		parts = append(parts, coursesText(courses[what])+": "+what)
	}
	return strings.Join(parts, "; ")
}

// called is what a line of the schedule is called in such a row: its figure, where that
// tells the cut, and its name.
func called(e entry, g cuts.Group) string {
	line := "C" + number(e.lines[0])
	if word, ok := simple(e, g); ok {
		return held(e.big + word + " " + line)
	}
	return line
}
