package main

import (
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/page"
)

func TestRoomsAreSolvedInTurns(t *testing.T) {
	var now atomic.Int64
	var over atomic.Bool
	full, proceed := make(chan bool, 3), make(chan bool)
	solve := inTurns(3, time.Hour, func(survey.Job) (layout.Plan, error) {
		if now.Add(1) > 3 {
			over.Store(true)
		}
		select {
		case full <- true:
		default:
		}
		<-proceed
		now.Add(-1)
		return layout.Plan{}, nil
	})
	var group errgroup.Group
	for range 20 {
		group.Go(func() error { _, err := solve(survey.Job{}); return err })
	}
	for range 3 { // three at work; the others cannot have begun
		<-full
	}
	close(proceed)
	require.NoError(t, group.Wait())
	assert.False(t, over.Load())
}

func TestWhoWaitsTooLongForATurnIsTold(t *testing.T) {
	begun, proceed := make(chan bool), make(chan bool)
	solve := inTurns(1, time.Millisecond, func(survey.Job) (layout.Plan, error) {
		begun <- true
		<-proceed
		return layout.Plan{}, nil
	})
	var group errgroup.Group
	group.Go(func() error { _, err := solve(survey.Job{}); return err })
	<-begun
	_, err := solve(survey.Job{})
	require.ErrorIs(t, err, page.ErrBusy)
	close(proceed)
	require.NoError(t, group.Wait(), "the first goes on")
}
