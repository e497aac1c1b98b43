package web

import (
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/base32"
	"encoding/base64"
	"net/http"
	"net/netip"
	"strings"
	"time"
)

// Door lets devices of the network in that show a code of 256 bits. It is made
// anew with every start of the program. What a device keeps is a pass that is
// worked out from the code and does not give it away.
type Door struct {
	Address string           // where the network finds the server: 192.168.7.2:7310
	Now     func() time.Time // time.Now, unless a test sets it

	code  string
	pass  string
	tries tries
}

// digits leave out letters that are soon misread; tidied reads those as the
// figures they look like.
var digits = base32.NewEncoding("0123456789abcdefghjkmnpqrstvwxyz").WithPadding(base32.NoPadding)

// NewDoor makes a door with a code of its own for a server at the address.
func NewDoor(address string) *Door {
	var secret [32]byte
	_, _ = rand.Read(secret[:]) // never fails: the program ends instead
	mac := hmac.New(sha256.New, secret[:])
	mac.Write([]byte("pass of a device"))
	return &Door{Address: address, Now: time.Now, code: digits.EncodeToString(secret[:]),
		pass: base64.RawURLEncoding.EncodeToString(mac.Sum(nil))}
}

// Code gives the code in groups of four, to be shown once to whoever started
// the program. It belongs into no page and no log.
func (d *Door) Code() string {
	var groups []string
	for rest := d.code; rest != ""; rest = rest[4:] {
		groups = append(groups, rest[:4])
	}
	return strings.Join(groups, "-")
}

// Link gives the address that carries the code, as secret as the code.
func (d *Door) Link() string { return "http://" + d.Address + "/open/" + d.code }

// answer is what the door says to a try: in, or how many tries are left, or
// how long nobody at this address, or nobody at all, is heard.
type answer struct {
	in     bool
	left   int
	wait   time.Duration
	all    bool // the wait is everybody's
	begins bool // the wait begins with this try
}

// try weighs a code that somebody at an address typed. While an address is
// locked no code is looked at.
func (d *Door) try(from netip.Addr, typed string) answer {
	d.tries.mu.Lock()
	defer d.tries.mu.Unlock()
	now := d.Now()
	if wait, all := d.tries.locked(from, now); wait > 0 {
		return answer{wait: wait, all: all}
	}
	if subtle.ConstantTimeCompare([]byte(tidied(typed)), []byte(d.code)) == 1 {
		d.tries.forget(from)
		return answer{in: true}
	}
	left := d.tries.wrong(from, now)
	wait, all := d.tries.locked(from, now)
	return answer{left: left, wait: wait, all: all, begins: wait > 0}
}

// tidied takes out what people put between the groups, and reads O, I and L as
// the figures they look like.
func tidied(typed string) string {
	return strings.NewReplacer(" ", "", "-", "", "\t", "", "o", "0", "i", "1", "l", "1").Replace(strings.ToLower(typed))
}

// passName is the cookie in which a device keeps its pass.
const passName = "coursewright-pass"

// knows tells whether a request bears the pass.
func (d *Door) knows(r *http.Request) bool {
	c, err := r.Cookie(passName)
	return err == nil && subtle.ConstantTimeCompare([]byte(c.Value), []byte(d.pass)) == 1
}

// admit gives a device its pass. It cannot be marked Secure: on a network at
// home there is nobody to vouch for a certificate.
func (d *Door) admit(w http.ResponseWriter) {
	http.SetCookie(w, &http.Cookie{Name: passName, Value: d.pass, Path: "/", MaxAge: 30 * 24 * 3600,
		HttpOnly: true, SameSite: http.SameSiteStrictMode})
}
