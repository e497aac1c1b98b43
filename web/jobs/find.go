package jobs

import (
	"errors"
	"net/http"
	"net/url"
	"path/filepath"
	"strconv"

	"github.com/a-h/templ"

	"coursewright/store"
	"coursewright/web/page"
)

// onePage is how many jobs one page lists.
const onePage = 50

// searchable tells whether there are so many jobs that one would look for one.
func (j Jobs) searchable() bool { return j.Words != "" || j.All > 3 }

// found says how many jobs were found.
func (j Jobs) found() string {
	if j.All == 0 {
		return "No job is called that."
	}
	return page.Count(j.All, "job") + " found."
}

// pageAt is the address of another page of what was found.
func (j Jobs) pageAt(from int) templ.SafeURL {
	q := url.Values{}
	if j.Words != "" {
		q.Set("find", j.Words)
	}
	if from > 0 {
		q.Set("from", strconv.Itoa(from))
	}
	return templ.SafeURL((&url.URL{Path: "/", RawQuery: q.Encode()}).String())
}

// eraseJob erases a deleted job, and says which backups still hold it.
func (s pages) eraseJob(w http.ResponseWriter, r *http.Request) error {
	id, err := page.JobID(r)
	if err != nil {
		return err
	}
	stillIn, err := s.Store.Erase(r.Context(), id)
	if errors.Is(err, store.ErrNotDeleted) {
		return &page.Refusal{Status: http.StatusConflict, Text: "Only a deleted job can be erased. Delete it first."}
	}
	if err != nil {
		return err
	}
	for i, path := range stillIn {
		stillIn[i] = filepath.Base(path)
	}
	return s.showJobs(w, r, http.StatusOK, Jobs{Erased: &Erased{Backups: stillIn}})
}
