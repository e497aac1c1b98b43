package search

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/chance"
	"coursewright/layout/setout/count"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Law 5: rooms that are edited in turns are set out with walls that are kept as with new ones, however little work is given
// for it; also where that decides what is found.
func TestKeptWallsChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range 6 {
			rooms := []survey.Room{coarse(t, 3), chance.House(t, 2)}
			work := 200 << rapid.IntRange(0, 12).Draw(t, "work doubled so often")
			var kept count.Kept
			for range 6 {
				k := rapid.IntRange(0, 1).Draw(t, "which room")
				got, err := With(t.Context(), &rooms[k], work, &kept)
				require.NoError(t, err)
				want, err := Within(t.Context(), &rooms[k], work)
				require.NoError(t, err)
				require.Equal(t, told(want), told(got), rooms[k])
				got.Keep(&kept)
				rooms[k] = edited(t, rooms[k])
			}
		}
	})
}

type tells struct {
	Line   length.Length
	Hand   survey.Hand
	Merit  merit.Merit
	Proven bool
	Bound  merit.Merit
	Walls  []count.Setting
}

func told(r Result) tells {
	out := tells{r.Line, r.Hand, r.Merit, r.Proven, r.Bound, nil}
	for _, w := range r.Walls {
		out.Walls = append(out.Walls, w.Setting)
	}
	return out
}

// edited is a room of which one wall was changed, or nothing.
func edited(t *rapid.T, room survey.Room) survey.Room {
	room.Walls = slices.Clone(room.Walls)
	w := &room.Walls[rapid.IntRange(0, len(room.Walls)-1).Draw(t, "edited wall")]
	switch rapid.IntRange(0, 3).Draw(t, "edit") {
	case 0:
		w.Base = slices.Clone(w.Base)
		w.Base[0].Gap += room.Tape
	case 1:
		w.Left.Gap += room.Tape
	case 2:
		w.Pin = &survey.StartPin{X: w.Width.Half(), Is: survey.OnJoint}
	}
	return room
}
