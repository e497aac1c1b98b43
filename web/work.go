package web

import (
	"errors"
	"fmt"
	"net/http"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/drawing"
	"coursewright/web/form"
	"coursewright/web/view"
)

// showWork is what the plan means for the work: cuts, off-cuts, take-off and
// stages. ?cut=C3 marks the pieces of one cut in the drawing.
func (s *Server) showWork(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	return render(w, r, http.StatusOK, view.WorkPage(workOf(r, stored, job, plan)))
}

// editWork saves the settings of the work, and nothing else of the job.
func (s *Server) editWork(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return badRequest(err)
	}
	for path, values := range r.PostForm {
		if !strings.HasPrefix(path, "work.") {
			continue
		}
		if err := form.Set(&job, path, values[len(values)-1]); err != nil {
			return badRequest(err)
		}
	}
	changed, err := s.Solve(job)
	var faults survey.Faults
	if errors.As(err, &faults) {
		page := workOf(r, stored, job, plan)
		page.Faults = faults
		return render(w, r, http.StatusUnprocessableEntity, view.WorkPage(page))
	}
	if err != nil {
		return err
	}
	return s.save(w, r, stored.ID, job, changed)
}

// workOf gathers what the page shows of a job and its plan.
func workOf(r *http.Request, stored store.Job, job survey.Job, plan layout.Plan) view.Work {
	schedule := schedule(plan)
	out := view.Work{
		Bench: view.Bench{ID: stored.ID, Revision: stored.Revision, Typed: job, Plan: plan, Wall: -1},
		Cuts:  schedule, Saw: cuts.For(plan.Room), Buy: toBuy(plan, schedule),
		Stages: stages.Of(stages.Input{Room: plan.Room, Walls: plan.Walls, Cuts: schedule}, stages.For(plan.Room)),
		Days:   stages.For(plan.Room), Marked: r.URL.Query().Get("cut"),
	}
	if len(plan.Walls) > 0 {
		scene := drawing.Wrap(plan, drawing.Options{})
		for _, g := range schedule.Groups {
			if g.ID == out.Marked {
				scene = scene.Marked(g.Pieces)
			}
		}
		out.Drawing = picture(scene, "drawing")
	}
	out.Sketches = make([]templ.Component, len(schedule.Groups))
	for i, g := range schedule.Groups {
		title := fmt.Sprintf("%s from the face: %s", g.ID, g.Kind)
		out.Sketches[i] = picture(drawing.Sketch(g.Sketch, 50*drawing.Millimetre, 22*drawing.Millimetre, title), "sketch-"+g.ID)
	}
	return out
}
