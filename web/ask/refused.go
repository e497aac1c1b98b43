package ask

import (
	"net/url"
	"slices"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Once gives one fault for each box: what one answer spoils in several fields is
// said once, at the box it was typed in. A width spoils what stands at the end of
// its wall.
func Once(job survey.Job, faults survey.Faults) survey.Faults {
	questions := All(job)
	faults = atWidths(job, questions, atGaps(faults))
	boxOf := func(f survey.Fault) string {
		for _, q := range questions {
			wall, isWidth := strings.CutSuffix(q.Path, ".width")
			follows := slices.Contains(q.Same, f.Path) || isWidth && strings.HasPrefix(f.Path, wall+".")
			if follows && slices.ContainsFunc(faults, func(g survey.Fault) bool { return g.Path == q.Path && unquoted(g) == unquoted(f) }) {
				return q.Path
			}
		}
		return f.Path
	}
	var out survey.Faults
	for _, f := range faults {
		f.Path = boxOf(f)
		if !slices.ContainsFunc(out, func(g survey.Fault) bool { return g.Path == f.Path && unquoted(g) == unquoted(f) }) {
			out = append(out, f)
		}
	}
	return out
}

// atGaps leaves out what a gap at a corner spoils below the level line where it is said of the gap itself.
func atGaps(faults survey.Faults) survey.Faults {
	return slices.DeleteFunc(slices.Clone(faults), func(f survey.Fault) bool {
		end, field, is := strings.Cut(f.Path, ".lean[0].")
		return is && slices.ContainsFunc(faults, func(g survey.Fault) bool { return g.Path == end+".lean[1]."+field })
	})
}

// unquoted is what a fault found: as it was typed it stands in quotes, as a figure that was read it does not.
func unquoted(f survey.Fault) string { return strings.Trim(f.Found, "“”") }

// atWidths says at the width of a wall what it does to guesses about that wall: nobody has typed those,
// so nothing can be put right at them. What a stud does to the guess of the other is said at that stud.
func atWidths(job survey.Job, questions []Question, faults survey.Faults) survey.Faults {
	out := slices.Clone(faults)
	for i, f := range out {
		parts := form.Parts(f.Path)
		if len(parts) < 3 || parts[0].Name != "walls" || !slices.Contains(job.Guess, f.Path) {
			continue
		}
		if stud := otherStud(f.Path); stud != "" && !slices.Contains(job.Guess, stud) {
			out[i] = survey.Fault{Path: stud, Found: "“" + form.Get(job, stud) + "”", Want: "a place that leaves room on the wall for the other stud, or measure that too"}
			continue
		}
		width := form.At("walls", parts[1].Index) + ".width"
		if slices.Contains(job.Guess, width) {
			continue
		}
		what := "what is not measured yet"
		for _, q := range questions {
			if q.Path == f.Path || slices.Contains(q.Same, f.Path) {
				what += " (" + q.Label + ")"
			}
		}
		out[i] = survey.Fault{Path: width, Found: "“" + form.Get(job, width) + "”", Want: "a width on which " + what + " has room, or measure that too"}
	}
	return out
}

// Typed is what was typed into boxes whose fields hold another figure, by these fields: counted from
// the right end of a wall, or with its sign in a choice beside it.
type Typed map[string]typed

type typed struct {
	text  string
	right bool // from the right end
	lean  bool // a gap at a corner
}

// TypedIn reads that from a form. Read takes these boxes out of it.
func TypedIn(posted url.Values) Typed {
	out := Typed{}
	for name, values := range posted {
		text := strings.TrimSpace(values[len(values)-1])
		if path, is := strings.CutPrefix(name, FromRight); is {
			out[path] = typed{text: text, right: true}
		} else if path, is := strings.CutPrefix(name, UpDown); is {
			out[path] = typed{text: text}
		} else if end, is := strings.CutPrefix(name, LeanGap); is {
			out[Corner{End: end}.Path()] = typed{text: text, lean: true}
		}
	}
	return out
}

// AsTyped lets faults speak of what was typed: the job counts from the left end and with a sign, in
// figures that nobody has typed.
func AsTyped(faults survey.Faults, all Typed) survey.Faults {
	for i := range faults {
		f := &faults[i]
		box, is := all[f.Path]
		if !is || box.text == "" {
			continue
		}
		if strings.HasPrefix(f.Found, "“"+box.text+"”") {
			continue // what does not read is as it was typed
		}
		f.Meant = "" // of a figure that nobody has typed
		if box.right {
			f.Found = "“" + box.text + "”, which is " + fromLeft(strings.Trim(f.Found, "“”"))
		}
		f.Found = strings.Replace(f.Found, "“-"+box.text+"”", "“"+box.text+"”", 1)
		if from, to, bounds := strings.Cut(f.Want, " to "); box.lean && bounds && from == "a length from -"+to {
			f.Want = "a gap of at most " + to
		}
	}
	return faults
}

// fromLeft says where a figure is that was counted from the right end: nobody measures less than nothing.
func fromLeft(found string) string {
	if strings.HasPrefix(found, "-") {
		return "past the left end"
	}
	return found + " from the left end"
}

// Emptied takes an answer back that was refused and is empty again: the figures of
// the saved job, which are guesses, are posted in its place. It gives the fields
// that are guesses again.
func Emptied(shown, saved survey.Job, posted url.Values) (guesses []string) {
	if slices.Equal(shown.Guess, saved.Guess) {
		return nil
	}
	for _, q := range All(shown) {
		if !slices.Contains(saved.Guess, q.Path) || slices.Contains(shown.Guess, q.Path) ||
			!posted.Has(q.Name()) || strings.TrimSpace(posted.Get(q.Name())) != "" {
			continue
		}
		posted.Del(q.Name())
		for _, path := range append([]string{q.Path}, q.Same...) {
			posted.Set(path, form.Get(saved, path))
			if slices.Contains(saved.Guess, path) {
				guesses = append(guesses, path)
			}
		}
	}
	return guesses
}

// Figures are what guesses of a job are, by their fields.
type Figures map[string]string

// Guessed notes what is guessed.
func Guessed(job survey.Job) Figures {
	out := Figures{}
	for _, path := range job.Guess {
		out[path] = form.Get(job, path)
	}
	return out
}

// Changed lists the fields that have another figure by now.
func (f Figures) Changed(job survey.Job) []string {
	var out []string
	for _, path := range job.Guess {
		if was, noted := f[path]; noted && was != form.Get(job, path) {
			out = append(out, path)
		}
	}
	return out
}

// Between makes a guess of the reading that was put in before the last of a list, where
// it is asked for.
func Between(job *survey.Job, list string) {
	asked := Paths(*job)
	for n := 0; ; n++ {
		for _, figure := range []string{".drop", ".rise"} {
			path := form.At(list, n) + figure
			if form.Get(*job, form.At(list, n+2)+figure) == "" && slices.Contains(asked, path) {
				job.Guess = append(job.Guess, path)
				return
			}
		}
		if form.Get(*job, form.At(list, n)+".at") == "" {
			return
		}
	}
}
