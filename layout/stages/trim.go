package stages

import (
	"fmt"

	"coursewright/layout/plan"
	"coursewright/layout/trim"
)

// bars is the stage for trim in bars: its leg lies under the tile, so it is bedded
// first.
func (in Input) bars() []Stage {
	n := 0
	in.trims(func(p trim.Piece) {
		if p.Trim.Bar() {
			n++
		}
	})
	if n == 0 {
		return nil
	}
	return []Stage{{Name: "Profiles", Do: fmt.Sprintf("Cut the %s of profile, dry-fit them along the edges where the tile stops, and bed each before the tile beside it: its leg lies under the tile.",
		counted(n, "length"))}}
}

// trim is the stage for trim in pieces, which follows the tile.
func (in Input) trim() []Stage {
	n, cut := 0, 0
	in.trims(func(p trim.Piece) {
		if p.Trim.Bar() {
			return
		}
		n++
		if p.Cut() {
			cut++
		}
	})
	if n == 0 {
		return nil
	}
	return []Stage{{Name: "Trim", Do: fmt.Sprintf("Set the trim in the order of its numbers, up the ends, along the head and along the base, a joint from the tile: %s, %d of them cut. "+
		"Hold a straightedge along its outer edge, and support the head until it has hardened.", counted(n, "piece"), cut)}}
}

func (in Input) trims(f func(trim.Piece)) {
	for _, w := range plan.WithTops(in.Walls) {
		for _, p := range w.Trim {
			f(p)
		}
	}
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
