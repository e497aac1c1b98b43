package jobs

import (
	"context"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/store"
	"coursewright/web/ask"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// Row is a job of the list, with what one tells it by.
type Row struct {
	store.Summary
	About   string // "3 walls over a tub · 22 of 22 measured · on the wall: 41 set"
	Guess   bool   // not all of it is measured
	Example bool   // it is the job an empty store begins with, unchanged
}

// row says what a job holds; one that does not read is shown by its title alone.
func (s pages) row(ctx context.Context, one store.Summary) Row {
	out := Row{Summary: one}
	stored, err := s.Store.Load(ctx, one.ID)
	if err != nil {
		return out
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return out
	}
	measured, all := ask.Count(job)
	out.Guess = measured < all
	about := []string{page.Count(len(job.Walls), "wall") + over(job)}
	if all > 0 {
		about = append(about, fmt.Sprintf("%d of %d measured", measured, all))
	}
	if ticks, err := s.Store.Ticks(ctx, one.ID); err == nil && len(ticks) > 0 {
		about = append(about, fmt.Sprintf("on the wall: %d set", len(ticks)))
	}
	shown := page.Job{Typed: job}
	about = append(about, page.BondLine(shown), page.TileLine(shown))
	out.About = strings.ReplaceAll(page.Unbroken(strings.Join(about, " · ")), " × ", "\u00a0×\u00a0") // a size stays on its line
	example, err := survey.Read(static.Demo)
	if err != nil {
		return out
	}
	document, err := survey.Write(example)
	out.Example = err == nil && string(document) == string(stored.Document)
	return out
}

// over says what the walls stand on.
func over(job survey.Job) string {
	for _, w := range job.Walls {
		for _, b := range w.Base {
			if b.Meets != string(survey.Floor) {
				return " over a " + b.Meets
			}
		}
	}
	return ""
}

// showThumb draws the wrap of a job as a small picture.
func (s pages) showThumb(w http.ResponseWriter, r *http.Request) error {
	_, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	return page.SendPicture(w, drawing.Thumb(plan))
}

// thumb is the address of the small picture of a revision.
func (r Row) thumb() string {
	return string(page.JobPath(r.ID, "/wrap.svg?r="+strconv.FormatInt(r.Revision, 10)))
}
