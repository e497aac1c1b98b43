package sheet

import (
	"slices"

	"coursewright/layout"
)

// mostHelp is how much of what would help stands on a sheet.
const mostHelp = 3

// help says what would help, where poor cuts remain: the best changes, with what each
// would give. It stands on the first of the lists with room for it, the cuts before
// all others, and takes no leaf of its own.
func (b *book) help() {
	if len(b.opts.Help) == 0 || !slices.Contains(b.opts.Kinds, CutSchedule) && !slices.Contains(b.opts.Kinds, SetOut) {
		return
	}
	lists := slices.Clone(b.flows)
	slices.SortStableFunc(lists, func(x, y *flow) int { return helpRank(x.kind) - helpRank(y.kind) })
	for _, f := range lists {
		if f.kind != Measuring && b.roomFor(f, b.writeHelp) {
			b.writeHelp(f)
			return
		}
	}
}

// writeHelp writes what would help, if anything.
func (b *book) writeHelp(f *flow) {
	all := b.opts.Help[:min(len(b.opts.Help), mostHelp)]
	if len(all) == 0 {
		return
	}
	f.sub("What would help, before anything is cut")
	for _, r := range all {
		f.bullet("→", b.helpText(r))
	}
}

// helpRank is how well a kind of sheet is for it.
func helpRank(k Kind) int {
	return slices.Index([]Kind{Stages, TakeOff, StoryPole, FirstCourse, SetOut, CutSchedule}, k) * -1
}

// roomFor tells whether something can be written on what is left of a list.
func (b *book) roomFor(f *flow, write func(*flow)) bool {
	try := *f
	try.leaf = &leaf{subject: f.subject, size: f.size}
	try.book = &book{plan: b.plan, opts: b.opts, later: b.later}
	write(&try)
	return len(try.book.leaves) == 0
}

// helpText is one change: what to do, what is now, and what would be.
func (b *book) helpText(r layout.Remedy) string {
	text := r.Text + " Then " + r.After + " instead of " + r.Before
	if r.Cost != "" {
		text += ", but " + r.Cost
	}
	switch {
	case r.Least.Point:
		text += "; the smallest cut runs out to a point, on " + r.Wall
	case r.Least.Piece != "" && r.Least.Size == 0:
		text += "; nothing shows of the smallest cut, on " + r.Wall
	case r.Least.Piece != "":
		text += "; smallest cut " + b.fine(r.Least.Size) + " on " + r.Wall
	}
	return text + "."
}
