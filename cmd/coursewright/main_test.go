package main

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
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
		line := "coursewright " + args[0] + " "
		if args[0] == "serve" {
			line = "coursewright [serve] "
		} else if args[0] == "paint" {
			line = "coursewright solve JOB.json"
		}
		assert.Contains(t, errs, line, args)
	}
}

func TestHelpExplainsEveryCommandAndEndsWithNothingWrong(t *testing.T) {
	t.Setenv("XDG_DATA_HOME", "/data of mine")
	for _, args := range [][]string{{"--help"}, {"-h"}, {"help"}} {
		code, out, errs := command(t, "", args...)
		assert.Zero(t, code, args)
		assert.Empty(t, errs)
		for _, v := range commands() {
			assert.Contains(t, out, v.call())
			assert.Contains(t, out, v.does)
		}
		assert.Contains(t, out, "/data of mine/coursewright/jobs.db")
		assert.Contains(t, out, "Exit codes: 0")
	}
	for _, v := range commands() {
		for _, args := range [][]string{{v.name, "--help"}, {v.name, "a", "-h"}, {"help", v.name}} {
			if v.name == "help" && args[0] == "help" && args[1] == "help" {
				continue
			}
			code, out, errs := command(t, "", args...)
			assert.Zero(t, code, args)
			assert.Empty(t, errs, args)
			assert.Contains(t, out, v.does, args)
			assert.Contains(t, out, "Exit codes: 0", args)
		}
	}
	code, _, _ := command(t, "", "help", "paint")
	assert.Equal(t, 2, code)
}

// Every flag that the source defines is explained by the command it belongs to.
func TestHelpExplainsEveryFlag(t *testing.T) {
	sources, err := filepath.Glob("*.go")
	require.NoError(t, err)
	begins, defines := regexp.MustCompile(`newFlags\("(\w+)"\)`), regexp.MustCompile(`flags\.\w+\((?:&[\w.]+, )?"([\w-]+)"`)
	flags := 0
	for _, name := range sources {
		body, err := os.ReadFile(name)
		require.NoError(t, err)
		verb := ""
		for line := range strings.Lines(string(body)) {
			if m := begins.FindStringSubmatch(line); m != nil {
				verb = m[1]
			}
			if m := defines.FindStringSubmatch(line); m != nil && !strings.HasSuffix(name, "_test.go") {
				v, found := named(verb)
				require.True(t, found, verb)
				assert.Regexp(t, `(?m)^  --?`+m[1]+` `, v.more, verb)
				assert.Contains(t, v.line, "-"+m[1], verb)
				flags++
			}
		}
	}
	assert.Greater(t, flags, 8)
}

func TestVersionSaysWhatWasBuilt(t *testing.T) {
	code, out, _ := command(t, "", "version")
	assert.Zero(t, code)
	assert.Contains(t, out, "coursewright ")
	assert.Contains(t, out, runtime.Version())
	assert.Contains(t, out, "coursewright-job/1")
}

// TestCommandsThatTakeAJobRefuseAlike: the same job is refused in the same words whatever is asked of it.
func TestCommandsThatTakeAJobRefuseAlike(t *testing.T) {
	large := `{"title": "` + strings.Repeat("x", 1<<20) + `"}`
	for name, job := range map[string]string{
		"no JSON": "tub", "empty": "", "another format": `{"format": "other/1"}`, "unknown fields": `{"format": "coursewright-job/1", "units": "ell", "colour": 3}`,
		"too large": large, "no walls": `{"format": "coursewright-job/1", "units": "in"}`, "twice": `{"format": "coursewright-job/1"} {}`,
	} {
		wanted := ""
		for _, args := range [][]string{{"solve", "-"}, {"draw", "-", "--wall", "back"}, {"cuts", "-"}, {"sheets", "-", "-o", filepath.Join(t.TempDir(), "out.pdf")}} {
			code, out, errs := command(t, job, args...)
			assert.Equal(t, failed, code, "%s %s", name, args[0])
			assert.Empty(t, out)
			if wanted == "" {
				wanted = errs
			}
			assert.NotEmpty(t, errs)
			assert.Equal(t, wanted, errs, "%s %s", name, args[0])
		}
	}
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
	ready, code, ended := make(chan string, 1), make(chan int, 1), make(chan struct{})
	t.Cleanup(func() { end(); <-ended }) // it writes until it has ended, and its folder is removed next
	p := &program{Out: io.Discard, Err: t.Output(), Ready: func(address string) { ready <- address }}
	go func() {
		defer close(ended)
		code <- p.run(ctx, []string{"--listen", "127.0.0.1:0", "--data", data})
	}()
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
