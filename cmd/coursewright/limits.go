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

// grace is how long running requests may take once the program is told to end.
const grace = 10 * time.Second

// run serves until the context ends, then lets running requests finish.
func run(ctx context.Context, server *http.Server, listener net.Listener) error {
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	late, cancel := context.WithTimeout(context.Background(), grace)
	defer cancel()
	err := server.Shutdown(late)
	if served := <-ended; !errors.Is(served, http.ErrServerClosed) {
		err = errors.Join(err, served)
	}
	return err
}
