package sheet

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
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
		return narrowCuts(all, name, b.inMillimetres()).noting(b.marksTold(all)).noting(b.sheetsTold(w))
	}
	t := table{text: body, columns: []column{{name: name}, {name: "where"}, {name: "size to cut" + b.inMillimetres(), bold: true}, {},
		{name: "pieces", share: 13, right: true}, {name: "line"}, {name: "set", share: 8, box: true}}}
	for _, e := range all {
		if e.byCourse != "" {
			t.rows = append(t.rows, row{strong: e.where, cells: []string{name + " " + e.byCourse, "", "", "", number(e.pieces), "", ""}})
			continue
		}
		t.rows = append(t.rows, row{cells: []string{orDash(coursesText(e.courses)), e.where, e.big, e.small, number(e.pieces), e.lineText(), ""}})
	}
	if len(t.rows) == 0 {
		t.rows = []row{{cells: []string{"all", "nothing is cut", "", "", "", "", ""}}}
	}
	t.shareOut()
	return t.noting(b.marksTold(all)).noting(b.sheetsTold(w))
}

// marksTold says how the marks in a cut list are read, where it has some.
func (b *book) marksTold(all []entry) string {
	switch {
	case !slices.ContainsFunc(all, func(e entry) bool { return e.marked }):
		return ""
	case !slices.Contains(b.opts.Kinds, CutSchedule):
		return cuts.Corners
	}
	return "A to B: from corner A towards B, as the cut schedule draws it."
}

// noting is the table with a last row that explains it.
func (t table) noting(text string) table {
	if text != "" {
		cells := make([]string, len(t.columns))
		cells[0] = text
		t.rows = append(t.rows, row{note: true, cells: cells})
	}
	return t
}

// shareOut gives the columns of a cut list under its drawing what their widest cells ask for, within bounds, so that
// neither sizes nor places are broken where there is room, and the rest to the words beside the sizes. Where that is too
// little for words, places and courses give way, which break between words. Shares are millimetres of the breadth of A4.
func (t table) shareOut() {
	const courses, where, sizes, words, lines = 0, 1, 2, 3, 5
	t.columns[courses].share = min(max(t.needed(courses, mmPaper), 18), 34)
	t.columns[where].share = min(max(t.needed(where, mmPaper), 20), 44)
	t.columns[sizes].share = min(max(t.needed(sizes, mmPaper), 24), 50)
	t.columns[lines].share, t.columns[words].share = min(max(t.needed(lines, mmPaper), 13), 24), 0
	t.columns[words].share = max(176-t.shares(), 20)
	t.giveWay(where, words, 28)
	t.giveWay(courses, words, 24)
}

// giveWay lets a column go down to its least for what the words still lack, up to a quarter of the breadth of A4.
func (t table) giveWay(from, words int, least drawing.Micron) {
	lacks := min(t.needed(words, mmPaper), 44) - t.columns[words].share
	if more := min(lacks, t.columns[from].share-least); more > 0 {
		t.columns[from].share -= more
		t.columns[words].share += more
	}
}

// shareOutNarrow gives the lines of the schedule in a list beside a drawing what their widest cell asks for, within
// bounds, and the rest to the sizes. Shares are tenths of a millimetre of the narrowest list.
func (t table) shareOutNarrow() {
	const sizes, lines = 0, 2
	t.columns[lines].share, t.columns[sizes].share = min(max(t.needed(lines, mmPaper/10), 92), 170), 0
	t.columns[sizes].share = leastList*10/mmPaper - t.shares()
}

func (t table) shares() (sum drawing.Micron) {
	for _, c := range t.columns {
		sum += c.share
	}
	return sum
}

// needed is the share of a column in which none of its cells is broken, in text of the usual size or the smallest.
func (t table) needed(i int, unit drawing.Micron) drawing.Micron {
	wide := drawing.Micron(0)
	for _, r := range t.rows {
		if !r.note && (r.strong == "" || i > 0) { // what stands under a strong text goes on to the last column
			wide = max(wide, t.style(i).width(r.cells[i])+2*padding*100/percents[len(percents)-1])
		}
	}
	return wide/unit + 1
}

// narrowCuts is the same with the size over the place, for a list beside a
// drawing.
func narrowCuts(all []entry, name, unit string) table {
	t := table{text: body, columns: []column{{name: "size to cut" + unit + "; where"},
		{name: "count", share: 114}, {name: "line"}, {name: "set", share: 72, box: true}}}
	for _, e := range all {
		if e.byCourse != "" {
			t.rows = append(t.rows, row{strong: e.where, cells: []string{name + " " + e.byCourse, number(e.pieces), "", ""}})
			continue
		}
		text := e.where
		if len(e.courses) > 0 {
			text = name + " " + coursesText(e.courses) + ", " + e.where
		}
		if e.small != "" {
			text = e.small + "\n" + text
		}
		t.rows = append(t.rows, row{strong: e.big, cells: []string{text, number(e.pieces), e.lineText(), ""}})
	}
	if len(t.rows) == 0 {
		t.rows = []row{{cells: []string{"nothing is cut on this wall", "", "", ""}}}
	}
	t.shareOutNarrow()
	return t
}

