package page

import (
	"context"
	"errors"
	"net/http"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/survey"
	"coursewright/store"
)

// Standing is a job as it stands: with the set-out that its revision keeps, if the engine would give
// another one by now. Laws, each with a test:
//
//  1. A revision that keeps a set-out shows that set-out, whatever the engine would give: on every
//     page, on the sheets, and in the files that are exported.
//  2. A revision that keeps none is judged, and keeps what comes of it: no edit, no new revision.
//  3. Two set-outs with every piece in the same place are one: nothing is held then.
//  4. Where the set-out kept cannot be held any more, the job is judged as if it kept none, and
//     Unfit says why. What is kept stays.
type Standing struct {
	Stored store.Job // its document holds the set-out where Job does
	Job    survey.Job
	Plan   layout.Plan
	Unfit  survey.Faults // why the set-out kept cannot be held
}

// Standing works out how a stored job stands. Faults of the job itself come back as the error, with
// the job as it was typed.
func (s Site) Standing(ctx context.Context, stored store.Job) (Standing, error) {
	out := Standing{Stored: stored}
	var err error
	if out.Job, err = survey.Read(stored.Document); err != nil {
		return out, err
	}
	if out.Plan, err = s.Solve(ctx, out.Job); err != nil || len(out.Plan.Walls) == 0 {
		return out, err
	}
	now := keep.Of(layout.Engine, out.Job, out.Plan.Setout, out.Plan.Walls)
	if stored.Setout == nil {
		return out, s.keepJudged(ctx, stored, now)
	}
	kept, err := keep.Read(stored.Setout)
	if err != nil {
		return out, err
	}
	same, err := keep.Equal(kept, now)
	if err != nil {
		return out, err
	}
	if same {
		s.Settled.Note(stored.Document, stored.Setout)
		return out, nil
	}
	return out, s.held(ctx, &out, kept)
}

// Stands gives a stored job as Standing does, to whom needs no plan: nothing is solved where the set-out
// kept is known to come of it.
func (s Site) Stands(ctx context.Context, stored store.Job) (store.Job, error) {
	if s.Settled.has(stored.Document, stored.Setout) {
		return stored, nil
	}
	out, err := s.Standing(ctx, stored)
	return out.Stored, err
}

// keepJudged writes down the set-out of a revision that kept none. Where that cannot be written, as
// on a full disk, the page is shown all the same: the next one tries again.
func (s Site) keepJudged(ctx context.Context, stored store.Job, now survey.Held) error {
	setout, err := keep.Write(now)
	if err != nil {
		return err
	}
	_ = s.Store.KeepSetout(ctx, stored.ID, stored.Revision, setout)
	s.Settled.Note(stored.Document, setout)
	return nil
}

// held lets a job stand by the set-out it keeps, if that is another one than its plan has.
func (s Site) held(ctx context.Context, out *Standing, kept survey.Held) error {
	if h := out.Job.Held; h != nil {
		kept.Engine = h.Engine // it is held already, for good or not
	}
	job := keep.Hold(out.Job, kept)
	plan, err := s.Solve(ctx, job)
	if errors.As(err, &out.Unfit) {
		return nil
	}
	if err != nil || keep.Same(out.Plan.Walls, plan.Walls) {
		return err
	}
	document, err := survey.Write(job)
	if err != nil {
		return err
	}
	out.Job, out.Plan, out.Stored.Document = job, plan, document
	return nil
}

// StandingOf is the job of a request as it stands. Where it has faults it is as it was typed, and
// without a plan.
func (s Site) StandingOf(r *http.Request) (Standing, error) {
	stored, err := s.Load(r)
	if err != nil {
		return Standing{}, err
	}
	out, err := s.Standing(r.Context(), stored)
	var faults survey.Faults
	if errors.As(err, &faults) {
		out.Plan, err = layout.Plan{}, nil
	}
	return out, err
}

// StateOf is what a revision holds of a job and its plan.
func StateOf(job survey.Job, plan layout.Plan) (store.State, error) {
	document, err := survey.Write(job)
	if err != nil || len(plan.Walls) == 0 {
		return store.State{Title: job.Title, Document: document}, err
	}
	kept := keep.Of(layout.Engine, job, plan.Setout, plan.Walls)
	if job.Held != nil && job.Held.Engine != "" {
		kept.Engine = job.Held.Engine // judged by that one, and not anew yet
	}
	setout, err := keep.Write(kept)
	return store.State{Title: job.Title, Document: document, Setout: setout}, err
}
