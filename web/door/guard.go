package door

import (
	"net"
	"net/http"
	"net/netip"
	"slices"
	"strings"
)

// bodyLimit is the largest form: a job file of 1 MiB (formats.md) in the
// escapes of a form, and the fields round it.
const bodyLimit = 4 << 20

// Guard stands before every route.
type Guard struct {
	Hosts []string // names the server answers to beside loopback, without a port
	Door  *Door    // who may come in
}

// Wrap puts all guards before a handler: safe headers, known hosts, the door,
// writes from the server's own pages alone, and bodies of a size.
func (g Guard) Wrap(next http.Handler) http.Handler {
	return safeHeaders(g.knownHost(g.Door.guard(sameOrigin(smallBody(next)))))
}

// knownHost refuses a request that names a host this server does not answer
// to, on every route and method: a name somebody else points at this address
// must not read or write jobs.
func (g Guard) knownHost(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !g.knows(r.Host) && !(g.Door.Network && arrivedAt(r)) {
			http.Error(w, "This server does not answer to that name.", http.StatusMisdirectedRequest)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// nameOf is a host without its port.
func nameOf(host string) string {
	if h, _, err := net.SplitHostPort(host); err == nil {
		host = h
	}
	return strings.ToLower(strings.Trim(host, "[]"))
}

// plainAddress tells whether a page comes over plain http from an address of the network: there a
// browser takes no opener policy, and warns of one on every page.
func plainAddress(r *http.Request) bool {
	ip, err := netip.ParseAddr(nameOf(r.Host))
	return err == nil && !ip.Unmap().IsLoopback() && r.TLS == nil && r.Header.Get("X-Forwarded-Proto") != "https"
}

func (g Guard) knows(host string) bool {
	name := nameOf(host)
	if name == "localhost" {
		return true
	}
	if ip := net.ParseIP(name); ip != nil && ip.IsLoopback() {
		return true
	}
	return name != "" && slices.Contains(g.Hosts, name)
}

// arrivedAt tells whether a request names the very address of this machine that
// it came to. Others can point a name here, but not an address.
func arrivedAt(r *http.Request) bool {
	local, ok := r.Context().Value(http.LocalAddrContextKey).(net.Addr)
	if !ok {
		return false
	}
	at, err := netip.ParseAddrPort(local.String())
	if err != nil {
		return false
	}
	named, err := netip.ParseAddr(nameOf(r.Host))
	return err == nil && named.WithZone("").Unmap() == at.Addr().WithZone("").Unmap()
}

// policy lets a page load what this server sends and nothing else, and run no
// script or style written into the page.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
	"connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

func safeHeaders(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("X-Frame-Options", "DENY")
		h.Set("Referrer-Policy", "no-referrer")
		if !plainAddress(r) {
			h.Set("Cross-Origin-Opener-Policy", "same-origin")
		}
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		next.ServeHTTP(w, r)
	})
}

// sameOrigin refuses writes that another site's page sends.
func sameOrigin(next http.Handler) http.Handler {
	return http.NewCrossOriginProtection().Handler(next)
}

func smallBody(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		r.Body = http.MaxBytesReader(w, r.Body, bodyLimit)
		next.ServeHTTP(w, r)
	})
}
