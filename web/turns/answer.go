package turns

import (
	"bytes"
	"compress/gzip"
	"context"
	"io"
	"net/http"
	"strconv"
	"strings"
	"time"
)

// packedFrom is the size in bytes from which a page is packed while it waits for its reader.
const packedFrom = 1 << 20

// Handler answers a request with all that the handler behind it writes, once that has ended. Rooms
// that it solves are solved in one turn, which ends before the answer is sent.
func (d *Desk) Handler(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		made := d.made(next, r)
		d.queue.hold(made.packed.Len())
		defer d.queue.hold(-made.packed.Len())
		made.send(w, r)
	})
}

// made lets a handler make its answer. Nothing of the handler is left when it returns but that.
func (d *Desk) made(next http.Handler, r *http.Request) *answer {
	ctx, cancel := context.WithTimeout(r.Context(), d.limits.Whole)
	defer cancel()
	mine := &turn{queue: d.queue, who: askerOf(r), came: time.Now()}
	defer mine.end()
	out := &answer{header: http.Header{}}
	next.ServeHTTP(out, r.WithContext(context.WithValue(ctx, turnKey{}, mine)))
	out.close()
	return out
}

// answer is an http.ResponseWriter that keeps what is written: plain, or packed if it is long.
type answer struct {
	header http.Header
	status int
	plain  bytes.Buffer
	packed bytes.Buffer
	packer *gzip.Writer
	size   int // bytes written, unpacked
}

// Header implements http.ResponseWriter.
func (a *answer) Header() http.Header { return a.header }

// WriteHeader implements http.ResponseWriter.
func (a *answer) WriteHeader(status int) {
	if a.status == 0 {
		a.status = status
	}
}

// Write implements http.ResponseWriter.
func (a *answer) Write(p []byte) (int, error) {
	a.WriteHeader(http.StatusOK)
	a.size += len(p)
	if a.packer == nil && a.size <= packedFrom {
		return a.plain.Write(p)
	}
	if a.packer == nil {
		a.packer, _ = gzip.NewWriterLevel(&a.packed, gzip.BestSpeed)
		if _, err := a.plain.WriteTo(a.packer); err != nil {
			return 0, err
		}
		a.plain = bytes.Buffer{}
	}
	return a.packer.Write(p)
}

func (a *answer) close() {
	if a.packer != nil {
		_ = a.packer.Close() // a buffer takes all
		a.packer = nil
	}
}

// send gives the answer to its reader, packed if he takes it so. An answer to HEAD is the same
// without its body.
func (a *answer) send(w http.ResponseWriter, r *http.Request) {
	for name, values := range a.header {
		w.Header()[name] = values
	}
	if a.status == 0 {
		a.status = http.StatusOK
	}
	if a.header.Get("Content-Type") == "" && a.packed.Len() == 0 && a.plain.Len() > 0 {
		w.Header().Set("Content-Type", http.DetectContentType(a.plain.Bytes()))
	}
	body, size := io.Reader(&a.plain), a.size
	if a.packed.Len() > 0 {
		w.Header().Add("Vary", "Accept-Encoding")
		body, size = &a.packed, a.packed.Len()
		if takesPacked(r) {
			w.Header().Set("Content-Encoding", "gzip")
		} else {
			body, size = unpacking(&a.packed), a.size
		}
	}
	if hasBody(a.status) {
		w.Header().Set("Content-Length", strconv.Itoa(size))
	}
	w.WriteHeader(a.status)
	if r.Method != http.MethodHead {
		_, _ = io.Copy(w, body) // the reader is gone: nothing left to tell him
	}
}

// unpacking reads what was packed here, so it can be.
func unpacking(packed io.Reader) io.Reader {
	out, err := gzip.NewReader(packed)
	if err != nil {
		return strings.NewReader("")
	}
	return out
}

// takesPacked tells whether a reader says that he unpacks gzip (RFC 9110, section 12.5.3).
func takesPacked(r *http.Request) bool {
	for one := range strings.SplitSeq(r.Header.Get("Accept-Encoding"), ",") {
		name, quality, _ := strings.Cut(strings.TrimSpace(one), ";")
		quality = strings.ReplaceAll(quality, " ", "")
		if strings.EqualFold(name, "gzip") && quality != "q=0" && !strings.HasPrefix(quality, "q=0.000") && quality != "q=0.0" && quality != "q=0.00" {
			return true
		}
	}
	return false
}

func hasBody(status int) bool {
	return status >= 200 && status != http.StatusNoContent && status != http.StatusNotModified
}
