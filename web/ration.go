package web

import (
	"context"
	"fmt"
	"net/http"

	"coursewright/web/door"
	"coursewright/web/page"
)

// Devices of the network may edit every job, and every edit of a day is kept. So that none of them, out of
// order or meant to, fills the disk of the house, what they save ends where the jobs fill a ration; this
// machine goes on.

// usualRation is what the jobs may fill before devices of the network save nothing more: 200,000 edits of
// a bath, a hundred times what a job of weeks takes.
const usualRation = 1 << 30

// rationed refuses what a device of the network would save over the ration. It still may come in, read,
// and look at what would come of an edit.
func (s *Server) rationed(route page.Route, next http.Handler) http.Handler {
	if route.Method != http.MethodPost || route.Looks || route.Path == "/open" {
		return next
	}
	return s.page(func(w http.ResponseWriter, r *http.Request) error {
		if !door.AtHome(r) {
			if full, err := s.rationOut(r.Context()); err != nil || full {
				return overRation(err)
			}
		}
		next.ServeHTTP(w, r)
		return nil
	})
}

func overRation(err error) error {
	if err != nil {
		return err
	}
	return &page.Refusal{Status: http.StatusInsufficientStorage, Text: "Not saved: the jobs fill as much as devices of the network may fill. " +
		"Everything saved before is safe. The computer that keeps them saves on, and makes room where deleted jobs are erased there."}
}

// rationOut tells whether the ration is used up.
func (s *Server) rationOut(ctx context.Context) (bool, error) {
	ration := s.Ration
	if ration == 0 {
		ration = usualRation
	}
	used, err := s.Store.InUse(ctx)
	return used >= ration, err
}

// filled says to this machine how much the jobs fill, and whether that keeps devices of the network from saving.
func (s *Server) filled(ctx context.Context) (size string, full bool) {
	used, err := s.Store.InUse(ctx)
	if err != nil {
		return "", false
	}
	full, err = s.rationOut(ctx)
	return fmt.Sprintf("%d MB", used>>20+1), err == nil && full && s.Door != nil && s.Door.Network
}
