package drawing

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// station is one place of a running dimension.
type station struct {
	l      length.Length
	at     Micron // along the string, on paper
	says   string // its figure where that is not l
	name   string
	colour Colour
	rank   int // what gives way first where there is no room for all has the highest
}

// Ranks of stations.
const (
	rankLevel = iota
	rankCourse
	rankEnd
	rankOpening
	rankPipe
)

// Parts of the rail of heights.
const (
	tickReach = 3 * px  // half a 45° tick, along each axis
	railGap   = 10 * px // from the rail's axis to its texts
	railRoom  = 8 * px  // from the axis to the wall or the nearest line
	mostName  = 100 * px
)

// heights are the stations of the upright string of some walls, from the level
// line.
func (b *board) heights(walls []layout.Wall) []station {
	struck, name := b.struckOn(walls...)
	s := []station{{l: 0, name: "level line", colour: Red, rank: rankLevel},
		{l: struck, name: name, colour: Blue, rank: rankCourse}}
	one := len(walls) == 1
	s = append(s, b.headHeights(walls)...)
	s = append(s, b.trimHeights(walls)...)
	for _, w := range walls {
		s = append(s, b.openingHeights(w, one)...)
		if one {
			s = append(s, b.fixtureHeights(w)...)
		}
	}
	return merged(s)
}

// headHeights are the heights at which the tile of some walls ends: where it
// stops, wall by wall if they differ; under ceilings the lowest and the highest.
func (b *board) headHeights(walls []layout.Wall) []station {
	var s []station
	var low, high length.Length
	ceiling := false
	colour := Black
	for _, w := range walls {
		colour = max(colour, b.measured(b.wallPath(w)+"head"))
	}
	for _, w := range walls {
		if !w.Found.Head.Meets {
			stop := station{l: w.Start.Placed.Head, name: "head " + w.Found.Letter, colour: colour, rank: rankEnd}
			if w.Found.Head.Stops.Free() {
				stop.colour = Blue
			}
			s = append(s, stop)
			continue
		}
		for _, r := range w.Found.Head.Readings {
			if !ceiling {
				low, high, ceiling = r.Value, r.Value, true
			}
			low, high = min(low, r.Value), max(high, r.Value)
		}
	}
	if equal := slices.CompactFunc(slices.Clone(s), func(x, y station) bool { return x.l == y.l }); len(equal) == 1 {
		equal[0].name = "head"
		s = equal
	}
	switch {
	case ceiling && low == high:
		s = append(s, station{l: low, name: "ceiling", colour: colour, rank: rankEnd})
	case ceiling:
		s = append(s, station{l: low, name: "ceiling, low", colour: colour, rank: rankEnd}, station{l: high, name: "ceiling, high", colour: colour, rank: rankEnd})
	}
	return s
}

// openingHeights are the edges of a wall's openings, and of its pipes where the
// wall stands alone.
func (b *board) openingHeights(w layout.Wall, pipes bool) []station {
	var s []station
	for i, o := range w.Found.Openings {
		switch e := placed(w, i); {
		case o.Kind == "pipe" && pipes:
			s = append(s, station{l: o.Up, name: o.Name, rank: rankPipe})
		case o.Strip != nil:
			s = append(s, stripHeights(w, i)...)
		case o.Kind == survey.SoapDish: // told as a fixture
		case o.Kind != "pipe" && e.Bottom < e.Top:
			name := openingShort(w, i)
			if !o.Doorway {
				s = append(s, station{l: e.Bottom, name: name + " sill", colour: decided(o.Bottom.Free()), rank: rankOpening})
			}
			s = append(s, station{l: e.Top, name: name + " top", colour: decided(o.Bottom.Free() || o.Height.Free()), rank: rankOpening})
		}
	}
	return s
}

// decided is the colour of a figure: blue where the set-out decides it, black
// where it was measured.
func decided(free bool) Colour {
	if free {
		return Blue
	}
	return Black
}

// openingShort is an opening's kind where it is the only one of it on its wall,
// else its whole name.
func openingShort(w layout.Wall, i int) string {
	o := w.Found.Openings[i]
	for j, other := range w.Found.Openings {
		if j != i && other.Kind == o.Kind {
			return OpeningName(kindOf(o), o.Name)
		}
	}
	return kindOf(o)
}

// joinNames stands between the names of what is at one place.
const joinNames = ", "

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
			if x.rank < out[n].rank {
				x.name, out[n].name = out[n].name, x.name
				out[n].colour, out[n].says = x.colour, x.says
			}
			out[n].name += joinNames + x.name
		}
		out[n].rank = min(out[n].rank, x.rank)
	}
	return out
}

// fewer leaves out the stations that give way first until most are left.
func fewer(s []station, most int) []station {
	for most = max(most, 1); len(s) > most; {
		last := 0
		for i := range s {
			if s[i].rank >= s[last].rank {
				last = i
			}
		}
		s = slices.Delete(s, last, last+1)
	}
	return s
}

// fewerThan leaves out the stations that give way first until the blocks of the others take no more than the room.
func (b *board) fewerThan(s []station, room Micron) []station {
	for len(s) > 1 {
		last, high := 0, Micron(0)
		for i := range s {
			high += b.blockHigh(s[i])
			if s[i].rank >= s[last].rank {
				last = i
			}
		}
		if high <= room {
			break
		}
		s = slices.Delete(s, last, last+1)
	}
	return s
}

