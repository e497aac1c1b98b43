package sheet

import (
	"coursewright/layout/doubt"
	"coursewright/web/drawing"
)

// A reading that is in doubt and that nobody has answered for is told on the first sheet and on that of its wall, in the words of
// layout/doubt: who cuts by the sheets does not look at the bench any more.

const (
	doubtsAsked = "In doubt, and not yet answered. Measure again before you rely on these sheets:"
	inDoubt     = "In doubt: "
)

// noWall stands for what is none of the walls.
const noWall = -1

// doubtsFirst writes all doubts at the head of the first sheet, where that is a list for the room. That of a wall has its own, and a
// sheet for a client or for another room none.
func (f *flow) doubtsFirst() {
	b := f.book
	if b.trying || len(b.leaves) != 1 || len(b.plan.Doubts) == 0 || f.wall != "" || b.now == Measuring || b.now == Compare {
		return
	}
	f.words(strong, doubtsAsked)
	for _, d := range b.plan.Doubts {
		f.bullet("?", d.Text)
	}
}

// doubtsOf are the doubts that stand on the sheet of a wall; on the first, where no list comes before it, those of no wall too.
func (b *book) doubtsOf(wall int) (out []doubt.Doubt) {
	if wall == noWall {
		return nil
	}
	first := b.first(Kinds()...) == Elevations && b.inOrder()[0] == wall
	for _, d := range b.plan.Doubts {
		if d.Wall == wall || d.Wall < 0 && first {
			out = append(out, d)
		}
	}
	return out
}

// notes writes those of a wall, after a word on how its start is counted where its left corner leans: the set-out says that too, so that
// it stands here where it makes no drawing smaller.
func (f *flow) notes(wall int) {
	if text := f.book.leanText(wall); text != "" && (f.leans || f.leanHigh(wall)+f.book.pointer(wall) <= f.left()-f.notesHigh(wall)) {
		f.words(plain, text)
	}
	for _, d := range f.book.doubtsOf(wall) {
		f.bullet("?", inDoubt+d.Text)
	}
}

// notesHigh is how much room they take.
func (f *flow) notesHigh(wall int) (high drawing.Micron) {
	if f.leans {
		high = f.leanHigh(wall)
	}
	for _, d := range f.book.doubtsOf(wall) {
		high += f.bulletHigh(inDoubt + d.Text)
	}
	return high
}

// leanHigh is how much room the word on a leaning corner takes.
func (f *flow) leanHigh(wall int) drawing.Micron {
	text := f.book.leanText(wall)
	if text == "" {
		return 0
	}
	p := f.of(plain)
	return drawing.Micron(len(p.wrap(text, f.breadth())))*p.leading() + p.size/3
}
