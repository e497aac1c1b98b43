package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// What is kept of rows that were cut changes nothing but the work: a wall that has counted
// other set-outs before counts as one that has not, and so do its bounds.
func TestAWallCountsTheSameWhateverItCountedBefore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.House(t, 3)
		k := rapid.IntRange(0, len(room.Walls)-1).Draw(t, "wall")
		used := NewWall(&room, room.Walls[k], survey.Left)
		for range 4 {
			s := setting(t, used)
			fresh := NewWall(&room, room.Walls[k], survey.Left)
			want, got := fresh.Count(s), used.Count(s)
			same(t, used, want.Merit, got.Merit)
			require.ElementsMatch(t, want.Runs, got.Runs)
			same(t, used, fresh.Bounds.OfBoth(s.Line, s.Edge), used.Bounds.OfBoth(s.Line, s.Edge))
			same(t, used, fresh.Bounds.Beyond(s), used.Bounds.Beyond(s))
			before := used.Work()
			same(t, used, want.Merit, used.Count(s).Merit)
			require.LessOrEqual(t, used.Work()-before, fresh.Work(), "what is kept saves work")
		}
	})
}

// same wants two merits of a wall that compare as equal: runs of the same share may stand
// in either order.
func same(t *rapid.T, w *Wall, want, got merit.Merit) {
	order, term := w.facts.order.Compare(&want, &got)
	require.Zero(t, order, "differ in %s:\n%+v\n%+v", term, want, got)
}

// Whole pitches change nothing that is counted but where openings and ends are sought.
func TestAPeriodOnIsTheSameSetOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s, got := countedRoom(t)
		along := w.facts.room.Tile.Width + w.facts.room.Joint
		up := w.facts.room.Tile.Height + w.facts.room.Joint
		// The bond shifts by a course or a column, so move by all its classes.
		n := length.Length(len(w.facts.shifts))
		s.Line += n * up
		s.Edge -= n * along
		again := w.Count(s).Merit
		if rest := length.Mod(along, length.Length(w.facts.room.Bond.Den)); rest == 0 && !w.facts.frame.plumb || len(w.facts.shifts) == 1 {
			again.Find = got.Find
			same(t, w, got, again)
		}
	})
}