// railWidth is the room the rail takes left of its axis.
func (b *board) railWidth(s []station, captions ...string) Micron {
	var w Micron
	for _, x := range s {
		w = max(w, BoldWidth(b.signed(x.l), b.texts.figure), min(mostName, TextWidth(x.name, b.texts.note)))
	}
	for _, c := range captions {
		w = max(w, TextWidth(c, b.texts.note))
	}
	return w + railGap + clearance
}

// blockHigh is the height of one block of the rail: a figure over its names.
func (b *board) blockHigh(s station) Micron {
	return b.texts.figure + Micron(len(b.names(s)))*b.texts.note + clearance
}

// blockGaps are how far the middles of blocks under each other must be apart, each from the one before it.
func (b *board) blockGaps(s []station) []Micron {
	gaps := make([]Micron, len(s))
	for i := range s {
		gaps[i] = (b.blockHigh(s[max(i-1, 0)]) + b.blockHigh(s[i])) / 2
	}
	return gaps
}

// names are the lines in which the names of a station are written: one, or where all that stand at one height are
// too long for it, several that are broken between names.
func (b *board) names(s station) (lines []string) {
	for _, name := range strings.Split(s.name, joinNames) {
		if n := len(lines) - 1; n >= 0 && TextWidth(lines[n]+joinNames+name, b.texts.note) <= mostName {
			lines[n] += joinNames + name
			continue
		}
		lines = append(lines, name)
	}
	for i := range lines {
		if i < len(lines)-1 {
			lines[i] += strings.TrimRight(joinNames, " ")
		}
		lines[i] = short(lines[i], b.texts.note, mostName)
	}
	return lines
}

// rail draws running heights along an axis at x, their texts to the left,
// between lo and hi on paper. zero is the height of the level line there. What lies
// beyond them, as the level line over a curb does, is written without a tick.
func (b *board) rail(x, zero Micron, scale Scale, s []station, lo, hi Micron) {
	s = b.fewerThan(slices.Clone(s), hi-lo)
	slices.Reverse(s) // paper's y runs down
	at := make([]Micron, len(s))
	for i := range s {
		s[i].at = zero - scale.On(s[i].l)
		at[i] = s[i].at
	}
	tag := Tag{Kind: Dim, Wall: -1}
	b.chain(tag, line(Black, 180), Point{x, min(max(at[0], lo), hi)}, Point{x, min(max(at[len(at)-1], lo), hi)})
	gaps := b.blockGaps(s)
	first, last := b.blockHigh(s[0])/2, b.blockHigh(s[len(s)-1])/2
	for i, y := range within(spreadBy(at, gaps), gaps, lo+first, hi-last) {
		inside := lo <= s[i].at && s[i].at <= hi
		if inside {
			b.tick(tag, Point{x, s[i].at})
		}
		if inside && y != s[i].at {
			b.chain(tag, line(Black, 180), Point{x - tickReach, s[i].at}, Point{x - railGap + clearance, y})
		}
		b.block(tag, s[i], b.signed(s[i].l), Right, Point{x - railGap, y})
	}
}

// block writes a figure over its name, their middle at a point.
func (b *board) block(tag Tag, s station, figure string, a Anchor, at Point) {
	if s.colour == Red {
		tag.Kind = LevelLine
	}
	base := at.Y - b.blockHigh(s)/2 + clearance/2 + rise(b.texts.figure)
	b.label(Label{Tag: tag, Text: figure, Size: b.texts.figure, Bold: true, Colour: s.colour, Anchor: a, At: Point{at.X, base}})
	base += fall(b.texts.figure) + rise(b.texts.note)
	for _, name := range b.names(s) {
		b.label(Label{Tag: tag, Text: name, Size: b.texts.note, Colour: named(s.colour), Anchor: a, At: Point{at.X, base}})
		base += b.texts.note
	}
}

// named is the colour of the name beside a figure.
func named(c Colour) Colour {
	if c == Red {
		return Red
	}
	return Grey
}

// spreadBy moves places apart until each keeps the gap before it, and as near as it can to where it belongs. Places must
// be ascending; the gap before the first counts for nothing.
func spreadBy(at, gaps []Micron) []Micron {
	type block struct{ sum, n Micron } // sum of at[i] − the gaps up to i
	var blocks []block
	far := make([]Micron, len(at)) // the gaps up to each place
	for i, a := range at {
		if i > 0 {
			far[i] = far[i-1] + gaps[i]
		}
		blocks = append(blocks, block{a - far[i], 1})
		for n := len(blocks); n > 1 && blocks[n-2].sum*blocks[n-1].n >= blocks[n-1].sum*blocks[n-2].n; n-- {
			blocks[n-2].sum += blocks[n-1].sum
			blocks[n-2].n += blocks[n-1].n
			blocks = blocks[:n-1]
		}
	}
	out := make([]Micron, 0, len(at))
	for _, k := range blocks {
		for range k.n {
			out = append(out, k.sum/k.n+far[len(out)])
		}
	}
	return out
}

// within moves places that keep the gap before each inside the bounds; where there is not room for all,
// the first ones give way. The gap before the first counts for nothing.
func within(at, gaps []Micron, lo, hi Micron) []Micron {
	for i, low := 0, lo; i < len(at); i++ {
		if i > 0 {
			low += gaps[i]
		}
		at[i] = max(at[i], low)
	}
	for i, high := len(at)-1, hi; i >= 0; i-- {
		at[i] = min(at[i], high)
		high -= gaps[i]
	}
	return at
}

// tick is the 45° stroke of a dimension.
func (b *board) tick(t Tag, p Point) {
	b.chain(t, line(Black, 350), Point{p.X - tickReach, p.Y + tickReach}, Point{p.X + tickReach, p.Y - tickReach})
}
