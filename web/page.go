package web

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"net/http"
	"os"

	"github.com/a-h/templ"

	"coursewright/store"
	"coursewright/web/view"
)

// handler answers a request or says why it cannot.
type handler func(http.ResponseWriter, *http.Request) error

// errMethod is a route asked with the wrong method.
var errMethod = errors.New("wrong method")

// ErrBusy is the answer of a solver that so many ask at once that it would take too long.
var ErrBusy = errors.New("too many rooms are being worked out")

// refusal is a request that cannot be right: what to do instead.
type refusal struct {
	status int
	text   string
}

func (r *refusal) Error() string { return r.text }

func badRequest(err error) error {
	if errors.Is(err, ErrBusy) {
		return err
	}
	var large *http.MaxBytesError
	if errors.As(err, &large) {
		return &refusal{http.StatusRequestEntityTooLarge, "That is larger than a job may be: 1 MiB."}
	}
	if errors.Is(err, os.ErrDeadlineExceeded) {
		return &refusal{http.StatusRequestTimeout, "That took too long to arrive, and nothing was saved. Send it again."}
	}
	return &refusal{http.StatusBadRequest, short(err.Error())}
}

// short cuts off what repeats a long field of a form built to be long.
func short(text string) string {
	const longest = 400
	if all := []rune(text); len(all) > longest {
		return string(all[:longest]) + "…"
	}
	return text
}

// page is the one adapter from a handler to net/http.
func (s *Server) page(h handler) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		err := h(w, r)
		if err == nil {
			return
		}
		status, title, text := explain(err)
		if status == http.StatusInternalServerError {
			s.Log.Error("request failed", "method", r.Method, "path", r.URL.Path, "error", err)
		}
		if err := render(w, r, status, view.Trouble(title, text)); err != nil {
			s.Log.Error("error page failed", "error", err)
		}
	}
}

// explain gives an error its status and its words for people.
func explain(err error) (status int, title, text string) {
	var refused *refusal
	switch {
	case errors.As(err, &refused):
		return refused.status, "That did not work", refused.text
	case errors.Is(err, store.ErrDeleted):
		return http.StatusGone, "This job is deleted", "It can be brought back from the list of deleted jobs."
	case errors.Is(err, fs.ErrNotExist):
		return http.StatusNotFound, "There is nothing here", "The job or page does not exist."
	case errors.Is(err, errMethod):
		return http.StatusMethodNotAllowed, "That did not work", "This address does not take that kind of request."
	case errors.Is(err, store.ErrFull):
		return http.StatusInsufficientStorage, "Not saved: the disk is full", "Make room on the disk and try again. Everything saved before is safe."
	case errors.Is(err, store.ErrUnavailable):
		return http.StatusServiceUnavailable, "Not saved: the data file cannot be reached", "Try again in a moment. Everything saved before is safe."
	case errors.Is(err, ErrBusy):
		return http.StatusServiceUnavailable, "Not done: too many rooms are being worked out at once", "Try again in a moment. Everything saved before is safe."
	}
	return http.StatusInternalServerError, "Something went wrong here", "This is a fault in the program, not in what you did. What was saved is safe."
}

// render writes a whole page or none.
func render(w http.ResponseWriter, r *http.Request, status int, page templ.Component) error {
	var out bytes.Buffer
	// A request that came too late is over by now, and must still be told so.
	if err := page.Render(context.WithoutCancel(r.Context()), &out); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = out.WriteTo(w) // the reader is gone: nothing left to tell it
	return nil
}
