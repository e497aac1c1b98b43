package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
)

// Astray is the answer to an edit when the data file or its log was deleted, moved away or
// replaced while it is open, or written over by another program. What is open then has no name, and goes
// when the program ends.
type Astray struct {
	Missing string // which of the two
	Over    bool   // it was written over or cut short, so that of what is open parts may be gone
	Rescue  string // a copy of all that is open, made just now; "" if none could be made
	cause   error  // why none could
}

// Error implements error.
func (a *Astray) Error() string {
	text := fmt.Sprintf("%s was %s while it is open, so nothing more is saved there", a.Missing, a.Happened())
	if a.Rescue == "" {
		return fmt.Sprintf("%s; and a rescue copy could not be made: %v", text, a.cause)
	}
	return fmt.Sprintf("%s; %s is in the rescue copy %s", text, a.Copied(), a.Rescue)
}

// Happened says what became of the file.
func (a *Astray) Happened() string {
	if a.Over {
		return "written over or cut short by another program"
	}
	return "deleted, moved away or replaced"
}

// Copied says what the rescue copy holds.
func (a *Astray) Copied() string {
	if a.Over {
		return "what can still be read of it"
	}
	return "all that was open"
}

// Unwrap makes it one of the troubles in which the data file cannot be reached.
func (a *Astray) Unwrap() []error { return []error{ErrUnavailable, a.cause} }

// rescue is the last rescue copy, and how many rows had been changed when it was made.
type rescue struct {
	mu      sync.Mutex
	path    string
	changes int64
}

// inPlace is nil while file and log stand where they were opened. Otherwise it sees to a rescue copy
// and gives the *Astray that names it.
func (s *Store) inPlace(ctx context.Context) error {
	missing, over := s.held.astray()
	if missing == "" {
		return nil
	}
	copy, err := s.rescue(context.WithoutCancel(ctx))
	return &Astray{Missing: missing, Over: over, Rescue: copy, cause: err}
}

// rescue copies all that is open beside the data file, or into the folder for passing files where
// that cannot be written to. A copy that still holds all is not made again.
func (s *Store) rescue(ctx context.Context) (string, error) {
	s.copied.mu.Lock()
	defer s.copied.mu.Unlock()
	var changes int64
	if err := s.db.QueryRowContext(ctx, `SELECT total_changes()`).Scan(&changes); err != nil {
		return "", fault(err)
	}
	if number(s.copied.path) != "" && changes == s.copied.changes {
		return s.copied.path, nil
	}
	name := fmt.Sprintf("%s-rescue-%s.db", filepath.Base(s.path), s.Now().UTC().Format("20060102T150405.000"))
	var errs []error
	for _, folder := range []string{filepath.Dir(s.path), os.TempDir()} {
		path := filepath.Join(folder, name)
		err := s.Backup(ctx, path)
		if err == nil {
			err = soundCopy(ctx, path)
		}
		if err == nil {
			s.copied.path, s.copied.changes = path, changes
			return path, nil
		}
		errs = append(errs, err)
	}
	return "", errors.Join(errs...)
}

// soundCopy reads a rescue copy through, which was made of a file that may be written over, and removes
// one that is damaged.
func soundCopy(ctx context.Context, path string) error {
	if _, err := look(ctx, path, "ro"); err != nil {
		return errors.Join(err, os.Remove(path))
	}
	return nil
}
