package store

import (
	"context"
	"database/sql"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// applicationID marks a data file as ours; 0001_jobs.sql writes the same number.
const applicationID = 0x43727357 // "CrsW"

var (
	// ErrForeign means the file belongs to another program.
	ErrForeign = errors.New("this is not a data file of Coursewright")
	// ErrNewer means a newer Coursewright wrote the file.
	ErrNewer = errors.New("this data file was written by a newer Coursewright; use that version")
	// ErrStrayLog means that the log beside the file belongs to another file: one of the two was
	// replaced after the program was cut short.
	ErrStrayLog = errors.New("the log beside this data file (its name ends in -wal) belongs to another file; " +
		"put back the file that was here, or move the log away to open this one without it")
)

// Refused is the refusal of a file that cannot be used. The file is as it was.
type Refused struct {
	Path   string
	Reason error  // ErrForeign, ErrNewer, ErrDamaged or ErrStrayLog, with its cause
	Backup string // the newest backup of this file, if there is one, unless it is only too new
}

// Error implements error.
func (r *Refused) Error() string {
	hint := ""
	if r.Backup != "" {
		hint = "; the newest backup is " + r.Backup
	}
	return fmt.Sprintf("%s: %v; the file was left as it is%s", r.Path, r.Reason, hint)
}

// Unwrap gives the reason.
func (r *Refused) Unwrap() error { return r.Reason }

// refuse builds a *Refused and looks up the newest backup. A file whose first bytes are damaged
// looks like a stranger's, so that is a reason to offer one too.
func refuse(path string, reason error) *Refused {
	r := &Refused{Path: path, Reason: reason}
	if !errors.Is(reason, ErrNewer) {
		r.Backup = newestBackup(path)
	}
	return r
}

// condemn gives the errors that condemn a file their *Refused.
func condemn(path string, err error) error {
	for _, reason := range []error{ErrForeign, ErrNewer, ErrDamaged, ErrStrayLog} {
		if errors.Is(err, reason) {
			return refuse(path, err)
		}
	}
	return err
}

// inspect looks at the first bytes of the file, without SQLite, and refuses what is not ours:
// opening a stranger's file with SQLite may already change it or leave files beside it. A missing
// or empty file is fine. Ours carries its mark in the main file from its first transaction on,
// because that one is made before the file is switched to a write-ahead log.
// Offsets: "Database File Format", section 1.3, sqlite.org/fileformat2.html.
func inspect(path string, newest int) error {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err == nil && !info.Mode().IsRegular() { // a pipe would be waited for
		err = fmt.Errorf("%s is a folder, a device or a pipe, and no file", path)
	}
	if err != nil {
		return unreachable(err)
	}
	f, err := os.Open(path)
	if err != nil {
		return unreachable(err)
	}
	defer f.Close()
	var header [100]byte
	n, err := io.ReadFull(f, header[:])
	if err == io.EOF {
		return nil
	}
	if err != nil && err != io.ErrUnexpectedEOF {
		return unreachable(err)
	}
	if reason := judge(header, n, newest); reason != nil {
		return refuse(path, reason)
	}
	return nil
}

// judge reads the magic words, the version (user_version) and the mark (application_id).
func judge(header [100]byte, n, newest int) error {
	const magic = "SQLite format 3\x00"
	if n < len(header) || string(header[:len(magic)]) != magic {
		return fmt.Errorf("%w: it is not an SQLite file", ErrForeign)
	}
	version, mark := int(int32(binary.BigEndian.Uint32(header[60:]))), binary.BigEndian.Uint32(header[68:])
	if mark != applicationID {
		return fmt.Errorf("%w: it is an SQLite file of another program", ErrForeign)
	}
	return known(version, newest)
}

// known refuses a version this program does not know; below zero there is none.
func known(version, newest int) error {
	if 0 <= version && version <= newest {
		return nil
	}
	return fmt.Errorf("%w (the file has version %d, this program knows up to %d)", ErrNewer, version, newest)
}

// examine reads the whole file once, with its log, and refuses a damaged or newer one. It only
// reads: a connection that may write would move the log into the file when it closes. A journal
// beside the file means that making the file was cut short; SQLite takes that back on writing, and
// there is nothing to examine before. A file that is damaged with its log and sound without it has
// a stranger's log.
func examine(ctx context.Context, path string, newest int) error {
	if _, err := os.Lstat(path + "-journal"); err == nil {
		return nil
	}
	defer leaveNothing(path)()
	version, err := look(ctx, path, "ro")
	if errors.Is(err, ErrDamaged) && hasLog(path) {
		if _, alone := look(ctx, path, "ro", "immutable=1"); alone == nil {
			return ErrStrayLog
		}
	}
	if err != nil {
		return err
	}
	return known(version, newest)
}

// look checks every page of a file and gives the file's version.
func look(ctx context.Context, path, mode string, settings ...string) (int, error) {
	db, err := connect(path, mode, settings...)
	if err != nil {
		return 0, err
	}
	defer db.Close()
	var verdict string
	if err := db.QueryRowContext(ctx, `PRAGMA quick_check(1)`).Scan(&verdict); err != nil {
		return 0, fault(err)
	}
	if verdict != "ok" {
		return 0, fmt.Errorf("%w: %s", ErrDamaged, verdict)
	}
	return version(ctx, db)
}

func hasLog(path string) bool {
	info, err := os.Stat(path + "-wal")
	return err == nil && info.Size() > 0
}

// leaveNothing gives what removes the log and its index again where reading alone made them: they
// are empty then.
func leaveNothing(path string) func() {
	var made []string
	for _, end := range []string{"-wal", "-shm"} {
		if _, err := os.Lstat(path + end); errors.Is(err, fs.ErrNotExist) {
			made = append(made, path+end)
		}
	}
	return func() {
		for _, name := range made {
			_ = os.Remove(name) // it may not be there; and SQLite takes an empty one as none
		}
	}
}

// version reads the file's version through SQLite, which also sees what is still in the log.
func version(ctx context.Context, db *sql.DB) (version int, err error) {
	err = db.QueryRowContext(ctx, `PRAGMA user_version`).Scan(&version)
	return version, fault(err)
}
