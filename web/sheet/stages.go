package sheet

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/finding"
	"coursewright/layout/stages"
)

// stages makes the plan for the days, in the order of the bathroom view.
func (b *book) stages() {
	b.fitted(subject{title: "Stages"}, false, func(f *flow) {
		f.words(plain, "One after the other. Have the cuts of a stage ready before it begins. How long to wait is a setting; the maker's data sheet comes first.")
		for i, s := range b.days {
			f.step(number(i+1), s.Name, b.stageText(s))
		}
		var rules []finding.Name
		if !slices.Contains(b.opts.Kinds, FirstCourse) {
			rules = append(rules, atTheBase...)
		}
		if !slices.Contains(b.opts.Kinds, CutSchedule) {
			rules = append(rules, atTheSaw...)
		}
		if len(rules) > 0 {
			f.cautions(rules...)
		}
	})
}

func (b *book) stageText(s stages.Stage) string {
	text := s.Do
	if s.Pieces > 0 {
		text += fmt.Sprintf("\n%d pieces: %d whole, %d cut.", s.Pieces, s.Whole, s.Pieces-s.Whole)
	}
	var have []string
	for _, c := range s.Ready() {
		have = append(have, held(c))
	}
	if len(have) > 0 {
		text += " Cuts to have ready: " + strings.Join(have, ", ") + "."
	}
	if s.Wait > 0 {
		text += fmt.Sprintf("\nThen wait %d hours: %s.", s.Wait, s.Why)
	}
	return text
}
