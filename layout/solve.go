// Package layout works out where every tile lands: Solve turns a job into a
// plan. It is pure: the same job gives the same plan, whatever the host, the
// clock or the store.
package layout

import (
	"context"

	"coursewright/layout/doubt"
	"coursewright/layout/finding"
	"coursewright/layout/niche"
	"coursewright/layout/plan"
	"coursewright/layout/remedy"
	"coursewright/layout/setout"
	"coursewright/layout/strip"
	"coursewright/layout/survey"
)

// Solve takes the steps the trade takes: read the room as found, find the best
// set-out and cut the pieces, and say what should be known. A job that cannot be
// worked with is refused with survey.Faults, all of them at once. It ends soon
// after ctx does, with its error.
func Solve(ctx context.Context, job survey.Job) (Plan, error) { return solve(ctx, job, setout.Solve) }

// Quick is Solve for whoever does not ask why: the same plan, but for what plan.Setout.Told
// speaks of.
func Quick(ctx context.Context, job survey.Job) (Plan, error) { return solve(ctx, job, setout.Quick) }

// Keeper solves jobs as Quick does, one edit after the other, and keeps what it has worked out of their walls: a wall that is
// as it was is not worked out again. What it gives is the same, whatever was asked before. It solves one job at a time.
type Keeper struct{ kept setout.Kept }

// Quick is the plan of a job.
func (k *Keeper) Quick(ctx context.Context, job survey.Job) (Plan, error) {
	return solve(ctx, job, k.kept.Quick)
}

type solver func(context.Context, survey.Room) (survey.Room, plan.Setout, []plan.Wall, error)

func solve(ctx context.Context, job survey.Job, setOut solver) (Plan, error) {
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return Plan{}, faults
	}
	room, chosen, walls, err := setOut(ctx, room)
	if err != nil {
		return Plan{}, err
	}
	if err := niche.Lay(ctx, room, chosen, walls); err != nil {
		return Plan{}, err
	}
	if err := strip.Lay(ctx, room, chosen, walls); err != nil {
		return Plan{}, err
	}
	setout.WithTops(&chosen, room, walls)
	out := Plan{Room: room, Setout: chosen, Walls: walls, Doubts: doubt.Raise(room, job)}
	out.Findings = finding.Judge(finding.Input{Room: room, Setout: chosen, Walls: walls})
	return out, nil
}

// Now solves a job to its end.
func Now(job survey.Job) (Plan, error) { return Solve(context.Background(), job) }

// Remedies says what would help a job beyond the plan that Solve gave for it. It
// solves the job some dozen times, which is why Solve does not ask for it. It ends
// soon after ctx does, with its error.
func Remedies(ctx context.Context, job survey.Job, p Plan) (Help, error) {
	return remedy.Find(ctx, job, remedy.Solved{Room: p.Room, Setout: p.Setout, Walls: p.Walls})
}

// Take gives the job with a remedy written into it. The error names a field that a job does not have.
func Take(job survey.Job, use []Use) (survey.Job, error) { return remedy.Apply(job, use) }

// WouldHelp is Remedies for whoever has room for little: changes that better what is
// poor, the best first, and nothing, at once, where the plan is not Troubled.
func WouldHelp(ctx context.Context, job survey.Job, p Plan) (Help, error) {
	return remedy.Changes(ctx, job, remedy.Solved{Room: p.Room, Setout: p.Setout, Walls: p.Walls})
}
