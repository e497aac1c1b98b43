package main

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const oneWall = "../../testdata/jobs/one-wall.json"

// command runs the program and gives its exit code and what it printed.
func command(t *testing.T, stdin string, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	p := &program{In: strings.NewReader(stdin), Out: &o, Err: &e}
	code = p.run(t.Context(), args)
	return code, o.String(), e.String()
}

func TestSolvePrintsThePlanFile(t *testing.T) {
	code, out, errs := command(t, "", "solve", oneWall)
	require.Zero(t, code, errs)
	assert.Contains(t, out, `"coursewright-plan/1"`)
	file, err := os.ReadFile(oneWall)
	require.NoError(t, err)
	code, again, _ := command(t, string(file), "solve", "-")
	assert.Zero(t, code)
	assert.Equal(t, out, again, "standard input is as good as a file")
}

func TestSolveListsEveryFault(t *testing.T) {
	code, out, errs := command(t, `{"format": "coursewright-job/1", "units": "ell", "colour": 3}`, "solve", "-")
	assert.Equal(t, 1, code)
	assert.Empty(t, out)
	assert.Contains(t, errs, "colour: ")
}

func TestDrawPrintsOneWall(t *testing.T) {
	for _, args := range [][]string{{"draw", oneWall, "--wall", "basin"}, {"draw", "--wall=basin", oneWall}} {
		code, out, errs := command(t, "", args...)
		require.Zero(t, code, errs)
		assert.Contains(t, out, "<svg")
	}
	code, _, errs := command(t, "", "draw", oneWall, "--wall", "garden")
	assert.Equal(t, 2, code)
	assert.Contains(t, errs, "the walls are basin")
}

func TestACommandLineThatCannotBeRead(t *testing.T) {
	for _, args := range [][]string{{"paint"}, {"solve"}, {"solve", "a", "b"}, {"solve", "--fast", "a"}, {"serve", "--listen"}, {"serve", "more"}} {
		code, out, errs := command(t, "", args...)
		assert.Equal(t, 2, code, args)
		assert.Empty(t, out)
		assert.Contains(t, errs, "coursewright solve JOB.json", args)
	}
	code, out, _ := command(t, "", "--help")
	assert.Zero(t, code)
	assert.Contains(t, out, "serve")
}

func TestAMissingFileIsSaid(t *testing.T) {
	code, _, errs := command(t, "", "solve", filepath.Join(t.TempDir(), "none.json"))
	assert.Equal(t, 1, code)
	assert.Contains(t, errs, "none.json")
}

// serving is the program while it serves.
type serving struct {
	url  string
	end  context.CancelFunc
	code chan int
}

func serve(t *testing.T, data string) serving {
	t.Helper()
	ctx, end := context.WithCancel(t.Context())
	t.Cleanup(end)
	ready, code := make(chan string, 1), make(chan int, 1)
	p := &program{Out: io.Discard, Err: t.Output(), Ready: func(address string) { ready <- address }}
	go func() { code <- p.run(ctx, []string{"--listen", "127.0.0.1:0", "--data", data}) }()
	select {
	case address := <-ready:
		return serving{"http://" + address, end, code}
	case c := <-code:
		t.Fatalf("ended with %d before it served", c)
	}
	return serving{}
}

func (s serving) page(t *testing.T, path string) string {
	t.Helper()
	answer, err := http.Get(s.url + path)
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return string(body)
}

func TestServeBeginsWithTheDemoAndKeepsWhatBecomesOfIt(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	s := serve(t, data)
	assert.Contains(t, s.page(t, "/"), "Heron Street, upstairs bath")

	code, _, errs := command(t, "", "serve", "--listen", "127.0.0.1:0", "--data", data)
	assert.Equal(t, 1, code, "a second program may not open the file")
	assert.NotEmpty(t, errs)

	answer, err := http.Post(s.url+"/jobs/1/delete", "", nil)
	require.NoError(t, err)
	answer.Body.Close()
	s.end()
	assert.Zero(t, <-s.code, "an end that was asked for is no failure")

	again := serve(t, data)
	assert.NotContains(t, again.page(t, "/"), `href="/jobs/2"`, "the demo does not come back")
	again.end()
	assert.Zero(t, <-again.code)
}
