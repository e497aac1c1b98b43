package stages

import (
	"fmt"
	"strconv"
	"strings"
)

// Ready lists the cuts to have ready for a stage: "12 × C1"; three or more lines of
// the cut schedule that follow each other, each needed as often, are one: "1 each of
// C35–C38".
func (s Stage) Ready() []string {
	var out []string
	for i := 0; i < len(s.Cuts); {
		end := i + 1
		for end < len(s.Cuts) && s.Cuts[end].follows(s.Cuts[end-1]) {
			end++
		}
		if end-i > 2 {
			out = append(out, fmt.Sprintf("%d each of %s–%s", s.Cuts[i].Count, s.Cuts[i].Group, s.Cuts[end-1].Group))
			i = end
			continue
		}
		out = append(out, fmt.Sprintf("%d × %s", s.Cuts[i].Count, s.Cuts[i].Group))
		i++
	}
	return out
}

// follows tells whether a cut is the next line of the schedule, needed as often.
func (c Cut) follows(before Cut) bool {
	a, n, ok := numbered(before.Group)
	b, m, too := numbered(c.Group)
	return ok && too && a == b && m == n+1 && c.Count == before.Count
}

// numbered parts the name of a line, C12, into its letters and its number.
func numbered(group string) (letters string, n int, ok bool) {
	letters = strings.TrimRight(group, "0123456789")
	n, err := strconv.Atoi(group[len(letters):])
	return letters, n, err == nil
}
