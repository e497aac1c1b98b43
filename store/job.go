package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"time"
)

// Job is a job at the revision it shows.
type Job struct {
	ID       int64
	Title    string
	Revision int64
	Parent   int64  // the revision undo leads to; 0 where there is none
	Document []byte // the job file
	Setout   []byte // the set-out that the revision keeps; nil while it was not judged
	CanUndo  bool
	CanRedo  bool
	Created  time.Time
	Saved    time.Time // when an edit, undo or redo last took the job here
}

// Summary is a job without its document.
type Summary struct {
	ID       int64
	Title    string
	Revision int64
	Created  time.Time
	Saved    time.Time
	Deleted  time.Time // zero for a job that is not deleted
}

// Create saves a new job.
func (s *Store) Create(ctx context.Context, title string, document []byte) (job Job, err error) {
	err = s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		now := s.Now().UnixMilli()
		// The cursor is set as soon as there is a revision to point at.
		id, err := insert(ctx, tx, `INSERT INTO job (cursor, created, saved) VALUES (0, ?, ?)`, now, now)
		if err != nil {
			return err
		}
		if err := s.addRevision(ctx, tx, id, sql.NullInt64{}, State{Title: title, Document: document}); err != nil {
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

// Load gives a job as it stands.
func (s *Store) Load(ctx context.Context, id int64) (job Job, err error) {
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		job, err = load(ctx, tx, id)
		return err
	})
	return job, err
}

// Jobs lists the jobs that are not deleted, the one saved last first.
func (s *Store) Jobs(ctx context.Context) ([]Summary, error) {
	return s.summaries(ctx, `WHERE j.deleted IS NULL ORDER BY j.saved DESC, j.id DESC`)
}

// Deleted lists the deleted jobs, the one deleted last first.
func (s *Store) Deleted(ctx context.Context) ([]Summary, error) {
	return s.summaries(ctx, `WHERE j.deleted IS NOT NULL ORDER BY j.deleted DESC, j.id DESC`)
}

// Delete marks a job as deleted. Nothing of it is lost; deleting it again changes nothing.
func (s *Store) Delete(ctx context.Context, id int64) error {
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		return mark(ctx, tx, `UPDATE job SET deleted = coalesce(deleted, ?) WHERE id = ?`, s.Now().UnixMilli(), id)
	})
}

// Restore takes Delete back, at the revision the job showed, and notes it for the history.
func (s *Store) Restore(ctx context.Context, id int64) error {
	const note = `INSERT INTO returned (job, revision, deleted, back) SELECT id, cursor, deleted, ? FROM job WHERE id = ? AND deleted IS NOT NULL`
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, note, s.Now().UnixMilli(), id); err != nil {
			return err
		}
		return mark(ctx, tx, `UPDATE job SET deleted = ? WHERE id = ?`, nil, id)
	})
}

// mark writes one column of a job.
func mark(ctx context.Context, tx *sql.Tx, query string, deleted any, id int64) error {
	result, err := tx.ExecContext(ctx, query, deleted, id)
	if err != nil {
		return err
	}
	if n, err := result.RowsAffected(); err != nil || n == 1 {
		return err
	}
	return missing(id)
}

func missing(id int64) error { return fmt.Errorf("job %d: %w", id, fs.ErrNotExist) }

// load reads a job inside a transaction; a deleted one is ErrDeleted.
func load(ctx context.Context, tx *sql.Tx, id int64) (Job, error) {
	const query = `
		SELECT j.id, r.title, r.id, r.document, r.setout, coalesce(r.parent, 0), r.parent IS NOT NULL,
		       EXISTS (SELECT 1 FROM revision c WHERE c.parent = r.id),
		       j.created, j.saved, j.deleted IS NOT NULL
		FROM job j JOIN revision r ON r.id = j.cursor WHERE j.id = ?`
	var (
		j              Job
		created, saved int64
		deleted        bool
	)
	err := tx.QueryRowContext(ctx, query, id).Scan(
		&j.ID, &j.Title, &j.Revision, &j.Document, &j.Setout, &j.Parent, &j.CanUndo, &j.CanRedo, &created, &saved, &deleted)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return Job{}, missing(id)
	case err != nil:
		return Job{}, err
	case deleted:
		return Job{}, fmt.Errorf("job %d: %w", id, ErrDeleted)
	}
	j.Created, j.Saved = moment(created), moment(saved)
	return j, nil
}

func (s *Store) summaries(ctx context.Context, which string) (list []Summary, err error) {
	const query = `SELECT j.id, r.title, r.id, j.created, j.saved, j.deleted
		FROM job j JOIN revision r ON r.id = j.cursor `
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		list, err = collect(ctx, tx, scanSummary, query+which)
		return err
	})
	return list, err
}

func scanSummary(rows *sql.Rows) (Summary, error) {
	var (
		m              Summary
		created, saved int64
		deleted        sql.NullInt64
	)
	err := rows.Scan(&m.ID, &m.Title, &m.Revision, &created, &saved, &deleted)
	m.Created, m.Saved = moment(created), moment(saved)
	if deleted.Valid {
		m.Deleted = moment(deleted.Int64)
	}
	return m, err
}

// collect runs a query and scans every row.
func collect[T any](ctx context.Context, tx *sql.Tx, scan func(*sql.Rows) (T, error), query string, args ...any) ([]T, error) {
	rows, err := tx.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var list []T
	for rows.Next() {
		row, err := scan(rows)
		if err != nil {
			return nil, err
		}
		list = append(list, row)
	}
	return list, rows.Err()
}

// insert adds a row and gives its id.
func insert(ctx context.Context, tx *sql.Tx, query string, args ...any) (int64, error) {
	result, err := tx.ExecContext(ctx, query, args...)
	if err != nil {
		return 0, err
	}
	return result.LastInsertId()
}

// moment is the time of a stored unix ms.
func moment(ms int64) time.Time { return time.UnixMilli(ms).UTC() }
