package form

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/survey"
)

// guess says of fields that nobody has measured them.
func guess(job *survey.Job, paths string) error {
	for _, path := range strings.Fields(paths) {
		if Get(*job, path) == "" {
			return fmt.Errorf("there is nothing at %q", path)
		}
		if !slices.Contains(job.Guess, path) {
			job.Guess = append(job.Guess, path)
		}
	}
	return nil
}

// confirm says of a reading that it is so.
func confirm(job *survey.Job, path string) error {
	if Get(*job, path) == "" {
		return fmt.Errorf("there is nothing at %q", path)
	}
	if !slices.Contains(job.Confirmed, path) {
		job.Confirmed = append(job.Confirmed, path)
	}
	return nil
}

// use writes what would fit in the place of a doubted reading.
func use(job *survey.Job, text string) error {
	fields, err := url.ParseQuery(text)
	if err != nil {
		return err
	}
	for path, values := range fields {
		if err := Set(job, path, values[0]); err != nil {
			return err
		}
	}
	return nil
}

// shift moves what is said of the elements of a list along when one is taken
// out at a place (by is -1) or put in there (by is 1).
func shift(job *survey.Job, list string, at, by int) {
	job.Guess, job.Confirmed = Shifted(job.Guess, list, at, by), Shifted(job.Confirmed, list, at, by)
}

// Shifted are fields, those moved along that stand in a list from where an element was put in (by is 1) or
// taken out (by is -1).
func Shifted(paths []string, list string, at, by int) []string {
	var out []string
	for _, path := range paths {
		rest, inside := strings.CutPrefix(path, list+"[")
		digits, after, closed := strings.Cut(rest, "]")
		n, err := strconv.Atoi(digits)
		switch {
		case !inside || !closed || err != nil || n < at:
			out = append(out, path)
		case n == at && by < 0: // it is gone
		default:
			out = append(out, list+"["+strconv.Itoa(n+by)+"]"+after)
		}
	}
	return out
}

// spacers lets the set-out take the joint that fits best, of the usual spacers:
// 1/16 to 3/16 in (1.5 to 5 mm). Common practice, no source.
func spacers(job *survey.Job, _ string) error {
	job.Joint = survey.Measure{Mark: &survey.Mark{From: pick(job, "1/16", "1.5"), To: pick(job, "3/16", "5")}}
	return nil
}
