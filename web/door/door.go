// Package door says who may come in: which hosts the server answers to, which origins may write,
// and which devices of the network bear a pass.
//
// Laws, each with a test:
//
//  1. Without Network nobody but this machine is answered, whatever the address or host.
//  2. A device that bears no pass is asked for the code, whatever it came for. With Everyone that
//     holds for this machine too.
//  3. The right code is taken whatever happened before. Wrong ones slow the address that sends
//     them and nobody else.
//  4. A pass is a secret of its own for each device; the data file holds its hash. It is kept over
//     restarts until it is taken back, and then opens nothing from the next request on.
//  5. Code and passes stand in no page and no log. No page of another site can try a code.
package door

import (
	"context"
	"crypto/rand"
	"crypto/subtle"
	"encoding/base32"
	"log/slog"
	"strings"
	"time"

	"coursewright/store"
)

// Door lets devices in that show a code of 256 bits, which is made anew with every start of the
// program, and keep a pass.
type Door struct {
	Network  bool   // devices of the network may come in
	Everyone bool   // this machine is asked too
	Address  string // where the network finds the server: 192.168.7.2:7310
	Log      *slog.Logger

	Now   func() time.Time                              // time.Now, unless a test sets it
	Pause func(ctx context.Context, long time.Duration) // lets time go by, unless a test sets it

	code   string
	passes passes
	tries  tries
}

// New makes a door with a code of its own, which knows the passes that the store keeps. It is shut:
// set Network or Everyone, and Address, before it is used.
func New(kept *store.Store) *Door {
	var secret [32]byte
	_, _ = rand.Read(secret[:]) // never fails: the program ends instead
	return &Door{Log: slog.New(slog.DiscardHandler), Now: time.Now, Pause: pause,
		code: digits.EncodeToString(secret[:]), passes: passes{kept: kept}}
}

// digits leave out letters that are soon misread; tidied reads those as the
// figures they look like.
var digits = base32.NewEncoding("0123456789abcdefghjkmnpqrstvwxyz").WithPadding(base32.NoPadding)

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

// fits tells whether somebody typed the code.
func (d *Door) fits(typed string) bool {
	return subtle.ConstantTimeCompare([]byte(tidied(typed)), []byte(d.code)) == 1
}

// tidied takes out what people put between the groups, and reads O, I and L as
// the figures they look like.
func tidied(typed string) string {
	return strings.NewReplacer(" ", "", "-", "", "\t", "", "o", "0", "i", "1", "l", "1").Replace(strings.ToLower(typed))
}

// pause lets time go by unless nobody waits any more.
func pause(ctx context.Context, long time.Duration) {
	over := time.NewTimer(long)
	defer over.Stop()
	select {
	case <-over.C:
	case <-ctx.Done():
	}
}
