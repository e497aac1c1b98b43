package bench

import (
	"io/fs"
	"net/http"
	"slices"
	"strconv"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	laid "coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// showPiece is the card of one piece, to be put on the bench.
func (s pages) showPiece(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	if t := trimmed(plan, chi.URLParam(r, "piece")); t != nil {
		return page.Render(w, r, http.StatusOK, TrimCard(templ.SafeURL(string(page.JobPath(stored.ID, ""))), *t))
	}
	c := card(plan, page.Schedule(plan), chi.URLParam(r, "piece"))
	if c == nil {
		return fs.ErrNotExist
	}
	return page.Render(w, r, http.StatusOK, PieceCard(stored.ID, templ.SafeURL(string(page.JobPath(stored.ID, ""))), *c))
}

// showPieces lists the pieces of the wall in front, or the cut pieces of all.
func (s pages) showPieces(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	job, err := survey.Read(stored.Document)
	if err != nil {
		return err
	}
	b := Bench{Job: s.Shown(r.Context(), stored, job, plan), sight: sightOf(r, plan)}
	return page.Render(w, r, http.StatusOK, PiecesPage(b))
}

// findPiece is the card of the piece at a place on a wall, in millimetres: where
// a wall has too many whole tiles to draw each by itself.
func (s pages) findPiece(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.Solved(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	wall, err := strconv.Atoi(q.Get("wall"))
	x, wrongX := length.Parse(q.Get("x"), length.Metric)
	y, wrongY := length.Parse(q.Get("y"), length.Metric)
	if err != nil || wrongX != nil || wrongY != nil || wall < 1 || wall > len(plan.Walls) {
		return &page.Refusal{Status: http.StatusBadRequest, Text: "A place is a wall, counted from 1, and x and y on it in millimetres."}
	}
	for _, p := range plan.Walls[wall-1].All() {
		if t := p.Tile; t.Left <= x && x <= t.Right && t.Bottom <= y && y <= t.Top && (p.Outline == nil || p.Face.Contains(plane.Point{X: x, Y: y})) {
			return page.Render(w, r, http.StatusOK, PieceCard(stored.ID, templ.SafeURL(string(page.JobPath(stored.ID, ""))), *card(plan, page.Schedule(plan), p.ID)))
		}
	}
	return fs.ErrNotExist
}

// card tells all about one piece, or nothing where there is none of that name.
func card(plan layout.Plan, s cuts.Schedule, id string) *Card {
	for i := range plan.Walls {
		if p, on := plan.Walls[i].Find(id); p != nil {
			return cardOf(plan, s, i, *p, on)
		}
	}
	return nil
}

func cardOf(plan layout.Plan, s cuts.Schedule, wall int, p piece.Piece, on *laid.Face) *Card {
	c := &Card{Plan: plan, Wall: wall, Piece: p, On: on}
	const wide, high = 50 * drawing.Millimetre, 22 * drawing.Millimetre
	scene := drawing.Sketch(p.Face, wide, high, p.ID+" from the face")
	g := slices.IndexFunc(s.Groups, func(g cuts.Group) bool { return slices.Contains(g.Pieces, p.ID) })
	if g >= 0 {
		c.Batch = &s.Groups[g]
		scene = drawing.CutSketch(c.Batch.Sketch, c.Batch.Outline, wide, high, scene.Title)
	}
	for _, offcuts := range append([]cuts.Offcuts{s.Offcuts}, s.Others...) {
		for _, pair := range offcuts.Pairs {
			if pair[1] == p.ID {
				c.From = pair[0]
			}
		}
	}
	c.Sketch = page.Picture(scene, "sketch-"+p.ID)
	return c
}
