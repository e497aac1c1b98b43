package door

import (
	"fmt"
	"io/fs"
	"net/http"
	"net/netip"
	"net/url"
	"strings"

	"github.com/go-chi/chi/v5"

	"coursewright/web/page"
)

// Routes are the pages of the door.
func (d *Door) Routes() []page.Route {
	return []page.Route{
		page.Get("/open/{code}", d.openByLink),
		page.Post("/open", d.openByForm),
		page.Get("/devices", d.showDevices),
		page.Post("/devices", d.editDevices),
	}
}

// asks tells whether this door asks anybody for the code.
func (d *Door) asks() bool { return d.Network || d.Everyone }

// guard lets those pass who may come in. The others are asked for the code, whatever they came for.
func (d *Door) guard(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		home := AtHome(r)
		switch {
		case home && !d.Everyone:
			next.ServeHTTP(w, r)
			return
		case !home && !d.Network:
			http.Error(w, "This server answers only the machine it runs on.", http.StatusForbidden)
			return
		}
		// On plain http a browser tells where a form comes from by its Origin alone, and
		// under no-referrer it would say "null". This policy still tells no other site.
		w.Header().Set("Referrer-Policy", "same-origin")
		in, err := d.bearsPass(r)
		if err != nil {
			d.Log.Error("passes cannot be read", "error", err)
		}
		if in || forStrangers(r) {
			next.ServeHTTP(w, r)
			return
		}
		d.ask(w, r, http.StatusForbidden, Asked{To: wanted(r)})
	})
}

// bearsPass tells whether a request bears a pass, and notes the day.
func (d *Door) bearsPass(r *http.Request) (bool, error) {
	pass, found, err := d.passes.of(r)
	if !found || err != nil {
		return false, err
	}
	if err := d.passes.seen(r.Context(), pass, d.Now()); err != nil {
		d.Log.Warn("the day a device came could not be noted", "error", err)
	}
	return true, nil
}

// forStrangers tells what is given without the code: where to show it, and what
// the page that asks for it looks like.
func forStrangers(r *http.Request) bool {
	reads := r.Method == http.MethodGet || r.Method == http.MethodHead
	switch r.URL.Path {
	case "/open":
		return r.Method == http.MethodPost
	case "/static/coursewright.css", "/static/drawing.css", "/static/condensed.ttf", "/static/condensed-bold.ttf", "/static/icon.svg":
		return reads
	}
	return strings.HasPrefix(r.URL.Path, "/open/")
}

// wanted is where a device is led once it is in.
func wanted(r *http.Request) string {
	if r.Method == http.MethodGet || r.Method == http.MethodHead {
		return here(r.URL.RequestURI())
	}
	return "/"
}

// ask is all that a device without a pass sees.
func (d *Door) ask(w http.ResponseWriter, r *http.Request, status int, a Asked) {
	if err := page.Render(w, r, status, AskPage(a)); err != nil {
		d.Log.Error("the page that asks for the code failed", "error", err)
	}
}

// openByLink takes the code from the address the terminal shows, and sends the
// device on to one that does not hold it.
func (d *Door) openByLink(w http.ResponseWriter, r *http.Request) error {
	code := chi.URLParam(r, "code")
	r.URL.Path, r.URL.RawPath = "/open", "" // whatever is written about this request later, the code is not in it
	if r.Method == http.MethodHead || !ownAccord(r) {
		if !d.asks() {
			return fs.ErrNotExist
		}
		d.ask(w, r, http.StatusForbidden, Asked{To: "/", Trouble: "The code is taken from the camera or the keyboard of this device, not from another page."})
		return nil
	}
	return d.open(w, r, code, "", "/")
}

// ownAccord tells whether a person opened a link, rather than a page of another site. A browser on
// plain http tells less of where a request comes from; what it tells is looked at, and a code that
// another page has to guess is never right.
func ownAccord(r *http.Request) bool {
	switch r.Header.Get("Sec-Fetch-Site") {
	case "cross-site", "same-site":
		return false
	}
	for _, from := range []string{r.Header.Get("Origin"), r.Header.Get("Referer")} {
		if from == "" {
			continue
		}
		at, err := url.Parse(from)
		if err != nil || at.Host != r.Host {
			return false
		}
	}
	return true
}

// openByForm takes the code as it was typed.
func (d *Door) openByForm(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	return d.open(w, r, r.PostForm.Get("code"), r.PostForm.Get("name"), here(r.PostForm.Get("to")))
}

// open weighs a code, and lets the device in or says why not.
func (d *Door) open(w http.ResponseWriter, r *http.Request, code, name, to string) error {
	if !d.asks() {
		return fs.ErrNotExist
	}
	if AtHome(r) && !d.Everyone { // this machine needs no code, so it cannot try any
		http.Redirect(w, r, to, http.StatusSeeOther)
		return nil
	}
	if !d.fits(code) {
		d.refuse(w, r, to)
		return nil
	}
	d.tries.right(sender(r))
	if _, in, err := d.passes.of(r); err != nil || !in { // who is in already needs no second pass
		secret, err := d.passes.add(r.Context(), deviceName(name, r))
		if err != nil {
			return err
		}
		give(w, secret)
	}
	w.Header().Set("Referrer-Policy", "no-referrer")
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// refuse answers a wrong code, the later the more of them came from there.
func (d *Door) refuse(w http.ResponseWriter, r *http.Request, to string) {
	from := sender(r)
	s, done := d.tries.wrong(from, d.Now())
	defer done()
	if s.begins { // each knock after it would only fill the log
		d.Log.Warn("wrong codes are slowed down", "address", from)
	}
	status := http.StatusForbidden
	if s.busy || s.pause > 0 {
		status = http.StatusTooManyRequests
		w.Header().Set("Retry-After", "1")
	}
	if s.pause > 0 {
		d.Pause(r.Context(), s.pause)
	}
	d.ask(w, r, status, Asked{To: to, Trouble: s.words()})
}

// words say to the person why they are not in.
func (s slowed) words() string {
	switch {
	case s.busy || s.pause > 0:
		return "That is not the code. Many wrong ones came from this device, so each takes longer to answer. The right one is taken at once."
	case s.left == 1:
		return "That is not the code. After one more wrong one this device has to wait for each answer."
	}
	return fmt.Sprintf("That is not the code. %d more tries go without waiting.", s.left)
}

// AtHome tells whether a request comes from this machine.
func AtHome(r *http.Request) bool { return sender(r).IsLoopback() }

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
