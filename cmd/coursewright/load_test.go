package main

import (
	"bytes"
	"flag"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"
)

// A long run: go test ./cmd/coursewright -run Load -v -people 64 -minutes 1 -load-job ../../testdata/jobs/alcove.json -pause 2s
// and, beside one at the worst job: -worst ../../testdata/cases/slow-200-pipes.json
var (
	people  = flag.Int("people", 6, "how many people edit a job of their own at once")
	minutes = flag.Float64("minutes", 0, "for how long; 0: a few edits each")
	loadJob = flag.String("load-job", toy, "the job each begins with")
	pause   = flag.Duration("pause", 0, "how long each waits between an answer and the next edit")
	worst   = flag.String("worst", "", "the job that one of them edits instead, every other period")
)

// periods are how many parts a load with a worst job has: without it and with it by turns.
const periods = 6

// joints are what is typed, one after the other.
var joints = []string{"3/16 in", "5/32 in", "1/4 in", "3 mm", "4 mm", "1/8 in"}

// typist is one person at one job.
type typist struct {
	job   int
	typed []string // the joints that were answered as saved
	took  []time.Duration
	at    []time.Duration // since the load began: when each was answered
	worst bool            // edits the worst job, every other period
}

// TestLoad lets many people edit over HTTP at once: every edit is answered as saved, every one is a
// revision of its job in order, and nothing else is.
func TestLoad(t *testing.T) {
	data := filepath.Join(t.TempDir(), "jobs.db")
	p := started(t, data)
	all := make([]*typist, *people)
	for i := range all {
		all[i] = &typist{job: i + 2, worst: i == 0 && *worst != ""} // job 1 is the demo
		file := *loadJob
		if all[i].worst {
			file = *worst
		}
		p.imports(t, file)
	}
	began := time.Now()
	var group errgroup.Group
	for _, one := range all {
		group.Go(func() error { return one.work(p, began) })
	}
	err := group.Wait()
	spent := time.Since(began)
	if err != nil {
		p.Process.Kill()
		p.Wait()
	}
	require.NoError(t, err, "%s", p.said)
	if *worst != "" {
		reportWorst(t, all[0], all[1:])
	}
	report(t, p, all, spent)
	require.NoError(t, p.Process.Signal(os.Interrupt))
	require.NoError(t, p.Wait())
	holdsEveryEdit(t, data, all)
}

// work edits until the time is over.
func (y *typist) work(p process, began time.Time) error {
	_, page, err := p.get(fmt.Sprint("/jobs/", y.job))
	if err != nil {
		return err
	}
	status, page, err := p.edit(y.job, revisionOf(page), "title", fmt.Sprint("job ", y.job)) // no two jobs are alike
	for err == nil && status == http.StatusOK && !y.done(began) {
		if y.worst && y.rests(time.Since(began)) {
			time.Sleep(10 * time.Millisecond)
			continue
		}
		joint := joints[len(y.typed)%len(joints)] // changes the whole set-out
		sent := time.Now()
		status, page, err = p.edit(y.job, revisionOf(page), "joint", joint)
		y.took, y.typed, y.at = append(y.took, time.Since(sent)), append(y.typed, joint), append(y.at, time.Since(began))
		time.Sleep(*pause)
	}
	if err == nil && status != http.StatusOK {
		err = fmt.Errorf("job %d: status %d: %.300s", y.job, status, page)
	}
	return err
}

func (y *typist) done(began time.Time) bool {
	if *minutes == 0 {
		return len(y.typed) == 4
	}
	return time.Since(began).Minutes() >= *minutes
}

// rests tells whether the worst job is left alone at a time: in the first period, and every other one.
func (y *typist) rests(at time.Duration) bool {
	return *minutes > 0 && period(at)%2 == 0
}

// period is the part of a load that a time falls in.
func period(at time.Duration) int {
	return min(int(at.Minutes()/(*minutes)*periods), periods-1)
}

// holdsEveryEdit reads the files the server has written: every edit is there, in order, once.
func holdsEveryEdit(t *testing.T, data string, all []*typist) {
	t.Helper()
	db := copied(t, data)
	require.Equal(t, []string{"ok"}, column(t, db, `PRAGMA integrity_check`))
	for _, one := range all {
		saved := column(t, db, `SELECT document ->> 'joint' FROM revision WHERE job = ? ORDER BY id`, one.job)
		require.Equal(t, append([]string{}, one.typed...), saved[2:], "job %d", one.job)
	}
}

var peak = regexp.MustCompile(`VmHWM:\s*(\d+) kB`)

// report prints what one reads a load by.
func report(t *testing.T, p process, all []*typist, spent time.Duration) {
	t.Helper()
	var took []time.Duration
	for _, one := range all {
		took = append(took, one.took...)
	}
	slices.Sort(took)
	at := func(share float64) time.Duration {
		return took[int(share*float64(len(took)-1))].Round(time.Millisecond)
	}
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", p.Process.Pid))
	require.NoError(t, err)
	t.Logf("%d people, %s: %d edits in %v, %.1f a second; p50 %v, p95 %v, p99 %v, longest %v; at most %s kB of memory; %v of a processor an edit",
		len(all), filepath.Base(*loadJob), len(took), spent.Round(time.Millisecond), float64(len(took))/spent.Seconds(),
		at(0.5), at(0.95), at(0.99), at(1), peak.FindStringSubmatch(string(status))[1], (p.worked(t) / time.Duration(len(took))).Round(100*time.Microsecond))
}

// reportWorst prints what the others get done while one edits the worst job, beside what they do without.
func reportWorst(t *testing.T, one *typist, others []*typist) {
	t.Helper()
	if *minutes == 0 {
		return
	}
	var took [2][]time.Duration // without and with
	for _, other := range others {
		for i, at := range other.at {
			with := period(at) % 2
			took[with] = append(took[with], other.took[i])
		}
	}
	for _, all := range took {
		slices.Sort(all)
		require.NotEmpty(t, all)
	}
	share := func(all []time.Duration, of float64) time.Duration {
		return all[int(of*float64(len(all)-1))].Round(time.Millisecond)
	}
	t.Logf("without %s %d edits of the others, p50 %v, p95 %v; with it %d, %.2f as many, p50 %v, p95 %v; it was edited %d times, %v",
		filepath.Base(*worst), len(took[0]), share(took[0], 0.5), share(took[0], 0.95), len(took[1]), float64(len(took[1]))/float64(len(took[0])),
		share(took[1], 0.5), share(took[1], 0.95), len(one.took), one.took)
}

// worked is how long the process has kept processors busy: what a load costs, whatever else the
// machine does. Fields 14 and 15 of /proc/PID/stat, in hundredths of a second (proc(5)).
func (p process) worked(t *testing.T) time.Duration {
	t.Helper()
	stat, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", p.Process.Pid))
	require.NoError(t, err)
	fields := strings.Fields(string(stat[bytes.LastIndexByte(stat, ')')+1:]))
	user, err := strconv.Atoi(fields[11])
	require.NoError(t, err)
	system, err := strconv.Atoi(fields[12])
	require.NoError(t, err)
	return time.Duration(user+system) * 10 * time.Millisecond
}
