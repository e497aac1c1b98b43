package main

import (
	"context"
	"log/slog"
	"time"

	"coursewright/store"
)

// daily makes the backup of the day now and on every day that follows, and thins out what is old, until
// the function it gives is called. The first thinning goes on while the program serves already: after years in
// which nothing was thinned it takes a while.
func daily(ctx context.Context, kept *store.Store, log *slog.Logger) (stop func()) {
	thin := func(ctx context.Context, now time.Time) error {
		_, err := kept.Thin(ctx, now)
		return err
	}
	upkeep := func(ctx context.Context, now time.Time) error {
		if err := kept.DailyBackup(ctx, now); err != nil {
			return err
		}
		return thin(ctx, now)
	}
	backedUp := orSay(ctx, kept.DailyBackup, kept.Now(), log)
	ctx, cancel := context.WithCancel(ctx)
	hourly, ended := time.NewTicker(time.Hour), make(chan struct{})
	go func() {
		defer close(ended)
		if backedUp { // what is thinned out is in a backup first
			orSay(ctx, thin, kept.Now(), log)
		}
		keepUp(ctx, upkeep, hourly.C, log)
	}()
	return func() { hourly.Stop(); cancel(); <-ended }
}

// keepUp does the upkeep of the day whenever a tick comes, until the context ends. A tick an hour is
// enough: the backup of a day is made once, and a machine that slept through midnight makes it soon
// after.
func keepUp(ctx context.Context, upkeep func(context.Context, time.Time) error, ticks <-chan time.Time, log *slog.Logger) {
	for {
		select {
		case <-ctx.Done():
			return
		case now := <-ticks:
			orSay(ctx, upkeep, now, log)
		}
	}
}

// orSay tells whether something was done. It never stops the program: the jobs themselves are safe.
func orSay(ctx context.Context, upkeep func(context.Context, time.Time) error, now time.Time, log *slog.Logger) bool {
	err := upkeep(ctx, now)
	if err != nil && ctx.Err() == nil {
		log.Error("no backup was made today, or old states were not thinned out; the jobs are safe, and it is tried again in an hour", "error", err)
	}
	return err == nil
}
