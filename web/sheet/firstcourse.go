package sheet

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/web/drawing"
)

// firstCourse draws the tiles over the base of every wall as a strip, with both
// heights of each, on one leaf at the largest scale that fits.
func (b *book) firstCourse() {
	strips := b.footings()
	before, scales := b.mark(), ladder(b.plan.Room.Units)
	for i, scale := range scales {
		for _, percent := range percents {
			b.back(before)
			f := b.sized(subject{title: "First course", scale: scale}, false, percent)
			if f.widest(strips, scale) > f.breadth() && i < len(scales)-1 {
				continue
			}
			b.drawFootings(f, strips, scale)
			if len(b.leaves) == before.leaves+1 {
				return
			}
		}
	}
}

func (f *flow) widest(strips []footing, scale drawing.Scale) (most drawing.Micron) {
	for _, s := range strips {
		most = max(most, f.footWide(s, scale))
	}
	return most
}

// drawFootings draws the strips, as many beside each other as there is room for.
func (b *book) drawFootings(f *flow, strips []footing, scale drawing.Scale) {
	f.words(plain, b.footWords(strips)+b.said())
	lo, _ := f.area()
	x, low := lo.X, f.y
	for _, i := range b.inOrder() {
		title, s := "Wall "+wallText(b.plan.Walls[i].Found), strips[i]
		if len(s.tiles) == 0 {
			f.y, x = low, lo.X
			f.words(body, title+": its first course is set already, or there is none.")
			low = f.y
			continue
		}
		wide := max(f.footWide(s, scale), f.of(strong).width(title))
		if x > lo.X && x+wide > lo.X+f.breadth() {
			f.y, x = low, lo.X
		}
		if x == lo.X {
			f.need(f.footHigh(s, scale))
			low = f.y
		}
		low = max(low, f.strip(s, scale, title, x))
		x += wide + 10*mmPaper
	}
	f.y = low
	if text := b.widths(strips); text != "" {
		f.words(plain, text)
	}
	f.cautions(atTheBase...)
}

// footWords say how the strips are read.
func (b *book) footWords(strips []footing) string {
	for _, s := range strips {
		if s.asLaid {
			return "The tiles that are cut to the base, where they stand, seen from the face. Each bears its number and its line of the cut schedule, where its cuts are drawn; " +
				"the figures under it are how far what it stands on is under the level line, at both ends."
		}
	}
	text := "The tiles over the uneven base, seen from the face, drawn with their tops on one line. Cut the lower edge of each to its two heights, measured down from its top edge at the ends of the cut; " +
		"the drop is how far that end stands under the level line."
	for _, s := range strips {
		if len(s.runs()) > 1 {
			return text + " What stands apart is over another base: the floor beside a tub, or a seat."
		}
	}
	return text
}

// widths names the pieces of the strips that are cut in width too, and those that no
// saw makes, in the order in which the strips are drawn.
func (b *book) widths(strips []footing) string {
	var all, none []string
	for _, i := range b.inOrder() {
		if strips[i].asLaid {
			continue
		}
		for _, t := range strips[i].tiles {
			if t.piece.NoSaw() {
				none = append(none, t.piece.ID)
				continue
			}
			if step := b.plan.Room.Units.FineStep(); t.piece.Tile.Width()-t.box.Width() >= step {
				all = append(all, held(t.piece.ID+" "+b.down(t.box.Width())))
			}
			if t.piece.Kind&(piece.Notch|piece.Hole) != 0 {
				all = append(all, held(t.piece.ID+" "+t.piece.Kind.String()+", line "+t.line))
			}
		}
	}
	text := listed("Cut to width first: ", all)
	if len(all)*len(none) > 0 {
		text += " "
	}
	return text + listed("Do not cut, change the set-out first: ", none)
}

// listed is a sentence of what it begins with and a list, or empty.
func listed(begins string, all []string) string {
	for i, one := range all {
		if begins += one; i < len(all)-1 {
			begins += ", "
		}
	}
	if len(all) == 0 {
		return ""
	}
	return begins + "."
}

// down writes a size as the cut schedule shows it, rounded down so that the
// piece is never larger than its place.
func (b *book) down(l length.Length) string { return held(drawing.CourseHeight(b.plan.Room.Units, l)) }

// bareTape writes a length as the tape shows it, millimetres without their unit.
func (b *book) bareTape(l length.Length) string {
	if u := b.plan.Room.Units; u == length.Metric {
		return l.Plain(u, u.Step())
	}
	return b.tape(l)
}

// said is what is said once where millimetres stand without their unit.
func (b *book) said() string {
	if b.plan.Room.Units == length.Metric {
		return " All figures are in mm."
	}
	return ""
}
