package form

import (
	"errors"
	"fmt"
	"net/url"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// freeBy is how far a mark may move at first, either way, once it is let go:
// half a hand. A default to type over, common practice, no source.
const freeBy = 2 * length.Inch

// free turns a measured mark into a range round the value typed.
func free(job *survey.Job, path string) error {
	if path == "joint" {
		return fmt.Errorf("there is no mark at %q", path)
	}
	typed := Get(*job, path+".at")
	system, _ := System(job.Units)
	at, err := length.Parse(typed, system)
	from, to := typed, typed
	if err == nil {
		from, to = (at-freeBy).Plain(system, system.Step()), (at+freeBy).Plain(system, system.Step())
	}
	if strings.HasSuffix(path, ".width") || strings.HasSuffix(path, ".height") {
		from = typed // an opening never shrinks below what was asked for
	}
	return setMark(job, path, survey.Mark{From: from, To: to})
}

// measure turns a free mark into a measured one: PATH=PLACE, query-escaped, at a place inside its range, else
// at the lower end of it.
func measure(job *survey.Job, what string) error {
	path, place, _ := strings.Cut(what, "=")
	at, err := url.QueryUnescape(place)
	if err != nil || !inRange(*job, path, at) {
		at = Get(*job, path+".from")
	}
	if pin := pinOf(*job, path); pin != "" {
		if err := release(job, pin); err != nil { // what is measured is decided no more, and may be read anew
			return err
		}
	}
	return setMark(job, path, survey.Mark{At: at})
}

// pinOf is the field that pins what a mark of a wall says, or empty.
func pinOf(job survey.Job, path string) string {
	parts := Parts(path)
	if len(parts) < 3 || parts[0].Name != "walls" || parts[1].Index < 0 || parts[1].Index >= len(job.Walls) {
		return ""
	}
	w := job.Walls[parts[1].Index]
	mark := namedMark(w, parts[2:])
	if job.Pins.Walls[w.Name].Marks[mark] == "" {
		return ""
	}
	return Key(Key("pins.walls", w.Name)+".marks", mark)
}

// edges are the edges of what stands in a wall that its fields say: its width the right one, as the left stays.
var edges = map[string]string{"left": "left", "middle": "left", "along": "left", "width": "right", "bottom": "bottom", "height": "top", "top": "top"}

// namedMark is what a plan calls the mark that a field of a wall says, or empty.
func namedMark(w survey.Wall, parts []Part) string {
	switch list := parts[0].Name; {
	case list == "left" || list == "right":
		return "end " + list
	case list == "head":
		return list
	case len(parts) < 3 || parts[1].Index < 0:
		return ""
	}
	k, field := parts[1].Index, parts[2].Name
	switch list := parts[0].Name; {
	case list == "openings" && k < len(w.Openings):
		return w.Openings[k].Kind + " " + w.Openings[k].Name + " " + edges[field]
	case list == "strips" && k < len(w.Strips):
		return string(survey.PlumbStrip) + " " + w.Strips[k].Name + " " + edges[field]
	case list == "fixtures" && k < len(w.Fixtures) && field == "height":
		return w.Fixtures[k].Kind + " " + w.Fixtures[k].Name + " bottom"
	case list == "fixtures" && k < len(w.Fixtures):
		return w.Fixtures[k].Kind + " " + w.Fixtures[k].Name + " " + edges[field]
	}
	return ""
}

// inRange tells whether a place reads as one inside the range of a free mark.
func inRange(job survey.Job, path, place string) bool {
	system, _ := System(job.Units)
	at, err := length.Parse(place, system)
	from, badFrom := length.Parse(Get(job, path+".from"), system)
	to, badTo := length.Parse(Get(job, path+".to"), system)
	return errors.Join(err, badFrom, badTo) == nil && from <= at && at <= to
}

func setMark(job *survey.Job, path string, m survey.Mark) error {
	if m == (survey.Mark{}) {
		return fmt.Errorf("there is no mark at %q", path)
	}
	for _, f := range []Field{{".at", m.At}, {".from", m.From}, {".to", m.To}} {
		if err := Set(job, path+f.Path, f.Value); err != nil {
			return err
		}
	}
	return nil
}
