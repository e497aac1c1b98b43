package store

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"

	"coursewright/migrations"
)

// PutBack makes a copy of a backup the data file at path. What stands there is kept, with its log,
// in the new folder aside; aside is "" if there was nothing. At every moment a whole file stands at
// the path, the old one and then the new one. It fails with *InUse while a process has the data
// file open, with *Refused if the backup is damaged or not a data file of ours, and with ErrFull if
// there is no room for the copy; then all is as it was. Passes of devices are not put back (withoutPasses).
func PutBack(backup, path string, now time.Time) (aside string, err error) {
	steps, err := migrations.Steps()
	if err != nil {
		return "", err
	}
	if err := inspect(backup, len(steps)); err != nil {
		return "", err
	}
	if path, err = realPath(path); err != nil {
		return "", err
	}
	held, err := holdAsItIs(path)
	if err != nil {
		return "", err
	}
	defer held.close()
	part := path + ".part"
	err = copyOfBackup(backup, part, len(steps))
	if err == nil {
		err = withoutPasses(part)
	}
	if err != nil {
		os.Remove(part)
		return "", err
	}
	aside, err = keepAside(path, unused(path+"-aside-"+now.UTC().Format("20060102T150405")))
	if err != nil {
		os.Remove(part)
		return "", unreachable(err)
	}
	if err := settle(part, path); err != nil {
		return aside, err
	}
	return aside, held.sign(note{file: number(path)})
}

// holdAsItIs takes the locks of a data file that may be damaged or missing, and makes none.
func holdAsItIs(path string) (*held, error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, unreachable(err)
	}
	h := &held{path: path}
	var err error
	if h.lock, _, err = lock(path); err != nil {
		return nil, err
	}
	switch h.file, err = os.Open(path); {
	case errors.Is(err, fs.ErrNotExist):
		return h, nil
	case err != nil:
		return nil, errors.Join(unreachable(err), h.close())
	}
	if err := lockFile(h.file); err != nil {
		return nil, errors.Join(err, h.close())
	}
	return h, nil
}

// copyOfBackup copies a backup beside the data file once there is room for it, and reads the copy
// through. A file with a log beside it, as one that was kept aside after a crash, is copied with what is in
// the log.
func copyOfBackup(backup, part string, newest int) error {
	if err := roomFor(backup, filepath.Dir(part)); err != nil {
		return err
	}
	for _, end := range ends { // of a copy that was cut short
		if err := os.Remove(part + end); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return unreachable(err)
		}
	}
	if hasLog(backup) {
		return BackupOf(context.Background(), backup, part)
	}
	if err := errors.Join(copyFile(backup, part), flush(part)); err != nil {
		return unreachable(err)
	}
	return condemn(backup, examine(context.Background(), part, newest))
}

// withoutPasses takes the passes of devices out of a copy of a backup: one that was taken back since
// the backup was made must not open anything again, and which those are nothing in it tells.
func withoutPasses(part string) error {
	db, err := connect(part, "rw")
	if err != nil {
		return err
	}
	var passes int
	err = db.QueryRow(`SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = 'pass'`).Scan(&passes)
	if err == nil && passes > 0 {
		_, err = db.Exec(`DELETE FROM pass`)
	}
	return fault(errors.Join(err, db.Close()))
}

// roomFor refuses a copy of a file into a folder whose disk has less room than it takes.
func roomFor(file, folder string) error {
	info, err := os.Stat(file)
	if err != nil {
		return unreachable(err)
	}
	var disk syscall.Statfs_t
	if err := syscall.Statfs(folder, &disk); err != nil {
		return nil // then copying tells
	}
	const megabyte = 1 << 20
	if free := uint64(disk.Bavail) * uint64(disk.Bsize); uint64(info.Size()) > free {
		return fmt.Errorf("%w: %s takes %d MB, and %s has %d MB left", ErrFull, file, info.Size()/megabyte+1, folder, free/megabyte)
	}
	return nil
}

// unused is a name, or the first one made of it, where nothing stands yet.
func unused(name string) string {
	for n, free := 2, name; ; n++ {
		if _, err := os.Lstat(free); err != nil {
			return free
		}
		free = fmt.Sprintf("%s-%d", name, n)
	}
}

// ends are how the names end of what SQLite leaves beside a file, and of the file itself.
var ends = []string{"-shm", "-wal", "-journal", ""}

// keepAside puts the file and what SQLite left beside it into a folder, the log first: if that is
// cut short the file stands without its log, never a stranger's log beside a new file. The file
// itself goes on standing where it was. It gives "" where there was nothing to keep.
func keepAside(path, folder string) (string, error) {
	kept := ""
	for _, end := range ends {
		if _, err := os.Lstat(path + end); errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err := os.MkdirAll(folder, 0o700); err != nil {
			return "", err
		}
		keep, to := os.Rename, filepath.Join(folder, filepath.Base(path)+end)
		if end == "" {
			keep = doubled
		}
		if err := keep(path+end, to); err != nil {
			return "", err
		}
		kept = folder
	}
	return kept, nil
}

// doubled gives a file a second name, or copies it where the disk knows only one name to a file.
func doubled(from, to string) error {
	if os.Link(from, to) == nil {
		return nil
	}
	return errors.Join(copyFile(from, to), flush(to))
}

func copyFile(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_TRUNC, 0o600)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	return errors.Join(err, out.Close())
}
