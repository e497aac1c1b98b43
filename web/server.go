// Package web holds the table of routes and the adapter from a page's handler
// to net/http. A page is a folder: it gives its routes, and a line in pages.
package web

import (
	"io/fs"
	"log/slog"
	"net/http"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"github.com/go-chi/chi/v5"
	"github.com/go-chi/chi/v5/middleware"

	"coursewright/store"
	"coursewright/web/bathroom"
	"coursewright/web/bench"
	"coursewright/web/choices"
	"coursewright/web/door"
	"coursewright/web/formats"
	"coursewright/web/history"
	"coursewright/web/jobs"
	"coursewright/web/page"
	"coursewright/web/sheets"
	"coursewright/web/turns"
	"coursewright/web/work"
)

// pages is the table of routes, page by page.
var pages = []func(page.Site) []page.Route{
	jobs.Routes,
	bench.Routes,
	work.Routes,
	choices.Routes,
	sheets.Routes,
	bathroom.Routes,
	history.Routes,
	formats.Routes,
}

// Server serves one data file.
type Server struct {
	Store  *store.Store
	Static fs.FS        // the files under /static/
	Hosts  []string     // names it answers to beside loopback, without a port
	Door   *door.Door   // who may come in; nil: this machine alone
	Log    *slog.Logger // what went wrong here and was no fault of the person's
	Solve  page.Solver  // need not tell why
	Tell   page.Solver  // tells why
	Turns  turns.Limits // how many rooms are worked on at once; the usual ones where they are zero
	Ration int64        // bytes that the jobs may fill before devices of the network save nothing more; the usual ones where it is zero
}

// Handler gives every route, behind the guards.
func (s *Server) Handler() http.Handler {
	entry := s.Door
	if entry == nil {
		entry = door.New(s.Store)
	}
	r := chi.NewRouter()
	r.Use(door.Guard{Hosts: s.Hosts, Door: entry}.Wrap, squeezed, middleware.GetHead, s.footed)
	r.NotFound(s.page(func(http.ResponseWriter, *http.Request) error { return fs.ErrNotExist }))
	r.MethodNotAllowed(s.page(func(http.ResponseWriter, *http.Request) error { return page.ErrMethod }))
	for _, one := range entry.Routes() {
		r.Method(one.Method, one.Path, s.rationed(one, s.page(one.Do)))
	}
	desk := turns.New(s.Solve, s.Turns)
	site := s.site(desk)
	for _, routes := range pages {
		for _, one := range routes(site) {
			r.Method(one.Method, one.Path, s.rationed(one, desk.Handler(s.page(one.Do))))
		}
	}
	r.Get("/static/drawing.css", drawingStyle)
	r.Get("/static/condensed.ttf", font(dejavusanscondensed.TTF))
	r.Get("/static/condensed-bold.ttf", font(dejavusanscondensedbold.TTF))
	r.Get("/static/*", http.StripPrefix("/static/", static(s.Static)).ServeHTTP)
	return r
}

// site is what every page is given.
func (s *Server) site(desk *turns.Desk) page.Site {
	out := page.Site{Store: s.Store, Solve: desk.Solve, Tell: desk.Telling(s.Tell), Help: new(page.Helper), Settled: new(page.Settled)}
	if s.Door != nil && s.Door.Network {
		out.Address = s.Door.Address
	}
	return out
}

// footed gives the pages that this machine sees their foot.
func (s *Server) footed(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if door.AtHome(r) {
			r = r.WithContext(page.WithFoot(r.Context(), page.Foot{Data: s.Store.Path(), Filled: s.filled}))
		}
		next.ServeHTTP(w, r)
	})
}

// page is the one adapter from a handler to net/http.
func (s *Server) page(h page.Handler) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		err := h(w, r)
		if err == nil {
			return
		}
		status, title, text := page.Explain(err)
		if status == http.StatusInternalServerError {
			s.Log.Error("request failed", "method", r.Method, "path", r.URL.Path, "error", err)
		}
		if err := page.Render(w, r, status, page.Trouble(title, text)); err != nil {
			s.Log.Error("error page failed", "error", err)
		}
	}
}
