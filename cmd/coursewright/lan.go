package main

import (
	"fmt"
	"io"
	"net"
	"net/netip"
	"strings"

	"rsc.io/qr"

	"coursewright/web"
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

// door makes the way in for the network, and prints it.
func (p *program) door(listening netip.AddrPort) *web.Door {
	where := abroad(listening)
	if len(where) == 0 {
		where = []string{""}
	}
	door := web.NewDoor(where[0])
	invite(p.Out, door, where[1:])
	return door
}

// invite prints, once, how a device of the network gets in.
func invite(out io.Writer, door *web.Door, also []string) {
	if door.Address == "" {
		fmt.Fprintf(out, "This machine is on no network now. A device that reaches it later is let in by this code:\n\n  %s\n\n", door.Code())
		return
	}
	fmt.Fprintf(out, "On the network it is at http://%s/\n", door.Address)
	for _, a := range also {
		fmt.Fprintf(out, "                  or at http://%s/\n", a)
	}
	fmt.Fprintf(out, "A device is let in by pointing its camera at this square, or by this code. Both are shown only here,\n"+
		"only now, and hold until the program ends. What goes over the network is not encrypted.\n\n  %s\n\n%s\n", door.Code(), squares(door.Link()))
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
