package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"path/filepath"
)

// ErrNotDeleted means that a job that is still in use was to be erased.
var ErrNotDeleted = errors.New("only a deleted job can be erased")

// Erase removes a deleted job for good: its row, revisions, names and ticks. The data file is written
// anew from what is left, because pages that were moved about keep bytes of what stood in them, and
// the log, which held them too, is emptied; that takes a moment and, for that moment, room for a
// second file. Where the program is cut short between the two, the next start writes it anew. Backups of
// earlier days still hold the job; they are listed. A job that is not deleted is ErrNotDeleted, one that is
// not there fs.ErrNotExist. With ErrFull the job stands as it was.
func (s *Store) Erase(ctx context.Context, id int64) (stillIn []string, err error) {
	if err := roomFor(s.path, filepath.Dir(s.path)); err != nil {
		return nil, err
	}
	if err := s.remove(ctx, id); err != nil {
		return nil, err
	}
	return backups(backupFolder(s.path), "*.db"), s.writeAnew(ctx)
}

// remove removes all rows of a deleted job.
func (s *Store) remove(ctx context.Context, id int64) error {
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		_, err := load(ctx, tx, id)
		switch {
		case err == nil:
			return fmt.Errorf("job %d: %w", id, ErrNotDeleted)
		case !errors.Is(err, ErrDeleted):
			return err
		}
		if err := s.held.erases(true); err != nil {
			return err
		}
		for _, query := range []string{
			`DELETE FROM tick WHERE job = ?`, `DELETE FROM name WHERE job = ?`, `DELETE FROM returned WHERE job = ?`,
			`DELETE FROM revision WHERE job = ?`, `DELETE FROM job WHERE id = ?`,
		} {
			if _, err := tx.ExecContext(ctx, query, id); err != nil {
				return err
			}
		}
		return nil
	})
}

// writeAnew writes the file anew, and cuts the log to nothing. A program that reads the file
// meanwhile, as for a backup, is in its way for a moment.
func (s *Store) writeAnew(ctx context.Context) error {
	ctx = context.WithoutCancel(ctx)
	conn, err := s.db.Conn(ctx)
	if err != nil {
		return fault(err)
	}
	defer conn.Close()
	defer s.held.wrote()
	if _, err := conn.ExecContext(ctx, `VACUUM`); err != nil {
		return fmt.Errorf("the job is erased, but bytes of it may be left in free places of the file: %w", s.fault(err))
	}
	var busy, pages, moved int
	err = conn.QueryRowContext(ctx, `PRAGMA wal_checkpoint(TRUNCATE)`).Scan(&busy, &pages, &moved)
	if err == nil && busy != 0 {
		err = fmt.Errorf("%w: another program reads the log, which is emptied at the end of this one", ErrUnavailable)
	}
	if err == nil {
		err = s.held.erases(false)
	}
	return s.fault(err)
}
