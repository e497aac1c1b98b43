package page

import (
	"net/http"
	"strconv"

	"coursewright/web/form"
)

// Live tells whether the page's script asks: it takes the page at once, where
// a browser is sent on to it.
func Live(r *http.Request) bool { return r.Header.Get("X-Bench") == "live" }

// Query is the part of a request's address from the question mark on.
func Query(r *http.Request) string {
	if r.URL.RawQuery == "" {
		return ""
	}
	return "?" + r.URL.RawQuery
}

// Revision reads which revision the form was filled from.
func Revision(r *http.Request) (int64, error) {
	n, err := strconv.ParseInt(r.PostFormValue(form.Revision), 10, 64)
	if err != nil || n < 1 {
		return 0, &Refusal{http.StatusBadRequest, "The form does not say which state of the job it was filled from. Load the page again."}
	}
	return n, nil
}
