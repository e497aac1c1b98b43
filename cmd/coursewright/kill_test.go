package main

import (
	"context"
	"database/sql"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"
)

// A long run: go test ./cmd/coursewright -run Killed -kills 1000 -timeout 0
var (
	kills = flag.Int("kills", 12, "how often TestKilledWhileServing kills the server")
	seed  = flag.Uint64("kill-seed", uint64(time.Now().UnixNano()), "its random seed")
)

// editors is how many jobs are edited at once, each by one person who waits for each answer.
const editors = 3

// editor is one person at one job: what was answered as saved, and the edit on its way.
type editor struct {
	job      int
	answered []string
	asked    string // not answered when the server was killed; may be in the file or not
}

// TestKilledWhileServing kills the real program at random moments while people edit over HTTP.
// Afterwards every edit that was answered is in the file, in order; beside them stands at most
// the one that was on its way; and SQLite finds the file sound.
func TestKilledWhileServing(t *testing.T) {
	t.Logf("-kill-seed=%d", *seed)
	random := rand.New(rand.NewPCG(*seed, 0))
	data := filepath.Join(t.TempDir(), "jobs.db")
	people := newPeople(t, data)
	kept, open := 0, 0
	for i := range *kills {
		if i%4 == 3 {
			killedAtTheStart(t, data, time.Duration(random.IntN(30))*time.Millisecond)
		}
		p := started(t, data)
		answered := make(chan bool, 1000)
		go killedAfter(p, answered, random.IntN(12), time.Duration(random.IntN(20_000))*time.Microsecond)
		var group errgroup.Group
		for _, one := range people {
			group.Go(func() error { return one.edit(p, answered) })
		}
		require.NoError(t, group.Wait())
		require.Error(t, p.Wait(), "it was killed")
		for _, one := range people {
			if one.asked != "" {
				open++
			}
		}
		kept += holds(t, data, people)
	}
	edits := 0
	for _, one := range people {
		edits += len(one.answered)
	}
	t.Logf("%d kills; %d edits answered, all kept; %d on their way at a kill, %d of these kept", *kills, edits, open, kept)
	require.Positive(t, edits)
}

// killedAfter kills a program once so many edits have been answered, and a moment more.
func killedAfter(p process, answered <-chan bool, edits int, moment time.Duration) {
	for range edits {
		<-answered
	}
	time.Sleep(moment) // the moment is the point: nothing is waited for
	p.Process.Kill()
}

// killedAtTheStart kills a program that is about to take over what a killed one left.
func killedAtTheStart(t *testing.T, data string, after time.Duration) {
	t.Helper()
	c := programOf("serve", "--listen", "127.0.0.1:0", "--data", data)
	require.NoError(t, c.Start())
	time.Sleep(after) // the moment is the point: nothing is waited for
	c.Process.Kill()
	require.Error(t, c.Wait())
}

// newPeople makes a job for each editor.
func newPeople(t *testing.T, data string) []*editor {
	t.Helper()
	p := started(t, data)
	var people []*editor
	for i := range editors {
		p.imports(t, toy)
		people = append(people, &editor{job: i + 2, answered: []string{"Six tiles"}}) // job 1 is the demo
	}
	require.NoError(t, p.Process.Signal(os.Interrupt))
	require.NoError(t, p.Wait())
	return people
}

// edit renames the job again and again until the server is gone. An answer that is not a saved
// edit is an error.
func (e *editor) edit(p process, answered chan<- bool) error {
	status, page, err := p.get(fmt.Sprint("/jobs/", e.job))
	for n := 0; err == nil; n++ {
		if status != http.StatusOK {
			return fmt.Errorf("job %d: status %d: %s", e.job, status, page)
		}
		if e.asked != "" && n > 0 {
			e.answered, e.asked = append(e.answered, e.asked), ""
			answered <- true
		}
		e.asked = fmt.Sprintf("edit %d of %d", n, p.Process.Pid)
		status, page, err = p.edit(e.job, revisionOf(page), "title", e.asked)
	}
	return nil
}

// copied opens a copy of the files of a data file, so that the next server finds them as they are.
func copied(t *testing.T, data string) *sql.DB {
	t.Helper()
	file := data + ".copy"
	for _, end := range []string{"", "-wal"} {
		body, err := os.ReadFile(data + end)
		if errors.Is(err, os.ErrNotExist) {
			os.Remove(file + end)
			continue
		}
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(file+end, body, 0o600))
	}
	db, err := sql.Open("sqlite", (&url.URL{Scheme: "file", Path: file}).String())
	require.NoError(t, err)
	t.Cleanup(func() { db.Close() })
	return db
}

// holds wants every answered edit in the file, and gives how many that were on their way are too.
func holds(t *testing.T, data string, people []*editor) (kept int) {
	t.Helper()
	db := copied(t, data)
	defer db.Close()
	require.Equal(t, []string{"ok"}, column(t, db, `PRAGMA integrity_check`))
	for _, one := range people {
		titles := column(t, db, `SELECT title FROM revision WHERE job = ? ORDER BY id`, one.job)
		shown := column(t, db, `SELECT r.title FROM job j JOIN revision r ON r.id = j.cursor WHERE j.id = ?`, one.job)
		if one.asked != "" && slices.Contains(titles, one.asked) {
			one.answered = append(one.answered, one.asked)
			kept++
		}
		one.asked = ""
		require.Equal(t, one.answered, titles)
		require.Equal(t, titles[len(titles)-1:], shown)
	}
	return kept
}

// column is the first column of a query.
func column(t *testing.T, db *sql.DB, query string, args ...any) (out []string) {
	t.Helper()
	rows, err := db.QueryContext(context.Background(), query, args...)
	require.NoError(t, err)
	defer rows.Close()
	for rows.Next() {
		var v string
		require.NoError(t, rows.Scan(&v))
		out = append(out, v)
	}
	require.NoError(t, rows.Err())
	return out
}
