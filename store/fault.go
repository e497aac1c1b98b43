package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

var (
	// ErrFull means the disk is full. Nothing of the edit was kept, all earlier edits were.
	ErrFull = errors.New("the disk is full")
	// ErrUnavailable means the data file cannot be read or written now: an I/O error, a lock, a
	// read-only disk. Nothing of the edit was kept, all earlier edits were.
	ErrUnavailable = errors.New("the data file cannot be reached")
	// ErrDamaged means the file is not sound SQLite.
	ErrDamaged = errors.New("the data file is damaged")
	// ErrDeleted means the job is deleted and may be restored. It is an fs.ErrNotExist too.
	ErrDeleted = fmt.Errorf("the job is deleted: %w", fs.ErrNotExist)
)

// Conflict is the answer to an edit made on a revision that the job no longer shows.
type Conflict struct {
	Mine   int64 // the revision the edit was made on
	Theirs Job   // what the job holds now
}

// Error implements error.
func (c *Conflict) Error() string {
	return fmt.Sprintf("job %d was changed elsewhere: this edit was made on revision %d, the job is at %d",
		c.Theirs.ID, c.Mine, c.Theirs.Revision)
}

// fault gives a driver error the kind that callers act on, by the driver's code and never by its
// text. Any other error, nil too, comes back as it is.
func fault(err error) error {
	var driver *sqlite.Error
	if !errors.As(err, &driver) {
		return err
	}
	kind := kindOf(driver.Code())
	if kind == nil || errors.Is(err, kind) {
		return err
	}
	return fmt.Errorf("%w: %w", kind, err)
}

// kindOf looks at the low byte, the primary code; the rest says more of the same trouble.
// See "Result Codes", sqlite.org/rescode.html.
func kindOf(code int) error {
	switch code & 0xff {
	case sqlite3.SQLITE_FULL:
		return ErrFull
	case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
		return ErrDamaged
	case sqlite3.SQLITE_IOERR, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM,
		sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED, sqlite3.SQLITE_NOMEM, sqlite3.SQLITE_PROTOCOL:
		return ErrUnavailable
	}
	return nil
}

// fault is fault for what this store asked of its file. SQLite reads a quota that is used up as an
// I/O error; a small file that cannot be written beside the data file tells that it is one.
func (s *Store) fault(err error) error {
	err = fault(err)
	if errors.Is(err, ErrUnavailable) && noRoom(filepath.Dir(s.path)) {
		return fmt.Errorf("%w: %w", ErrFull, err)
	}
	return err
}

// noRoom tries whether a folder has no room for a small file, by the disk's size or a quota.
func noRoom(folder string) bool {
	f, err := os.CreateTemp(folder, ".room-*")
	if err != nil {
		return full(err)
	}
	defer os.Remove(f.Name())
	_, err = f.WriteAt(make([]byte, 64<<10), 0)
	return full(errors.Join(err, f.Sync(), f.Close()))
}

// full tells whether the system refused to write for want of room.
func full(err error) bool { return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) }

// unreachable gives an error of the file system its kind.
func unreachable(err error) error {
	if full(err) {
		return fmt.Errorf("%w: %w", ErrFull, err)
	}
	return fmt.Errorf("%w: %w", ErrUnavailable, err)
}
