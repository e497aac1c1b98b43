package store

import (
	"context"
	"database/sql"
	"fmt"

	"coursewright/migrations"
)

// migrate brings the file to the newest version, each step in one transaction with the
// user_version it leads to. A file that holds something is backed up before each step.
func (s *Store) migrate(ctx context.Context, steps []migrations.Step) error {
	for {
		version, err := s.version(ctx)
		if err != nil {
			return err
		}
		if version > len(steps) {
			return newer(version, len(steps))
		}
		if version == len(steps) {
			return nil
		}
		if err := s.step(ctx, steps[version]); err != nil {
			return fmt.Errorf("migration %s: %w", steps[version].Name, err)
		}
	}
}

// version reads the file's version through SQLite, which also sees what is still in the log.
func (s *Store) version(ctx context.Context) (int, error) {
	var version int
	err := s.read(ctx, func(tx *sql.Tx) error {
		return tx.QueryRowContext(ctx, `PRAGMA user_version`).Scan(&version)
	})
	return version, err
}

func (s *Store) step(ctx context.Context, step migrations.Step) error {
	if step.Version > 1 {
		stamp := s.Now().UTC().Format("20060102T150405")
		path := fmt.Sprintf("%s/before-v%d-%s.db", backupFolder(s.path), step.Version, stamp)
		if err := s.Backup(ctx, path); err != nil {
			return fmt.Errorf("backup before it: %w", err)
		}
	}
	return s.write(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, step.SQL); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, fmt.Sprintf(`PRAGMA user_version = %d`, step.Version))
		return err
	})
}
