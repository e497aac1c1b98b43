package sheets

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/ask"
	"coursewright/web/sheet"
)

// picks is what sheets are made of: a job as it stands, kinds and paper.
type picks struct {
	stored store.Job
	job    survey.Job
	plan   layout.Plan
	kinds  []sheet.Kind
	paper  sheet.Paper
}

// options are those that the sheets are printed with.
func (s pages) options(ctx context.Context, p picks) sheet.Options {
	o := sheet.Options{Paper: p.paper, Kinds: p.kinds, Date: s.Store.Now(), Hash: sheet.Hash(p.stored.Document), Measured: Measured(p.job)}
	if len(p.kinds) == 0 || slices.Contains(p.kinds, sheet.Compare) {
		o.Choices = sheet.ChoicesOf(p.job, func(one survey.Job) (layout.Plan, error) { return s.Solve(ctx, one) },
			func(one survey.Job, plan layout.Plan) []layout.Remedy { return s.wouldHelp(ctx, one, plan) })
	}
	if len(p.kinds) == 0 || slices.Contains(p.kinds, sheet.CutSchedule) || slices.Contains(p.kinds, sheet.SetOut) {
		o.Help = s.wouldHelp(ctx, p.job, p.plan)
	}
	return o
}

// Measured says how much of a job is measured, as the bench counts it.
func Measured(job survey.Job) string {
	measured, all := ask.Count(job)
	return fmt.Sprintf("%d of %d measured", measured, all)
}

// counted are the same without what would help, which takes no leaf of its own and
// may take seconds to work out.
func (s pages) counted(ctx context.Context, p picks) sheet.Options {
	o := sheet.Options{Paper: p.paper, Kinds: p.kinds, Date: s.Store.Now(), Hash: sheet.Hash(p.stored.Document), Measured: Measured(p.job)}
	if slices.Contains(p.kinds, sheet.Compare) {
		o.Choices = sheet.ChoicesOf(p.job, func(one survey.Job) (layout.Plan, error) { return s.Solve(ctx, one) }, nil)
	}
	return o
}

// wouldHelp is what would help a job where poor cuts remain; nothing where that cannot
// be worked out in time.
func (s pages) wouldHelp(ctx context.Context, job survey.Job, plan layout.Plan) []layout.Remedy {
	help, err := s.WouldHelp(ctx, job, plan)
	if err != nil {
		return nil
	}
	return help.Remedies
}

// lastBook keeps the sheets that were shown last, because each of their pictures is
// asked for by itself.
type lastBook struct {
	mu    sync.Mutex
	key   string
	pages []sheet.Page
}

// mostKept is how many things a page may consist of to be kept.
const mostKept = 50_000

// pictures are the sheets of some picks, as they are printed.
func (s pages) pictures(ctx context.Context, p picks) []sheet.Page {
	key := p.key(s.Store.Now().Format("2006-01-02"))
	s.last.mu.Lock()
	kept, same := s.last.pages, s.last.key == key
	s.last.mu.Unlock()
	if same {
		return kept
	}
	all := sheet.Pages(p.plan, s.options(ctx, p))
	if slices.ContainsFunc(all, func(one sheet.Page) bool { return len(one.Scene.Elements) > mostKept }) || ctx.Err() != nil {
		return all
	}
	s.last.mu.Lock()
	defer s.last.mu.Unlock()
	s.last.key, s.last.pages = key, all
	return all
}

func (p picks) key(date string) string {
	parts := []string{string(p.stored.Document), p.paper.Name, date, strconv.FormatInt(p.stored.ID, 10)}
	for _, k := range p.kinds {
		parts = append(parts, string(k))
	}
	return strings.Join(parts, "\n")
}
