package tell_test

import (
	"context"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/setout/search"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// With a tape of 1/960 mm the curve of one wall has so many points that it once took seconds after the request for it had ended.
func TestNoCurveIsCountedForWhoHasLeft(t *testing.T) {
	document, err := os.ReadFile("../../../testdata/jobs/one-wall.json")
	require.NoError(t, err)
	job, err := survey.Read(document)
	require.NoError(t, err)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	ctx, leave := context.WithCancel(t.Context())
	r, err := search.Room(ctx, &room)
	require.NoError(t, err)
	assert.NotEmpty(t, tell.Starts(&room, &r)[0].Slide)
	leave()
	assert.Empty(t, tell.Starts(&room, &r)[0].Slide)
}
