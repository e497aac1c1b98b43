package bench

import (
	"context"
	"errors"
	"net/http"
	"net/url"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/web/form"
	"coursewright/web/page"
)

// showWidths works out what a wrong width would do: every wall narrower and
// wider by a step, once with the set-out kept and once solved anew.
func (s pages) showWidths(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	shown := Widths{Bench: Bench{Job: s.Shown(r.Context(), stored, job, plan), sight: sight{Wall: -1}}}
	for i := range plan.Walls {
		for _, off := range []length.Length{-off(plan.Room.Units), off(plan.Room.Units)} {
			row, err := s.wrong(r.Context(), job, plan, i, off)
			if err != nil {
				return err
			}
			shown.Rows = append(shown.Rows, row)
		}
	}
	return page.Render(w, r, http.StatusOK, WidthsPage(shown))
}

// wrong solves a job with one wall wider by off.
func (s pages) wrong(ctx context.Context, job survey.Job, plan layout.Plan, wall int, off length.Length) (Wrong, error) {
	row := Wrong{Wall: wall, Width: plan.Walls[wall].Found.Width + off, Off: off}
	if err := ctx.Err(); err != nil {
		return row, err // the reader is gone
	}
	wide, err := widened(job, wall, row.Width.Plain(plan.Room.Units, 0))
	if err != nil {
		return row, err
	}
	kept, err := s.setout(ctx, kept(wide, plan))
	if err != nil || kept == nil {
		return row, err
	}
	best, err := s.setout(ctx, keep.LetGo(wide))
	row.Kept, row.Best = kept, best
	return row, err
}

// setout solves a job; one that cannot be set has no set-out.
func (s pages) setout(ctx context.Context, job survey.Job) (*plan.Setout, error) {
	plan, err := s.Solve(ctx, job)
	var faults survey.Faults
	switch {
	case errors.As(err, &faults):
		return nil, nil
	case err != nil:
		return nil, err
	}
	return &plan.Setout, nil
}

// widened is the job with another width, and what stood at the wall's right
// end moved along.
func widened(job survey.Job, wall int, width string) (survey.Job, error) {
	document, err := survey.Write(job)
	if err != nil {
		return job, err
	}
	out, err := survey.Read(document) // a copy that shares nothing
	if err != nil {
		return job, err
	}
	return out, form.Decode(&out, url.Values{form.At("walls", wall) + ".width": {width}})
}

// kept pins the course line and the starts of a plan.
func kept(job survey.Job, plan layout.Plan) survey.Job {
	u := plan.Room.Units
	job.Pins.Course.Line = plan.Setout.Line.Plain(u, 0)
	pins := map[string]survey.WallPin{}
	for _, w := range plan.Walls {
		pin := survey.WallPin{Marks: job.Pins.Walls[w.Found.Name].Marks}
		if pin.Joint = w.Start.X.Plain(u, 0); w.Start.OnTile {
			pin.Joint, pin.Tile = "", pin.Joint
		}
		if w.Found.Single {
			pin.Joint, pin.Tile = "", ""
		}
		pins[w.Found.Name] = pin
	}
	job.Pins.Walls = pins
	return job
}
