package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"time"
)

// Revision is one saved state of a job, without its document.
type Revision struct {
	ID     int64
	Parent int64 // 0 for the one the job began with
	Title  string
	Saved  time.Time
	Name   string // what a person called it, or ""
	Shown  bool   // the job shows this one now
	Undone bool   // it is neither shown nor one of those that undo leads back to
}

// Revisions lists revisions of a job on all branches, the newest first: those before one, or all
// where before is 0, and no more than most. A parent is older than its children, so what undo leads back to
// is followed no further than to the oldest of these.
func (s *Store) Revisions(ctx context.Context, id, before int64, most int) (list []Revision, err error) {
	const query = `
		WITH RECURSIVE
		listed (id) AS MATERIALIZED (SELECT id FROM revision WHERE job = ?1 AND (?2 = 0 OR id < ?2) ORDER BY id DESC LIMIT ?3),
		line (id) AS (
			SELECT cursor FROM job WHERE id = ?1
			UNION ALL SELECT r.parent FROM line JOIN revision r ON r.id = line.id WHERE r.parent >= (SELECT min(id) FROM listed))
		SELECT r.id, coalesce(r.parent, 0), r.title, r.saved, coalesce(n.name, ''), r.id = j.cursor, r.id NOT IN line
		FROM listed JOIN revision r ON r.id = listed.id JOIN job j ON j.id = r.job LEFT JOIN name n ON n.revision = r.id
		ORDER BY r.id DESC`
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := load(ctx, tx, id); err != nil {
			return err
		}
		list, err = collect(ctx, tx, scanRevision, query, id, before, most)
		return err
	})
	return list, err
}

func scanRevision(rows *sql.Rows) (Revision, error) {
	var (
		r     Revision
		saved int64
	)
	err := rows.Scan(&r.ID, &r.Parent, &r.Title, &saved, &r.Name, &r.Shown, &r.Undone)
	r.Saved = moment(saved)
	return r, err
}

// Return is a time for which a job was deleted, with the revision it showed.
type Return struct {
	Revision      int64
	Deleted, Back time.Time
}

// Returns lists when a job was deleted and brought back, the last first.
func (s *Store) Returns(ctx context.Context, id int64) (list []Return, err error) {
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		list, err = collect(ctx, tx, scanReturn, `SELECT revision, deleted, back FROM returned WHERE job = ? ORDER BY id DESC`, id)
		return err
	})
	return list, err
}

func scanReturn(rows *sql.Rows) (r Return, err error) {
	var deleted, back int64
	err = rows.Scan(&r.Revision, &deleted, &back)
	r.Deleted, r.Back = moment(deleted), moment(back)
	return r, err
}

// At gives what a job held at one of its revisions, whether the job is deleted or not.
func (s *Store) At(ctx context.Context, id, revision int64) (was State, err error) {
	const query = `SELECT title, document, setout FROM revision WHERE job = ? AND id = ?`
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		err := tx.QueryRowContext(ctx, query, id, revision).Scan(&was.Title, &was.Document, &was.Setout)
		if errors.Is(err, sql.ErrNoRows) {
			return noRevision(id, revision)
		}
		return err
	})
	return was, err
}

// Name names a revision of a job, which keeps it from being thinned out; no name takes it back.
func (s *Store) Name(ctx context.Context, id, revision int64, name string) error {
	const query = `INSERT INTO name (job, revision, name) SELECT job, id, ? FROM revision WHERE job = ? AND id = ?
		ON CONFLICT (revision) DO UPDATE SET name = excluded.name`
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := load(ctx, tx, id); err != nil {
			return err
		}
		if name == "" {
			_, err := tx.ExecContext(ctx, `DELETE FROM name WHERE job = ? AND revision = ?`, id, revision)
			return err
		}
		result, err := tx.ExecContext(ctx, query, name, id, revision)
		if err != nil {
			return err
		}
		if n, err := result.RowsAffected(); err != nil || n == 1 {
			return err
		}
		return noRevision(id, revision)
	})
}

func noRevision(id, revision int64) error {
	return fmt.Errorf("revision %d of job %d: %w", revision, id, fs.ErrNotExist)
}
