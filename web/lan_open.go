package web

import (
	"fmt"
	"io/fs"
	"net/http"
	"net/netip"
	"strconv"
	"strings"
	"time"

	"github.com/go-chi/chi/v5"

	"coursewright/web/door"
	"coursewright/web/page"
)

// byTheDoor lets requests from this machine pass. Of the network it lets those
// pass that bear the pass; the others are asked for the code, whatever they
// came for. Without a door the network gets nothing.
func (s *Server) byTheDoor(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch {
		case sender(r).IsLoopback():
			next.ServeHTTP(w, r)
			return
		case s.Door == nil:
			http.Error(w, "This server answers only the machine it runs on.", http.StatusForbidden)
			return
		}
		// On plain http a browser tells where a form comes from by its Origin alone, and
		// under no-referrer it would say "null". This policy still tells no other site.
		w.Header().Set("Referrer-Policy", "same-origin")
		if s.Door.knows(r) || forStrangers(r) {
			next.ServeHTTP(w, r)
			return
		}
		s.page(s.askCode)(w, r)
	})
}

// forStrangers tells what is given without the code: where to show it, and what
// the page that asks for it looks like.
func forStrangers(r *http.Request) bool {
	switch r.URL.Path {
	case "/open":
		return r.Method == http.MethodPost
	case "/static/coursewright.css", "/static/drawing.css", "/static/condensed.ttf", "/static/icon.svg":
		return r.Method == http.MethodGet
	}
	return strings.HasPrefix(r.URL.Path, "/open/")
}

// askCode is all that a device without the pass sees.
func (s *Server) askCode(w http.ResponseWriter, r *http.Request) error {
	asked := door.Asked{To: "/"}
	if r.Method == http.MethodGet {
		asked.To = r.URL.RequestURI()
	}
	return page.Render(w, r, http.StatusForbidden, door.AskPage(asked))
}

// openByLink takes the code from the address the terminal shows, and sends the
// device on to one that does not hold it.
func (s *Server) openByLink(w http.ResponseWriter, r *http.Request) error {
	code := chi.URLParam(r, "code")
	r.URL.Path, r.URL.RawPath = "/open", "" // whatever is written about this request later, the code is not in it
	return s.open(w, r, code, "/")
}

// openByForm takes the code as it was typed.
func (s *Server) openByForm(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	return s.open(w, r, r.PostForm.Get("code"), here(r.PostForm.Get("to")))
}

// open weighs a code, and lets the device in or says why not.
func (s *Server) open(w http.ResponseWriter, r *http.Request, code, to string) error {
	if s.Door == nil {
		return fs.ErrNotExist
	}
	from := sender(r)
	if from.IsLoopback() { // this machine needs no code, so it cannot try any
		http.Redirect(w, r, to, http.StatusSeeOther)
		return nil
	}
	answer := s.Door.try(from, code)
	if answer.in {
		s.Door.admit(w)
		w.Header().Set("Referrer-Policy", "no-referrer")
		http.Redirect(w, r, to, http.StatusSeeOther)
		return nil
	}
	status := http.StatusForbidden
	if answer.wait > 0 {
		status = http.StatusTooManyRequests
		w.Header().Set("Retry-After", strconv.Itoa(int(answer.wait/time.Second)+1))
	}
	if answer.begins { // each knock after it would only fill the log
		s.Log.Warn("locked after wrong codes", "address", from, "everybody", answer.all, "for", answer.wait)
	}
	return page.Render(w, r, status, door.AskPage(door.Asked{To: to, Trouble: answer.words(), Locked: answer.wait > 0}))
}

// words say to the person why they are not in.
func (a answer) words() string {
	minutes := int((a.wait + time.Minute - 1) / time.Minute)
	wait := fmt.Sprintf("Wait %d minutes, then try again.", minutes)
	if minutes == 1 {
		wait = "Wait a minute, then try again."
	}
	switch {
	case a.all:
		return "Too many wrong codes came from the network, so no new device is let in for now. " + wait + " Devices that are in already go on."
	case a.wait > 0:
		return fmt.Sprintf("%d wrong codes came from this device. %s", triesOfOne, wait)
	case a.left == 1:
		return "That is not the code. One more wrong code, and this device has to wait."
	}
	return fmt.Sprintf("That is not the code. %d tries are left.", a.left)
}

// sender is the address a request came from; one that does not read is nobody's.
func sender(r *http.Request) netip.Addr {
	at, err := netip.ParseAddrPort(r.RemoteAddr)
	if err != nil {
		return netip.Addr{}
	}
	return at.Addr().Unmap()
}

// here gives a path of this server to go on to: what another site would read
// as its own address, and the door itself, become the first page.
func here(to string) string {
	if !strings.HasPrefix(to, "/") || strings.HasPrefix(to, "//") || strings.ContainsAny(to, "\\\r\n\t") || strings.HasPrefix(to, "/open") {
		return "/"
	}
	return to
}
