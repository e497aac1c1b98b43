package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
)

// ErrNotDeleted means that a job that is still in use was to be erased.
var ErrNotDeleted = errors.New("only a deleted job can be erased")

// Erase removes a deleted job for good: its row, revisions, names and ticks are overwritten in the
// data file, and the log, which held them too, is emptied. Backups of earlier days still hold the
// job; they are listed. A job that is not deleted is ErrNotDeleted, one that is not there
// fs.ErrNotExist.
func (s *Store) Erase(ctx context.Context, id int64) (stillIn []string, err error) {
	err = s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		_, err := load(ctx, tx, id)
		switch {
		case err == nil:
			return fmt.Errorf("job %d: %w", id, ErrNotDeleted)
		case !errors.Is(err, ErrDeleted):
			return err
		}
		for _, query := range []string{
			`DELETE FROM tick WHERE job = ?`, `DELETE FROM name WHERE job = ?`,
			`DELETE FROM revision WHERE job = ?`, `DELETE FROM job WHERE id = ?`,
		} {
			if _, err := tx.ExecContext(ctx, query, id); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return backups(backupFolder(s.path), "*.db"), s.emptyLog(ctx)
}

// emptyLog moves the log into the file and cuts it to nothing. A program that reads the file
// meanwhile, as for a backup, is in its way for a moment.
func (s *Store) emptyLog(ctx context.Context) error {
	var busy, pages, moved int
	err := s.db.QueryRowContext(context.WithoutCancel(ctx), `PRAGMA wal_checkpoint(TRUNCATE)`).Scan(&busy, &pages, &moved)
	if err == nil && busy != 0 {
		err = fmt.Errorf("%w: another program reads the log, which is emptied at the end of this one", ErrUnavailable)
	}
	return s.fault(err)
}
