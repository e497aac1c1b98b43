package main

import (
	"context"
	"log/slog"
	"time"

	"coursewright/store"
)

// daily makes the backup of the day now and on every day that follows, until
// the function it gives is called.
func daily(ctx context.Context, kept *store.Store, log *slog.Logger) (stop func()) {
	backUpOrSay(ctx, kept.DailyBackup, kept.Now(), log)
	ctx, cancel := context.WithCancel(ctx)
	hourly, ended := time.NewTicker(time.Hour), make(chan struct{})
	go func() {
		defer close(ended)
		keepBackups(ctx, kept.DailyBackup, hourly.C, log)
	}()
	return func() { hourly.Stop(); cancel(); <-ended }
}

// keepBackups makes the backup of the day whenever a tick comes, until the
// context ends. A tick an hour is enough: the backup of a day is made once, and
// a machine that slept through midnight makes it soon after.
func keepBackups(ctx context.Context, backUp func(context.Context, time.Time) error, ticks <-chan time.Time, log *slog.Logger) {
	for {
		select {
		case <-ctx.Done():
			return
		case now := <-ticks:
			backUpOrSay(ctx, backUp, now, log)
		}
	}
}

// backUpOrSay never stops the program: the jobs themselves are safe.
func backUpOrSay(ctx context.Context, backUp func(context.Context, time.Time) error, now time.Time, log *slog.Logger) {
	if err := backUp(ctx, now); err != nil && ctx.Err() == nil {
		log.Error("no backup was made today; the jobs are safe, and it is tried again in an hour", "error", err)
	}
}
