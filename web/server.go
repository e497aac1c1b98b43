// Package web serves the jobs and the bench. A handler parses, calls the store
// and the layout, and renders; it returns an error, which one adapter turns
// into a page.
package web

import (
	"io/fs"
	"log/slog"
	"net/http"

	"github.com/go-chi/chi/v5"
	"github.com/go-chi/chi/v5/middleware"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/store"
)

// Server serves one data file.
type Server struct {
	Store  *store.Store
	Static fs.FS                                 // the files under /static/
	Hosts  []string                              // names it answers to beside loopback, without a port
	Door   *Door                                 // lets devices of the network in; nil: the network gets nothing
	Log    *slog.Logger                          // what went wrong here and was no fault of the person's
	Solve  func(survey.Job) (layout.Plan, error) // layout.Solve
}

// Handler gives every route, behind the guards.
func (s *Server) Handler() http.Handler {
	r := chi.NewRouter()
	r.Use(safeHeaders, s.knownHost, s.byTheDoor, sameOrigin, smallBody, middleware.GetHead)
	r.NotFound(s.page(func(http.ResponseWriter, *http.Request) error { return fs.ErrNotExist }))
	r.MethodNotAllowed(s.page(func(http.ResponseWriter, *http.Request) error { return errMethod }))
	r.Get("/", s.page(s.listJobs))
	r.Get("/open/{code}", s.page(s.openByLink))
	r.Post("/open", s.page(s.openByForm))
	r.Post("/jobs", s.page(s.newJob))
	r.Post("/jobs/import", s.page(s.importJob))
	r.Route("/jobs/{id}", func(r chi.Router) {
		r.Get("/", s.page(s.showBench))
		r.Post("/", s.page(s.editJob))
		r.Post("/look", s.page(s.look))
		r.Get("/piece", s.page(s.findPiece))
		r.Get("/piece/{piece}", s.page(s.showPiece))
		r.Get("/widths", s.page(s.showWidths))
		r.Post("/undo", s.page(s.move(s.Store.Undo)))
		r.Post("/redo", s.page(s.move(s.Store.Redo)))
		r.Post("/keep", s.page(s.keepChosen))
		r.Post("/delete", s.page(s.deleteJob))
		r.Post("/restore", s.page(s.restoreJob))
		r.Get("/work", s.page(s.showWork))
		r.Post("/work", s.page(s.editWork))
		r.Get("/choices", s.page(s.showChoices))
		r.Post("/choices", s.page(s.editChoices))
		r.Get("/bathroom", s.page(s.showBathroom))
		r.Post("/bathroom", s.page(s.tickPieces))
		r.Get("/job.json", s.page(s.exportJob))
		r.Get("/plan.json", s.page(s.exportPlan))
		r.Get("/sheets.pdf", s.page(s.printSheets))
		r.Get("/cuts.csv", s.page(s.sendCuts))
		r.Get("/takeoff.csv", s.page(s.sendTakeoff))
	})
	r.Get("/static/drawing.css", drawingStyle)
	r.Get("/static/condensed.ttf", drawingFont)
	r.Get("/static/*", http.StripPrefix("/static/", static(s.Static)).ServeHTTP)
	return r
}

// static serves embedded files. They change only with the program, and a page
// asks again whether they have.
func static(files fs.FS) http.Handler {
	serve := http.FileServerFS(files)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "" || r.URL.Path[len(r.URL.Path)-1] == '/' {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Cache-Control", "no-cache")
		serve.ServeHTTP(w, r)
	})
}
