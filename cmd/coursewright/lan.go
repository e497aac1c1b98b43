package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/netip"
	"os"
	"strings"

	"rsc.io/qr"

	"coursewright/store"
	"coursewright/web/door"
)

// onNetwork gives the address to listen on with --lan: that of --listen, with
// all the machine's addresses in the place of loopback.
func onNetwork(listen string) string {
	host, port, err := net.SplitHostPort(listen)
	if err != nil || !loopback(host) {
		return listen
	}
	return net.JoinHostPort("", port)
}

func loopback(host string) bool {
	ip, err := netip.ParseAddr(host)
	return host == "localhost" || err == nil && ip.IsLoopback()
}

// atHome gives the address at which this machine itself finds a listener.
func atHome(listening netip.AddrPort) string {
	if listening.Addr().IsUnspecified() {
		return fmt.Sprintf("127.0.0.1:%d", listening.Port())
	}
	return listening.String()
}

// abroad lists the addresses at which the network finds a listener, the
// likeliest first. There are none where there is no network.
func abroad(listening netip.AddrPort) []string {
	if !listening.Addr().IsUnspecified() {
		return []string{listening.String()}
	}
	var out []string
	for _, a := range addresses() {
		out = append(out, netip.AddrPortFrom(a, listening.Port()).String())
	}
	return out
}

// addresses lists the machine's own addresses on its networks. The one that
// leads out comes first: the others may belong to networks inside the machine.
func addresses() []netip.Addr {
	out := leadingOut()
	all, err := net.InterfaceAddrs()
	if err != nil {
		return out
	}
	for _, a := range all {
		p, err := netip.ParsePrefix(a.String())
		if ip := p.Addr(); err == nil && ip.Is4() && ip.IsGlobalUnicast() && (len(out) == 0 || ip != out[0]) {
			out = append(out, ip)
		}
	}
	return out
}

// leadingOut asks the system from which address it would send a datagram to the
// outside, and sends none. The address is one kept for examples (RFC 5737).
func leadingOut() []netip.Addr {
	conn, err := net.Dial("udp4", "198.51.100.1:9")
	if err != nil {
		return nil
	}
	defer conn.Close()
	from, err := netip.ParseAddrPort(conn.LocalAddr().String())
	if err != nil || !from.Addr().IsGlobalUnicast() {
		return nil
	}
	return []netip.Addr{from.Addr()}
}

// door makes the way in, and shows the code: in the window that a person looks at, or else in a file
// that only its owner can read. What it gives is called when the program ends.
func (p *program) door(listening netip.AddrPort, kept *store.Store, a asked) (entry *door.Door, done func(), err error) {
	entry = door.New(kept)
	entry.Network, entry.Everyone, entry.Address = a.lan, a.everyone, atHome(listening)
	var also []string
	if a.lan {
		if where := abroad(listening); len(where) > 0 {
			entry.Address, also = where[0], where[1:]
		} else {
			entry.Address = ""
		}
	}
	if p.Watched {
		invite(p.Out, entry, also)
		return entry, func() {}, nil
	}
	file := kept.Path() + "-code"
	var words strings.Builder
	invite(&words, entry, also)
	if err := ownFile(file, words.String()); err != nil {
		return nil, nil, err
	}
	fmt.Fprintf(p.Out, "Devices are let in by the code in the file %s, which only you can read; it goes when the program ends.\n", file)
	return entry, func() { os.Remove(file) }, nil
}

// ownFile writes a file anew that nobody else can read.
func ownFile(name, text string) error {
	if err := os.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	return errors.Join(err, f.Close())
}

// invite says how a device gets in.
func invite(out io.Writer, entry *door.Door, also []string) {
	if entry.Address == "" {
		fmt.Fprintf(out, "This machine is on no network now. A device that reaches it later is let in by this code:\n\n  %s\n\n", entry.Code())
		return
	}
	fmt.Fprintf(out, "Devices find it at http://%s/\n", entry.Address)
	for _, a := range also {
		fmt.Fprintf(out, "           or at http://%s/\n", a)
	}
	fmt.Fprintf(out, "A device is let in by pointing its camera at this square, or by this code, and then keeps a pass of its own.\n"+
		"Both are shown only here, only now, and hold until the program ends; passes are taken back on the page Devices.\n"+
		"What goes over the network is not encrypted.\n\n  %s\n\n%s\n", entry.Code(), squares(entry.Link()))
}

// squares draws a text as a square code, two rows of modules to a line, dark on
// light whatever the colours of the terminal. A text too long for one has none.
func squares(text string) string {
	code, err := qr.Encode(text, qr.L)
	if err != nil {
		return ""
	}
	const quiet = 4 // modules that readers need round it (ISO/IEC 18004, from memory)
	var out strings.Builder
	for y := -quiet; y < code.Size+quiet; y += 2 {
		out.WriteString("  \x1b[30;107m")
		for x := -quiet; x < code.Size+quiet; x++ {
			out.WriteString(half(code.Black(x, y), code.Black(x, y+1)))
		}
		out.WriteString("\x1b[0m\n")
	}
	return out.String()
}

// half is the character that is dark above, below, both or neither.
func half(above, below bool) string {
	switch {
	case above && below:
		return "█"
	case above:
		return "▀"
	case below:
		return "▄"
	}
	return " "
}
