package drawing

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
)

// station is one place of a running dimension.
type station struct {
	l      length.Length
	at     Micron // along the string, on paper
	name   string
	colour Colour
	bold   bool
}

// heights are the stations of the upright string, from the level line.
func (b *board) heights(w layout.Wall) []station {
	s := []station{{l: 0, name: "level line", colour: Red, bold: true},
		{l: b.plan.Setout.Line, name: "course line", colour: Blue, bold: true}}
	for _, seg := range w.Found.Base {
		if n := len(seg.Readings); n > 0 {
			s = append(s, station{l: seg.Readings[0].Value, name: string(seg.Meets) + ", left"},
				station{l: seg.Readings[n-1].Value, name: string(seg.Meets) + ", right"})
		}
	}
	if n := len(w.Found.Head.Readings); w.Found.Head.Meets && n > 0 {
		s = append(s, station{l: w.Found.Head.Readings[0].Value, name: "ceiling, left"},
			station{l: w.Found.Head.Readings[n-1].Value, name: "ceiling, right"})
	} else if !w.Found.Head.Meets {
		s = append(s, station{l: w.Start.Placed.Head, name: "tile ends"})
	}
	for i, o := range w.Found.Openings {
		if o.Kind == "pipe" {
			s = append(s, station{l: o.Up, name: o.Name})
			continue
		}
		e := placed(w, i)
		s = append(s, station{l: e.Bottom, name: string(o.Kind) + " bottom"}, station{l: e.Top, name: string(o.Kind) + " top"})
	}
	return merged(s)
}

// widths are the stations of the level string, from the wall's left plumb line.
func (b *board) widths(w layout.Wall) []station {
	s := []station{{l: 0, name: "plumb line"}, {l: w.Found.Width, name: "wall", bold: true},
		{l: w.Start.X, name: "start", colour: Blue, bold: true},
		{l: w.Found.Width / 2, name: "centre"}}
	if !w.Found.Left.Meets {
		s = append(s, station{l: w.Start.Placed.Left, name: "tile ends"})
	}
	if !w.Found.Right.Meets {
		s = append(s, station{l: w.Start.Placed.Right, name: "tile ends"})
	}
	for i, o := range w.Found.Openings {
		if o.Kind == "pipe" {
			s = append(s, station{l: o.At, name: o.Name})
			continue
		}
		e := placed(w, i)
		s = append(s, station{l: e.Left, name: string(o.Kind) + " left"}, station{l: e.Right, name: string(o.Kind) + " right"})
	}
	return merged(s)
}

// merged sorts stations and joins the names of those at one place.
func merged(s []station) []station {
	slices.SortStableFunc(s, func(a, b station) int { return cmp.Compare(a.l, b.l) })
	out := s[:0:0]
	for _, x := range s {
		n := len(out) - 1
		if n < 0 || out[n].l != x.l {
			out = append(out, x)
			continue
		}
		if out[n].name != x.name {
			out[n].name = joined(out[n].name, x.name)
		}
		if x.bold {
			out[n].bold, out[n].colour = true, x.colour
		}
	}
	return out
}

// joined names one place that two stations share; a base that is level needs
// no left and right.
func joined(a, b string) string {
	const left, right = ", left", ", right"
	if stem, ok := strings.CutSuffix(a, left); ok && b == stem+right {
		return stem
	}
	return a + ", " + b
}

// spread moves places apart until each keeps the gap to the one before it,
// and as near as it can to where it belongs. Places must be ascending.
func spread(at []Micron, gap Micron) []Micron {
	type block struct{ sum, n Micron } // sum of at[i] − i·gap
	var blocks []block
	for i, a := range at {
		blocks = append(blocks, block{a - Micron(i)*gap, 1})
		for n := len(blocks); n > 1 && blocks[n-2].sum*blocks[n-1].n >= blocks[n-1].sum*blocks[n-2].n; n-- {
			blocks[n-2].sum += blocks[n-1].sum
			blocks[n-2].n += blocks[n-1].n
			blocks = blocks[:n-1]
		}
	}
	out := make([]Micron, 0, len(at))
	for _, k := range blocks {
		for range k.n {
			out = append(out, k.sum/k.n+Micron(len(out))*gap)
		}
	}
	return out
}

// within moves places that keep a gap inside the bounds; where there is not
// room for all, the first ones give way.
func within(at []Micron, gap, lo, hi Micron) []Micron {
	for i := range at {
		if low := lo + Micron(i)*gap; at[i] < low {
			at[i] = low
		}
	}
	for i := range at {
		if high := hi - Micron(len(at)-1-i)*gap; at[i] > high {
			at[i] = high
		}
	}
	return at
}

// plumbString draws the running heights along x, labels to the right.
func (b *board) plumbString(f frame, x Micron, s []station) {
	slices.Reverse(s) // paper's y runs down
	at := make([]Micron, len(s))
	for i := range s {
		s[i].at = f.at(0, s[i].l).Y
		at[i] = s[i].at
	}
	tag, size := Tag{Kind: Dim, Wall: f.wall}, b.texts.dim
	b.chain(tag, line(Black, 180), Point{x, at[0]}, Point{x, at[len(at)-1]})
	for i, y := range spread(at, size*13/10) {
		b.tick(tag, Point{x, s[i].at})
		b.chain(tag, line(Black, 180), Point{x + 900, s[i].at}, Point{x + 2200, s[i].at}, Point{x + 3800, y}, Point{x + 4600, y})
		b.label(Label{Tag: tag, Text: b.signed(s[i].l) + apart + s[i].name, Size: size, Bold: s[i].bold,
			Colour: s[i].colour, At: Point{x + 5200, y + drop(size)}})
	}
}

// levelString draws the running widths along y, labels below and reading up.
func (b *board) levelString(f frame, y Micron, s []station) {
	at := make([]Micron, len(s))
	for i := range s {
		s[i].at = f.at(s[i].l, 0).X
		at[i] = s[i].at
	}
	tag, size := Tag{Kind: Dim, Wall: f.wall}, b.texts.dim
	b.chain(tag, line(Black, 180), Point{at[0], y}, Point{at[len(at)-1], y})
	for i, x := range spread(at, size*13/10) {
		b.tick(tag, Point{s[i].at, y})
		b.chain(tag, line(Black, 180), Point{s[i].at, y + 900}, Point{s[i].at, y + 2000}, Point{x, y + 3600}, Point{x, y + 4400})
		b.label(Label{Tag: tag, Text: b.figure(s[i].l) + apart + s[i].name, Size: size, Bold: s[i].bold,
			Colour: s[i].colour, Up: true, Anchor: Right, At: Point{x + drop(size), y + 5000}})
	}
}

// tick is the 45° stroke of a dimension.
func (b *board) tick(t Tag, p Point) {
	b.chain(t, line(Black, 350), Point{p.X - 900, p.Y + 900}, Point{p.X + 900, p.Y - 900})
}

// longest is the length of the longest label of a string.
func (b *board) longest(s []station, figure func(length.Length) string) Micron {
	var w Micron
	for _, x := range s {
		w = max(w, Label{Text: figure(x.l) + apart + x.name, Size: b.texts.dim, Bold: x.bold}.width())
	}
	return w
}
