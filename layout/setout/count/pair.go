package count

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Pair is where the two facing edges of an opening stand.
type Pair struct{ Low, High length.Length }

// compare orders places by the low edge, then by the high one.
func (p Pair) compare(q Pair) int {
	return cmp.Or(cmp.Compare(p.Low, q.Low), cmp.Compare(p.High, q.High))
}

// sought is what two facing edges of an opening look for.
type sought struct {
	tiles     grid
	low, size survey.Span    // where the low edge may stand, and how far the high one may be from it
	far       survey.Span    // where the high edge may stand, if that is bounded
	high      *length.Length // where it is pinned
	wish      *length.Length // twice the middle
	tape      length.Length
}

// pairs lists every place of the two edges at which a run or the sight of a
// joint line turns: each on a line, at a limit of its range, leaving equal cuts, or
// with the middle where it is wished.
func (s sought) pairs() []Pair {
	var out []Pair
	add := func(a, b length.Length) {
		if s.fits(a, b) && (s.high == nil || b == *s.high) {
			out = append(out, Pair{a, b})
		}
	}
	lows := append(s.tiles.within(s.low, s.tiles.tile), s.low.From, s.low.To)
	span := survey.Span{From: s.low.From + s.size.From, To: s.low.To + s.size.To}
	highs := append(s.tiles.within(span, 0), span.From, span.To)
	if s.high != nil {
		highs = append(highs, *s.high)
	}
	for _, a := range lows {
		for _, b := range highs {
			add(a, b)
		}
		add(a, a+s.size.From)
		add(a, a+s.size.To)
	}
	for _, b := range highs {
		add(b-s.size.From, b)
		add(b-s.size.To, b)
	}
	for _, size := range sizesOf(s.size) {
		for _, a := range s.tiles.equalCuts(s.low, size) {
			add(a, a+size)
		}
		if s.wish != nil {
			a := (*s.wish - size).Half()
			add(a, a+size)
			add(a.FloorTo(s.tape), a.FloorTo(s.tape)+size)
		}
	}
	return s.reaching(unique(out))
}

// fits tells whether both edges stand where they may, as far as the low edge and the
// size say.
func (s sought) fits(a, b length.Length) bool {
	return s.low.From <= a && a <= s.low.To && s.size.From <= b-a && b-a <= s.size.To
}

// reaching keeps of the places of the two edges those whose far edge lies where it
// may, and adds those with the far edge at a limit of that, and in the middle. Where
// nothing is left, as when a pin stands beyond, all are kept.
func (s sought) reaching(all []Pair) []Pair {
	if s.far == (survey.Span{}) {
		return all
	}
	var out []Pair
	add := func(a, b length.Length) {
		if s.fits(a, b) && s.far.From <= b && b <= s.far.To {
			out = append(out, Pair{a, b})
		}
	}
	for _, p := range all {
		add(p.Low, p.High)
		add(p.Low, s.far.From)
		add(p.Low, s.far.To)
	}
	for _, b := range []length.Length{s.far.From, s.far.To} {
		add(b-s.size.From, b)
		add(b-s.size.To, b)
	}
	add((s.low.From + s.low.To).Half(), (s.far.From + s.far.To).Half())
	if len(out) == 0 {
		return all
	}
	return unique(out)
}

// unique puts places in order, each once.
func unique(p []Pair) []Pair {
	slices.SortFunc(p, Pair.compare)
	return slices.Compact(p)
}

func sizesOf(s survey.Span) []length.Length {
	if s.Free() {
		return []length.Length{s.From, s.To}
	}
	return []length.Length{s.From}
}
