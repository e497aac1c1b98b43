package page

import (
	"context"
	"net/http"
	"strconv"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
	"coursewright/store"
)

// Solver turns a job into its plan, as layout.Solve and layout.Quick do. It stops when the context ends.
type Solver func(context.Context, survey.Job) (layout.Plan, error)

// Site is what every page is given: where jobs are kept, and who solves them.
type Site struct {
	Store   *store.Store
	Solve   Solver   // without telling why
	Tell    Solver   // the same plan, told of
	Address string   // host and port for a phone on the network; empty without one
	Help    *Helper  // what would help, kept; nil keeps nothing
	Settled *Settled // set-outs that are known to stand; nil knows of none
}

// Telling is the site whose plans are told of.
func (s Site) Telling() Site {
	s.Solve = s.Tell
	return s
}

// Handler answers a request or says why it cannot.
type Handler func(http.ResponseWriter, *http.Request) error

// Route is one line of the table of routes.
type Route struct {
	Method, Path string
	Do           Handler
	Looks        bool // a form is posted, and nothing saved
}

// Get is a route that reads.
func Get(path string, do Handler) Route { return Route{Method: http.MethodGet, Path: path, Do: do} }

// Post is a route that writes.
func Post(path string, do Handler) Route { return Route{Method: http.MethodPost, Path: path, Do: do} }

// Look is a route that is posted a form and saves nothing.
func Look(path string, do Handler) Route {
	return Route{Method: http.MethodPost, Path: path, Do: do, Looks: true}
}

// JobPath is the address of a job's page; rest is what stands behind its number.
func JobPath(id int64, rest string) templ.SafeURL {
	return templ.SafeURL("/jobs/" + strconv.FormatInt(id, 10) + rest)
}

// JobID reads the number of the job that a request is for.
func JobID(r *http.Request) (int64, error) {
	id, err := strconv.ParseInt(chi.URLParam(r, "id"), 10, 64)
	if err != nil || id < 1 {
		return 0, &Refusal{http.StatusNotFound, "There is no such job."}
	}
	return id, nil
}

// Load reads the job of a request.
func (s Site) Load(r *http.Request) (store.Job, error) {
	id, err := JobID(r)
	if err != nil {
		return store.Job{}, err
	}
	return s.Store.Load(r.Context(), id)
}

// Typed loads the job of a request as it was typed.
func (s Site) Typed(r *http.Request) (store.Job, survey.Job, error) {
	stored, err := s.Load(r)
	if err != nil {
		return stored, survey.Job{}, err
	}
	job, err := survey.Read(stored.Document)
	return stored, job, err
}

// Solved loads the job of a request as it stands, with its plan.
func (s Site) Solved(r *http.Request) (store.Job, layout.Plan, error) {
	stored, err := s.Load(r)
	if err != nil {
		return stored, layout.Plan{}, err
	}
	standing, err := s.Standing(r.Context(), stored)
	if err != nil {
		return stored, standing.Plan, BadRequest(err)
	}
	return standing.Stored, standing.Plan, nil
}

// Schedule is the cut schedule of a plan.
func Schedule(plan layout.Plan) cuts.Schedule {
	return cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
}

// ToBuy is the take-off of a plan with its cut schedule.
func ToBuy(plan layout.Plan, c cuts.Schedule) takeoff.Takeoff {
	in := takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: c.Offcuts, Others: c.Others}
	return takeoff.Of(in, takeoff.For(plan.Room))
}
