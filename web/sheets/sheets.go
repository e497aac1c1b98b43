// Package sheets gives what is printed and what a spreadsheet takes.
package sheets

import (
	"bytes"
	"cmp"
	"io"
	"net/http"
	"strings"

	"coursewright/web/page"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/sheet"
)

// pages are the pages of the sheets.
type pages struct {
	page.Site
	last *lastBook
}

// Routes are the addresses of the sheets.
func Routes(site page.Site) []page.Route {
	s := pages{site, new(lastBook)}
	return []page.Route{
		page.Get("/jobs/{id}/sheets", s.showSheets),
		page.Get("/jobs/{id}/sheet.svg", s.showPreview),
		page.Get("/jobs/{id}/sheets.pdf", s.printSheets),
		page.Get("/jobs/{id}/cuts.csv", s.sendCuts),
		page.Get("/jobs/{id}/takeoff.csv", s.sendTakeoff),
	}
}

// printSheets sends the sheets of a job as one PDF: ?paper=a4&kinds=set-out,cuts, or as the boxes of the
// page of sheets have them, ?kind=set-out&kind=cuts.
// They bear the date of the day they are printed.
func (s pages) printSheets(w http.ResponseWriter, r *http.Request) error {
	paper, err := sheet.PaperNamed(paperOf(r))
	if err != nil {
		return page.BadRequest(err)
	}
	q := r.URL.Query()
	kinds, err := sheet.ParseKinds(cmp.Or(q.Get("kinds"), strings.Join(q["kind"], ",")))
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
	if err := sheet.Write(&out, plan, s.options(r.Context(), picks{stored, job, plan, kinds, paper})); err != nil {
		return err
	}
	return page.Send(w, "application/pdf", `inline; filename="`+page.FileName(stored.Title)+`.pdf"`, out.Bytes())
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
