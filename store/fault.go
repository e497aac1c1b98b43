package store

import (
	"errors"
	"fmt"
	"io/fs"

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
