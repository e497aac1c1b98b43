package sheet

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// A wall's drawing calls a sheet of mosaic by less than the cut schedule does: its page says so. Where tile comes one by
// one there is nothing to say.
func TestAWallsPageTellsWhatItsSheetsAreCalled(t *testing.T) {
	notes := func(job string) (out []string) {
		b := newBook(roomOf(t, job), Options{Paper: Papers()[0], Kinds: []Kind{Elevations, CutSchedule}})
		for _, narrow := range []bool{false, true} {
			for _, r := range b.wallCuts(b.plan.Walls[0], narrow).rows {
				if r.note {
					out = append(out, r.cells[0])
				}
			}
		}
		return out
	}
	told := notes("jobs/sheets")
	require.Len(t, told, 2)
	require.Equal(t, "1-1 in blue: sheet L-S1-1 of mosaic.", told[0])
	require.Equal(t, told[0], told[1])
	require.False(t, slices.Contains(notes("jobs/alcove"), told[0]))
}
