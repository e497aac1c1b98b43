package sheets_test

import (
	"coursewright/web/ask"
	"coursewright/web/shapes"
	"coursewright/web/sheets"
	"coursewright/web/trial"

	"encoding/json"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
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

// A guess says on its sheets what the bench says of it: how many of the figures asked for are measured.
func TestSheetsOfAGuessCountAsTheBenchDoes(t *testing.T) {
	job, err := shapes.New("tub", "in", "tub")
	require.NoError(t, err)
	job.Guess = ask.Paths(job)
	file, err := json.Marshal(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	_, page := s.Get("/jobs/1")
	require.True(t, strings.Contains(page, "0 of 14 measured"))
	assert.Equal(t, "0 of 14 measured", sheets.Measured(job))
	answer, pdf := s.Get("/jobs/1/sheets.pdf?kinds=set-out")
	require.Equal(t, http.StatusOK, answer.StatusCode)
	name := filepath.Join(t.TempDir(), "guess.pdf")
	require.NoError(t, os.WriteFile(name, []byte(pdf), 0o600))
	text, err := exec.Command("pdftotext", name, "-").Output()
	require.NoError(t, err, "poppler-utils is needed")
	assert.True(t, strings.Contains(string(text), "0 of 14 measured"))
}
