package turns

import (
	"context"
	"errors"
	"sync"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

// Desk is where rooms are worked out.
type Desk struct {
	solve  page.Solver
	limits Limits
	queue  *queue
	recent recent

	mu      sync.Mutex
	running map[question]*run
}

// New is a desk at which rooms are solved as told.
func New(solve page.Solver, l Limits) *Desk {
	l = l.orUsual()
	return &Desk{solve: solve, limits: l, running: map[question]*run{},
		queue: &queue{has: map[asker]int{}, free: [2]int{ordinary: l.Rooms, large: l.Large}, most: l.Packed, wait: l.Wait, slice: l.Slice, rooms: l.Rooms}}
}

// question is what is solved: a job, by its file, and whether its plan is told of.
type question struct {
	document string
	told     bool
}

// run is one solving of a job, for all who ask for it meanwhile.
type run struct {
	done chan struct{} // closed when plan and err are there
	plan layout.Plan
	err  error
}

// errGivenUp is the end of a run that nobody waits for any more, or that broke off.
var errGivenUp = errors.New("given up")

// Solve gives the plan of a job: a recent one, that which is being worked out just now, or a new
// one. Plans are shared, so nobody may change one.
func (d *Desk) Solve(ctx context.Context, job survey.Job) (layout.Plan, error) {
	return d.plan(ctx, job, false, d.solve)
}

// Telling is Solve for who asks why: solved by a solver whose plans are told of.
func (d *Desk) Telling(solve page.Solver) page.Solver {
	return func(ctx context.Context, job survey.Job) (layout.Plan, error) { return d.plan(ctx, job, true, solve) }
}

func (d *Desk) plan(ctx context.Context, job survey.Job, told bool, solve page.Solver) (layout.Plan, error) {
	document, err := survey.Write(job)
	if err != nil {
		return layout.Plan{}, err
	}
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return layout.Plan{}, faults
	}
	for {
		plan, err := d.inTurn(ctx, d.sizeOf(room), question{string(document), told}, func(ctx context.Context) (layout.Plan, error) { return solve(ctx, job) })
		if !errors.Is(err, errGivenUp) {
			return plan, err
		}
	}
}

// inTurn takes the request's turn and gives the plan. Who finds it being made waits for it without a
// turn, and takes one to make a page of it.
func (d *Desk) inTurn(ctx context.Context, s size, what question, solve func(context.Context) (layout.Plan, error)) (layout.Plan, error) {
	mine := turnOf(ctx)
	if !d.underWay(what) {
		if err := mine.enter(ctx, s); err != nil {
			return layout.Plan{}, err
		}
	}
	plan, err := d.shared(ctx, what, solve)
	if err != nil {
		return plan, err
	}
	return plan, mine.enter(ctx, s)
}

func (d *Desk) sizeOf(room survey.Room) size {
	if room.About() >= d.limits.Pieces {
		return large
	}
	return ordinary
}

// underWay tells whether a job is being solved for somebody else.
func (d *Desk) underWay(what question) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.running[what] != nil
}

// shared gives a recent plan, or waits for that which is being made, or makes it.
func (d *Desk) shared(ctx context.Context, what question, solve func(context.Context) (layout.Plan, error)) (layout.Plan, error) {
	d.mu.Lock()
	if plan, found := d.recent.find(what); found {
		d.mu.Unlock()
		return plan, nil
	}
	if r := d.running[what]; r != nil {
		d.mu.Unlock()
		select {
		case <-r.done:
			return r.plan, r.err
		case <-ctx.Done():
			return layout.Plan{}, context.Cause(ctx)
		}
	}
	r := &run{done: make(chan struct{}), err: errGivenUp}
	d.running[what] = r
	d.mu.Unlock()
	defer d.ended(what, r)
	slices := d.paced(ctx)
	plan, err := solve(slices)
	if ctx.Err() == nil && slices.err == nil {
		r.plan, r.err = plan, err
	}
	return plan, err
}

// ended tells those who wait for a run that it is over, and remembers its plan.
func (d *Desk) ended(what question, r *run) {
	d.mu.Lock()
	defer d.mu.Unlock()
	delete(d.running, what)
	if r.err == nil {
		d.recent.keep(known{what, r.plan})
	}
	close(r.done)
}
