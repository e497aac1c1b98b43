package bench_test

import (
	"strings"
	"testing"

	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/trial"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A choice that was copied for a larger tile is asked about under the box of the tile, once, and not at the top,
// far from where the person types.
func TestTheBoxOfACopiedChoiceIsDoubtedUnderIt(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	job.Tile.Box = &survey.Box{Count: 50, Price: "$40"}
	job, err = job.Duplicate("", "slabs")
	require.NoError(t, err)
	job.Choices[0].Name, job.Chosen = "first", "first"
	job, err = job.Choose("slabs")
	require.NoError(t, err)
	job.Tile.Width, job.Tile.Height = "11 3/4", "5 7/8"
	document, err := survey.Write(job)
	require.NoError(t, err)
	s := trial.Of(t, document)
	for _, path := range []string{"/jobs/1", "/jobs/1?all=1"} {
		_, page := s.Get(path)
		require.Equal(t, 1, strings.Count(page, `class="doubtbox"`), path)
		box, doubt := strings.Index(page, `id="tile.box.price"`), strings.Index(page, `class="doubtbox"`)
		assert.Equal(t, path == "/jobs/1", box < doubt, path)
	}
}
