package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"time"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
)

// grace is how long running requests may take once the program is told to end.
const grace = 10 * time.Second

// serve serves the bench until the context ends.
func (p *program) serve(ctx context.Context, args []string) int {
	flags := newFlags("serve")
	listen := flags.String("listen", "127.0.0.1:7310", "address to listen on")
	data := flags.String("data", "", "data file")
	host := flags.String("host", "", "further names to answer to, with commas between")
	if err := flags.Parse(args); err != nil {
		return p.misuse("%v.", err)
	}
	if flags.NArg() > 0 {
		return p.misuse("serve takes no %q.", flags.Arg(0))
	}
	if err := p.serveOn(ctx, *listen, *data, hosts(*host)); err != nil {
		return p.fail(err)
	}
	return 0
}

func (p *program) serveOn(ctx context.Context, address, data string, names []string) error {
	listener, err := net.Listen("tcp", address)
	if err != nil {
		return orHolder(err, data)
	}
	defer listener.Close()
	address = listener.Addr().String()
	kept, err := openStore(ctx, data, address)
	if err != nil {
		return err
	}
	defer kept.Close()
	log := slog.New(slog.NewTextHandler(p.Err, nil))
	site := &web.Server{Store: kept, Static: static.Files, Hosts: names, Log: log, Solve: layout.Solve}
	fmt.Fprintf(p.Out, "Coursewright is at http://%s/\n", address)
	if p.Ready != nil {
		p.Ready(address)
	}
	return run(ctx, listener, site.Handler(), log)
}

// run serves until the context ends, then lets running requests finish.
func run(ctx context.Context, listener net.Listener, handler http.Handler, log *slog.Logger) error {
	server := &http.Server{
		Handler:           handler,
		ReadHeaderTimeout: 10 * time.Second,
		ReadTimeout:       30 * time.Second,
		WriteTimeout:      60 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    64 << 10,
		ErrorLog:          slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}
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

// openStore opens the data file, and puts the demo job into an empty one.
func openStore(ctx context.Context, path, address string) (*store.Store, error) {
	path, err := orUsual(path)
	if err != nil {
		return nil, err
	}
	kept, err := store.Open(ctx, path, store.Address("http://"+address+"/"))
	if err != nil {
		return nil, err
	}
	if err := begin(ctx, kept); err != nil {
		return nil, errors.Join(err, kept.Close())
	}
	return kept, nil
}

// orHolder puts the news that the program runs already before the news that its port is taken.
func orHolder(err error, data string) error {
	if path, other := orUsual(data); other == nil {
		if holder := store.Holder(path); holder != nil {
			return holder
		}
	}
	return err
}

// orUsual gives the data file, the usual one where nobody says otherwise.
func orUsual(path string) (string, error) {
	if path != "" {
		return path, nil
	}
	return dataFile()
}

// dataFile is where the jobs are kept when nobody says otherwise.
func dataFile() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", fmt.Errorf("say where to keep the jobs with --data: %w", err)
	}
	dir = filepath.Join(dir, "coursewright")
	return filepath.Join(dir, "jobs.db"), os.MkdirAll(dir, 0o700)
}

// begin puts the demo job into a store that never held a job.
func begin(ctx context.Context, kept *store.Store) error {
	jobs, err := kept.Jobs(ctx)
	if err != nil || len(jobs) > 0 {
		return err
	}
	deleted, err := kept.Deleted(ctx)
	if err != nil || len(deleted) > 0 {
		return err
	}
	job, err := survey.Read(static.Demo)
	if err != nil {
		return err
	}
	document, err := survey.Write(job)
	if err != nil {
		return err
	}
	_, err = kept.Create(ctx, job.Title, document)
	return err
}

// hosts splits the names given with --host.
func hosts(list string) []string {
	var out []string
	for name := range strings.SplitSeq(list, ",") {
		if name = strings.ToLower(strings.TrimSpace(name)); name != "" {
			out = append(out, name)
		}
	}
	return out
}
