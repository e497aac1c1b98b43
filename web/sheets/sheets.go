// Package sheets gives what is printed and what a spreadsheet takes.
package sheets

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"slices"

	"coursewright/web/page"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/sheet"
)

// pages are the pages of the sheets.
type pages struct{ page.Site }

// Routes are the addresses of the sheets.
func Routes(site page.Site) []page.Route {
	s := pages{site}
	return []page.Route{
		page.Get("/jobs/{id}/sheets", s.showSheets),
		page.Get("/jobs/{id}/sheet.svg", s.showPreview),
		page.Get("/jobs/{id}/sheets.pdf", s.printSheets),
		page.Get("/jobs/{id}/cuts.csv", s.sendCuts),
		page.Get("/jobs/{id}/takeoff.csv", s.sendTakeoff),
	}
}

// printSheets sends the sheets of a job as one PDF: ?paper=a4&kinds=set-out,cuts.
// They bear the date of the day they are printed.
func (s pages) printSheets(w http.ResponseWriter, r *http.Request) error {
	paper, err := sheet.PaperNamed(r.URL.Query().Get("paper"))
	if err != nil {
		return page.BadRequest(err)
	}
	kinds, err := sheet.ParseKinds(r.URL.Query().Get("kinds"))
	if err != nil {
		return page.BadRequest(err)
	}
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	opts := sheet.Options{Paper: paper, Kinds: kinds, Date: s.Store.Now(), Hash: sheet.Hash(stored.Document)}
	opts.Choices, opts.Help = s.toCompare(r.Context(), job, kinds), s.wouldHelp(r.Context(), job, plan)
	if err := sheet.Write(&out, plan, opts); err != nil {
		return err
	}
	return page.Send(w, "application/pdf", `inline; filename="`+page.FileName(stored.Title)+`.pdf"`, out.Bytes())
}

// toCompare solves the choices of a job where their sheet is asked for.
func (s pages) toCompare(ctx context.Context, job survey.Job, kinds []sheet.Kind) []sheet.Choice {
	if len(kinds) > 0 && !slices.Contains(kinds, sheet.Compare) {
		return nil
	}
	return sheet.ChoicesOf(job, func(one survey.Job) (layout.Plan, error) { return s.Solve(ctx, one) },
		func(one survey.Job, plan layout.Plan) []layout.Remedy { return s.wouldHelp(ctx, one, plan) })
}

// wouldHelp is what would help a job where poor cuts remain; nothing where that cannot
// be worked out in time. It takes no leaf of its own, so pages are counted without it.
func (s pages) wouldHelp(ctx context.Context, job survey.Job, plan layout.Plan) []layout.Remedy {
	help, err := s.WouldHelp(ctx, job, plan)
	if err != nil {
		return nil
	}
	return help
}

// sendCuts sends the cut schedule as CSV.
func (s pages) sendCuts(w http.ResponseWriter, r *http.Request) error {
	return s.sendTable(w, r, "cuts", func(plan layout.Plan, out io.Writer) error {
		return page.Schedule(plan).CSV(out, plan.Room.Units)
	})
}

// sendTakeoff sends what to buy as CSV.
func (s pages) sendTakeoff(w http.ResponseWriter, r *http.Request) error {
	return s.sendTable(w, r, "take-off", func(plan layout.Plan, out io.Writer) error {
		return page.ToBuy(plan, page.Schedule(plan)).CSV(out)
	})
}

func (s pages) sendTable(w http.ResponseWriter, r *http.Request, name string, write func(layout.Plan, io.Writer) error) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := write(plan, &out); err != nil {
		return err
	}
	return page.Send(w, "text/csv; charset=utf-8", `attachment; filename="`+page.FileName(stored.Title)+"-"+name+`.csv"`, out.Bytes())
}
