package page

import (
	"bytes"
	"cmp"
	"context"
	"net/http"
	"strings"

	"github.com/a-h/templ"
)

// Render writes a whole page or none. A page that says what went wrong is written even when the
// request is over, which may be what went wrong; any other is broken off then.
func Render(w http.ResponseWriter, r *http.Request, status int, page templ.Component) error {
	var out bytes.Buffer
	ctx := r.Context()
	if status >= http.StatusBadRequest {
		ctx = context.WithoutCancel(ctx)
	}
	if err := page.Render(ctx, &whileWanted{ctx, &out}); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = out.WriteTo(w) // the reader is gone: nothing left to tell it
	return nil
}

// whileWanted takes what is written until the context ends.
type whileWanted struct {
	ctx context.Context
	out *bytes.Buffer
}

// Write implements io.Writer.
func (w *whileWanted) Write(p []byte) (int, error) {
	if err := context.Cause(w.ctx); err != nil {
		return 0, err
	}
	return w.out.Write(p)
}

// Send answers with a file, under a disposition that names it.
func Send(w http.ResponseWriter, kind, disposition string, data []byte) error {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Disposition", disposition)
	_, _ = w.Write(data)
	return nil
}

// FileName makes a title into a name that every file system takes.
func FileName(title string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, title)
	return cmp.Or(strings.Trim(name[:min(len(name), 60)], "-"), "job")
}
