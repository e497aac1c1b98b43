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
	listsApart = 5 * mmPaper     // between a list and the heading of the next
	leastRoom  = 40 * mmPaper    // in which none is begun that has less
	joinedLine = leastLine + 900 // how high a line of the schedule is at least, for another list to stand under it
)

// joinedPercents are the sizes of text of a list that stands under another, of the usual one. None is begun that takes smaller text.
var joinedPercents = []drawing.Micron{100, 95, 90}

// follow writes a list under the one before it, where what is left of that leaf takes all of it, or all that it takes
// more than full leaves, and tells whether it does.
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
	for _, percent := range joinedPercents {
		f := &flow{leaf: before.leaf, book: b, percent: percent, y: before.y + listsApart, lo: before.lo, hi: before.hi}
		f.goesOn = subject{kind: b.now, title: title}
		if f.left() < leastRoom {
			return false
		}
		b.flows = append(slices.Clone(b.flows[:n-1]), f)
		f.heading(title)
		if fill(f); len(b.leaves)-made.leaves < b.singly[b.now] {
			on := before.leaf
			on.title, on.also = on.title+", "+strings.ToLower(title), append(on.also, b.now)
			b.joined = true
			return true
		}
		b.back(made)
		b.flows = append(b.flows[:n-1:n-1], before)
		before.own.Elements, before.parts = before.own.Elements[:own], before.parts[:parts]
	}
	return false
}
