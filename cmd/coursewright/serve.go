package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/netip"
	"runtime/debug"
	"strconv"
	"strings"
	"syscall"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web"
	"coursewright/web/page"
	"coursewright/web/turns"
)

// asked is what serve is told by its flags.
type asked struct {
	listen, data string
	names        []string // further names to answer to
	lan          bool     // let the network in, by a code
	everyone     bool     // ask this machine for the code too
}

// serve serves the bench until the context ends.
func (p *program) serve(ctx context.Context, args []string) int {
	var a asked
	flags := newFlags("serve")
	flags.StringVar(&a.listen, "listen", "127.0.0.1:7310", "address to listen on")
	flags.StringVar(&a.data, "data", "", "data file")
	host := flags.String("host", "", "further names to answer to, with commas between")
	flags.BoolVar(&a.lan, "lan", false, "let devices of the network in, by a code")
	flags.BoolVar(&a.everyone, "ask-everyone", false, "ask this machine for the code too")
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

// unused is memory that the collector counts as in use. As nothing is ever written to it, it takes no
// room of the machine.
var unused []byte

// sweepSeldom has memory swept less often where little of it is in use, which is nearly always: an edit
// leaves some 40 MB behind that are soon of no use, and next to nothing that stays. Where much is in use, as
// by a room of 200,000 pieces, it is swept as usual, and up to a limit.
func sweepSeldom() {
	const size = 64 << 20
	unused = make([]byte, size)
	debug.SetMemoryLimit(size + 512<<20)
}

func (p *program) serveOn(ctx context.Context, a asked) (err error) {
	listener, at, err := listen(a)
	if err != nil {
		return err
	}
	defer listener.Close()
	kept, err := openStore(ctx, a.data, atHome(at))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, kept.Close()) }()
	log := slog.New(slog.NewTextHandler(p.Err, nil))
	defer daily(ctx, kept, log)()
	site := &web.Server{Store: kept, Static: static.Files, Hosts: a.names, Log: log, Solve: turns.ByJob(func() page.Solver { return new(layout.Keeper).Quick }), Tell: layout.Solve}
	fmt.Fprintf(p.Out, "Coursewright is at http://%s/\nThe jobs are kept in %s\n", atHome(at), kept.Path())
	if a.lan || a.everyone {
		entry, done, err := p.door(at, kept, a)
		if err != nil {
			return err
		}
		defer done()
		entry.Log, site.Door = log, entry
	}
	if p.Ready != nil {
		p.Ready(atHome(at))
	}
	return run(ctx, p.Limits.server(site.Handler(), log), listener)
}

// listen opens the address asked for. One that the network can reach takes --lan.
func listen(a asked) (net.Listener, netip.AddrPort, error) {
	listener, err := net.Listen("tcp", a.listen)
	if errors.Is(err, syscall.EADDRINUSE) {
		err = fmt.Errorf("another program serves at %s: end it, or serve elsewhere with --listen %s (port 0 takes one that is free): %w",
			a.listen, elsewhere(a.listen), err)
	}
	var address *net.AddrError
	if errors.As(err, &address) {
		err = fmt.Errorf("--listen %s is no address: write the machine and a port, as 127.0.0.1:7310: %w", a.listen, err)
	}
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

// elsewhere is the same address with the next port.
func elsewhere(listen string) string {
	host, port, err := net.SplitHostPort(listen)
	n, bad := strconv.Atoi(port)
	if err != nil || bad != nil || n >= 65535 {
		return "127.0.0.1:0"
	}
	return net.JoinHostPort(host, strconv.Itoa(n+1))
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
