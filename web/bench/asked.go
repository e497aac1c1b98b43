package bench

import (
	"fmt"
	"net/url"
	"slices"
	"strings"

	"coursewright/layout/doubt"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/ask"
	"coursewright/web/form"
	"coursewright/web/page"
)

// countText says how much is measured: "4 of 22 measured", and how much is in doubt.
func (b Bench) countText() string {
	return strings.TrimSuffix(b.measuredText()+", "+b.doubtsText(), ", ")
}

func (b Bench) measuredText() string {
	all, measured, refused := b.questions(), 0, 0
	for _, q := range all {
		switch {
		case b.refused(q):
			refused++
		case !b.Guessed(q.Path):
			measured++
		}
	}
	text := fmt.Sprintf("%d of %d measured", measured, len(all))
	if refused > 0 {
		text += fmt.Sprintf(", %d refused", refused)
	}
	return text
}

// refused tells whether what stands in the box of a question cannot be taken: no figure was measured
// until it can.
func (b Bench) refused(q ask.Question) bool { return b.Fault(q.Path) != "" }

// doubtsText says how many readings are doubted; nothing where none is.
func (b Bench) doubtsText() string {
	if n := len(b.Plan.Doubts); n > 0 {
		return fmt.Sprintf("%d in doubt", n)
	}
	return ""
}

// firstDoubted is the box of the first figure that is doubted, or nothing where none is asked for.
func (b Bench) firstDoubted() string {
	all := b.questions()
	if i := slices.IndexFunc(all, b.doubted); i >= 0 {
		return all[i].Path
	}
	return ""
}

// isGuess tells whether any figure of the job has not been measured.
func (b Bench) isGuess() bool {
	return slices.ContainsFunc(b.Typed.Guess, func(path string) bool { return form.Get(b.Typed, path) != "" })
}

// questions are all that is asked, and step those of one step, from the end that
// the person measures from.
func (b Bench) questions() []ask.Question {
	var out []ask.Question
	for _, step := range ask.Steps() {
		out = append(out, b.step(step)...)
	}
	return out
}

func (b Bench) step(step string) []ask.Question {
	if b.steps != nil {
		return b.steps[step]
	}
	return ask.Of(b.Typed, step, b.Front)
}

// stepped works out once what is asked, for a page that looks at it again and again.
func (b Bench) stepped() Bench {
	b.steps = map[string][]ask.Question{}
	for _, step := range ask.Steps() {
		b.steps[step] = ask.Of(b.Typed, step, b.Front)
	}
	return b
}

// hasEnds tells whether a question of a step may be asked from either end.
func (b Bench) hasEnds(step string) bool {
	return slices.ContainsFunc(b.step(step), ask.Question.HasEnds)
}

func escaped(text string) string { return url.QueryEscape(text) }

// boxOf is what the box of a question shows: as typed while that does not read. A guess
// shows nothing, though another answer may have made it impossible: sent back, it would be measured.
func (b Bench) boxOf(q ask.Question) string {
	if raw, odd := b.Raw[q.Path]; odd && !b.Guessed(q.Path) {
		return raw
	}
	return q.Shown(b.Typed)
}

// asked tells whether a question asks for a field, or fills it.
func (b Bench) asked(path string) bool {
	return slices.ContainsFunc(b.questions(), func(q ask.Question) bool { return q.Path == path || slices.Contains(q.Same, path) }) ||
		slices.ContainsFunc(ask.Corners(b.Typed), func(c ask.Corner) bool { return strings.HasPrefix(path, c.End+".lean[") })
}

// middle is a base that could be measured in its middle too.
type middle struct{ path, wall string }

// middles are the bases between two corners that are measured in the corners alone.
func (b Bench) middles() []middle {
	var out []middle
	for i, w := range b.Typed.Walls {
		if w.Left.Meets != "" && w.Right.Meets != "" && len(w.Base) == 1 && len(w.Base[0].Readings) == 2 {
			out = append(out, middle{form.At(form.At("walls", i)+".base", 0) + ".readings", w.Name})
		}
	}
	return out
}

// upTo are the walls without a top of their own, one by one and, where the tile of all of them stops alike, at the
// ceiling or at lines, together.
func (b Bench) upTo() (all []string, each [][]string) {
	ceilings := 0
	for i, w := range b.Typed.Walls {
		if w.Top != nil {
			continue
		}
		all, each = append(all, form.At("walls", i)), append(each, []string{form.At("walls", i)})
		if w.Head.Meets != "" {
			ceilings++
		}
	}
	if len(all) > 1 && (ceilings == 0 || ceilings == len(all)) {
		return all, each
	}
	return nil, each
}

