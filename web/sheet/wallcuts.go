package sheet

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// wallCuts is the cut list of a wall: one row for the pieces of one line of the
// schedule at one place, with the courses they stand in.
func (b *book) wallCuts(w layout.Wall, narrow bool) table {
	course := map[string]int{}
	for _, p := range w.Pieces {
		course[p.ID] = p.Course
	}
	name := "course"
	if b.plan.Room.Bond.Plumb {
		name = "column"
	}
	all := b.wallEntries(w, course)
	if narrow {
		return narrowCuts(all, name, b.inMillimetres())
	}
	t := table{text: body, columns: []column{{name: name, share: 21}, {name: "where", share: 31}, {name: "size to cut" + b.inMillimetres(), share: 32, bold: true}, {share: 50},
		{name: "pieces", share: 12, right: true}, {name: "line", share: 11}, {name: "set", share: 8, box: true}}}
	for _, e := range all {
		t.rows = append(t.rows, row{cells: []string{orDash(coursesText(e.courses)), e.where, e.big, e.small, number(e.pieces), e.line, ""}})
	}
	if len(t.rows) == 0 {
		t.rows = []row{{cells: []string{"all", "nothing is cut", "", "", "", "", ""}}}
	}
	return t
}

// narrowCuts is the same with the size over the place, for a list beside a
// drawing.
func narrowCuts(all []entry, name, unit string) table {
	t := table{text: body, columns: []column{{name: "size to cut" + unit + "; where", share: 42},
		{name: "count", share: 12, right: true}, {name: "line", share: 14}, {name: "set", share: 8, box: true}}}
	for _, e := range all {
		text := e.where
		if len(e.courses) > 0 {
			text = name + " " + coursesText(e.courses) + ", " + e.where
		}
		if e.small != "" {
			text = e.small + "\n" + text
		}
		t.rows = append(t.rows, row{strong: e.big, cells: []string{text, number(e.pieces), e.line, ""}})
	}
	if len(t.rows) == 0 {
		t.rows = []row{{cells: []string{"nothing is cut on this wall", "", "", ""}}}
	}
	return t
}

// entry is a row of a cut list.
type entry struct {
	courses                 []int
	where, big, small, line string
	pieces                  int
	notched                 bool
}

// wallEntries are the rows of a wall, by the courses they begin in.
func (b *book) wallEntries(w layout.Wall, course map[string]int) []entry {
	var all []entry
	for _, g := range b.cuts.Groups {
		for _, p := range g.Places {
			if p.Wall != w.Found.Letter {
				continue
			}
			var courses []int
			for _, id := range p.Pieces {
				courses = append(courses, course[id])
			}
			slices.Sort(courses)
			big, small := b.fence(g)
			all = append(all, entry{slices.Compact(courses), placeText(p.Side), big, small, g.ID, len(p.Pieces), len(g.Size.Notches) > 0})
		}
	}
	all = notchesTogether(all)
	slices.SortStableFunc(all, func(a, b entry) int { return slices.Compare(a.courses, b.courses) })
	return append(all, b.trimEntries(w)...)
}

// notchesTogether makes one row of the notched pieces at one place, where they
// are many: each is a cut of its own, drawn in the schedule.
func notchesTogether(all []entry) []entry {
	const many = 3
	at := map[string]int{}
	for _, e := range all {
		if e.notched {
			at[e.where]++
		}
	}
	var out []entry
	index := map[string]int{}
	for _, e := range all {
		i, known := index[e.where]
		switch {
		case !e.notched || at[e.where] < many:
			out = append(out, e)
		case !known:
			index[e.where] = len(out)
			e.big, e.small = "notched", "as drawn in the cut schedule"
			out = append(out, e)
		default:
			o := &out[i]
			o.courses = append(o.courses, e.courses...)
			slices.Sort(o.courses)
			o.courses = slices.Compact(o.courses)
			first, _, _ := strings.Cut(o.line, " ")
			o.pieces, o.line = o.pieces+e.pieces, first+" … "+e.line
		}
	}
	return out
}

// placeText says at what pieces stand: "left", "at the base", "at niche shelf".
func placeText(side string) string {
	switch {
	case side == "left" || side == "right":
		return side
	case strings.HasPrefix(side, string(survey.Pipe)+" "):
		return "round " + strings.TrimPrefix(side, string(survey.Pipe)+" ")
	case side == "base" || side == "head":
		return "at the " + side
	}
	return "at " + side
}

// coursesText writes ascending numbers in few signs: "7, 9 … 29", "8 to 30",
// "21, 23".
func coursesText(n []int) string {
	var parts []string
	for len(n) > 0 {
		k, step := 1, 1
		for _, s := range []int{1, 2, 3} {
			i := 1
			for i < len(n) && n[i]-n[i-1] == s {
				i++
			}
			if i > k {
				k, step = i, s
			}
		}
		switch {
		case k >= 3 && step == 1:
			parts = append(parts, fmt.Sprintf("%d to %d", n[0], n[k-1]))
		case k >= 4:
			parts = append(parts, fmt.Sprintf("%d, %d … %d", n[0], n[1], n[k-1]))
		default:
			k = 1
			parts = append(parts, number(n[0]))
		}
		n = n[k:]
	}
	return strings.Join(parts, ", ")
}

