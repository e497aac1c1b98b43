package remedy

import (
	"cmp"
	"context"
	"slices"

	"coursewright/layout/merit"
)

// promising lists the changes that may help, in the order in which they are tried. In a room that
// takes long to search, where few can be, each is first looked at with the course line and all starts
// as they are, which is quick. What helps there is kept; of the others those come first that do least
// harm so, and preferences last.
func (a *asker) promising(ctx context.Context) (tries []try, kept []outcome, err error) {
	if tries = a.tries(); a.now.Setout.Proven {
		return tries, nil, nil
	}
	merits := map[string]*merit.Merit{} // by text
	for _, t := range tries {
		if t.kind == Preference || t.move != nil || a.spent.Spent() > mostEffort/2 {
			continue
		}
		still := t
		still.use = append(slices.Clone(t.use), a.slipped(-1, 0)...)
		still.text += " Keep the course line and the starts as they are."
		s, there, err := a.solve(ctx, still.use)
		if err != nil {
			return nil, nil, err
		}
		if there {
			merits[t.text] = &s.Setout.Merit
		}
		if o := (outcome{still, s}); there && a.helps(&s.Setout.Merit) && a.tells(o) {
			kept = append(kept, o)
		}
	}
	a.solved = 0
	slices.SortStableFunc(tries, func(x, y try) int { return a.sooner(x, y, merits) })
	return tries, kept, nil
}

// sooner orders changes by what they give where the set-out stays: first what is moved, which
// cannot be looked at so, then those that are no help there, the best first, then those that are, and
// then those of which nothing is known.
func (a *asker) sooner(x, y try, of map[string]*merit.Merit) int {
	rank := func(t try) int {
		m := of[t.text]
		switch {
		case t.move != nil:
			return 0
		case m == nil:
			return 3
		case a.helps(m):
			return 2
		}
		return 1
	}
	if c := cmp.Compare(rank(x), rank(y)); c != 0 || of[x.text] == nil {
		return c
	}
	c, _ := a.now.Setout.Order.Until(of[x.text], of[y.text], merit.Mirror)
	return c
}
