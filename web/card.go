package web

import (
	"io/fs"
	"net/http"
	"slices"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"coursewright/layout"
	"coursewright/layout/cuts"
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
