// Package jobs is the page of all jobs, and the way to a new one.
package jobs

import (
	"cmp"
	"errors"
	"io"
	"net/http"
	"strconv"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/ask"
	"coursewright/web/page"
	"coursewright/web/shapes"
)

// pages are the pages of the jobs.
type pages struct{ page.Site }

// Routes are the addresses of the jobs.
func Routes(site page.Site) []page.Route {
	s := pages{site}
	return []page.Route{
		page.Get("/", s.listJobs),
		page.Post("/jobs", s.newJob),
		page.Post("/jobs/import", s.importJob),
		page.Post("/jobs/{id}/copy", s.copyJob),
		page.Post("/jobs/{id}/delete", s.deleteJob),
		page.Post("/jobs/{id}/restore", s.restoreJob),
		page.Post("/jobs/{id}/erase", s.eraseJob),
		page.Get("/jobs/{id}/wrap.svg", s.showThumb),
		page.Get("/jobs/{id}/job.json", s.exportJob),
		page.Get("/jobs/{id}/plan.json", s.exportPlan),
	}
}

func (s pages) listJobs(w http.ResponseWriter, r *http.Request) error {
	q := r.URL.Query()
	just, _ := strconv.ParseInt(q.Get("deleted"), 10, 64)
	from, _ := strconv.Atoi(q.Get("from"))
	return s.showJobs(w, r, http.StatusOK, Jobs{Just: just, Words: strings.TrimSpace(q.Get("find")), From: max(from, 0)})
}

// showJobs renders the list with what page holds already.
func (s pages) showJobs(w http.ResponseWriter, r *http.Request, status int, shown Jobs) (err error) {
	if shown.Kept, shown.All, err = s.Store.Find(r.Context(), shown.Words, shown.From, onePage); err != nil {
		return err
	}
	for _, one := range shown.Kept {
		shown.Rows = append(shown.Rows, s.row(r.Context(), one))
	}
	if shown.Deleted, err = s.Store.Deleted(r.Context()); err != nil {
		return err
	}
	return page.Render(w, r, status, JobsPage(shown))
}

func (s pages) newJob(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	title := cmp.Or(strings.TrimSpace(r.PostForm.Get("title")), "New job")
	job, err := shapes.New(r.PostForm.Get("shape"), r.PostForm.Get("units"), title)
	if err != nil {
		return page.BadRequest(err)
	}
	job.Guess = ask.Paths(job) // nobody has measured anything yet
	return s.create(w, r, job)
}

// importJob takes a job file as it is, if it can be solved.
func (s pages) importJob(w http.ResponseWriter, r *http.Request) error {
	file, _, err := r.FormFile("file")
	if err != nil {
		return page.BadRequest(err)
	}
	defer file.Close()
	document, err := io.ReadAll(file) // the door bounds what is sent
	if err != nil {
		return page.BadRequest(err)
	}
	job, err := survey.Read(document)
	if err == nil {
		_, err = s.Solve(r.Context(), job)
	}
	var faults survey.Faults
	if errors.As(err, &faults) {
		return s.showJobs(w, r, http.StatusUnprocessableEntity, Jobs{Faults: faults})
	}
	if err != nil {
		return err
	}
	return s.create(w, r, job)
}

func (s pages) create(w http.ResponseWriter, r *http.Request, job survey.Job) error {
	document, err := survey.Write(job)
	if err != nil {
		return err
	}
	made, err := s.Store.Create(r.Context(), job.Title, document)
	if err != nil {
		return err
	}
	http.Redirect(w, r, string(page.JobPath(made.ID, "")), http.StatusSeeOther)
	return nil
}

// copyJob makes a job of its own of what a job is now, with the set-out that it holds, and
// without its ticks: those are of one wall.
func (s pages) copyJob(w http.ResponseWriter, r *http.Request) error {
	standing, err := s.StandingOf(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(standing.Stored.Document)
	if err != nil {
		return err
	}
	job.Title = copied(job.Title)
	return s.create(w, r, job)
}

// copied is the title of a copy, no longer than a title may be.
func copied(title string) string {
	const suffix, most = ", copy", 200
	runes := []rune(page.Titled(title))
	return string(runes[:min(len(runes), most-len(suffix))]) + suffix
}

func (s pages) deleteJob(w http.ResponseWriter, r *http.Request) error {
	id, err := page.JobID(r)
	if err != nil {
		return err
	}
	if err := s.Store.Delete(r.Context(), id); err != nil {
		return err
	}
	http.Redirect(w, r, "/?deleted="+strconv.FormatInt(id, 10), http.StatusSeeOther)
	return nil
}

func (s pages) restoreJob(w http.ResponseWriter, r *http.Request) error {
	id, err := page.JobID(r)
	if err != nil {
		return err
	}
	if err := s.Store.Restore(r.Context(), id); err != nil {
		return err
	}
	http.Redirect(w, r, string(page.JobPath(id, "")), http.StatusSeeOther)
	return nil
}

// exportJob sends the job file, with the set-out that it holds.
func (s pages) exportJob(w http.ResponseWriter, r *http.Request) error {
	job, err := s.StandingOf(r)
	if err != nil {
		return err
	}
	return sendFile(w, "application/json", page.FileName(job.Stored.Title)+".json", job.Stored.Document)
}

// exportPlan sends the plan file.
func (s pages) exportPlan(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Telling().Solved(r)
	if err != nil {
		return err
	}
	file, err := plan.File()
	if err != nil {
		return err
	}
	return sendFile(w, "application/json", page.FileName(stored.Title)+"-plan.json", file)
}

func sendFile(w http.ResponseWriter, kind, name string, data []byte) error {
	return page.Send(w, kind, `attachment; filename="`+name+`"`, data)
}
