package static_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/static"
)

// The job an empty store begins with is the alcove the tests and measurements
// speak of; there is one such room, kept in two places.
func TestTheDemoIsTheAlcove(t *testing.T) {
	alcove, err := os.ReadFile("../testdata/jobs/alcove.json")
	require.NoError(t, err)
	assert.Equal(t, string(alcove), string(static.Demo))
}