// entry is a row of a cut list.
type entry struct {
	courses           []int
	where, big, small string
	line              string // of the schedule, where it is not one of lines
	lines             []int  // their numbers there
	pieces            int
	ids               []string // of the pieces
	alone             string   // what pieces are called that are cut each by itself
	pattern           bool     // they are laid in a pattern, and may be cut
	marked            bool     // it tells marks
	called            string   // the line with its figure, in a row of many
	byCourse          string   // such a row: what is cut in each course
}

// wallEntries are the rows of a wall, by the courses they begin in.
func (b *book) wallEntries(w layout.Wall, course map[string]int) []entry {
	var all []entry
	laid := inPattern(w)
	for i, g := range b.cuts.Groups {
		for _, p := range g.Places {
			if p.Wall != w.Found.Letter {
				continue
			}
			var courses []int
			for _, id := range p.Pieces {
				courses = append(courses, course[id])
			}
			slices.Sort(courses)
			e := entry{courses: slices.Compact(courses), where: placeText(p.Side), lines: []int{i + 1}, pieces: len(p.Pieces), ids: p.Pieces}
			e.big, e.small = b.fence(g)
			e.small, _, _ = strings.Cut(e.small, larger) // the schedule says it
			e.small = strings.TrimRight(e.small, "; ")
			e.alone, e.marked = b.alone(g), b.marked(g)
			e.pattern = g.How != cuts.Unworkable && laid[p.Pieces[0]]
			e.called = called(e, g)
			all = append(all, e)
		}
	}
	all = drawnTogether(b.placeTogether(all))
	slices.SortStableFunc(all, func(a, b entry) int { return slices.Compare(a.courses, b.courses) })
	return append(append(all, b.stripEntries(w)...), b.trimEntries(w)...)
}

// alone is what the pieces of a line are called that are drawn in the schedule better
// than told: those with notches, those a raked boundary cuts, each from its own marks, and in a pattern
// without courses each that is the only one of its cut.
func (b *book) alone(g cuts.Group) string {
	switch {
	case g.How == cuts.Unworkable:
	case len(g.Size.Notches) > 0:
		return "notch"
	case b.plan.Room.Bond.Coursed() && b.marked(g) && g.Count == 1:
		return "angle cuts"
	case !b.plan.Room.Bond.Coursed() && g.Count == 1 && len(g.Size.Holes) == 0:
		return "single cuts"
	}
	return ""
}

// drawnTogether makes one row of the pieces at one place that are drawn in the
// schedule better than told, where they are many.
func drawnTogether(all []entry) []entry {
	const many = 3
	type place struct{ where, alone string }
	at := map[place]int{}
	for _, e := range all {
		at[place{e.where, e.alone}]++
	}
	var out []entry
	index := map[place]int{}
	for _, e := range all {
		here := place{e.where, e.alone}
		i, known := index[here]
		switch {
		case e.alone == "" || at[here] < many:
			out = append(out, e)
		case !known:
			index[here] = len(out)
			e.big, e.small, e.marked = e.alone, "as drawn in the cut schedule", false
			out = append(out, e)
		default:
			o := &out[i]
			o.courses = append(o.courses, e.courses...)
			slices.Sort(o.courses)
			o.courses = slices.Compact(o.courses)
			o.pieces, o.lines, o.ids = o.pieces+e.pieces, append(o.lines, e.lines...), slices.Concat(o.ids, e.ids)
		}
	}
	return out
}

// lineText names the lines of the schedule that a row stands for: "C3", "C10–13".
func (e entry) lineText() string {
	if len(e.lines) == 0 {
		return e.line
	}
	var parts []string
	for n := e.lines; len(n) > 0; {
		k := 1
		for k < len(n) && n[k] == n[0]+k {
			k++
		}
		if parts = append(parts, number(n[0])); k > 1 {
			parts[len(parts)-1] += "–" + number(n[k-1])
		}
		n = n[k:]
	}
	return "C" + strings.Join(parts, ", ")
}

// placeText says at what pieces stand: "left", "at the base", "at the seat's front", "at niche shelf".
func placeText(side string) string {
	switch {
	case side == "left" || side == "right":
		return side
	case strings.HasPrefix(side, string(survey.Pipe)+" "):
		return "round " + strings.TrimPrefix(side, string(survey.Pipe)+" ")
	case side == "base" || side == "head" || strings.HasSuffix(side, front):
		return "at the " + side
	case strings.HasPrefix(side, the):
		return "at " + side
	}
	return "at " + sideText(side)
}

// the begins the name of the base under pieces, where a wall stands on several kinds.
const the = "the "

// front ends the name of the plumb side of a step of the base: "seat's front".
var front = survey.Boundary{}.Front()

