package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// reaching keeps of the places of two facing edges those whose far edge lies
// where it may, and adds those with the far edge at a limit of that, and in the
// middle. Where nothing is left, as when a pin stands beyond, all are kept.
func reaching(all []Pair, low, size, far survey.Span) []Pair {
	if far == (survey.Span{}) {
		return all
	}
	var out []Pair
	add := func(a, b length.Length) {
		if low.From <= a && a <= low.To && size.From <= b-a && b-a <= size.To && far.From <= b && b <= far.To {
			out = append(out, Pair{a, b})
		}
	}
	for _, p := range all {
		add(p.Low, p.High)
		add(p.Low, far.From)
		add(p.Low, far.To)
	}
	for _, b := range []length.Length{far.From, far.To} {
		add(b-size.From, b)
		add(b-size.To, b)
	}
	add((low.From + low.To).Half(), (far.From + far.To).Half())
	if len(out) == 0 {
		return all
	}
	slices.SortFunc(out, Pair.compare)
	return slices.Compact(out)
}

// compare orders places by the low edge, then by the high one.
func (p Pair) compare(q Pair) int {
	if p.Low != q.Low {
		return int(max(-1, min(1, p.Low-q.Low)))
	}
	return int(max(-1, min(1, p.High-q.High)))
}
