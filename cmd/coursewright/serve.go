package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/netip"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
)

// asked is what serve is told by its flags.
type asked struct {
	listen, data string
	names        []string // further names to answer to
	lan          bool     // let the network in, by a code
}

// serve serves the bench until the context ends.
func (p *program) serve(ctx context.Context, args []string) int {
	var a asked
	flags := newFlags("serve")
	flags.StringVar(&a.listen, "listen", "127.0.0.1:7310", "address to listen on")
	flags.StringVar(&a.data, "data", "", "data file")
	host := flags.String("host", "", "further names to answer to, with commas between")
	flags.BoolVar(&a.lan, "lan", false, "let devices of the network in, by a code")
	if err := flags.Parse(args); err != nil {
		return p.misuse("%v.", err)
	}
	if flags.NArg() > 0 {
		return p.misuse("serve takes no %q.", flags.Arg(0))
	}
	if a.names = hosts(*host); a.lan {
		a.listen = onNetwork(a.listen)
	}
	sweepSeldom()
	if err := p.serveOn(ctx, a); err != nil {
		return p.fail(err)
	}
	return 0
}

// sweepSeldom has memory swept less often than usual, up to a limit: solving and
// drawing leave much behind that is soon of no use, and little that stays.
func sweepSeldom() {
	debug.SetGCPercent(400)
	debug.SetMemoryLimit(512 << 20)
}

func (p *program) serveOn(ctx context.Context, a asked) error {
	listener, at, err := listen(a)
	if err != nil {
		return err
	}
	defer listener.Close()
	kept, err := openStore(ctx, a.data, atHome(at))
	if err != nil {
		return err
	}
	defer kept.Close()
	log := slog.New(slog.NewTextHandler(p.Err, nil))
	defer daily(ctx, kept, log)()
	site := &web.Server{Store: kept, Static: static.Files, Hosts: a.names, Log: log, Solve: web.Recent(inTurns(mostAtOnce(), longestWait, layout.Solve))}
	fmt.Fprintf(p.Out, "Coursewright is at http://%s/\n", atHome(at))
	if a.lan {
		site.Door = p.door(at)
	}
	if p.Ready != nil {
		p.Ready(atHome(at))
	}
	return run(ctx, p.Limits.server(site.Handler(), log), listener)
}

// listen opens the address asked for. One that the network can reach takes --lan.
func listen(a asked) (net.Listener, netip.AddrPort, error) {
	listener, err := net.Listen("tcp", a.listen)
	if err != nil {
		return nil, netip.AddrPort{}, orHolder(err, a.data)
	}
	at, err := netip.ParseAddrPort(listener.Addr().String())
	if err == nil && !a.lan && !at.Addr().IsLoopback() {
		err = fmt.Errorf("--listen %s would open the jobs to the network: add --lan, which asks every device for a code", a.listen)
	}
	if err != nil {
		return nil, at, errors.Join(err, listener.Close())
	}
	return listener, at, nil
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
