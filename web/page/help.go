package page

import (
	"context"
	"slices"
	"sync"

	"github.com/a-h/templ"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Help is the page that tells what would help a set-out.
type Help struct {
	Job
	Of   string        // whose set-out, where it is not the one shown on the bench
	Tab  string        // the page of the job's bar that it belongs to
	From templ.SafeURL // and its address, to go back to
	Back string        // and what is written for that
	layout.Help
}

// Helper keeps what would help the jobs that were asked about last, because a page and
// its pictures ask again and each answer solves a job some dozen times.
type Helper struct {
	mu    sync.Mutex
	known []helped // the latest last
}

// helped is what would help a job, by its job file.
type helped struct {
	document string
	help     layout.Help
}

const mostHelped = 12 // jobs that a Helper keeps

// WouldHelp says what would help a job of a plan that leaves poor cuts: nothing where
// none are left. The error is the context's.
func (s Site) WouldHelp(ctx context.Context, job survey.Job, plan layout.Plan) (layout.Help, error) {
	if !plan.Troubled() {
		return layout.Help{}, nil
	}
	document, err := survey.Write(job)
	if err != nil {
		return layout.Help{}, err
	}
	if help, known := s.Help.find(string(document)); known {
		return help, nil
	}
	help, err := layout.WouldHelp(ctx, job, plan)
	if err == nil {
		s.Help.keep(helped{string(document), help})
	}
	return help, err
}

func (h *Helper) find(document string) (layout.Help, bool) {
	if h == nil {
		return layout.Help{}, false
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	i := slices.IndexFunc(h.known, func(k helped) bool { return k.document == document })
	if i < 0 {
		return layout.Help{}, false
	}
	return h.known[i].help, true
}

func (h *Helper) keep(one helped) {
	if h == nil {
		return
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	h.known = slices.DeleteFunc(h.known, func(k helped) bool { return k.document == one.document })
	if h.known = append(h.known, one); len(h.known) > mostHelped {
		h.known = slices.Clone(h.known[len(h.known)-mostHelped:])
	}
}

// smallest is the smallest cut in sight after a change, with its wall.
func smallest(r layout.Remedy, units length.System) string {
	if r.Least.Piece == "" {
		return "nothing is cut"
	}
	if r.Least.Point {
		return "runs out to a point, on " + r.Wall
	}
	if r.Least.Size == 0 {
		return "hidden, on " + r.Wall
	}
	return r.Least.Size.Fine(units) + " on " + r.Wall
}

// then is what would be, with what it costs.
func then(r layout.Remedy) string {
	if r.Cost == "" {
		return Unbroken(r.After)
	}
	return Unbroken(r.After + "; but " + r.Cost)
}
