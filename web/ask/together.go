package ask

import (
	"net/url"
	"slices"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Together gives the marks at which the tile of the walls stops, those that are alike
// as one: what stops at one line is one figure, and what may stop in one range is
// one range.
func Together(job survey.Job) [][]string {
	var groups [][]string
	for i, w := range job.Walls {
		if w.Head.Meets != "" || w.Head.Stops == nil {
			continue
		}
		path := form.At("walls", i) + ".head.stops"
		alike := slices.IndexFunc(groups, func(g []string) bool { return sameMark(job, g[0], path) })
		if alike < 0 {
			groups = append(groups, []string{path})
			continue
		}
		groups[alike] = append(groups[alike], path)
	}
	return groups
}

// ends are the fields of a mark.
var ends = []string{".at", ".from", ".to"}

func sameMark(job survey.Job, a, b string) bool {
	r := room{job: job}
	return !slices.ContainsFunc(ends, func(end string) bool {
		x, y := form.Get(job, a+end), form.Get(job, b+end)
		return x != y && (x == "" || y == "" || !r.same(x, y))
	})
}

// readTogether writes the range that is typed at the first of marks that are alike to
// the others, which are not shown.
func readTogether(job survey.Job, posted url.Values) {
	for _, g := range Together(job) {
		for _, end := range ends[1:] {
			for _, path := range g[1:] {
				if posted.Has(g[0]+end) && !posted.Has(path+end) {
					posted.Set(path+end, posted.Get(g[0]+end))
				}
			}
		}
	}
}
