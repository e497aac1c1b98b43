package layout_test

import (
	"runtime"
	"testing"

	"coursewright/layout"
	"coursewright/layout/setout"
	"coursewright/layout/setout/effort"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// A joint in a range is solved at each of its sizes, four here, with the work of one room for all. What the
// searches count comes to less than twice that.
func TestTheSizesOfAJointShareTheWorkOfOneRoom(t *testing.T) {
	job, err := survey.Read(houses.Example(39))
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	require.Len(t, room.Joints, 4)
	ctx, spent := effort.Counted(t.Context())
	_, s, _, err := setout.Quick(ctx, room)
	require.NoError(t, err)
	require.Len(t, s.Joints, 4)
	require.Greater(t, spent.Spent(), search.Work/2, "it is a room that takes all")
	require.Less(t, spent.Spent(), 2*search.Work)
}

// Once all sizes were looked at, what is left of the work is for those that may yet be better. With the same for every size, however
// little it promised, this room had 20 slivers.
func TestTheSizesThatPromiseMostAreSearchedAgain(t *testing.T) {
	job, err := survey.Read(houses.Example(9183))
	require.NoError(t, err)
	p, err := layout.Quick(t.Context(), job)
	require.NoError(t, err)
	require.LessOrEqual(t, p.Setout.Merit.Slivers, 18)
	require.Greater(t, len(p.Setout.Joints), 1)
}

// So are the two hands of a bond that may have either.
func TestTheHandsOfABondShareTheWorkOfOneRoom(t *testing.T) {
	job, err := survey.Read(houses.Example(33))
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	require.Equal(t, survey.Free, room.Bond.Hand)
	ctx, spent := effort.Counted(t.Context())
	_, _, _, err = setout.Quick(ctx, room)
	require.NoError(t, err)
	require.Greater(t, spent.Spent(), search.Work/2, "it is a room that takes all")
	require.Less(t, spent.Spent(), 2*search.Work+search.Work/8)
}

// A room in which nearly everything is free ends when twice its work is counted, all that is looked at to settle included,
// but for what one look takes and the classic starts between the ends that were found.
func TestASearchEndsAtTwiceItsWork(t *testing.T) {
	for _, seed := range []int{49, 225} {
		job, err := survey.Read(houses.Example(seed))
		require.NoError(t, err)
		room, faults := job.Resolve()
		require.Empty(t, faults)
		ctx, spent := effort.Counted(t.Context())
		_, s, _, err := setout.Quick(ctx, room)
		require.NoError(t, err)
		require.False(t, s.Proven, "it is a room that takes all")
		require.Greater(t, spent.Spent(), search.Work)
		require.Less(t, spent.Spent(), 2*search.Work+search.Work/8)
	}
}

// Counted work stands for time in every kind of room: what is allocated comes to less than one and a half times of it. Here a
// wall has ten thousand starts for each of seven joints, which were once sorted and spread anew on every line, uncounted.
func TestWorkIsCountedWhereverItIsDone(t *testing.T) {
	job, err := survey.Read(houses.Example(987))
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	require.Len(t, room.Joints, 7)
	ctx, spent := effort.Counted(t.Context())
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, _, _, err = setout.Quick(ctx, room)
	runtime.ReadMemStats(&after)
	require.NoError(t, err)
	require.Less(t, 2*int(after.Mallocs-before.Mallocs), 3*spent.Spent())
	require.Less(t, spent.Spent(), 2*search.Work+search.Work/8, "what the starts of a line promise is asked only where it comes to that")
}
