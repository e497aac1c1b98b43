package web

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
	"coursewright/web/drawing"
	"coursewright/web/view"
)

// showPiece is the card of one piece, to be put on the bench.
func (s *Server) showPiece(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.solved(r)
	if err != nil {
		return err
	}
	c := card(plan, schedule(plan), chi.URLParam(r, "piece"))
	if c == nil {
		return fs.ErrNotExist
	}
	return render(w, r, http.StatusOK, view.PieceCard(stored.ID, templ.SafeURL(jobPath(stored.ID)), *c))
}

// findPiece is the card of the piece at a place on a wall, in millimetres: where
// a wall has too many whole tiles to draw each by itself.
func (s *Server) findPiece(w http.ResponseWriter, r *http.Request) error {
	stored, plan, err := s.solved(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	wall, err := strconv.Atoi(q.Get("wall"))
	x, wrongX := length.Parse(q.Get("x"), length.Metric)
	y, wrongY := length.Parse(q.Get("y"), length.Metric)
	if err != nil || wrongX != nil || wrongY != nil || wall < 1 || wall > len(plan.Walls) {
		return &refusal{http.StatusBadRequest, "A place is a wall, counted from 1, and x and y on it in millimetres."}
	}
	for _, p := range plan.Walls[wall-1].Pieces {
		if t := p.Tile; t.Left <= x && x <= t.Right && t.Bottom <= y && y <= t.Top {
			return render(w, r, http.StatusOK, view.PieceCard(stored.ID, templ.SafeURL(jobPath(stored.ID)), *cardOf(plan, schedule(plan), wall-1, p)))
		}
	}
	return fs.ErrNotExist
}

// card tells all about one piece, or nothing where there is none of that name.
func card(plan layout.Plan, s cuts.Schedule, id string) *view.Card {
	for i, w := range plan.Walls {
		for _, p := range w.Pieces {
			if p.ID == id {
				return cardOf(plan, s, i, p)
			}
		}
	}
	return nil
}

func cardOf(plan layout.Plan, s cuts.Schedule, wall int, p piece.Piece) *view.Card {
	c := &view.Card{Plan: plan, Wall: wall, Piece: p}
	face := p.Face
	g := slices.IndexFunc(s.Groups, func(g cuts.Group) bool { return slices.Contains(g.Pieces, p.ID) })
	if g >= 0 {
		c.Batch = &s.Groups[g]
		face = c.Batch.Sketch
	}
	for _, pair := range s.Offcuts.Pairs {
		if pair[1] == p.ID {
			c.From = pair[0]
		}
	}
	c.Sketch = picture(drawing.Sketch(face, 50*drawing.Millimetre, 22*drawing.Millimetre, p.ID+" from the face"), "sketch-"+p.ID)
	return c
}
