package form

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// built lets an opening stand as it is built, board to board. Until it is measured it stands where the set-out that is held has
// it, else in the middle of where it might have stood, so that nothing moves before a figure is typed.
func built(job *survey.Job, w *survey.Wall, o *survey.Opening) {
	tall := &survey.Mark{}
	if o.Height != nil && o.Height.Mark != nil {
		tall = o.Height.Mark
	}
	across, up := stoodAt(job, w, o, survey.LeftEdge, survey.RightEdge), stoodAt(job, w, o, survey.BottomEdge, survey.TopEdge)
	if across == nil {
		across = midway(job, o.Left, o.Width)
	}
	if up == nil {
		up = midway(job, o.Bottom, tall)
	}
	size := pick(job, "13 1/2", "340")
	left, width := board(job, across, less(job, middle(job, "0", w.Width), pick(job, "6 3/4", "170")), size)
	bottom, height := board(job, up, pick(job, "2", "50"), size)
	o.Left, o.Width = &survey.Mark{At: left}, &survey.Mark{At: width}
	o.Bottom, o.Height = &survey.Mark{At: bottom}, &survey.Measure{Mark: &survey.Mark{At: height}}
}

// facing is where two facing edges of an opening stand.
type facing struct{ from, to length.Length }

// stoodAt is where the set-out that is held has two facing edges of an opening, or nil.
func stoodAt(job *survey.Job, w *survey.Wall, o *survey.Opening, low, high survey.EdgeName) *facing {
	if job.Held == nil {
		return nil
	}
	system, _ := System(job.Units)
	marks, key := job.Held.Walls[w.Name].Marks, o.Kind+" "+o.Name+" "
	from, noFrom := length.ParsePrinted(marks[key+string(low)], system)
	to, noTo := length.ParsePrinted(marks[key+string(high)], system)
	if noFrom != nil || noTo != nil {
		return nil
	}
	return &facing{from, to}
}

// midway is the middle of a place and of a size that may be ranges, or nil where one does not read.
func midway(job *survey.Job, place, size *survey.Mark) *facing {
	system, _ := System(job.Units)
	read := func(m *survey.Mark) (length.Length, error) {
		switch {
		case m == nil:
			return length.Parse("", system)
		case m.At != "":
			return length.Parse(m.At, system)
		}
		return length.Parse(middle(job, m.From, m.To), system)
	}
	from, noFrom := read(place)
	by, noSize := read(size)
	if noFrom != nil || noSize != nil {
		return nil
	}
	return &facing{from, from + by}
}

// board is where the boards behind the tile of an opening begin and how far they are apart: its bed and tile before its edges.
// Where it is not known where these are it is what is given.
func board(job *survey.Job, at *facing, begin, size string) (string, string) {
	if at == nil {
		return begin, size
	}
	system, _ := System(job.Units)
	cover := orUsual(job.Bed, pick(job, "3/16", "5"), system) + orUsual(job.Tile.Thickness, pick(job, "5/16", "8"), system)
	say := func(l length.Length) string { return l.Plain(system, system.Step()) }
	return say(at.from - cover), say(at.to - at.from + 2*cover)
}

// orUsual is a thickness, or the usual one where it does not read.
func orUsual(text, usual string, system length.System) length.Length {
	if l, err := length.Parse(text, system); err == nil {
		return l
	}
	l, _ := length.Parse(usual, system) // which reads
	return l
}
