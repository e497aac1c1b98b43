package door

import (
	"cmp"
	"context"
	"crypto/rand"
	"crypto/sha256"
	"encoding/base64"
	"net/http"
	"strings"
	"sync"
	"time"
	"unicode"
	"unicode/utf8"

	"coursewright/store"
)

// passName is the cookie in which a device keeps its pass.
const passName = "coursewright-pass"

// passAge is how long a browser keeps it: as long as browsers do (RFC 6265bis, from memory).
const passAge = 400 * 24 * time.Hour

// passes are those the store keeps, read once: nobody else writes to its file.
type passes struct {
	kept *store.Store

	mu    sync.Mutex
	known map[[32]byte]store.Pass // by hash; nil before they were read
}

// all reads the passes if they were not read yet. Its caller has mu.
func (p *passes) all(ctx context.Context) (map[[32]byte]store.Pass, error) {
	if p.known != nil {
		return p.known, nil
	}
	list, err := p.kept.Passes(context.WithoutCancel(ctx))
	if err != nil {
		return nil, err
	}
	p.known = map[[32]byte]store.Pass{}
	for _, one := range list {
		p.known[one.Hash] = one
	}
	return p.known, nil
}

// of gives the pass that a request bears. A browser may send several cookies of that name, old ones
// or another program's; one that is a pass is enough.
func (p *passes) of(r *http.Request) (pass store.Pass, found bool, err error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	known, err := p.all(r.Context())
	if err != nil {
		return pass, false, err
	}
	for _, c := range r.CookiesNamed(passName) {
		if pass, found = known[hash(c.Value)]; found {
			return pass, true, nil
		}
	}
	return store.Pass{}, false, nil
}

// hash is what is kept of a pass. The pass is 256 bits of chance, so nothing but it gives the hash.
func hash(secret string) [32]byte { return sha256.Sum256([]byte(secret)) }

// add makes a pass and gives its secret.
func (p *passes) add(ctx context.Context, name string) (secret string, err error) {
	var bits [32]byte
	_, _ = rand.Read(bits[:]) // never fails: the program ends instead
	secret = base64.RawURLEncoding.EncodeToString(bits[:])
	p.mu.Lock()
	defer p.mu.Unlock()
	if _, err := p.all(ctx); err != nil {
		return "", err
	}
	pass, err := p.kept.AddPass(ctx, name, hash(secret))
	if err != nil {
		return "", err
	}
	p.known[pass.Hash] = pass
	return secret, nil
}

// seen notes that a device came, once a day: that is no reason to write at every request.
func (p *passes) seen(ctx context.Context, pass store.Pass, now time.Time) error {
	if now.Sub(pass.Seen) < 24*time.Hour {
		return nil
	}
	pass.Seen = now
	return p.change(ctx, pass, func(ctx context.Context) error { return p.kept.SeePass(ctx, pass.ID, now) })
}

// rename gives a device another name.
func (p *passes) rename(ctx context.Context, pass store.Pass, name string) error {
	pass.Name = name
	return p.change(ctx, pass, func(ctx context.Context) error { return p.kept.NamePass(ctx, pass.ID, name) })
}

func (p *passes) change(ctx context.Context, pass store.Pass, write func(context.Context) error) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if err := write(ctx); err != nil {
		return err
	}
	p.known[pass.Hash] = pass
	return nil
}

// take takes a pass back. It opens nothing any more, even if the file cannot be written to now.
func (p *passes) take(ctx context.Context, pass store.Pass) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	delete(p.known, pass.Hash)
	return p.kept.TakePass(ctx, pass.ID)
}

// give hands a device its pass. It cannot be marked Secure: on a network at
// home there is nobody to vouch for a certificate.
func give(w http.ResponseWriter, secret string) {
	http.SetCookie(w, &http.Cookie{Name: passName, Value: secret, Path: "/", MaxAge: int(passAge / time.Second),
		HttpOnly: true, SameSite: http.SameSiteStrictMode})
}

// longestName is how many letters the name of a device may have.
const longestName = 60

// deviceName is what a device is called: as a person typed it, or by what its browser says it runs on.
func deviceName(typed string, r *http.Request) string {
	name := strings.Join(strings.Fields(strings.Map(visible, strings.ToValidUTF8(typed, ""))), " ")
	if utf8.RuneCountInString(name) > longestName {
		name = string([]rune(name)[:longestName])
	}
	if name != "" {
		return name
	}
	agent := r.UserAgent()
	for _, kind := range []string{"iPhone", "iPad", "Android", "Windows", "Macintosh", "Linux"} {
		if strings.Contains(agent, kind) {
			return cmp.Or(map[string]string{"Macintosh": "Mac", "Android": "Android device"}[kind], kind)
		}
	}
	return "Device"
}

// visible drops what is not seen of a name and turns round what is written beside it, but for what joins
// letters.
func visible(r rune) rune {
	if unicode.Is(unicode.Cf, r) && !unicode.Is(unicode.Join_Control, r) {
		return -1
	}
	return r
}
