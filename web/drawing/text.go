package drawing

import "strings"

// Pixel is one pixel of a screen, by which drawings for a screen are laid out.
const Pixel = Millimetre / 4

const px = Pixel

// texts are the heights of the texts of a drawing.
type texts struct {
	figure Micron // figures of dimensions, starts and columns
	size   Micron // the size of a cut, in its piece; smaller ones go down to least
	note   Micron // names beside figures
	least  Micron
	letter Micron // a wall's letter
	name   Micron // a wall's name
}

// Text heights on paper follow screens.md: cut sizes 5 mm, nothing under 2.5.
var (
	wrapTexts  = texts{figure: 12 * px, size: 12 * px, note: 11 * px, least: 11 * px, letter: 20 * px, name: 13 * px}
	wallTexts  = texts{figure: 13 * px, size: 14 * px, note: 13 * px, least: 13 * px, letter: 22 * px, name: 16 * px}
	sheetTexts = texts{figure: 4200, size: 5000, note: 3200, least: 2500, letter: 10000, name: 5000}
)

// width is how long a label runs.
func (l Label) width() Micron {
	if l.Bold {
		return BoldWidth(l.Text, l.Size)
	}
	return TextWidth(l.Text, l.Size)
}

// short cuts a text that runs longer than the space there is, and says so.
func short(s string, size, space Micron) string {
	if TextWidth(s, size) <= space {
		return s
	}
	for r := []rune(s); len(r) > 0; r = r[:len(r)-1] {
		if cut := strings.TrimRight(string(r), " ") + "…"; TextWidth(cut, size) <= space {
			return cut
		}
	}
	return "…"
}

// apart keeps a figure and its name apart; two spaces would run together in SVG.
const apart = "\u2002"

// drop is how far the baseline lies under the middle of a text's capitals.
func drop(size Micron) Micron { return size * 365 / 1000 }

// Heights of a face's letters over and under the baseline, as shares of the
// text height: DejaVu's capitals stand 0.73 high, its p and g hang 0.24 low.
func rise(size Micron) Micron { return size * 76 / 100 }
func fall(size Micron) Micron { return size * 24 / 100 }

// leading is the distance from line to line.
func leading(size Micron) Micron { return size * 5 / 4 }

// box is an upright rectangle on paper, from its upper left corner to its
// lower right.
type box struct{ from, to Point }

// Corners are those of the room that a label takes, which leans as it does.
func (l Label) Corners() []Point {
	flat := l
	flat.Turn, flat.At = 0, l.Turn.On(l.At)
	room := flat.box()
	out := corners(room.from, room.to)
	for i, p := range out {
		out[i] = l.Turn.back(p)
	}
	return out
}

// box is the room a label takes.
func (l Label) box() box {
	w := l.width()
	before := []Micron{0, w / 2, w}[l.Anchor]
	if l.Turn != 0 {
		lo, hi := extent([][]Point{l.Corners()})
		return box{lo, hi}
	}
	if l.Up {
		return box{Point{l.At.X - rise(l.Size), l.At.Y + before - w}, Point{l.At.X + fall(l.Size), l.At.Y + before}}
	}
	return box{Point{l.At.X - before, l.At.Y - rise(l.Size)}, Point{l.At.X - before + w, l.At.Y + fall(l.Size)}}
}

// meets tells whether two boxes share more than an edge.
func (t box) meets(u box) bool {
	return t.from.X < u.to.X && u.from.X < t.to.X && t.from.Y < u.to.Y && u.from.Y < t.to.Y
}

// grown is the box with a rim of m all round.
func (t box) grown(m Micron) box {
	return box{Point{t.from.X - m, t.from.Y - m}, Point{t.to.X + m, t.to.Y + m}}
}
