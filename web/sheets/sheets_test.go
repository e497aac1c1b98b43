package sheets_test

import (
	"coursewright/web/trial"

	"net/http"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func toySite(t *testing.T) trial.Site {
	t.Helper()
	file, err := os.ReadFile("../../testdata/jobs/toy.json")
	require.NoError(t, err)
	return trial.Of(t, file)
}

func TestAJobsSheetsAreOnePDF(t *testing.T) {
	answer, body := toySite(t).Get("/jobs/1/sheets.pdf?paper=a3&kinds=set-out")
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Equal(t, "application/pdf", answer.Header.Get("Content-Type"))
	assert.Equal(t, `inline; filename="six-tiles.pdf"`, answer.Header.Get("Content-Disposition"))
	assert.True(t, strings.HasPrefix(body, "%PDF-"))
}

func TestTablesComeAsCSV(t *testing.T) {
	s := toySite(t)
	for path, column := range map[string]string{"/jobs/1/cuts.csv": "piece,cut,kind", "/jobs/1/takeoff.csv": "item,count,unit"} {
		answer, body := s.Get(path)
		assert.Equal(t, http.StatusOK, answer.StatusCode, path)
		assert.Equal(t, "text/csv; charset=utf-8", answer.Header.Get("Content-Type"))
		assert.Contains(t, body, column)
	}
}

func TestSheetsThatDoNotExistAreRefused(t *testing.T) {
	s := toySite(t)
	for path, want := range map[string]int{
		"/jobs/1/sheets.pdf?paper=b5":  http.StatusBadRequest,
		"/jobs/1/sheets.pdf?kinds=map": http.StatusBadRequest,
		"/jobs/9/sheets.pdf":           http.StatusNotFound,
		"/jobs/x/cuts.csv":             http.StatusNotFound,
		"/jobs/9/takeoff.csv":          http.StatusNotFound,
	} {
		answer, _ := s.Get(path)
		assert.Equal(t, want, answer.StatusCode, path)
	}
}
