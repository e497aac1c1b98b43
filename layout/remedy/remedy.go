// Package remedy says what would help where the best set-out still has cuts that
// a setter would rather not make. Every change is tried on a copy of the job and
// really solved; what it would give is read off that plan.
//
// Laws, each with a test:
//
//  1. A remedy is asked for only where bare wall, unworkable pieces, slivers or a
//     run under a quarter remain in sight; a near miss wherever a start is free.
//  2. A remedy is better than the set-out by the job's own order of merit, in a
//     term up to the runs. A preference is better by the order that it gives.
//  3. Apply, with the fields that a remedy names, gives a job whose plan has the
//     figures stated. Its smallest cut is a piece of that plan.
//  4. At most mostTries changes and mostNear starts are solved, and none is begun
//     once mostEffort is counted. What was not tried is told. The same job gives the
//     same remedies in the same order.
//  5. What is moved was measured and is not built; it is told by where the set-out with its place free
//     puts it, of bands the nearest that leaves nothing poor.
//  6. Find ends soon after its context does, with its error.
package remedy

import (
	"cmp"
	"context"
	"errors"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plan"
	"coursewright/layout/setout"
	"coursewright/layout/setout/effort"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// Bounds of what is solved and told.
const (
	mostTries = 16
	mostNear  = 12
	mostTold  = 6

	// mostEffort is less than one search may count in a room that it does not prove (two to
	// three times search.Work), so that all ends after little more than the time of one.
	mostEffort = 3_000_000
)

// Kind is what a remedy changes.
type Kind string

// The kinds.
const (
	Leg        Kind = "leg"
	Cover      Kind = "cover"
	Gap        Kind = "gap"
	Joint      Kind = "joint"
	Stop       Kind = "stop"
	Move       Kind = "move"
	Pin        Kind = "pin"
	Hand       Kind = "hand"
	Offset     Kind = "offset"
	Preference Kind = "preference"
	NearMiss   Kind = "near miss"
)

// Remedy is one change and what it would give.
type Remedy struct {
	Kind   Kind
	Text   string     // what to change, in a sentence
	Use    []Use      // the same as it would be typed
	Term   merit.Term // the term that decides for the change; of a near miss merit.None
	Before string     // what the set-out has in that term, in its unit
	After  string     // and what it would have
	Cost   string     // of a preference and a near miss: what else would be, and what there is now; or empty
	Tiles  int        // of a near miss: how many tiles fewer are needed
	Wall   string     // where the smallest cut would be
	Least  plan.Least // the smallest cut in sight after the change; Piece is empty when nothing is cut
}

// Use is a field of the job with what to write there. A list grows by one where
// the field is the next after its last.
type Use struct{ Path, Text string }

// Solved is a job worked out.
type Solved struct {
	Room   survey.Room
	Setout plan.Setout
	Walls  []plan.Wall
}

// Solve works out a job. The error is survey.Faults, or the context's.
func Solve(ctx context.Context, job survey.Job) (Solved, error) {
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return Solved{}, faults
	}
	room, chosen, walls, err := setout.Quick(ctx, room)
	return Solved{Room: room, Setout: chosen, Walls: walls}, err
}

// Help is what would help a job.
type Help struct {
	Remedies []Remedy
	Untried  []string // changes that may help as well, in sentences: to try them would have taken too long
}

// Find gives what would help a job that was solved: at most six changes, the best
// first, then what other preferences would give, then near misses; a list that is
// empty where nothing does. The error is the context's.
func Find(ctx context.Context, job survey.Job, now Solved) (Help, error) {
	ctx, spent := effort.Counted(ctx)
	a := &asker{job: job, now: now, spent: spent}
	help, err := a.changes(ctx)
	if err != nil {
		return Help{}, err
	}
	near, err := a.nearMisses(ctx)
	help.Remedies = append(append([]Remedy{}, help.Remedies...), near...)
	return help, err
}

// Changes gives of what Find gives the changes and preferences alone: nothing, and at
// once, where the set-out leaves nothing poor. The error is the context's.
func Changes(ctx context.Context, job survey.Job, now Solved) (Help, error) {
	ctx, spent := effort.Counted(ctx)
	return (&asker{job: job, now: now, spent: spent}).changes(ctx)
}

// asker tries changes of one job.
type asker struct {
	job    survey.Job
	now    Solved
	solved int // how many jobs were solved so far
	spent  *effort.Sum
}

// tired tells whether no more jobs are to be solved.
func (a *asker) tired() bool { return a.spent.Spent() >= mostEffort }

// Troubled tells whether a set-out leaves something in sight that a setter would
// rather not cut.
func Troubled(m *merit.Merit) bool {
	return m.Bare > 0 || m.Unworkable > 0 || m.Slivers > 0 || len(m.Runs) > 0 && underQuarter(m.Runs[0].Num, m.Runs[0].Den)
}

func underQuarter(num, den int64) bool { return 4*num < den }

// outcome is a change that was solved.
type outcome struct {
	try
	Solved
}

