package web

import (
	"cmp"
	"errors"
	"io"
	"net/http"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/shapes"
	"coursewright/web/view"
)

func (s *Server) listJobs(w http.ResponseWriter, r *http.Request) error {
	just, _ := strconv.ParseInt(r.URL.Query().Get("deleted"), 10, 64)
	return s.showJobs(w, r, http.StatusOK, view.Jobs{Just: just})
}

// showJobs renders the list with what page holds already.
func (s *Server) showJobs(w http.ResponseWriter, r *http.Request, status int, page view.Jobs) (err error) {
	if page.Kept, err = s.Store.Jobs(r.Context()); err != nil {
		return err
	}
	if page.Deleted, err = s.Store.Deleted(r.Context()); err != nil {
		return err
	}
	return render(w, r, status, view.JobsPage(page))
}

func (s *Server) newJob(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return badRequest(err)
	}
	title := cmp.Or(strings.TrimSpace(r.PostForm.Get("title")), "New job")
	job, err := shapes.New(r.PostForm.Get("shape"), r.PostForm.Get("units"), title)
	if err != nil {
		return badRequest(err)
	}
	return s.create(w, r, job)
}

// importJob takes a job file as it is, if it can be solved.
func (s *Server) importJob(w http.ResponseWriter, r *http.Request) error {
	file, _, err := r.FormFile("file")
	if err != nil {
		return badRequest(err)
	}
	defer file.Close()
	document, err := io.ReadAll(io.LimitReader(file, survey.MaxBytes+1))
	if err != nil {
		return badRequest(err)
	}
	job, err := survey.Read(document)
	if err == nil {
		_, err = s.Solve(job)
	}
	var faults survey.Faults
	if errors.As(err, &faults) {
		return s.showJobs(w, r, http.StatusUnprocessableEntity, view.Jobs{Faults: faults})
	}
	if err != nil {
		return err
	}
	return s.create(w, r, job)
}

func (s *Server) create(w http.ResponseWriter, r *http.Request, job survey.Job) error {
	document, err := survey.Write(job)
	if err != nil {
		return err
	}
	made, err := s.Store.Create(r.Context(), job.Title, document)
	if err != nil {
		return err
	}
	http.Redirect(w, r, jobPath(made.ID), http.StatusSeeOther)
	return nil
}

func (s *Server) deleteJob(w http.ResponseWriter, r *http.Request) error {
	id, err := jobID(r)
	if err != nil {
		return err
	}
	if err := s.Store.Delete(r.Context(), id); err != nil {
		return err
	}
	http.Redirect(w, r, "/?deleted="+strconv.FormatInt(id, 10), http.StatusSeeOther)
	return nil
}

func (s *Server) restoreJob(w http.ResponseWriter, r *http.Request) error {
	id, err := jobID(r)
	if err != nil {
		return err
	}
	if err := s.Store.Restore(r.Context(), id); err != nil {
		return err
	}
	http.Redirect(w, r, jobPath(id), http.StatusSeeOther)
	return nil
}

func (s *Server) exportJob(w http.ResponseWriter, r *http.Request) error {
	job, err := s.load(r)
	if err != nil {
		return err
	}
	return sendFile(w, "application/json", fileName(job.Title)+".json", job.Document)
}

// exportPlan sends the plan file.
func (s *Server) exportPlan(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.solved(r)
	if err != nil {
		return err
	}
	file, err := plan.File()
	if err != nil {
		return err
	}
	return sendFile(w, "application/json", fileName(stored.Title)+"-plan.json", file)
}

func sendFile(w http.ResponseWriter, kind, name string, data []byte) error {
	return sendAs(w, kind, `attachment; filename="`+name+`"`, data)
}

// fileName makes a title into a name that every file system takes.
func fileName(title string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, title)
	return cmp.Or(strings.Trim(name[:min(len(name), 60)], "-"), "job")
}

func jobPath(id int64) string { return "/jobs/" + strconv.FormatInt(id, 10) }

func jobID(r *http.Request) (int64, error) {
	id, err := strconv.ParseInt(chi.URLParam(r, "id"), 10, 64)
	if err != nil || id < 1 {
		return 0, &refusal{http.StatusNotFound, "There is no such job."}
	}
	return id, nil
}

func (s *Server) load(r *http.Request) (store.Job, error) {
	id, err := jobID(r)
	if err != nil {
		return store.Job{}, err
	}
	return s.Store.Load(r.Context(), id)
}
