package sheet

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/stages"
)

// stages makes the plan for the days.
func (b *book) stages() {
	f := b.flow(subject{title: "Stages"}, false)
	f.words(body, "One after the other. Have the cuts of a stage ready before it begins. How long to wait is a setting; the maker's data sheet comes first.")
	in := stages.Input{Room: b.plan.Room, Walls: b.plan.Walls, Cuts: b.cuts}
	for i, s := range stages.Of(in, *b.opts.Stages) {
		f.step(number(i+1), s.Name, b.stageText(s))
	}
	f.cautions(slices.Concat(atTheBase, atTheSaw)...)
}

func (b *book) stageText(s stages.Stage) string {
	text := s.Do
	if s.Pieces > 0 {
		text += fmt.Sprintf("\n%d pieces: %d whole, %d cut.", s.Pieces, s.Whole, s.Pieces-s.Whole)
	}
	var have []string
	for _, c := range s.Cuts {
		have = append(have, held(fmt.Sprintf("%d × %s", c.Count, c.Group)))
	}
	if len(have) > 0 {
		text += "\nCuts to have ready: " + strings.Join(have, ", ") + "."
	}
	if s.Wait > 0 {
		text += fmt.Sprintf("\nThen wait %d hours: %s.", s.Wait, s.Why)
	}
	return text
}
