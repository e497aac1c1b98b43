package form

import (
	"fmt"
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

// measure turns a free mark into a measured one at the lower end of its range.
func measure(job *survey.Job, path string) error {
	return setMark(job, path, survey.Mark{At: Get(*job, path+".from")})
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
