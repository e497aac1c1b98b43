// Package work is what a plan means for the work: what to cut, what to buy, what to do when.
package work

import (
	"errors"
	"fmt"
	"net/http"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout/cuts"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/form"
	"coursewright/web/history"
	"coursewright/web/page"
)

// pages are the pages of the work.
type pages struct{ page.Site }

// Routes are the addresses of the work.
func Routes(site page.Site) []page.Route {
	s := pages{site}
	return []page.Route{
		page.Get("/jobs/{id}/work", s.showWork),
		page.Post("/jobs/{id}/work", s.editWork),
	}
}

// showWork is what the plan means for the work: cuts, off-cuts, take-off and
// stages. ?cut=C3 marks the pieces of one cut in the drawing.
func (s pages) showWork(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	return page.Render(w, r, http.StatusOK, WorkPage(workOf(r, s.Shown(r.Context(), stored, job, plan))))
}

// editWork saves the settings of the work, and nothing else of the job.
func (s pages) editWork(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	for path, values := range r.PostForm {
		if !strings.HasPrefix(path, "work.") {
			continue
		}
		value := values[len(values)-1]
		if path == "work.turn" && value == "true" && job.Work.Turn == nil {
			continue // the usual answer is shown, but nobody has given it
		}
		if err := form.Set(&job, path, value); err != nil {
			return page.BadRequest(err)
		}
	}
	changed, err := s.Solve(r.Context(), job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		shown := workOf(r, s.Shown(r.Context(), stored, job, plan))
		shown.Faults = faults
		return page.Render(w, r, http.StatusUnprocessableEntity, WorkPage(shown))
	}
	if err != nil {
		return err
	}
	return history.Keeper{Site: s.Site}.Save(w, r, stored.ID, job, changed)
}

// workOf gathers what the page shows of a job and its plan.
func workOf(r *http.Request, shown page.Job) Work {
	plan := shown.Plan
	schedule := page.Schedule(plan)
	out := Work{
		Job:  shown,
		Cuts: schedule, Saw: cuts.For(plan.Room), Buy: page.ToBuy(plan, schedule),
		Stages: stages.Of(stages.Input{Room: plan.Room, Walls: plan.Walls, Cuts: schedule}, stages.For(plan.Room)),
		Days:   stages.For(plan.Room), Wide: page.Wide(r, page.BenchFrame), Marked: r.URL.Query().Get("cut"),
	}
	if len(plan.Walls) > 0 {
		scene := drawing.Wrap(plan, sized(out.Wide))
		for _, g := range schedule.Groups {
			if g.ID == out.Marked {
				scene = scene.Marked(g.Pieces)
			}
		}
		out.Drawing = page.Picture(scene, "drawing")
	}
	out.HintAt = hintAt
	out.Sketches = make([]templ.Component, len(schedule.Groups))
	for i, g := range schedule.Groups {
		title := fmt.Sprintf("%s from the face: %s", g.ID, g.Kind)
		out.Sketches[i] = page.Picture(drawing.CutSketch(g.Sketch, g.Outline, 50*drawing.Millimetre, 22*drawing.Millimetre, title), "sketch-"+g.ID)
	}
	return out
}

// sized is how the drawing is laid out over the tables: where it stays in sight while they are
// read it gets two fifths of the window, so it is laid out low instead of being made smaller, text and all.
func sized(wide drawing.Micron) drawing.Options {
	o := drawing.Options{Wide: wide, NoFlags: true}
	if wide == 0 || wide > 700*drawing.Pixel {
		o.High = 270 * drawing.Pixel
	}
	return o
}
