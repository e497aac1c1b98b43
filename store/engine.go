package store

import (
	"context"
	"fmt"

	// The driver, in Go, so that the program is one static file.
	_ "modernc.org/sqlite"
)

// checkEngine refuses an SQLite in which a write-ahead log may be reset wrongly.
func (s *Store) checkEngine(ctx context.Context) error {
	var version string
	if err := s.db.QueryRowContext(ctx, `SELECT sqlite_version()`).Scan(&version); err != nil {
		return fault(err)
	}
	return soundEngine(version)
}

// soundEngine accepts SQLite 3.51.3 and newer, but not 3.52.0: the others may lose committed
// pages when a write-ahead log is reset (common practice, no source; from memory).
func soundEngine(version string) error {
	var major, minor, patch int
	if _, err := fmt.Sscanf(version, "%d.%d.%d", &major, &minor, &patch); err != nil {
		return fmt.Errorf("store: SQLite version %q does not read as one: %w", version, err)
	}
	number := major*1_000_000 + minor*1_000 + patch
	if number < 3_051_003 || number == 3_052_000 {
		return fmt.Errorf("store: SQLite %s may lose data in its write-ahead log; 3.51.3 or newer, but not 3.52.0, is needed", version)
	}
	return nil
}
