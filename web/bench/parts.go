package bench

import (
	"bytes"
	"context"
	"hash/fnv"
	"net/http"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/web/page"
)

// Headers of the parts of the page. A script says which it has, each as
// id=sum, and the answer says which there are now; only those whose sum has
// changed travel.
const (
	haveHeader  = "X-Have"
	partsHeader = "X-Parts"
)

// part is an element of the page with an id of its own.
type part struct {
	id   string
	body templ.Component
}

// parts are what an edit may change, besides the state and the bar, which
// change with every edit.
func (b Bench) parts() []part {
	return append(b.looks(), part{"guess", guessLine(b)}, part{"faults", faultsPart(b)}, part{"tools", toolsPart(b)},
		part{"card", cardPart(b)}, part{"pinned", pinsNow(b)}, part{"more", More(b)}, part{"survey", Survey(b)})
}

// looks are the parts that follow the hand while something is held or typed.
func (b Bench) looks() []part {
	return []part{{"answers", fiveAnswers(b)}, {"paper", paper(b)}}
}

// show answers with the whole page, or a script with what has changed of it.
func show(w http.ResponseWriter, r *http.Request, code int, b Bench) error {
	if !page.Live(r) {
		return page.Render(w, r, code, BenchPage(b))
	}
	return send(w, r, code, b.parts(), state(b), page.JobBar(b.Job, "bench"), page.Titles(b.Typed.Title))
}

// send answers with the parts that the script does not have; always goes with them.
func send(w http.ResponseWriter, r *http.Request, code int, parts []part, always ...templ.Component) error {
	ctx := context.WithoutCancel(r.Context())
	var out bytes.Buffer
	for _, one := range always {
		if err := one.Render(ctx, &out); err != nil {
			return err
		}
	}
	have := " " + r.Header.Get(haveHeader) + " "
	var now []string
	for _, p := range parts {
		var body bytes.Buffer
		if err := p.body.Render(ctx, &body); err != nil {
			return err
		}
		sum := p.id + "=" + sumOf(body.Bytes())
		now = append(now, sum)
		if !strings.Contains(have, " "+sum+" ") {
			_, _ = body.WriteTo(&out) // a buffer takes all
		}
	}
	w.Header().Set(partsHeader, strings.Join(now, " "))
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(code)
	_, _ = out.WriteTo(w) // the reader is gone: nothing left to tell it
	return nil
}

// sumOf tells two states of a part apart.
func sumOf(body []byte) string {
	h := fnv.New64a()
	_, _ = h.Write(body) // a hash takes all
	return strconv.FormatUint(h.Sum64(), 36)
}
