package ask

import (
	"net/url"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Names of boxes that do not hold a field as the job has it, before its path.
const (
	FromRight = "right "  // from the right end of the wall
	UpDown    = "updown " // so far from the level line
	Side      = "side "   // "below" or "above" it
)

// Read turns the boxes of the questions into fields of the job that the form
// was filled from. What is asked once is written to every field of its place. A
// box left empty for a guess leaves the guess, on the side of the line that is chosen
// beside it. The posted values are changed.
// It gives the fields that were answered.
func Read(job survey.Job, posted url.Values) (measured []string) {
	questions := All(job)
	for _, q := range questions {
		q.readRight(job, posted)
		q.fromLine(job, posted)
		values, there := posted[q.Path]
		if !there {
			continue
		}
		value := values[len(values)-1]
		guessed := slices.Contains(job.Guess, q.Path)
		if guessed && strings.TrimSpace(value) == "" {
			q.turn(job, posted)
			continue
		}
		if guessed {
			measured = append(append(measured, q.Path), q.Same...)
		}
		if guessed || value != form.Get(job, q.Path) {
			for _, path := range q.Same {
				posted.Set(path, value)
			}
		}
	}
	for _, c := range Corners(job) {
		c.post(posted)
	}
	for _, q := range questions {
		if slices.Contains(job.Guess, q.Path) && !slices.Contains(measured, q.Path) {
			q.keepFromCorner(job, posted)
		}
	}
	readTogether(job, posted)
	dropCorners(posted)
	dropGuesses(job, posted)
	return measured
}

// dropGuesses drops what is empty in any other box of a guess, and the boxes
// that are no fields.
func dropGuesses(job survey.Job, posted url.Values) {
	for name, values := range posted {
		switch {
		case strings.HasPrefix(name, FromRight), strings.HasPrefix(name, UpDown), strings.HasPrefix(name, Side):
			delete(posted, name)
		case slices.Contains(job.Guess, name) && strings.TrimSpace(values[len(values)-1]) == "":
			delete(posted, name)
		}
	}
}

// fromLine puts the sign of a side before a height.
func (q Question) fromLine(_ survey.Job, posted url.Values) {
	values, there := posted[UpDown+q.Path]
	if !there || !q.Updown {
		return
	}
	typed := strings.TrimSpace(values[len(values)-1])
	bare := strings.TrimSpace(strings.TrimLeft(typed, "-−–+"))
	minus := strings.HasPrefix(typed, "-") || strings.HasPrefix(typed, "−") || strings.HasPrefix(typed, "–")
	switch {
	case bare == "":
		posted.Set(q.Path, "")
	case minus || posted.Get(Side+q.Path) == "below":
		posted.Set(q.Path, "-"+bare)
	default:
		posted.Set(q.Path, bare)
	}
}

// turn puts a guess on the side of the level line that was chosen, where its box is
// still empty; it stays a guess.
func (q Question) turn(job survey.Job, posted url.Values) {
	delete(posted, q.Path)
	if side := posted.Get(Side + q.Path); !q.Updown || side == "" || (side == "below") == q.Below(job) {
		return
	}
	turned := q.figure(job)
	if !q.Below(job) {
		turned = "-" + turned
	}
	for _, path := range append([]string{q.Path}, q.Same...) {
		posted.Set(path, turned)
	}
}

func orOld(now, old string) string {
	if strings.TrimSpace(now) == "" {
		return old
	}
	return now
}

// Shown is what the box of a question shows for a job: nothing for a guess, a
// distance from the right end where it is asked so, a height without its sign.
func (q Question) Shown(job survey.Job) string {
	if slices.Contains(job.Guess, q.Path) {
		return ""
	}
	return q.figure(job)
}

// Guess is the figure that stands in for one not measured yet.
func (q Question) Guess(job survey.Job) string { return q.figure(job) }

func (q Question) figure(job survey.Job) string {
	typed := form.Get(job, q.Path)
	switch {
	case q.fromRight:
		system, _ := form.System(job.Units)
		at, err := length.Parse(typed, system)
		width, wide := length.Parse(form.Get(job, q.width), system)
		if err == nil && wide == nil {
			return (width - at).Plain(system, 0)
		}
	case q.Updown:
		return strings.TrimLeft(typed, "-")
	}
	return typed
}

// Said is a figure of the job as it is asked for: from the end that the box counts from, and with its
// side of the level line for its sign.
func (q Question) Said(job survey.Job, figure string) string {
	if figure == "" {
		return ""
	}
	job = job.Clone()
	if form.Set(&job, q.Path, figure) != nil {
		return figure
	}
	said := q.figure(job)
	if q.Updown {
		said += map[bool]string{true: " below", false: " above"}[q.Below(job)]
	}
	return said
}

// Below tells whether a height lies below the level line.
func (q Question) Below(job survey.Job) bool { return strings.HasPrefix(form.Get(job, q.Path), "-") }

// Name is what the box of a question is called in a form.
func (q Question) Name() string {
	switch {
	case q.fromRight:
		return FromRight + q.Path
	case q.Updown:
		return UpDown + q.Path
	}
	return q.Path
}

// Boxes are the names of the boxes that a field of the job is read from.
func Boxes(job survey.Job, path string) []string {
	out := []string{path, FromRight + path, UpDown + path}
	for _, q := range All(job) {
		if slices.Contains(q.Same, path) {
			out = append(out, q.Path, FromRight+q.Path, UpDown+q.Path)
		}
	}
	for _, c := range Corners(job) {
		if c.Path() == path {
			out = append(out, LeanGap+c.End)
		}
	}
	return out
}

// Settle takes the fields that were answered off the guesses.
func Settle(job *survey.Job, measured []string) {
	job.Guess = slices.DeleteFunc(slices.Clone(job.Guess), func(path string) bool {
		return slices.Contains(measured, path) || job.Tile.Sample != nil && job.Tile.Sample.Use && (path == "tile.width" || path == "tile.height")
	})
	if len(job.Guess) == 0 {
		job.Guess = nil
	}
}
