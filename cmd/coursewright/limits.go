package main

import (
	"cmp"
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// limits bound what one connection may take, so that clients that are slow, or
// mean to be, are dropped while others are served. A zero takes the usual one.
type limits struct {
	header      time.Duration // until the head of a request is there
	read        time.Duration // until all of it is there
	write       time.Duration // until the answer is taken, the working out included
	idle        time.Duration // between two requests
	headerBytes int           // of the head of a request
}

// usual leaves a phone behind two walls time to send a job file of 1 MiB, and a
// large room time to be solved.
var usual = limits{header: 10 * time.Second, read: 30 * time.Second, write: time.Minute, idle: 2 * time.Minute, headerBytes: 64 << 10}

// server is one that keeps the limits.
func (l limits) server(handler http.Handler, log *slog.Logger) *http.Server {
	return &http.Server{
		Handler:           handler,
		ReadHeaderTimeout: cmp.Or(l.header, usual.header),
		ReadTimeout:       cmp.Or(l.read, usual.read),
		WriteTimeout:      cmp.Or(l.write, usual.write),
		IdleTimeout:       cmp.Or(l.idle, usual.idle),
		MaxHeaderBytes:    cmp.Or(l.headerBytes, usual.headerBytes),
		ErrorLog:          slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}
}

// How long running requests may take once the program is told to end: first to come to their end,
// then to give up. Together they stay under a second, so that whoever ends the program sees it end.
const (
	toFinish = 400 * time.Millisecond
	toGiveUp = 300 * time.Millisecond
)

// run serves until the context ends, then lets running requests finish. Those that take too long
// are told to give up, and are cut off if they do not; nothing that was answered is lost by that.
func run(ctx context.Context, server *http.Server, listener net.Listener) error {
	working, giveUp := context.WithCancel(context.WithoutCancel(ctx))
	defer giveUp()
	server.BaseContext = func(net.Listener) context.Context { return working }
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	time.AfterFunc(toFinish, giveUp)
	late, cancel := context.WithTimeout(context.Background(), toFinish+toGiveUp)
	defer cancel()
	err := server.Shutdown(late)
	if errors.Is(err, context.DeadlineExceeded) {
		err = server.Close()
	}
	if served := <-ended; !errors.Is(served, http.ErrServerClosed) {
		err = errors.Join(err, served)
	}
	return err
}
