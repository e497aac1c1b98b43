package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

func TestWrappedLinesFitAndLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(rapid.StringMatching(`[a-zA-Z0-9"/é-]{1,30}`), 1, 20).Draw(t, "words"), " ")
		wide := drawing.Micron(rapid.IntRange(5000, 90000).Draw(t, "wide"))
		lines := body.wrap(text, wide)
		for _, line := range lines {
			assert.LessOrEqual(t, body.width(line), wide)
		}
		bare := strings.NewReplacer(" ", "", hold, "")
		assert.Equal(t, bare.Replace(text), bare.Replace(strings.Join(lines, "")))
	})
}

func TestHeldWordsStayTogether(t *testing.T) {
	assert.Equal(t, []string{"it is", held(`4'-7 1/2" wide`)}, body.wrap("it is "+held(`4'-7 1/2" wide`), 32000))
}

func TestFiguresStayWithTheirUnits(t *testing.T) {
	for _, figure := range []string{"10 %", "3 mm", "1/8 in", "80.0 sq ft", "1 1/2 in", "0.5 m²", "12 fl oz"} {
		for wide := body.width(figure); wide < body.width("as much as "+figure); wide += 500 {
			assert.Contains(t, strings.Join(body.wrap("as much as "+figure+" more", wide), " "), held(figure), "%d wide", wide)
		}
	}
}

func TestWhatTheFontCannotShowIsReplaced(t *testing.T) {
	assert.Equal(t, "a□b c d□", printable("a\U0001F6C1b\tc\u00a0d\U00010000"))
}

// The pole is whole, and the strips lie 12 mm over each other.
func TestStripsCoverThePoleAndOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := length.Length(rapid.Int64Range(-3_000_000, 0).Draw(t, "low"))
		top := low + length.Length(rapid.Int64Range(1, 5_000_000).Draw(t, "pole"))
		long := length.Length(rapid.Int64Range(50_000, 300_000).Draw(t, "long"))
		all := stretches(low, top, long)
		assert.Equal(t, low, all[0].low)
		assert.Equal(t, top, all[len(all)-1].top)
		for i, s := range all {
			assert.LessOrEqual(t, s.top-s.low, long)
			if i > 0 {
				assert.Equal(t, 12*length.Millimetre, all[i-1].top-s.low)
			}
		}
	})
}

func TestThePoleIsFullSize(t *testing.T) {
	plan := solved(t, "toy") // tiles of 100 mm, joints of 2 mm
	b := newBook(plan, Options{Kinds: []Kind{FullPole}})
	p := b.pole()
	assert.Equal(t, []stood{{1, 0, 100 * length.Millimetre}, {2, 102 * length.Millimetre, 202 * length.Millimetre}}, p.tiles)
	assert.Equal(t, drawing.Micron(100_000), strip{}.at(0)-strip{}.at(100*length.Millimetre))
	assert.Len(t, b.leaves, 1)
	assert.Equal(t, full, b.leaves[0].scale)
}

// The pole stands on the highest rim and reaches to the lowest ceiling, so that
// it can be held anywhere in the room.
func TestThePoleStandsInTheRoom(t *testing.T) {
	for _, name := range five {
		plan := roomOf(t, name)
		p := newBook(plan, Options{Kinds: []Kind{StoryPole}}).pole()
		for _, w := range plan.Walls {
			for _, s := range w.Found.Base {
				for _, r := range s.Readings {
					if s.Meets.Rim() {
						assert.LessOrEqual(t, r.Value, p.low, name)
					}
				}
			}
			for _, r := range w.Found.Head.Readings {
				assert.GreaterOrEqual(t, r.Value, p.top, name)
			}
		}
		for i := 1; i < len(p.marks); i++ {
			assert.Greater(t, p.marks[i].at, p.marks[i-1].at, "%s: one label for one height", name)
		}
	}
}

func TestTheJoinsHaveNamesOfTheirOwn(t *testing.T) {
	assert.Equal(t, []string{"A", "Z", "A2", "B2"}, []string{matchName(1), matchName(26), matchName(27), matchName(28)})
}

// A cut that begins or ends at a corner of its tile names the corner; it once said 0" from it.
func TestNoMarkIsNothingFromItsCorner(t *testing.T) {
	b := newBook(roomOf(t, "jobs/sheets"), Options{Kinds: []Kind{CutSchedule}})
	corner := 0
	for _, g := range b.cuts.Groups {
		big, small := b.fence(g)
		for _, s := range g.Saws {
			if b.atCorner(s.Enters) || b.atCorner(s.Leaves) {
				corner++
				assert.NotRegexp(t, `(^| )0"`, big+" "+small, g.ID)
			}
		}
	}
	assert.Positive(t, corner, "some cut does so")
}
