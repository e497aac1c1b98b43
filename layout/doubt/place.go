package doubt

import (
	"cmp"
	"fmt"
	"slices"

	"coursewright/layout/length"
)

// place is where a height was read: what two walls say of their corner is one
// place where they agree, for it is measured once and a slip spoils both.
type place []*reading

// places lists where a group was read.
func (a *asker) places(g group) []place {
	var all []place
	for _, r := range g.readings() {
		o := a.partner(g, r)
		at := slices.IndexFunc(all, func(p place) bool { return p[0] == o })
		if at >= 0 && (o.up-r.up).Abs() <= a.twice() {
			all[at] = append(all[at], r)
			continue
		}
		all = append(all, place{r})
	}
	return all
}

// twice is how far two readings of one place may lie apart.
func (a *asker) twice() length.Length { return max(2*a.room.Doubt, a.room.Tape) }

// slipped asks about a single place that lies far from all others where a slip
// of the figures explains it; single readings are asked about so only where they
// agree with those next to them. Of two places alone the one further from what is usual is tried first.
func (a *asker) slipped(g group, limit length.Length, single bool) bool {
	all := a.places(g)
	if len(all) < 2 || spread(g.readings()) <= limit {
		return false
	}
	for _, p := range a.oddest(all) {
		rest := slices.Concat(slices.DeleteFunc(slices.Clone(all), func(o place) bool { return o[0] == p[0] })...)
		if spread(rest) > limit || len(p) == 1 && !single {
			continue
		}
		if text, how := a.fits(p[0], median(rest), a.inch()/2); how != noSlip {
			a.askPlace(g, p, median(rest), text, how)
			return true
		}
	}
	return false
}

// usualRim is how far under the level line a rim is where nothing else is known,
// as a new job guesses it. Common practice, no source.
func (a *asker) usualRim() length.Length { return a.either(-40*length.Inch, -1000*length.Millimetre) }

// oddest orders places by how far they lie from the middle of all, or of two from what is usual.
func (a *asker) oddest(all []place) []place {
	middle := a.usualRim()
	if len(all) > 2 {
		firsts := make([]*reading, len(all))
		for i, p := range all {
			firsts[i] = p[0]
		}
		middle = median(firsts)
	}
	return slices.SortedStableFunc(slices.Values(all), func(p, q place) int {
		return cmp.Compare((q[0].up - middle).Abs(), (p[0].up - middle).Abs())
	})
}

// askPlace asks about all readings of a place at once.
func (a *asker) askPlace(g group, p place, want length.Length, text string, how slip) {
	rule := Off
	if how == signSlip {
		rule = Sign
	}
	d := Doubt{Rule: rule, Path: p[0].path, Wall: p[0].wall, Fits: text,
		Text: fmt.Sprintf("At %s the %s is read %s; the readings round it say about %s.", a.place(p[0]), g[0].kind, a.height(p[0].up), a.height(want))}
	var with []string
	for _, r := range p {
		d.Use = append(d.Use, Use{r.path, text})
		with = append(with, r.path)
	}
	a.ask(d, with...)
}
