package bench

import (
	"context"
	"errors"
	"net/http"
	"strings"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/form"
	"coursewright/web/page"
)

// The set-out that is held: by the button, by the first tick, or because the engine would give another
// one by now. The last is said until the person takes the new one or keeps the old.

// filledFrom is the job a posted form was filled from. A form that does not carry it was filled from
// the job as it stands.
func (s pages) filledFrom(r *http.Request) (store.Job, error) {
	stored, err := s.Load(r)
	if err != nil {
		return stored, err
	}
	if err := r.ParseForm(); err != nil {
		return stored, page.BadRequest(err)
	}
	if r.PostForm.Get(form.Filled) != "" || stored.Setout == nil {
		return stored, nil
	}
	stands, err := s.Stands(r.Context(), stored)
	var faults survey.Faults
	if errors.As(err, &faults) {
		err = nil // what is wrong with it is said of the form
	}
	return stands, err
}

// solveHeld solves what was posted; where the button says so the set-out that comes of it is held.
func (s pages) solveHeld(r *http.Request, tried *attempt) (layout.Plan, error) {
	plan, err := s.Solve(r.Context(), tried.job)
	if err != nil || len(tried.faults) > 0 || r.PostForm.Get(form.Do) != "hold" {
		return plan, err
	}
	tried.job = keep.Hold(tried.job, keep.Of("", tried.job, plan.Setout, plan.Walls))
	return s.Solve(r.Context(), tried.job)
}

// letsGo tells whether the button lets go of what is held.
func letsGo(r *http.Request) bool { return r.PostForm.Get(form.Do) == "letgo" }

// judgedAnew compares the set-out that a job holds, because another engine gave it, with what it would be by now; nil
// where nothing is to be said. For an edit it is not worked out, so that the edit is no slower.
func (s pages) judgedAnew(ctx context.Context, job survey.Job, held layout.Plan) (*keep.Difference, error) {
	if job.Held == nil || job.Held.Engine == "" || len(held.Walls) == 0 {
		return nil, nil
	}
	anew, err := s.Solve(ctx, keep.LetGo(job))
	var faults survey.Faults
	if errors.As(err, &faults) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if keep.Same(held.Walls, anew.Walls) {
		return &keep.Difference{}, nil
	}
	d := keep.Differ(judged(held), judged(anew))
	return &d, nil
}

func judged(p layout.Plan) keep.Judged {
	return keep.Judged{Room: p.Room, Setout: p.Setout, Walls: p.Walls}
}

// pending tells whether the set-out is held because another engine gave it, and nobody has said yet which it shall be.
func (b Bench) pending() bool { return b.Typed.Held != nil && b.Typed.Held.Engine != "" }

// anewText says in which term the set-out judged anew differs from the one held, with both figures.
func (b Bench) anewText() string {
	d := b.Anew
	switch {
	case d == nil:
		return "This set-out was worked out by another version of the program and is kept as it was."
	case len(d.Moves) == 0:
		return "Judged anew, this set-out would be the same."
	case d.Kept == "" || d.Kept == d.Anew:
		return "Judged anew, this set-out would be another one that counts the same:"
	}
	return "Judged anew, this set-out would be another one, with " + d.Anew + ", not " + d.Kept + ":"
}

// moveText says what would stand elsewhere.
func moveText(m keep.Move) string { return m.What + " " + m.Anew + ", not " + m.Kept }

// heldFaults are the places where what is held no longer fits.
func (b Bench) heldFaults() []page.Fault {
	var out []page.Fault
	for _, f := range b.Faults {
		if strings.HasPrefix(f.Path, "held.") {
			out = append(out, f)
		}
	}
	return out
}

// ownStart tells whether the job itself pins the start of a wall.
func (b Bench) ownStart(i int) bool {
	pin := b.Typed.Pins.Walls[b.Plan.Walls[i].Found.Name]
	return pin.Edge != "" || pin.Joint != "" || pin.Tile != ""
}

// ownLine tells whether the job itself pins the course line.
func (b Bench) ownLine() bool { return b.Typed.Pins.Course.Line != "" }