// sideText names what a piece is cut to; an opening that is called what it is, once.
func sideText(side string) string {
	if side = strings.TrimPrefix(side, the); strings.HasSuffix(side, front) || survey.Kind(side) == survey.ShowerBase {
		return side
	}
	if name, dish := strings.CutPrefix(side, string(survey.SoapDish)+" "); dish {
		return drawing.OpeningName(string(survey.SoapDish), name)
	}
	if kind, name, more := strings.Cut(side, " "); more {
		return drawing.OpeningName(kind, name)
	}
	return side
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
			parts = append(parts, fmt.Sprintf("%d, %d"+hold+"…"+hold+"%d", n[0], n[1], n[k-1]))
		default:
			k = 1
			parts = append(parts, number(n[0]))
		}
		n = n[k:]
	}
	return strings.Join(parts, ", ")
}

// larger begins what is said of places that are larger than the size that is cut.
const larger = "places up to "

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
		return b.bare(size), "to " + held(b.bare(size+g.Spread)) + " high, first-course sheet"
	case g.How == cuts.InPlace && g.Spread > 0:
		return b.bare(size), "to " + held(b.bare(size+g.Spread)) + strings.TrimRight(" "+name, " ") + ", measure in place"
	case g.How == cuts.InPlace:
		return b.holed(g)
	case len(s.Notches)+len(s.Holes) > 0:
		return b.notched(g)
	case g.Kind == "rip, cross cut":
		return b.bare(s.Width) + " ×" + hold + b.bare(s.Height), ""
	case b.marked(g):
		return b.sawn(g)
	case straightAcross(g):
		return b.bare(size), b.withSpread("high", g)
	}
	if tall, wide := s.Tapers(); tall || wide {
		return b.tapered(g)
	}
	return b.bare(size), b.withSpread(name, g)
}

// withSpread is what is said with a figure, and how much larger the places of some pieces are.
func (b *book) withSpread(name string, g cuts.Group) string {
	if g.Spread > 0 {
		if name != "" {
			name += "; "
		}
		name += larger + held(b.bare(g.Spread)) + " larger"
	}
	return name
}

// sawn writes the two marks of a cut, and those of the others after it. Where both are as far from their corners, as in
// every cut along a side of a hexagon, the figure stands once.
func (b *book) sawn(g cuts.Group) (big, small string) {
	first := g.Saws[0]
	enters, leaves := held(b.markPlace(first.Enters)), held(b.markPlace(first.Leaves))
	big, small = b.markFigure(first.Enters)+" → "+b.markFigure(first.Leaves), "marks "+enters+", "+leaves
	if b.markFigure(first.Enters) == b.markFigure(first.Leaves) {
		big, small = b.markFigure(first.Enters), "at both marks, "+enters+" and "+leaves
	}
	stops := first.Stops
	for _, s := range g.Saws[1:] {
		small += "; then " + b.sawMarks(s)
		stops = stops || s.Stops
	}
	if stops {
		small += "; saw to where the lines cross"
	}
	if g.Spread > 0 {
		small += "; " + larger + held(b.bare(g.Spread)) + " larger"
	}
	return big, small
}

// atCorner tells whether a mark stands at its corner, as near as is sawn.
func (b *book) atCorner(m cuts.Mark) bool { return b.bare(m.From) == b.bare(0) }

// markFigure is how far a mark stands from its corner, or the corner it stands at.
func (b *book) markFigure(m cuts.Mark) string {
	if b.atCorner(m) {
		return m.At()
	}
	return b.bare(m.From)
}

// markPlace says where that is.
func (b *book) markPlace(m cuts.Mark) string {
	if b.atCorner(m) {
		return "at " + m.At()
	}
	return m.String()
}

// sawMarks says both marks of a cut with their figures: one where that is the same.
func (b *book) sawMarks(s cuts.Saw) string {
	if b.markFigure(s.Enters) == b.markFigure(s.Leaves) {
		return b.sawMark(s.Enters) + " and " + held(b.markPlace(s.Leaves))
	}
	return b.sawMark(s.Enters) + ", " + b.sawMark(s.Leaves)
}

// sawMark says both in one.
func (b *book) sawMark(m cuts.Mark) string {
	if b.atCorner(m) {
		return held(b.markPlace(m))
	}
	return held(b.bare(m.From) + " " + m.String())
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
	if len(g.Size.Holes) == 0 || g.Count > 1 || !reachable(g.Size.Holes[0], g.Size) {
		return big, small + "marked in place"
	}
	return big, small + b.holeText(g.Size.Holes[0])
}

// reachable tells whether the middle of a hole lies on what is cut, and can be measured there from its edges.
func reachable(h cuts.Hole, s cuts.Size) bool {
	return h.FromLeft >= 0 && h.FromLeft <= s.Width && h.Up >= 0 && h.Up <= s.Height
}

func (b *book) holeText(h cuts.Hole) string {
	return held("⌀ "+b.bare(h.Diameter)) + ", middle " + held(b.bare(h.FromLeft)+" from left,") + " " + held(b.bare(h.Up)+" up")
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
