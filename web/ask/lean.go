package ask

import (
	"net/url"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Corner is the end of a wall that meets a corner, of which is asked whether it
// leans: the gap at one end of a level that is held plumb in it, its foot on the level
// line. A gap at the upper end leans away from the room, one at the foot into it.
// Nothing there, or 0, is a corner that is plumb.
type Corner struct {
	End   string // the field of the end: "walls[1].left"
	Label string
	Ask   string
	Gap   string // as typed, without a sign
	Over  string // how high the level reaches
	Away  bool   // the wall widens upwards
	Other bool   // it was read at other heights: one gap does not tell it
	left  bool
}

// Names of the boxes of a corner, before the field of its end.
const (
	LeanGap  = "lean "
	LeanOver = "lean-over "
	LeanWay  = "lean-way " // "into" the room or "away" from it
)

// Corners lists the ends that meet an inside corner, from left to right.
func Corners(job survey.Job) []Corner {
	r := room{job: job}
	var out []Corner
	for i, w := range job.Walls {
		for _, left := range []bool{true, false} {
			end, found := "left", w.Left
			if !left {
				end, found = "right", w.Right
			}
			if found.Meets != "corner" {
				continue
			}
			c := Corner{End: form.At("walls", i) + "." + end, left: left, Label: capital(r.place(i, left)) + ", along " + WallName(w.Name),
				Ask: "Does the " + r.place(i, left) + " lean, along " + WallName(w.Name) + "?"}
			c.read(job, found.Lean)
			out = append(out, c)
		}
	}
	return out
}

// read takes what a job says of the corner.
func (c *Corner) read(job survey.Job, lean []survey.Lean) {
	c.Over = usualLevel(job)
	if len(lean) == 0 {
		return
	}
	if !form.OneGap(lean) && (len(lean) != 2 || !zero(job, lean[0].Height) || !zero(job, lean[0].Off)) {
		c.Other = true
		return
	}
	c.Over = lean[1].Height
	if zero(job, lean[1].Off) {
		return
	}
	gap, minus := strings.CutPrefix(lean[1].Off, "-")
	c.Gap, c.Away = gap, minus == c.left
}

// usualLevel is how long a level is that one holds in a corner: 4 ft, or 1200 mm.
func usualLevel(job survey.Job) string {
	if job.Units == "mm" {
		return "1200"
	}
	return "48"
}

func zero(job survey.Job, text string) bool {
	system, _ := form.System(job.Units)
	l, err := length.Parse(text, system)
	return err == nil && l == 0
}

// Path is the field in which the gap is kept.
func (c Corner) Path() string { return form.At(c.End+".lean", 1) + ".off" }

// Way is the side to which the corner leans, as its box has it.
func (c Corner) Way() string {
	if c.Away {
		return "away"
	}
	return "into"
}

// post turns the boxes of a corner into two readings: it is straight, and leans on below the line.
func (c Corner) post(posted url.Values) {
	values, there := posted[LeanGap+c.End]
	if !there || c.Other {
		return
	}
	gap := strings.TrimLeft(strings.TrimSpace(values[len(values)-1]), "-−–+ ")
	over, way := strings.TrimSpace(posted.Get(LeanOver+c.End)), posted.Get(LeanWay+c.End)
	if over == "" {
		over = c.Over
	}
	if gap == c.Gap && (gap == "" || over == c.Over && way == c.Way()) {
		return // untouched
	}
	switch {
	case gap == "":
		gap = "0"
	case (way == "away") == c.left && strings.Trim(gap, "0") != "":
		gap = "-" + gap
	}
	top := survey.Lean{Height: over, Off: gap}
	for i, l := range []survey.Lean{form.Below(top), top} {
		reading := form.At(c.End+".lean", i)
		posted.Set(reading+".height", l.Height)
		posted.Set(reading+".off", l.Off)
	}
}

// dropCorners drops the boxes that are no fields.
func dropCorners(posted url.Values) {
	for name := range posted {
		if slices.ContainsFunc([]string{LeanGap, LeanOver, LeanWay}, func(box string) bool { return strings.HasPrefix(name, box) }) {
			delete(posted, name)
		}
	}
}
