package turns

import (
	"slices"

	"coursewright/layout"
)

// mostRecent is how many plans are remembered: of some twenty people the job on the bench and what
// a drag makes of it. Of plans of many pieces fewer are: a piece takes about 0.7 kB.
const (
	mostRecent = 40
	mostPieces = 60_000
)

// recent remembers the last plans, because a page, a card of one piece and the save after a drag ask
// for a plan that was just made. Its owner takes care that one at a time uses it.
type recent struct{ known []known } // the latest last

// known is a plan by what was question for it.
type known struct {
	question
	plan layout.Plan
}

// find finds a plan. One that is told of does for who does not ask why.
func (r *recent) find(what question) (layout.Plan, bool) {
	i := slices.IndexFunc(r.known, func(k known) bool { return k.document == what.document && (k.told || !what.told) })
	if i < 0 {
		return layout.Plan{}, false
	}
	k := r.known[i]
	r.known = append(slices.Delete(r.known, i, i+1), k)
	return k.plan, true
}

func (r *recent) keep(k known) {
	r.known = append(slices.DeleteFunc(r.known, func(old known) bool { return old.document == k.document }), k)
	for len(r.known) > 1 && (len(r.known) > mostRecent || r.pieces() > mostPieces) {
		r.known = slices.Delete(r.known, 0, 1)
	}
}

// pieces counts those of all plans remembered.
func (r *recent) pieces() int {
	n := 0
	for _, k := range r.known {
		for _, w := range k.plan.Walls {
			n += len(w.Pieces)
		}
	}
	return n
}
