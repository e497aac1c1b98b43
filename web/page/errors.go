package page

import (
	"context"
	"errors"
	"io/fs"
	"net/http"
	"os"
	"strings"

	"coursewright/layout/survey"
	"coursewright/store"
)

// ErrMethod is a route asked with the wrong method.
var ErrMethod = errors.New("wrong method")

// ErrBusy is the answer of a solver that so many ask at once that it would take too long.
var ErrBusy = errors.New("too many rooms are being worked out")

// Refusal is a request that cannot be right: what to do instead.
type Refusal struct {
	Status int
	Text   string
}

func (r *Refusal) Error() string { return r.Text }

// BadRequest is a refusal of what was sent, with the words of the error.
func BadRequest(err error) error {
	if errors.Is(err, ErrBusy) || errors.Is(err, context.DeadlineExceeded) || errors.Is(err, context.Canceled) {
		return err
	}
	var large *http.MaxBytesError
	if errors.As(err, &large) {
		return &Refusal{http.StatusRequestEntityTooLarge, "That is larger than a job may be: 1 MiB."}
	}
	if errors.Is(err, os.ErrDeadlineExceeded) {
		return &Refusal{http.StatusRequestTimeout, "That took too long to arrive, and nothing was saved. Send it again."}
	}
	return &Refusal{http.StatusBadRequest, clipped(err.Error())}
}

// clipped cuts off what repeats a long field of a form built to be long.
func clipped(text string) string {
	const longest = 400
	if all := []rune(text); len(all) > longest {
		return string(all[:longest]) + "…"
	}
	return text
}

// Explain gives an error its status and its words for people.
func Explain(err error) (status int, title, text string) {
	var refused *Refusal
	var astray *store.Astray
	var faults survey.Faults
	switch {
	case errors.As(err, &refused):
		return refused.Status, "That did not work", refused.Text
	case errors.As(err, &faults):
		return http.StatusUnprocessableEntity, "That did not work", clipped(faults.Error())
	case errors.Is(err, store.ErrDeleted):
		return http.StatusGone, "This job is deleted", "It can be brought back from the list of deleted jobs."
	case errors.Is(err, fs.ErrNotExist):
		return http.StatusNotFound, "There is nothing here", "The job or page does not exist."
	case errors.Is(err, ErrMethod):
		return http.StatusMethodNotAllowed, "That did not work", "This address does not take that kind of request."
	case errors.As(err, &astray):
		return http.StatusServiceUnavailable, "Not saved: the data file is gone from its place", astrayWords(astray)
	case errors.Is(err, store.ErrFull):
		return http.StatusInsufficientStorage, "Not saved: the disk is full", "Make room on the disk and try again. Everything saved before is safe."
	case errors.Is(err, store.ErrUnavailable):
		return http.StatusServiceUnavailable, "Not saved: the data file cannot be reached", "Try again in a moment. Everything saved before is safe."
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled):
		return http.StatusServiceUnavailable, "Not done: that took too long", "A larger tile, fewer free marks or a pin make less work of a room. Everything saved before is safe."
	case errors.Is(err, ErrBusy):
		return http.StatusServiceUnavailable, "Not done: too many rooms are being worked out at once", "Try again in a moment. Everything saved before is safe."
	}
	return http.StatusInternalServerError, "Something went wrong here", "This is a fault in the program, not in what you did. What was saved is safe."
}

// astrayWords say where everything is when the data file is not.
func astrayWords(a *store.Astray) string {
	text := a.Missing + " was " + a.Happened() + " while the program has it open. Nothing more is saved there. "
	if a.Rescue == "" {
		return text + "A copy could not be made: leave the program running, export the jobs that matter, and make room on the disk."
	}
	said, back := a.Copied(), "; or put the file back that stood there."
	if a.Over {
		back = "."
	}
	return text + strings.ToUpper(said[:1]) + said[1:] + " is in the rescue copy " + a.Rescue + " . End the program, put the copy back with the command " +
		"coursewright restore, and start again" + back
}