// changes tries what may help and what others prefer.
func (a *asker) changes(ctx context.Context) (help Help, err error) {
	if !Troubled(&a.now.Setout.Merit) {
		return Help{}, nil
	}
	tries, kept, err := a.promising(ctx)
	if err != nil {
		return Help{}, err
	}
	var helps []outcome      // one for each thing that is changed
	best := map[string]int{} // their places
	add := func(o outcome) {
		i, known := best[o.about]
		switch {
		case !known:
			best[o.about] = len(helps)
			helps = append(helps, o)
		case a.compare(o, helps[i]) < 0:
			helps[i] = o
		}
	}
	var preferences []Remedy
	for _, t := range tries {
		if i, known := best[t.about]; known && t.kind == Move && !Troubled(&helps[i].Setout.Merit) {
			continue // nothing poor is left, and less is moved
		}
		if a.solved >= mostTries || a.tired() {
			if !slices.ContainsFunc(kept, func(o outcome) bool { return o.about == t.about }) {
				help.Untried = append(help.Untried, t.text)
			}
			continue
		}
		t, s, there, err := a.tried(ctx, t)
		switch {
		case err != nil:
			return Help{}, err
		case !there:
		case t.kind == Preference:
			if r, differs := a.preferred(t, s); differs {
				preferences = append(preferences, r)
			}
		case a.helps(&s.Setout.Merit):
			add(outcome{t, s})
		}
	}
	for _, o := range kept {
		add(o)
	}
	slices.SortStableFunc(helps, a.compare)
	for _, o := range helps {
		if a.tells(o) && len(help.Remedies) < mostTold {
			help.Remedies = append(help.Remedies, a.told(o))
		}
	}
	help.Remedies = append(help.Remedies, preferences...)
	return help, nil
}

// tried works out a change. One that moves something is told by where that comes to stand.
func (a *asker) tried(ctx context.Context, t try) (try, Solved, bool, error) {
	if t.move != nil {
		return a.moved(ctx, t)
	}
	s, there, err := a.solve(ctx, t.use)
	return t, s, there, err
}

// solve works out the job with other fields. One that is refused is not there.
func (a *asker) solve(ctx context.Context, use []Use) (s Solved, there bool, err error) {
	changed, err := Apply(a.job, use)
	if err == nil {
		s, err = Solve(ctx, changed)
	}
	var faults survey.Faults
	if errors.As(err, &faults) {
		return s, false, nil
	}
	a.solved++
	return s, err == nil, err
}

// compare orders changes by the job's own order, in the terms up to the runs.
func (a *asker) compare(x, y outcome) int {
	c, _ := a.now.Setout.Order.Until(&x.Setout.Merit, &y.Setout.Merit, merit.Mirror)
	return c
}

// helps tells whether a merit is better than the set-out's in a term up to the
// runs. What moves an unworkable piece out of sight does not help.
func (a *asker) helps(m *merit.Merit) bool {
	c, _ := a.now.Setout.Order.Until(m, &a.now.Setout.Merit, merit.Mirror)
	return c < 0 && m.OutOfSight.Unworkable <= a.now.Setout.Merit.OutOfSight.Unworkable
}

// tells tells whether a change gives enough to be told.
func (a *asker) tells(o outcome) bool {
	r := a.told(o)
	return r.Before != r.After
}

func (a *asker) told(o outcome) Remedy {
	_, term := a.now.Setout.Order.Compare(&o.Setout.Merit, &a.now.Setout.Merit)
	return a.remedy(o.try, o.Solved, term)
}

// remedy states a change that was solved, by the term that decides for it.
func (a *asker) remedy(t try, s Solved, term merit.Term) Remedy {
	r := Remedy{Kind: t.kind, Text: t.text, Use: t.use, Term: term, Least: s.Setout.Least}
	r.Before, r.After = a.figures(term, &s.Setout.Merit)
	if r.Least.Piece != "" {
		r.Wall = s.Walls[r.Least.Wall].Found.Name
	}
	return r
}

// figures are what the set-out and another have in a term.
func (a *asker) figures(t merit.Term, m *merit.Merit) (before, after string) {
	u, now := a.now.Room.Units, &a.now.Setout.Merit
	return tell.Figure(u, t, now, m), tell.Figure(u, t, m, now)
}

// preferred is what a preference would give, where that differs.
func (a *asker) preferred(t try, s Solved) (Remedy, bool) {
	c, term := s.Setout.Order.Until(&s.Setout.Merit, &a.now.Setout.Merit, merit.Slack)
	if c >= 0 {
		return Remedy{}, false
	}
	r := a.remedy(t, s, term)
	if _, worse := a.now.Setout.Order.Compare(&s.Setout.Merit, &a.now.Setout.Merit); worse != term {
		r.Cost = a.cost(&s.Setout.Merit) // else it is what stands there already
	}
	return r, true
}

// cost is what a set-out that is worse by the job's own order would have in the
// term that decides; empty where it is not worse.
func (a *asker) cost(m *merit.Merit) string {
	if c, _ := a.now.Setout.Order.Until(m, &a.now.Setout.Merit, merit.Slack); c <= 0 {
		return ""
	}
	var f plan.Figures
	tell.Against(&f, a.now.Room.Units, a.now.Setout.Order, m, &a.now.Setout.Merit)
	return f.Against()
}

// trouble lists the runs in sight that ask for a remedy, the worst first, each
// with its wall.
func (a *asker) trouble() []troubled {
	var out []troubled
	for i, w := range a.now.Walls {
		poor := map[string]bool{}
		for _, p := range w.Pieces {
			poor[p.ID] = p.Unworkable || p.Sliver
		}
		for _, r := range w.Runs {
			if !r.Low && (poor[r.Piece] || underQuarter(r.Share.Num, r.Share.Den)) {
				out = append(out, troubled{i, r})
			}
		}
	}
	slices.SortStableFunc(out, func(x, y troubled) int {
		switch {
		case x.run.Share.Less(y.run.Share):
			return -1
		case y.run.Share.Less(x.run.Share):
			return 1
		}
		return cmp.Compare(x.wall, y.wall)
	})
	return out
}

// troubled is a run that asks for a remedy.
type troubled struct {
	wall int
	run  plan.Run
}

// either picks a measure for the room's units.
func (a *asker) either(imperial, metric length.Length) length.Length {
	if a.now.Room.Units == length.Metric {
		return metric
	}
	return imperial
}
