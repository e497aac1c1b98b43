package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const toy = "../../testdata/jobs/toy.json"

// try runs the command and gives its exit code and what it printed.
func try(args ...string) (code int, out, complaint string) {
	var o, e bytes.Buffer
	code = (&program{In: strings.NewReader(""), Out: &o, Err: &e}).run(context.Background(), args)
	return code, o.String(), e.String()
}

func TestSheetsWritesOnePDF(t *testing.T) {
	file := filepath.Join(t.TempDir(), "toy.pdf")
	code, _, complaint := try("sheets", toy, "-o", file, "--paper", "letter", "--kinds", "set-out,cuts", "--date", "2026-05-04")
	require.Zero(t, code, complaint)
	info, err := exec.Command("pdfinfo", file).CombinedOutput()
	require.NoError(t, err, string(info))
	assert.Contains(t, string(info), "Six tiles")
	text, err := exec.Command("pdftotext", file, "-").CombinedOutput()
	require.NoError(t, err)
	assert.Contains(t, string(text), "Strike the course line")
	assert.Contains(t, string(text), "2026-05-04")
	assert.NotContains(t, string(text), "Take-off")
}

func TestSheetsOfTheSameJobAndDateAreTheSame(t *testing.T) {
	_, a, _ := try("sheets", toy, "-o", "-", "--date", "2026-05-04")
	_, b, _ := try("sheets", toy, "-o", "-", "--date", "2026-05-04")
	assert.Equal(t, a, b)
	assert.True(t, strings.HasPrefix(a, "%PDF-"))
}

func TestCutsPrintsTheScheduleAsCSV(t *testing.T) {
	code, out, complaint := try("cuts", "../../testdata/jobs/one-wall.json")
	require.Zero(t, code, complaint)
	lines := strings.Split(strings.TrimSpace(out), "\n")
	assert.Contains(t, lines[0], "piece,cut,kind,width,height")
	assert.Greater(t, len(lines), 3)
}

func TestWhatSheetsCannotDoIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		args []string
		code int
		want string
	}{
		"no file to write": {[]string{"sheets", toy}, misused, "-o FILE.pdf"},
		"unknown paper":    {[]string{"sheets", toy, "-o", "-", "--paper", "b5"}, misused, "a4, letter, a3 or tabloid"},
		"unknown kind":     {[]string{"sheets", toy, "-o", "-", "--kinds", "map"}, misused, "the kinds are set-out"},
		"no date":          {[]string{"sheets", toy, "-o", "-", "--date", "4 May"}, misused, "4 May"},
		"no job":           {[]string{"cuts", "none.json"}, failed, "none.json"},
		"no such folder":   {[]string{"sheets", toy, "-o", "none/x.pdf"}, failed, "there is no folder none to write x.pdf into"},
		"unknown option":   {[]string{"sheets", toy, "--size", "a4"}, misused, "There is no option --size"},
		"no wall":          {[]string{"draw", toy}, misused, "There is no wall"},
		"no port":          {[]string{"serve", "--listen", "999"}, failed, "--listen 999 is no address: write the machine and a port, as 127.0.0.1:7310"},
	} {
		code, _, complaint := try(c.args...)
		assert.Equal(t, c.code, code, name)
		assert.Contains(t, complaint, c.want, name)
		assert.LessOrEqual(t, strings.Count(complaint, "\n"), 6, "%s: what is wrong is not scrolled away", name)
	}
	code, _, complaint := try("paint")
	assert.Equal(t, misused, code)
	assert.Contains(t, complaint, "There is no command \"paint\"")
	assert.Contains(t, complaint, "print the cut schedule as CSV", "of a command that is not known all are listed")
	_, err := os.Stat("none")
	assert.ErrorIs(t, err, os.ErrNotExist)
}
