package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A command that is told to end gives up, whether it waits for its job or works on it, and leaves
// what stood in the file that it was to write.
func TestACommandThatIsToldToEndGivesUp(t *testing.T) {
	const slow = "../../testdata/cases/slow-200-pipes.json"
	pdf := filepath.Join(t.TempDir(), "kept.pdf")
	require.NoError(t, os.WriteFile(pdf, []byte("kept"), 0o600))
	for _, args := range [][]string{
		{"solve", "-"}, {"draw", "-", "--wall", "x"}, {"cuts", "-"}, {"sheets", "-", "-o", pdf},
		{"solve", slow}, {"draw", slow, "--wall", "basin"}, {"cuts", slow}, {"sheets", slow, "-o", pdf},
	} {
		waits, end := io.Pipe() // nobody writes into it
		defer end.Close()
		ctx, cancel := context.WithCancel(t.Context())
		var out, errs bytes.Buffer
		code := make(chan int)
		go func() { code <- (&program{In: waits, Out: &out, Err: &errs}).run(ctx, args) }()
		time.Sleep(20 * time.Millisecond)
		cancel()
		select {
		case got := <-code:
			assert.Equal(t, failed, got, args)
			assert.Contains(t, errs.String(), "told to end", args)
			assert.Empty(t, out.String(), args)
		case <-time.After(time.Minute):
			t.Fatal("it does not end", args)
		}
	}
	now, err := os.ReadFile(pdf)
	require.NoError(t, err)
	assert.Equal(t, "kept", string(now))
}

func TestSheetsNeverWriteOverTheJob(t *testing.T) {
	folder := t.TempDir()
	job, err := os.ReadFile(toy)
	require.NoError(t, err)
	file, link := filepath.Join(folder, "job.json"), filepath.Join(folder, "link.json")
	require.NoError(t, os.WriteFile(file, job, 0o600))
	require.NoError(t, os.Symlink("job.json", link))
	for _, out := range []string{file, link, filepath.Join(folder, ".", "..", filepath.Base(folder), "job.json")} {
		code, _, errs := try("sheets", file, "-o", out)
		assert.Equal(t, failed, code)
		assert.Contains(t, errs, "is the job itself")
	}
	now, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, job, now)
}

// What cannot be written whole leaves the file that stood there; a device is left where it is.
func TestSheetsLeaveWhatStoodThereWhereTheyFail(t *testing.T) {
	folder := t.TempDir()
	pdf, link := filepath.Join(folder, "x.pdf"), filepath.Join(folder, "full.pdf")
	require.NoError(t, os.WriteFile(pdf, []byte("kept"), 0o600))
	require.NoError(t, os.Mkdir(pdf+".part", 0o700)) // stands in the way
	code, _, _ := try("sheets", toy, "-o", pdf)
	assert.Equal(t, failed, code)
	now, err := os.ReadFile(pdf)
	require.NoError(t, err)
	assert.Equal(t, "kept", string(now))

	const full = "/dev/full"
	if _, err := os.Stat(full); err != nil {
		t.Skip("this system has no device that is always full")
	}
	require.NoError(t, os.Symlink(full, link))
	code, _, errs := try("sheets", toy, "-o", link)
	assert.Equal(t, failed, code)
	assert.Contains(t, errs, "no space left")
	_, err = os.Lstat(link)
	assert.NoError(t, err, "it is left")
	require.NoError(t, os.Remove(pdf+".part"))
	code, _, errs = try("sheets", toy, "-o", pdf)
	require.Zero(t, code, errs)
	made, err := os.ReadFile(pdf)
	require.NoError(t, err)
	assert.Equal(t, "%PDF-", string(made[:5]))
	assert.NoFileExists(t, pdf+".part")
}

// closed is a door that takes nothing.
type closed struct{}

func (closed) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestWhatCannotBePrintedIsNoSuccess(t *testing.T) {
	for _, args := range [][]string{{"help"}, {"--help"}, {"help", "solve"}, {"solve", "--help"}, {"version"}, {"notices"}, {"solve", toy}, {"cuts", toy}, {"sheets", toy, "-o", "-"}} {
		var errs bytes.Buffer
		assert.Equal(t, failed, (&program{Out: closed{}, Err: &errs}).run(t.Context(), args), args)
	}
}
