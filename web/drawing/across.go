package drawing

import (
	"slices"
	"strconv"
	"strings"

	"coursewright/layout"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// widths are the stations of the level string of a wall, from the left corner
// of the boards. What is struck is a tile edge.
func (b *board) widths(w layout.Wall) []station {
	s := []station{{l: 0, name: b.endName(w, true), rank: rankLevel}, {l: w.Found.Width, name: b.endName(w, false), rank: rankLevel}}
	if edge, ok := b.struckEdge(w); ok {
		s = append(s, station{l: edge, says: b.figure(b.startFigure(w, edge)), name: "START: " + b.edgeName(), colour: Blue, rank: rankCourse})
	}
	if e := w.Found.Left; !e.Meets && w.Start.Placed.Left != 0 {
		s = append(s, station{l: w.Start.Placed.Left, name: "tile ends", colour: decided(e.Stops.Free()), rank: rankEnd})
	}
	if e := w.Found.Right; !e.Meets && w.Start.Placed.Right != w.Found.Width {
		s = append(s, station{l: w.Start.Placed.Right, name: "tile ends", colour: decided(e.Stops.Free()), rank: rankEnd})
	}
	for i, o := range w.Found.Openings {
		switch e := placed(w, i); {
		case o.Kind == "pipe":
			s = append(s, station{l: o.At, name: o.Name, rank: rankPipe})
		case o.Kind == survey.SoapDish: // told as a fixture
		case e.Left < e.Right:
			name := openingShort(w, i)
			s = append(s, station{l: e.Left, name: name, colour: decided(o.Left.Free()), rank: rankOpening},
				station{l: e.Right, name: name, colour: decided(o.Left.Free() || o.Width.Free()), rank: rankOpening})
		}
	}
	s = append(s, b.fixturePlaces(w)...)
	for _, front := range legFronts(w) {
		if !slices.ContainsFunc(s, func(x station) bool { return x.l == front.l }) { // where tile ends at the front, that says it
			s = append(s, front)
		}
	}
	s = merged(s)
	for i := range s {
		s[i].name = b.brief(w, s[i].name)
	}
	return s
}

// legFronts are where a rim ends and a leg beside it begins: what a leg is wide is read off it. So are those
// where a seat ends, beside which tile goes down to what the bench stands on.
func legFronts(w layout.Wall) (s []station) {
	base := w.Found.Base
	for i := 1; i < len(base); i++ {
		left, right := base[i-1], base[i]
		switch {
		case i == 1 && left.Meets == survey.Floor && right.Meets.Rim():
			s = append(s, station{l: right.Readings[0].At, name: string(right.Meets) + "'s front", rank: rankOpening})
		case i == len(base)-1 && right.Meets == survey.Floor && left.Meets.Rim():
			s = append(s, station{l: right.Readings[0].At, name: string(left.Meets) + "'s front", rank: rankOpening})
		case (left.Meets == survey.Seat) != (right.Meets == survey.Seat):
			s = append(s, station{l: right.Readings[0].At, name: string(survey.Seat) + "'s front", rank: rankOpening})
		}
	}
	return s
}

// brief is the name of a station in no more than the room it may take: of several at
// one place the number, where they are too many to be named.
func (b *board) brief(w layout.Wall, name string) string {
	const start = "START"
	names := strings.Split(name, ", ")
	if len(names) < 2 || TextWidth(name, b.texts.note) <= mostName {
		return name
	}
	for i, n := range names {
		if strings.HasPrefix(n, start) {
			names[i] = start
		}
	}
	other := func(n string) bool {
		return !slices.ContainsFunc(w.Found.Openings, func(o survey.OpeningFound) bool { return o.Kind == survey.Pipe && o.Name == n })
	}
	switch kind := lastWord(names); {
	case TextWidth(strings.Join(names, ", "), b.texts.note) <= mostName:
		return strings.Join(names, ", ")
	case !slices.ContainsFunc(names, other):
		return counted(len(names), "pipe")
	case kind != "":
		return counted(len(names), kind)
	case slices.Contains(names, start):
		return start
	}
	return names[0] + " and " + strconv.Itoa(len(names)-1) + " more"
}

// lastWord is the word that all names end with, or empty.
func lastWord(names []string) string {
	word := names[0][strings.LastIndex(names[0], " ")+1:]
	for _, n := range names {
		if !strings.HasSuffix(n, " "+word) {
			return ""
		}
	}
	return word
}

// endName is what the end of a wall is called: by the corner there, else the left end by what it is and the right one,
// at which the figure is how wide the wall is, by that.
func (b *board) endName(w layout.Wall, left bool) string {
	switch name := b.cornerName(w, left); {
	case name != "":
		return name
	case left && w.Found.Left.Meets:
		return "left corner"
	case left:
		return "left end"
	}
	return "wall"
}

// cornerName is the name of the corner at an end of a wall, empty where that meets no other wall of the list.
func (b *board) cornerName(w layout.Wall, left bool) string {
	i := slices.IndexFunc(b.plan.Walls, func(x layout.Wall) bool { return x.Found.Letter == w.Found.Letter })
	if i < 0 { // the face of a top or of an inside
		return ""
	}
	return plan.CornerName(b.plan.Walls, i, left)
}

// Parts of the level string.
const (
	stringLead = 4 * px // from the string to where leaders turn
	stringDrop = 6 * px // what a leader goes down while it goes aside
	blockGap   = 8 * px // between the texts of two stations
)

// stringHeight is the room that the level string takes: texts beside each other
// where they have room, else reading up.
func (b *board) stringHeight(s []station, wide Micron) Micron {
	s = b.shorter(s, wide)
	var high Micron
	for _, x := range s {
		high = max(high, b.blockHigh(x))
	}
	if b.abreast(s) > wide {
		high = 0
		for _, x := range s {
			high = max(high, BoldWidth(b.along(x), b.texts.figure)+TextWidth(apart+short(x.name, b.texts.note, mostName), b.texts.note))
		}
	}
	return tickReach + stringLead + stringDrop + clearance + high
}

// shorter are the stations of a level string with shorter names, where only with those all texts
// go beside each other.
func (b *board) shorter(s []station, wide Micron) []station {
	if b.abreast(s) <= wide {
		return s
	}
	brief := slices.Clone(s)
	for i := range brief {
		brief[i].name = strings.TrimSuffix(brief[i].name, ": "+b.edgeName())
		if _, front, is := strings.Cut(brief[i].name, "'s "); is {
			brief[i].name = front
		}
	}
	if b.abreast(brief) <= wide {
		return brief
	}
	return s
}

// blockWidth is how wide a station's figure and names are, one over the other.
func (b *board) blockWidth(s station) Micron {
	wide := BoldWidth(b.along(s), b.texts.figure)
	for _, name := range b.names(s) {
		wide = max(wide, TextWidth(name, b.texts.note))
	}
	return wide
}

// abreast is the width of all texts of a string beside each other.
func (b *board) abreast(s []station) Micron {
	sum := -Micron(blockGap)
	for _, x := range s {
		sum += b.blockWidth(x) + blockGap
	}
	return sum
}

// across draws the running widths along y, their texts under it between the
// left and the right edge of the paper.
func (b *board) across(f frame, y Micron, s []station, lo, hi Micron) {
	s = b.shorter(s, hi-lo)
	if b.abreast(s) > hi-lo {
		s = fewer(slices.Clone(s), int((hi-lo)/leading(b.texts.figure)))
	}
	at := make([]Micron, len(s))
	for i := range s {
		s[i].at = f.at(s[i].l, 0).X
		at[i] = s[i].at
	}
	tag := Tag{Kind: Dim, Wall: f.wall}
	b.chain(tag, line(Black, 180), Point{at[0], y}, Point{at[len(at)-1], y})
	upright := b.abreast(s) > hi-lo
	for i, x := range b.placesAcross(s, at, upright, lo, hi) {
		b.tick(tag, Point{s[i].at, y})
		turn := y + tickReach + stringLead
		b.chain(tag, line(Black, 180), Point{s[i].at, y + tickReach}, Point{s[i].at, turn}, Point{x, turn + stringDrop})
		foot := turn + stringDrop + clearance
		if upright {
			b.reading(tag, s[i], Point{x, foot})
		} else {
			b.block(tag, s[i], b.along(s[i]), Middle, Point{x, foot + b.blockHigh(s[i])/2})
		}
	}
}

// placesAcross are the middles of the texts of a level string.
func (b *board) placesAcross(s []station, at []Micron, upright bool, lo, hi Micron) []Micron {
	half, gap := make([]Micron, len(s)), Micron(blockGap)
	for i := range s {
		half[i] = b.blockWidth(s[i]) / 2
		if upright {
			half[i], gap = leading(b.texts.figure)/2, 1
		}
	}
	return abreast(at, half, gap, lo, hi)
}

// abreast gives the middles of texts beside each other, half as wide to either
// side as half says and a gap apart: as near as they can to where they belong, and
// between lo and hi.
func abreast(at, half []Micron, gap, lo, hi Micron) []Micron {
	gaps := make([]Micron, len(at))
	for i := 1; i < len(at); i++ {
		gaps[i] = half[i-1] + half[i] + gap
	}
	out := spreadBy(at, gaps)
	reach := lo
	for i := range out {
		out[i] = max(out[i], reach+half[i])
		reach = out[i] + half[i] + gap
	}
	reach = hi
	for i := len(out) - 1; i >= 0; i-- {
		out[i] = min(out[i], reach-half[i])
		reach = out[i] - half[i] - gap
	}
	return out
}

// reading writes a figure and its name in one line that reads up and ends under
// a point.
func (b *board) reading(tag Tag, s station, at Point) {
	figure := Label{Tag: tag, Text: b.along(s), Size: b.texts.figure, Bold: true, Colour: s.colour, Up: true, Anchor: Right}
	name := Label{Tag: tag, Text: short(s.name, b.texts.note, mostName), Size: b.texts.note, Colour: named(s.colour), Up: true, Anchor: Right}
	figure.At = Point{at.X + drop(figure.Size), at.Y}
	name.At = Point{at.X + drop(name.Size), at.Y + figure.width() + TextWidth(apart, name.Size)}
	b.label(figure)
	b.label(name)
}

// along is the figure of a station of the level string.
func (b *board) along(s station) string {
	if s.says != "" {
		return s.says
	}
	return b.figure(s.l)
}
