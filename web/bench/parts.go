package bench

import (
	"bytes"
	"context"
	"hash/fnv"
	"net/http"
	"strconv"
	"strings"
	"sync"

	"github.com/a-h/templ"

	"coursewright/web/page"
)

// Headers of the parts of the page. A script says which it has, each as
// id=sum, and the answer says which there are now; only those whose sum has
// changed travel. Of the drawing it names its walls too, and of those only the
// ones that have changed travel.
const (
	haveHeader  = "X-Have"
	partsHeader = "X-Parts"
)

// part is an element of the page with an id of its own.
type part struct {
	id   string
	body templ.Component
	sum  templ.Component // what its sum is of, where the body leaves out what is held
}

// parts are what an edit may change, besides the state and the bar, which
// change with every edit.
func (b Bench) parts(r *http.Request) []part {
	return append(b.looks(r), part{id: "guess", body: guessLine(b)}, part{id: "anew", body: anewPart(b)}, part{id: "held", body: heldPart(b)}, part{id: "faults", body: faultsPart(b)}, part{id: "tools", body: toolsPart(b)}, part{id: "wallcuts", body: wallCutsPart(b)},
		part{id: "card", body: cardPart(b)}, part{id: "wished", body: wished(b)}, part{id: "pinned", body: pinsNow(b)}, part{id: "more", body: More(b)}, part{id: "survey", body: Survey(b)})
}

// looks are the parts that follow the hand while something is held or typed.
func (b Bench) looks(r *http.Request) []part {
	have := haveOf(r)
	held := func(id, hash string) bool { return have[id+"="+hash] }
	every := func(string, string) bool { return true }
	return []part{{id: "answers", body: fiveAnswers(b)}, {id: "paper", body: paper(b, held), sum: paper(b, every)}, {id: "insides", body: insides(b)}}
}

// haveOf is what the script says it has.
func haveOf(r *http.Request) map[string]bool {
	have := map[string]bool{}
	for _, one := range strings.Fields(r.Header.Get(haveHeader)) {
		have[one] = true
	}
	return have
}

// show answers with the whole page, or a script with what has changed of it.
func show(w http.ResponseWriter, r *http.Request, code int, b Bench) error {
	b = b.stepped()
	if !page.Live(r) {
		return page.Render(w, r, code, BenchPage(b))
	}
	return send(w, r, code, b.parts(r), state(b), page.JobBar(b.Job, "bench"), page.Titles(b.Typed.Title))
}

// written are buffers that answers were written in, for the next ones.
var written = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// send answers with the parts that the script does not have; always goes with them.
func send(w http.ResponseWriter, r *http.Request, code int, parts []part, always ...templ.Component) error {
	ctx := context.WithoutCancel(r.Context())
	out := written.Get().(*bytes.Buffer)
	defer written.Put(out)
	out.Reset()
	for _, one := range always {
		if err := one.Render(ctx, out); err != nil {
			return err
		}
	}
	have := haveOf(r)
	var now []string
	for _, p := range parts {
		sum, err := p.render(ctx, out, have)
		if err != nil {
			return err
		}
		now = append(now, sum)
	}
	w.Header().Set(partsHeader, strings.Join(now, " "))
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(code)
	_, _ = w.Write(out.Bytes()) // the reader is gone: nothing left to tell it
	return nil
}

// render gives the part's id=sum, and writes its body unless that is held.
func (p part) render(ctx context.Context, out *bytes.Buffer, have map[string]bool) (sum string, err error) {
	from := out.Len()
	told := p.sum
	if told == nil {
		told = p.body
	}
	if err := told.Render(ctx, out); err != nil {
		return "", err
	}
	sum = p.id + "=" + sumOf(out.Bytes()[from:])
	switch {
	case have[sum]:
		out.Truncate(from)
	case p.sum != nil:
		out.Truncate(from)
		return sum, p.body.Render(ctx, out)
	}
	return sum, nil
}

// sumOf tells two states of a part apart.
func sumOf(body []byte) string {
	h := fnv.New64a()
	_, _ = h.Write(body) // a hash takes all
	return strconv.FormatUint(h.Sum64(), 36)
}