// toCeiling tells whether the tile of the first of some walls goes up to the ceiling.
func (b Bench) toCeiling(walls []string) bool {
	return form.Get(b.Typed, walls[0]+".head.meets") != ""
}

// stopAlike are the marks at which tile stops at the top that are alike with one of them.
func (b Bench) stopAlike(path string) []string {
	for _, g := range ask.Together(b.Typed) {
		if slices.Contains(g, path) {
			return g
		}
	}
	return []string{path}
}

// wallTitle names a wall at the beginning of a line: Wall back, and not Wall wall.
func wallTitle(name string) string {
	if called := ask.WallName(name); called != name {
		return "Wall " + name
	}
	return name
}

// wallsOf names the walls of some fields.
func (b Bench) wallsOf(paths []string) string {
	var names []string
	for _, path := range paths {
		names = append(names, b.Typed.Walls[form.Parts(path)[1].Index].Name)
	}
	return strings.Join(names, ", ")
}

// stops are the ends of walls at which the tile stops, with their names.
func (b Bench) stops() []page.Choice {
	return b.endsThat("Left end of ", "Right end of ", func(e survey.End) bool { return e.Meets == "" })
}

// plainStops are those of them without trim in pieces: what covers the edge is one word.
func (b Bench) plainStops() []page.Choice {
	return b.endsThat("Edge at the left end of ", "Edge at the right end of ", func(e survey.End) bool { return e.Meets == "" && e.Trim == "" })
}

// endsThat are the ends of walls of a kind, by their fields, with what is said before the name of the wall.
func (b Bench) endsThat(left, right string, are func(survey.End) bool) []page.Choice {
	var out []page.Choice
	for i, w := range b.Typed.Walls {
		at := form.At("walls", i)
		if are(w.Left) {
			out = append(out, page.Choice{Value: at + ".left", Text: left + w.Name})
		}
		if are(w.Right) {
			out = append(out, page.Choice{Value: at + ".right", Text: right + w.Name})
		}
	}
	return out
}

// tileBoxes are the boxes of the tile that no question asks for; doubts about them stand under them.
var tileBoxes = []string{"tile.name", "tile.thickness", "tile.vary", "tile.box.count", "tile.box.price"}

// unplaced are the doubts that stand at no question or box: they are asked at the top.
func (b Bench) unplaced() []doubt.Doubt {
	var out []doubt.Doubt
	for _, d := range b.Plan.Doubts {
		if b.All || !b.asked(d.Path) && !slices.Contains(tileBoxes, d.Path) {
			out = append(out, d)
		}
	}
	return out
}

// opened tells whether a step is open: the first that has something to measure
// or to ask about, or the widths where there is nothing.
func (b Bench) opened(step string) bool {
	for _, s := range ask.Steps() {
		for _, q := range b.step(s) {
			if b.Guessed(q.Path) || b.doubted(q) || b.refused(q) {
				return s == step
			}
		}
	}
	return step == ask.Widths
}

// The one line that a closed step shows.

func shapeLine(b Bench) string {
	return page.Count(len(b.Typed.Walls), "wall") + " over a " + b.base()
}

func widthsLine(b Bench) string { return figuresLine(b, ask.Widths) }

// figuresLine lists the figures of a step, and says how many are missing.
func figuresLine(b Bench, step string) string {
	var out []string
	missing := 0
	for _, q := range b.step(step) {
		if b.Guessed(q.Path) || b.refused(q) {
			missing++
			continue
		}
		figure := q.Shown(b.Typed)
		if l, err := length.Parse(figure, b.System()); err == nil {
			figure = b.Exact(l) // in one way of writing, and no rounder than it was typed
		}
		out = append(out, figure)
	}
	switch {
	case missing > 0 && len(out) == 0:
		return "not measured"
	case missing > 0:
		return fmt.Sprintf("%d of %d measured", len(out), len(out)+missing)
	case len(out) == 0:
		return "none"
	}
	return strings.Join(out, " · ")
}

func topLine(b Bench) string {
	if len(b.step(ask.Top)) > 0 {
		return figuresLine(b, ask.Top)
	}
	return "stops in a range"
}

// beyondTheSteps tells whether a fault stands at a field that the steps do not
// ask for: then every field is shown, or it could not be put right.
func (b Bench) beyondTheSteps() bool {
	return slices.ContainsFunc(b.Faults, func(f page.Fault) bool {
		parts := form.Parts(f.Path)
		if len(parts) < 3 || parts[0].Name != "walls" || b.asked(f.Path) {
			return false
		}
		switch parts[2].Name {
		case "base", "left", "right":
			return true
		case "head":
			return len(parts) > 3 && parts[3].Name != "stops"
		}
		return false
	})
}
