package main

import (
	"context"

	"coursewright/layout/cuts"
)

// cuts prints the cut schedule of a job as CSV.
func (p *program) cuts(ctx context.Context, args []string) int {
	file, code := p.jobFile(newFlags("cuts"), args)
	if code != 0 {
		return code
	}
	_, plan, err := p.solved(ctx, file)
	if err != nil {
		return p.refuse(err)
	}
	schedule := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
	if err := schedule.CSV(p.Out, plan.Room.Units); err != nil {
		return p.fail(err)
	}
	return 0
}
