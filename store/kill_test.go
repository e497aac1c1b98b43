package store

import (
	"bufio"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// kills is how often the writing process is killed.
const kills = 12

// editUntilKilled is the process that TestKilledWhileWriting starts from this test binary. It
// says each document on standard output once the store has answered that it is saved.
func editUntilKilled(path string) {
	ctx := context.Background()
	s, err := Open(ctx, path, Address("the killed one"))
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	job, err := s.Load(ctx, 1)
	for err == nil {
		text := fmt.Sprint(job.Revision + 1)
		if job, err = s.Save(ctx, 1, job.Revision, "Attic bath", []byte(text)); err == nil {
			fmt.Println(text)
		}
	}
	fmt.Fprintln(os.Stderr, err)
	os.Exit(1)
}

// TestKilledWhileWriting: after SIGKILL at any moment every answered edit is in the file, the file
// is sound, and nobody holds its lock.
func TestKilledWhileWriting(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	s := opened(t, path)
	created(t, s, "1")
	require.NoError(t, s.Close())

	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	answered := []string{"1"}
	for range kills {
		answered = append(answered, editAndKill(t, path, time.Duration(random.IntN(40))*time.Millisecond)...)
		s := opened(t, path)
		sound(t, s)
		require.Subset(t, documents(t, s, 1), answered)
		require.NoError(t, s.Close())
	}
	t.Logf("%d edits answered over %d kills", len(answered)-1, kills)
}

// editAndKill lets the process write for a while after its first edit and gives what it was answered.
func editAndKill(t *testing.T, path string, after time.Duration) []string {
	t.Helper()
	child := exec.Command(os.Args[0])
	child.Env = append(os.Environ(), "STORE_TEST_EDIT="+path)
	child.Stderr = os.Stderr
	out, err := child.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, child.Start())
	var answered []string
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if len(answered) == 0 {
			time.AfterFunc(after, func() { child.Process.Kill() })
		}
		answered = append(answered, lines.Text())
	}
	require.Error(t, child.Wait())
	require.NotEmpty(t, answered, "the process ended before it was killed")
	return answered
}

func TestASecondProcessIsToldWhereTheFirstOneIs(t *testing.T) {
	path := filepath.Join(t.TempDir(), "jobs.db")
	first := opened(t, path, Address("http://127.0.0.1:7310"))
	created(t, first, "a")

	_, err := Open(t.Context(), path)
	var used *InUse
	require.ErrorAs(t, err, &used)
	require.Equal(t, &InUse{Path: path, PID: os.Getpid(), Address: "http://127.0.0.1:7310"}, used)
	require.Contains(t, err.Error(), "http://127.0.0.1:7310")
	_, err = PutBack(path, path, time.Now())
	require.ErrorAs(t, err, &used, "nor is a backup put back under a running program")

	require.Equal(t, used, Holder(path))
	require.NoError(t, first.Close())
	require.Nil(t, Holder(path))
	require.Nil(t, Holder(path+" that is not there"))
	require.Equal(t, "a", string(must(opened(t, path).Load(t.Context(), 1)).Document))
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
