package layout_test

import (
	"testing"

	"coursewright/layout/setout"
	"coursewright/layout/setout/effort"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// A joint in a range is solved at each of its sizes, four here, with the work of one room for all. What a
// search counts once its work is spent comes to less than twice that.
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
	require.Less(t, spent.Spent(), 3*search.Work)
}
