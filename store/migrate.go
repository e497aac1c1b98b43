package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"

	"coursewright/migrations"
)

// migrate brings the file to the newest version, each step in one transaction with the
// user_version it leads to. A file that holds something is backed up before each step.
func (s *Store) migrate(ctx context.Context, steps []migrations.Step) error {
	version, err := version(ctx, s.db)
	if err != nil {
		return err
	}
	if err := known(version, len(steps)); err != nil { // examine has no word on a file whose making was cut short
		return err
	}
	for _, step := range steps[version:] {
		if version > 0 { // a file that was new a moment ago holds nothing to back up
			if err := s.backUpBefore(ctx, step); err != nil {
				return fmt.Errorf("migration %s: backup before it: %w", step.Name, err)
			}
		}
		if err := s.step(ctx, step); err != nil {
			return fmt.Errorf("migration %s: %w", step.Name, err)
		}
	}
	return nil
}

// backUpBefore makes a backup unless one was made in the same second, before a migration that was
// cut short: it holds the same.
func (s *Store) backUpBefore(ctx context.Context, step migrations.Step) error {
	stamp := s.Now().UTC().Format("20060102T150405")
	err := s.Backup(ctx, fmt.Sprintf("%s/before-v%d-%s.db", backupFolder(s.path), step.Version, stamp))
	if errors.Is(err, fs.ErrExist) {
		return nil
	}
	return err
}

func (s *Store) step(ctx context.Context, step migrations.Step) error {
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, step.SQL); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, fmt.Sprintf(`PRAGMA user_version = %d`, step.Version))
		return err
	})
}
