package bench

import (
	"net/http"

	"coursewright/web/page"
)

// Why a set-out is as it is stands in folds: the starts and lines beside it, and the reasons.
// It takes about as long to tell as a third of the search, so a plan is told of only where one of
// them is open: when it is opened (showTold), and with each edit for as long as it is.

// toldHeader is the header by which the page's script says that one of the folds is open.
const toldHeader = "X-Told"

// asked are the pages with their plans told of, if the request is from where that is seen.
func (s pages) asked(r *http.Request) pages {
	if told(r) {
		s.Site = s.Telling()
	}
	return s
}

func told(r *http.Request) bool { return r.Header.Get(toldHeader) != "" }

// showTold is what the folds tell, as a page of its own; the bench's script takes from it what was opened.
func (s pages) showTold(w http.ResponseWriter, r *http.Request) error {
	stored, err := s.Load(r)
	if err != nil {
		return err
	}
	standing, err := s.Telling().Standing(r.Context(), stored)
	if err != nil {
		return page.BadRequest(err)
	}
	b := Bench{Job: s.Shown(r.Context(), standing.Stored, standing.Job, standing.Plan), sight: sightOf(r, standing.Plan), Told: true}
	b.Here = b.query()
	drawSlides(&b)
	return page.Render(w, r, http.StatusOK, ToldPage(b))
}

// toldAt is the address of what the folds tell.
func (b Bench) toldAt() string { return string(page.JobPath(b.ID, "/told"+b.query())) }
