package sheet

import (
	"slices"
	"strings"

	"coursewright/web/drawing"
)

// roomLists are the kinds that are lists for the whole room. One may begin on the last leaf of another,
// so that a setter carries fewer.
var roomLists = []Kind{FirstCourse, CutSchedule, StoryPole, TakeOff, Stages}

const (
	listsApart = 6 * mmPaper     // between a list and the heading of the next
	leastRoom  = 40 * mmPaper    // in which none is begun that has less
	joinedLine = leastLine + 900 // how high a line of the schedule is at least, for another list to stand under it
)

// follow writes a list under the one before it, where what is left of that leaf takes all of it in text of
// the usual size, and tells whether it does.
func (b *book) follow(title string, fill func(*flow)) bool {
	n := len(b.flows)
	if b.single || n == 0 || !slices.Contains(roomLists, b.now) {
		return false
	}
	before, made := b.flows[n-1], b.mark()
	if before.leaf != b.leaves[len(b.leaves)-1] || before.wide || !slices.Contains(roomLists, before.kind) {
		return false
	}
	own, parts := len(before.own.Elements), len(before.parts)
	f := &flow{leaf: before.leaf, book: b, percent: 100, y: before.y + listsApart, lo: before.lo, hi: before.hi}
	if f.left() < leastRoom {
		return false
	}
	b.flows = append(slices.Clone(b.flows[:n-1]), f)
	f.heading(title)
	if fill(f); len(b.leaves) == made.leaves {
		f.title, f.also = f.title+", "+strings.ToLower(title), append(f.also, b.now)
		b.joined = true
		return true
	}
	b.back(made)
	b.flows = append(b.flows[:n-1:n-1], before)
	before.own.Elements, before.parts = before.own.Elements[:own], before.parts[:parts]
	return false
}

// nextOnLeaf chooses the list that may stand under the schedule on the leaves that it takes anyhow, with its
// lines a little lower, and gives the lines of each leaf then; as they are, where there is none.
func (f *flow) nextOnLeaf(lines []cutLine, end drawing.Micron, leaves [][]cutLine) [][]cutLine {
	b := f.book
	for _, k := range []Kind{StoryPole, TakeOff, Stages} {
		if b.single || !slices.Contains(b.opts.Kinds, k) {
			continue
		}
		high, whole := b.highOf(k)
		if !whole || end+high > f.left() {
			continue
		}
		if with := f.parted(lines, end+high, joinedLine); len(with) == len(leaves) {
			b.next = k
			return with
		}
	}
	return leaves
}

// highOf is how high a list is with its heading under another, and whether it stands on one leaf in text of
// the usual size.
func (b *book) highOf(k Kind) (high drawing.Micron, whole bool) {
	try := &book{plan: b.plan, opts: b.opts, cuts: b.cuts, buy: b.buy, single: true, trying: true}
	try.kind(k)
	if len(try.leaves) != 1 || len(try.flows) != 1 || try.flows[0].percent != 100 {
		return 0, false
	}
	f := try.flows[0]
	return f.y - f.lo.Y + listsApart + 2000, true
}
