package phase

// step is what is done to a start when it is looked at.
type step int

// The steps, in the order in which they are taken: a stretch is divided into its marks; what no free mark
// can touch is cut, first in the corners; then, whichever of the two at a wall most often was enough, all of it, or
// the options of ends and the head are listed and the best of them cut in their corners; the options of every axis
// are listed and the best of them cut; a way to place the marks is taken, cut where they touch tiles, and counted.
const (
	known step = iota // it was counted
	divide
	cutTurns
	listEnds
	cutApart
	list
	pick
	place
	cutTouched
	countAll
	allSteps
)

// next is what is done next to a start of a wall.
func (x *stretch) next(w *Wall) step {
	switch {
	case x.exact != nil:
		return known
	case x.marks > 1:
		return divide
	case len(w.axes) > 0 && (x.choice == nil || x.choice.cut < cornersCut):
		return cutTurns
	case x.choice != nil && !x.choice.ended && x.choice.endsNext():
		return listEnds
	case x.choice != nil && x.choice.cut < allCut:
		return cutApart
	case x.choice != nil && len(x.choice.axes) < len(w.axes):
		return list
	case x.choice != nil && x.pick == nil:
		return pick
	case x.at == nil:
		return place
	case !x.close:
		return cutTouched
	}
	return countAll
}

// endsNext tells whether ends and the head are looked at next: before all is cut that no free mark can touch where
// they show small pieces for less work, afterwards where they ever showed any.
func (c *choice) endsNext() bool {
	if c.cut < allCut {
		return c.w.ends.first(&c.w.apart)
	}
	return c.w.ends.hits > 0
}

// odds are how often a step at a wall was enough to show that a line is no better than others, and
// what that took. It begins with as much as one success.
type odds struct{ hits, work int }

// odds are those of the step that is taken next.
func (h *hunt) odds() *odds { return &h.wall.odds[h.queue.first().next(h.wall)] }

// promise is how many hits in a million of work are expected of the step that is taken next at a wall: what it
// gave so far, and one hit for as much work as all steps at the wall took for one.
func (h *hunt) promise() int {
	o, all := h.odds(), &h.wall.all
	return million * (o.hits + 1) / (o.work + firstWork + (all.work+firstWork)/(all.hits+1))
}

const million = 1_000_000

// better tells whether a step promises more for its work than another.
func (o *odds) better(than *odds) bool {
	return (o.hits+1)*(than.work+firstWork) > (than.hits+1)*(o.work+firstWork)
}

// first tells whether a step is to be taken before another: while it was little tried, and then if it promises more.
func (o *odds) first(than *odds) bool { return o.work < tried || o.hits > 0 && o.better(than) }

// tried is the work after which a step was tried.
const tried = 100

// firstWork is what a step is taken to cost before it was tried.
const firstWork = 10

// note notes a step that was taken.
func (o *odds) note(work int, hit bool) {
	o.work += work + 1
	o.hits += boolean(hit)
}