// fence is what a line is cut to: the figure to set the fence to, and what is to
// be said with it.
func (b *book) fence(g cuts.Group) (big, small string) {
	s := g.Size
	size, name := g.Fence()
	if name == "wide" {
		name = ""
	}
	switch {
	case g.How == cuts.Unworkable:
		return "do not cut", "change the set-out first"
	case g.How == cuts.Uncut:
		return "whole", "under " + b.bare(b.plan.Room.Units.FineStep()) + " to take off"
	case g.How == cuts.FirstCourse:
		return b.bare(size), "to " + held(b.bare(size+g.Spread)) + " high, by the first-course sheet"
	case g.How == cuts.InPlace && g.Spread > 0:
		return b.bare(size), "to " + held(b.bare(size+g.Spread)) + strings.TrimRight(" "+name, " ") + ", measure in place"
	case g.How == cuts.InPlace:
		return b.holed(g)
	case len(s.Notches)+len(s.Holes) > 0:
		return b.notched(g)
	case g.Kind == "rip, cross cut":
		return b.bare(s.Width) + " × " + b.bare(s.Height), ""
	}
	if len(g.Saws) > 0 && g.Kind != "cross cut" && g.Kind != "rip" {
		return b.sawn(g)
	}
	if tall, wide := s.Tapers(); tall || wide {
		return b.tapered(g)
	}
	if g.Spread > 0 {
		name += fmt.Sprintf(" places up to %s larger", held(b.bare(g.Spread)))
	}
	return b.bare(size), strings.TrimSpace(name)
}

// sawn writes the two marks of a cut, and those of the others after it.
func (b *book) sawn(g cuts.Group) (big, small string) {
	first := g.Saws[0]
	big = b.bare(first.Enters.From) + " → " + b.bare(first.Leaves.From)
	small = "marks " + held(first.Enters.String()) + ", " + held(first.Leaves.String())
	for _, s := range g.Saws[1:] {
		small += "; then " + held(b.bare(s.Enters.From)+" "+s.Enters.String()) + ", " + held(b.bare(s.Leaves.From)+" "+s.Leaves.String())
	}
	if g.Spread > 0 {
		small += "; places up to " + held(b.bare(g.Spread)) + " larger"
	}
	return big, small
}

// tapered writes both heights, or both widths, and the other side where it is
// cut too.
func (b *book) tapered(g cuts.Group) (big, small string) {
	s := g.Size
	tall, wide := s.Tapers()
	big = b.bare(s.Left) + " → " + b.bare(s.Right)
	small = "high, left to right"
	if wide && !tall {
		big, small = b.bare(s.Bottom)+" → "+b.bare(s.Top), "wide, bottom to top"
	}
	sawn := strings.Join(g.Cut, " ")
	if tall && (strings.Contains(sawn, "left") || strings.Contains(sawn, "right")) {
		small += ", " + b.bare(s.Width) + " wide"
	}
	if wide && !tall && (strings.Contains(sawn, "bottom") || strings.Contains(sawn, "top")) {
		small += ", " + b.bare(s.Height) + " high"
	}
	return big, small
}

// holed is a line of pieces round a pipe: what they are cut to first, if they
// are, and where the hole is.
func (b *book) holed(g cuts.Group) (big, small string) {
	big = "hole"
	if g.Kind != "hole" {
		big = b.bare(g.Size.Width) + " × " + b.bare(g.Size.Height)
		small = "then a hole, "
	}
	if len(g.Size.Holes) == 0 || g.Count > 1 {
		return big, small + "marked in place"
	}
	return big, small + b.holeText(g.Size.Holes[0])
}

func (b *book) holeText(h cuts.Hole) string {
	return "⌀ " + b.bare(h.Diameter) + ", middle " + b.bare(h.FromLeft) + " from left, " + b.bare(h.Up) + " up"
}

// notched writes what a notch leaves.
func (b *book) notched(g cuts.Group) (big, small string) {
	var arms []string
	for _, n := range g.Size.Notches {
		for _, arm := range []struct {
			left length.Length
			name string
		}{{n.Left, "left"}, {n.Right, "right"}, {n.Below, "below"}, {n.Above, "above"}} {
			if arm.left > 0 {
				arms = append(arms, held(b.bare(arm.left)+" "+arm.name))
			}
		}
	}
	for _, h := range g.Size.Holes {
		arms = append(arms, b.holeText(h))
	}
	big = b.bare(g.Size.Width) + " × " + b.bare(g.Size.Height)
	if len(g.Size.Notches) > 0 {
		return big, "notch leaves " + strings.Join(arms, ", ")
	}
	return big, strings.Join(arms, ", ")
}
