package jobs_test

import (
	"coursewright/web/trial"

	"net/http"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/static"
)

// TestAnExportIsImportedAndExportedWithTheSameBytes takes every job through a server whose store
// is empty but for one other job.
func TestAnExportIsImportedAndExportedWithTheSameBytes(t *testing.T) {
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	documents := [][]byte{static.Demo}
	for _, file := range files {
		document, err := os.ReadFile(file)
		require.NoError(t, err)
		documents = append(documents, document)
	}
	from, to := trial.Empty(t, trial.Resolved), trial.Empty(t, trial.Resolved)
	for i, document := range documents {
		answer, page := from.Upload(document)
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		_, exported := from.Get(answer.Header.Get("Location") + "/job.json")
		answer, page = to.Upload([]byte(exported))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		_, again := to.Get(answer.Header.Get("Location") + "/job.json")
		assert.True(t, exported == again, "job %d", i)
	}
}
