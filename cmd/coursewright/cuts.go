package main

import (
	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/survey"
)

// cuts prints the cut schedule of a job as CSV.
func (p *program) cuts(args []string) int {
	file, code := p.jobFile(newFlags("cuts"), args)
	if code != 0 {
		return code
	}
	_, plan, err := p.solved(file)
	if err != nil {
		return p.refuse(err)
	}
	schedule := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
	if err := schedule.CSV(p.Out, plan.Room.Units); err != nil {
		return p.fail(err)
	}
	return 0
}

// solved reads and solves a job file, and gives the job too.
func (p *program) solved(file string) (survey.Job, layout.Plan, error) {
	document, err := p.read(file)
	if err != nil {
		return survey.Job{}, layout.Plan{}, err
	}
	job, err := survey.Read(document)
	if err != nil {
		return survey.Job{}, layout.Plan{}, err
	}
	plan, err := layout.Solve(job)
	return job, plan, err
}
