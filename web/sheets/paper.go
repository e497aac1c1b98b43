package sheets

import (
	"net/http"
	"strings"

	"coursewright/web/sheet"
)

// paperCookie keeps the paper that was chosen last: a printer belongs to the device, not to a job.
const paperCookie = "paper"

// paperOf is the paper that is asked for, or else the one that this device chose last; empty is the usual one.
func paperOf(r *http.Request) string {
	if q := r.URL.Query(); q.Has("paper") {
		return q.Get("paper")
	}
	kept, err := r.Cookie(paperCookie)
	if err != nil {
		return ""
	}
	if _, err := sheet.PaperNamed(kept.Value); err != nil {
		return ""
	}
	return kept.Value
}

// keepPaper notes the paper that is chosen on the page; the usual one is nothing to note.
func keepPaper(w http.ResponseWriter, r *http.Request) {
	if !r.URL.Query().Has("paper") {
		return
	}
	kept := http.Cookie{Name: paperCookie, Value: paperOf(r), Path: "/", MaxAge: 365 * 24 * 3600, HttpOnly: true, SameSite: http.SameSiteStrictMode}
	if kept.Value == "" {
		kept.MaxAge = -1
	}
	http.SetCookie(w, &kept)
}

func paperKey(p sheet.Paper) string { return strings.ToLower(p.Name) }
