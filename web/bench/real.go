package bench

import (
	"cmp"
	"strconv"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/page"
)

// What a sample of real tiles says, worked out while it is typed.

// sampleRows is how many single tiles there is room for: ten, or more where
// more were typed.
func (b Bench) sampleRows() int {
	const usual = 10
	if s := b.Typed.Tile.Sample; s != nil {
		return max(usual, len(s.Singles))
	}
	return usual
}

// close gives a tile's size: to 1/64 in and to 0.1 mm, that of the job first.
func (b Bench) close(l length.Length) string {
	in, mm := l.Format(length.Imperial, length.Inch/64), l.Format(length.Metric, length.Millimetre/10)
	if b.System() == length.Metric {
		in, mm = mm, in
	}
	return in + " · " + mm
}

// joint is the joint as typed, zero while it does not read.
func (b Bench) joint() length.Length {
	l, err := page.Parse(b.Job, "joint")
	if err != nil {
		return 0
	}
	return l
}

// sideFigures are one side's size and pitch, and how far it is off the size typed.
func (b Bench) sideFigures(name, path string, is length.Length) []page.Figure {
	if is == 0 {
		return nil
	}
	out := []page.Figure{
		{Name: name, Value: b.close(is)},
		{Name: "Pitch with the joint", Value: b.close(is + b.joint())},
	}
	if typed, err := page.Parse(b.Job, path); err == nil && typed != is {
		off, way := is-typed, "more"
		if off < 0 {
			off, way = -off, "less"
		}
		out[0].Note = "as typed"
		if ten := b.Near(10 * off); ten != b.Near(0) {
			out[0].Note = "ten are " + ten + " " + way + " than typed"
		}
		if 20*off > typed {
			out[0].Note, out[0].Class = out[0].Note+": count the tiles and the joints again", "bad"
		}
	}
	return out
}

// sampleFigures are all that the sample says.
func (b Bench) sampleFigures() []page.Figure {
	r := b.Sampled()
	out := append(b.sideFigures("Width", "tile.width", r.Width), b.sideFigures("Height", "tile.height", r.Height)...)
	if !r.Compared {
		return out
	}
	vary := page.Figure{Name: "Largest less smallest", Value: b.close(r.Vary), Note: "of " + page.Count(r.Singles, "single tile")}
	rule := page.Figure{Name: "Least joint for that", Value: b.close(3 * r.Vary), Note: "three times as much; yours, " + b.Near(b.joint()) + ", will do"}
	if 3*r.Vary > b.joint() {
		rule.Note, rule.Class = "three times as much; yours is "+b.Near(b.joint()), "bad"
	}
	return append(out, vary, rule)
}

// sampleLine is what the closed section shows.
func sampleLine(b Bench) string {
	r := b.Sampled()
	if !page.Known(r) {
		return "not measured"
	}
	return b.RealSize(r) + map[bool]string{true: ", in use", false: ", not used"}[r.Used]
}

// runTiles is how many tiles a run has, the usual number where nothing is said.
func (b Bench) runTiles(path string) string {
	return cmp.Or(b.Value(path+".tiles"), survey.UsualRun)
}

// single is the path of one tile of the sample.
func single(i int) string { return form.At("tile.sample.singles", i) }

// fieldOfSingle names a box of the table of singles.
func fieldOfSingle(side string, i int) string { return side + " of tile " + strconv.Itoa(i+1) }

// runPictureText says what the picture of a run shows.
func runPictureText(level, each bool) string {
	way := map[bool]string{true: "a row", false: "a stack"}[level]
	if each {
		return "The length of " + way + " from the first edge to the end of one joint more"
	}
	return "The length of " + way + " from the first edge to the last"
}

// runArrow is the measured length under the three tiles: with the joint after
// the last one, or without.
func runArrow(each bool) string {
	if each {
		return "M1 28v10M129 28v10M1 33h128M6 30l-5 3 5 3M124 30l5 3-5 3"
	}
	return "M1 28v10M125 28v10M1 33h124M6 30l-5 3 5 3M120 30l5 3-5 3"
}
