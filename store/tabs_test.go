package store

import (
	"errors"
	"fmt"
	"slices"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/sync/errgroup"
	"pgregory.net/rapid"
)

// history is the model: every state a job ever had, as a tree in the order of saving.
type history struct {
	parent []int // -1 for the first
	text   []string
	shown  int
}

func (h *history) save(text string) {
	h.parent, h.text = append(h.parent, h.shown), append(h.text, text)
	h.shown = len(h.text) - 1
}

func (h *history) undo() {
	if p := h.parent[h.shown]; p >= 0 {
		h.shown = p
	}
}

func (h *history) redo() {
	for i := len(h.parent) - 1; i >= 0; i-- {
		if h.parent[i] == h.shown {
			h.shown = i
			return
		}
	}
}

// tab is one open page: the job as it last saw it.
type tab struct{ seen Job }

// TestTwoTabsNeverOverwriteEachOther lets two tabs do anything in any order and holds each answer
// against the model.
func TestTwoTabsNeverOverwriteEachOther(t *testing.T) {
	s := fresh(t)
	rapid.Check(t, func(r *rapid.T) {
		start, err := s.Create(t.Context(), "Attic bath", []byte("0"))
		require.NoError(r, err)
		model := &history{parent: []int{-1}, text: []string{"0"}}
		number := []int64{start.Revision} // of the model's states
		tabs := []*tab{{start}, {start}}

		for range rapid.IntRange(1, 40).Draw(r, "steps") {
			me := rapid.SampledFrom(tabs).Draw(r, "tab")
			text := fmt.Sprint(rapid.IntRange(0, 3).Draw(r, "text"))
			id, base := start.ID, me.seen.Revision
			current := base == number[model.shown]
			var job Job
			var err error
			switch rapid.SampledFrom([]string{"save", "undo", "redo", "reload"}).Draw(r, "act") {
			case "save":
				job, err = s.Save(t.Context(), id, base, start.Title, []byte(text))
				if text == model.text[model.shown] {
					require.NoError(r, err)
					current = true
				} else if current {
					model.save(text)
					number = append(number, job.Revision)
				}
			case "undo":
				if job, err = s.Undo(t.Context(), id, base); current {
					model.undo()
				}
			case "redo":
				if job, err = s.Redo(t.Context(), id, base); current {
					model.redo()
				}
			case "reload":
				job, err = s.Load(t.Context(), id)
				current = true
			}
			if !current {
				var conflict *Conflict
				require.ErrorAs(r, err, &conflict)
				job, err = conflict.Theirs, nil
			}
			require.NoError(r, err)
			require.Equal(r, model.text[model.shown], string(job.Document))
			require.Equal(r, number[model.shown], job.Revision)
			require.Equal(r, model.parent[model.shown] >= 0, job.CanUndo)
			me.seen = job
		}
		require.Equal(r, model.text, documents(t, s, start.ID), "nothing is lost, nothing is extra")
	})
	sound(t, s)
}

// TestEditsAtTheSameMomentAreAllKeptOrAllRefused: with many tabs on one job, exactly the edits
// that were answered are in the file, each made on the one before it.
func TestEditsAtTheSameMomentAreAllKeptOrAllRefused(t *testing.T) {
	s := fresh(t)
	job := created(t, s, "start")
	var kept atomic.Int64
	var group errgroup.Group
	for tab := range 8 {
		group.Go(func() error {
			base := job.Revision
			for edit := range 20 {
				got, err := s.Save(t.Context(), job.ID, base, job.Title, fmt.Appendf(nil, "tab %d edit %d", tab, edit))
				var conflict *Conflict
				switch {
				case err == nil:
					kept.Add(1)
					base = got.Revision
				case errors.As(err, &conflict):
					base = conflict.Theirs.Revision
				default:
					return err
				}
			}
			return nil
		})
	}
	require.NoError(t, group.Wait())
	list, err := s.Revisions(t.Context(), job.ID, 0, 10_000)
	slices.Reverse(list)
	require.NoError(t, err)
	require.Len(t, list, int(kept.Load())+1)
	for i, r := range list[1:] {
		require.Equal(t, list[i].ID, r.Parent)
	}
	sound(t, s)
}
