package form

import (
	"net/url"
	"regexp"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// parts are the two lengths of a range as people write it: -2 to 2, 2..12, 2 – 12.
var parts = regexp.MustCompile(`^(.+?)(?:\s+to\s+|\s*\.\.+\s*|\s*…\s*|\s*–\s*|\s+-\s+)(.+)$`)

// readRanges reads a range that was typed into one box of a mark: both of its ends are posted in its place.
// What reads as one length, and what may only be measured, stays as it was typed.
func readRanges(job survey.Job, posted url.Values) {
	system, _ := System(job.Units)
	reads := func(text string) bool { _, err := length.Parse(text, system); return err == nil }
	for path, values := range posted {
		typed := strings.TrimSpace(values[len(values)-1])
		ends := parts.FindStringSubmatch(typed)
		mark := markOf(job, path)
		if ends == nil || mark == "" || reads(typed) || !reads(ends[1]) || !reads(ends[2]) {
			continue
		}
		posted.Del(mark)
		posted.Set(mark+".at", "")
		for k, end := range []string{mark + ".from", mark + ".to"} {
			if end == path || !posted.Has(end) || posted.Get(end) == Get(job, end) { // else it was typed after the range
				posted.Set(end, ends[k+1])
			}
		}
	}
}

// markOf is the mark of which a field is a figure, and that may stand in a range; empty of any other field.
func markOf(job survey.Job, path string) string {
	mark := path
	for _, figure := range []string{".at", ".from", ".to"} {
		mark = strings.TrimSuffix(mark, figure)
	}
	above := mark[:max(0, strings.LastIndexByte(mark, '.'))]
	switch {
	case mark == path && path != "joint" && !strings.Contains(path, ".fixtures["): // a pipe's height is a length
		return ""
	case Get(job, above+".kind") == string(survey.Doorway):
		return ""
	}
	if tried := job.Clone(); Set(&tried, mark+".from", "") != nil {
		return ""
	}
	return mark
}
