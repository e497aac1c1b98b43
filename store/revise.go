package store

import (
	"bytes"
	"context"
	"database/sql"
)

// State is what a revision holds.
type State struct {
	Title    string
	Document []byte // the job file
	Setout   []byte // the set-out it gives, or nil where it was not judged
	Anew     bool   // to Save: another set-out is a new revision also where nothing else has changed
}

// Of is a job as it was at a revision that holds the state.
func (s State) Of(id, revision int64) Job {
	return Job{ID: id, Revision: revision, Title: s.Title, Document: s.Document, Setout: s.Setout}
}

// Save adds a revision below base, the revision the edit was made on, and shows it. If the job
// holds this title and document already, nothing is added and the job comes back as it stands, so
// an edit sent twice counts once. If the job has moved on from base, the error is a *Conflict.
func (s *Store) Save(ctx context.Context, id, base int64, title string, document []byte) (Job, error) {
	return s.SaveState(ctx, id, base, State{Title: title, Document: document})
}

// SaveState is Save with the set-out that the edit gives.
func (s *Store) SaveState(ctx context.Context, id, base int64, state State) (Job, error) {
	return s.revise(ctx, id, func(ctx context.Context, tx *sql.Tx, now Job) error {
		return s.saveState(ctx, tx, now, base, state)
	})
}

// saveState saves a state of a job inside a transaction.
func (s *Store) saveState(ctx context.Context, tx *sql.Tx, now Job, base int64, state State) error {
	if now.Title == state.Title && bytes.Equal(now.Document, state.Document) && !(state.Anew && !bytes.Equal(now.Setout, state.Setout)) {
		return keepSetout(ctx, tx, now.ID, now.Revision, state.Setout)
	}
	if now.Revision != base {
		return &Conflict{Mine: base, Theirs: now}
	}
	return s.addRevision(ctx, tx, now.ID, sql.NullInt64{Int64: base, Valid: true}, state)
}

// Undo shows the revision that base was made from. At the first revision the job stays as it is.
// If the job has moved on from base, the error is a *Conflict.
func (s *Store) Undo(ctx context.Context, id, base int64) (Job, error) {
	return s.move(ctx, id, base, `SELECT parent FROM revision WHERE id = ?`)
}

// Redo shows the newest revision made from base. Where there is none the job stays as it is. If
// the job has moved on from base, the error is a *Conflict.
func (s *Store) Redo(ctx context.Context, id, base int64) (Job, error) {
	return s.move(ctx, id, base, `SELECT max(id) FROM revision WHERE parent = ?`)
}

// move moves the cursor from base to the revision that query finds, if it finds one.
func (s *Store) move(ctx context.Context, id, base int64, query string) (Job, error) {
	return s.revise(ctx, id, func(ctx context.Context, tx *sql.Tx, now Job) error {
		if now.Revision != base {
			return &Conflict{Mine: base, Theirs: now}
		}
		var next sql.NullInt64
		if err := tx.QueryRowContext(ctx, query, base).Scan(&next); err != nil || !next.Valid {
			return err
		}
		return s.show(ctx, tx, id, next.Int64)
	})
}

// revise loads a job, lets change work on it, and gives the job that comes of it.
func (s *Store) revise(ctx context.Context, id int64, change func(context.Context, *sql.Tx, Job) error) (job Job, err error) {
	err = s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		now, err := load(ctx, tx, id)
		if err != nil {
			return err
		}
		if err := change(ctx, tx, now); err != nil {
			return err
		}
		job, err = load(ctx, tx, id)
		return err
	})
	if err != nil {
		return Job{}, err
	}
	return job, nil
}

// addRevision saves a revision and moves the job's cursor to it.
func (s *Store) addRevision(ctx context.Context, tx *sql.Tx, job int64, parent sql.NullInt64, state State) error {
	if state.Document == nil {
		state.Document = []byte{} // an empty document, not the absence of one
	}
	id, err := insert(ctx, tx, `INSERT INTO revision (job, parent, title, document, setout, saved) VALUES (?, ?, ?, ?, ?, ?)`,
		job, parent, state.Title, state.Document, state.Setout, s.Now().UnixMilli())
	if err != nil {
		return err
	}
	return s.show(ctx, tx, job, id)
}

// show moves the cursor of a job.
func (s *Store) show(ctx context.Context, tx *sql.Tx, job, revision int64) error {
	_, err := tx.ExecContext(ctx, `UPDATE job SET cursor = ?, saved = ? WHERE id = ?`, revision, s.Now().UnixMilli(), job)
	return err
}
