package layout_test

import (
	"cmp"
	"fmt"
	"slices"
)

// term is one term of the order of merit: below zero where a is better than b.
type term struct {
	name    string
	compare func(a, b terms) int
	show    func(m terms) any
}

func fewer(name string, of func(m terms) int) term {
	return term{name, func(a, b terms) int { return cmp.Compare(of(a), of(b)) }, func(m terms) any { return of(m) }}
}

// less compares lengths, of which less than 0.002 mm is no difference.
func less(name string, of func(m terms) float64) term {
	return term{name, func(a, b terms) int {
		const slight = 0.002 * perMM
		if x, y := of(a), of(b); x > y+slight {
			return 1
		} else if x < y-slight {
			return -1
		}
		return 0
	}, func(m terms) any { return of(m) / perMM }}
}

// greater compares lists of shares, filled up with full.
func greater(name string, full share, of func(m terms) shares) term {
	return term{name, func(a, b terms) int { return -of(a).compare(of(b), full) }, func(m terms) any { return of(m).numbers() }}
}

var (
	halfTile  = share{1, 2}
	wholeTile = share{1, 1}
)

// again are terms 1 to 4 and 7 for one sight.
func again(where string, of func(m terms) sighted) (first4, seventh []term) {
	return []term{
			less("bare"+where, func(m terms) float64 { return of(m).bare }),
			fewer("unworkable"+where, func(m terms) int { return of(m).unworkable }),
			fewer("slivers"+where, func(m terms) int { return of(m).slivers }),
			fewer("fifths"+where, func(m terms) int { return of(m).fifths }),
		}, []term{
			fewer("thirds"+where, func(m terms) int { return of(m).thirds }),
			greater("runs"+where, halfTile, func(m terms) shares { return of(m).runs }),
		}
}

// meritOrder is the order of merit with what a job prefers.
func meritOrder(prefer []string) []term {
	wants := func(what string) bool { return slices.Contains(prefer, what) }
	first4, runs := again("", func(m terms) sighted { return m.sight })
	low, lowRuns := again(" out of sight", func(m terms) sighted { return m.low })
	exposed := fewer("exposed", func(m terms) int { return m.exposed })
	built := fewer("built", func(m terms) int { return m.built })
	out := first4
	if !wants("large cuts") {
		out = append(out, exposed)
	}
	out = append(out, fewer("openings", func(m terms) int { return m.openings }))
	if wants("openings") {
		out = append(out, built)
	}
	out = append(out, runs...)
	if wants("large cuts") {
		out = append(out, exposed)
	}
	out = append(out, less("mirror", func(m terms) float64 { return m.mirror }))
	out = append(out, rimTerms(wants("shared"), wants("full head"))...)
	out = append(append(out, low...), lowRuns...)
	if !wants("openings") {
		out = append(out, built)
	}
	return append(out,
		fewer("work", func(m terms) int { return m.work }),
		fewer("small corners", func(m terms) int { return m.smallCorners }),
		fewer("bond at corners", func(m terms) int { return m.bondBreaks }),
		less("facing", func(m terms) float64 { return m.facing }),
		less("near", func(m terms) float64 { return m.near }),
		fewer("find", func(m terms) int { return m.find }))
}

// rimTerms is term 9 as the job prefers it.
func rimTerms(shared, headFirst bool) []term {
	rim := greater("rim", wholeTile, func(m terms) shares { return m.rim })
	head := greater("head", wholeTile, func(m terms) shares { return m.head })
	switch {
	case shared:
		return []term{{"shared", func(a, b terms) int { return a.sharing().compare(b.sharing()) },
			func(m terms) any { return m.sharing().number() }}}
	case headFirst:
		return []term{head, rim}
	}
	return []term{rim, head}
}

// sharing is the difference between the least rim and the least head.
func (m terms) sharing() share {
	rim, head := wholeTile, wholeTile
	if len(m.rim) > 0 {
		rim = m.rim[0]
	}
	if len(m.head) > 0 {
		head = m.head[0]
	}
	apart := rim.size*head.full - head.size*rim.full
	return share{max(apart, -apart), rim.full * head.full}
}

// better compares two set-outs of one room: below zero where a is better, with
// the number of the term that decides, from 0, and what it says of both. Where all are
// equal the number is that of the terms.
func better(a, b terms, prefer []string) (c, at int, why string) {
	all := meritOrder(prefer)
	for i, t := range all {
		if c := t.compare(a, b); c != 0 {
			return c, i, fmt.Sprintf("%s: %v against %v", t.name, t.show(a), t.show(b))
		}
	}
	return 0, len(all), "equal in all terms"
}
