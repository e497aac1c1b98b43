package main

import (
	"context"
	"log/slog"
	"time"

	"coursewright/store"
)

// daily makes the backup of the day now and on every day that follows, and then thins out what is
// old, until the function it gives is called.
func daily(ctx context.Context, kept *store.Store, log *slog.Logger) (stop func()) {
	upkeep := func(ctx context.Context, now time.Time) error {
		if err := kept.DailyBackup(ctx, now); err != nil {
			return err
		}
		_, err := kept.Thin(ctx, now)
		return err
	}
	orSay(ctx, upkeep, kept.Now(), log)
	ctx, cancel := context.WithCancel(ctx)
	hourly, ended := time.NewTicker(time.Hour), make(chan struct{})
	go func() {
		defer close(ended)
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

// orSay never stops the program: the jobs themselves are safe.
func orSay(ctx context.Context, upkeep func(context.Context, time.Time) error, now time.Time, log *slog.Logger) {
	if err := upkeep(ctx, now); err != nil && ctx.Err() == nil {
		log.Error("no backup was made today; the jobs are safe, and it is tried again in an hour", "error", err)
	}
}
