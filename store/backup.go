package store

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"coursewright/migrations"
)

// keptDays is how many daily backups are kept.
const keptDays = 7

func backupFolder(path string) string { return path + "-backups" }

// Backup writes the whole store as it is now into a new file, which appears complete or not at
// all. It fails with fs.ErrExist if the file is there already.
func (s *Store) Backup(ctx context.Context, path string) error {
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("backup to %s: %w", path, fs.ErrExist)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	part := path + ".part"
	if err := os.Remove(part); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	if _, err := s.db.ExecContext(ctx, `VACUUM INTO ?`, part); err != nil {
		os.Remove(part)
		return fault(err)
	}
	return settle(part, path)
}

// settle makes a finished file durable and gives it its name.
func settle(part, path string) error {
	err := errors.Join(os.Chmod(part, 0o600), sync(part))
	if err == nil {
		err = os.Rename(part, path)
	}
	if err == nil {
		err = sync(filepath.Dir(path))
	}
	if err != nil {
		os.Remove(part)
		return fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	return nil
}

// sync flushes a file or a folder to the disk.
func sync(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// DailyBackup makes the backup of the day of now (UTC) unless it is there, and removes all daily
// backups but the last seven.
func (s *Store) DailyBackup(ctx context.Context, now time.Time) error {
	folder := backupFolder(s.path)
	path := filepath.Join(folder, "daily-"+now.UTC().Format(time.DateOnly)+".db")
	if err := s.Backup(ctx, path); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	days := backups(folder, "daily-*.db")
	for len(days) > keptDays {
		if err := os.Remove(days[0]); err != nil {
			return fmt.Errorf("%w: %w", ErrUnavailable, err)
		}
		days = days[1:]
	}
	return nil
}

// backups lists the files of a folder that match, by name. A folder that is not there has none.
func backups(folder, pattern string) []string {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil
	}
	var paths []string
	for _, e := range entries {
		if ok, _ := filepath.Match(pattern, e.Name()); ok {
			paths = append(paths, filepath.Join(folder, e.Name()))
		}
	}
	return paths
}

// newestBackup is the path of the backup written last, or "".
func newestBackup(path string) string {
	all := backups(backupFolder(path), "*.db")
	if len(all) == 0 {
		return ""
	}
	return slices.MaxFunc(all, func(a, b string) int { return written(a).Compare(written(b)) })
}

func written(path string) time.Time {
	info, err := os.Stat(path)
	if err != nil {
		return time.Time{}
	}
	return info.ModTime()
}

// PutBack makes a copy of a backup the data file at path. What stands there is moved, with its
// log, into the new folder aside; aside is "" if there was nothing. It fails with *InUse while a
// process has the data file open, and with *Refused if the backup is damaged or not a data file of
// ours.
func PutBack(backup, path string, now time.Time) (aside string, err error) {
	steps, err := migrations.Steps()
	if err != nil {
		return "", err
	}
	if err := inspect(backup, len(steps)); err != nil {
		return "", err
	}
	path, err = filepath.Abs(path)
	if err != nil {
		return "", err
	}
	held, err := lock(path, "")
	if err != nil {
		return "", err
	}
	defer held.Close()
	part := path + ".part"
	if err := copyFile(backup, part); err != nil {
		return "", fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	if err := examine(context.Background(), part, len(steps)); err != nil {
		os.Remove(part)
		return "", condemn(backup, err)
	}
	aside, err = moveAside(path, path+"-aside-"+now.UTC().Format("20060102T150405"))
	if err != nil {
		os.Remove(part)
		return "", fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	return aside, settle(part, path)
}

// moveAside moves the file and what SQLite left beside it, the log first: if the move is cut
// short the file stands without its log, never a stranger's log beside a new file.
func moveAside(path, folder string) (string, error) {
	moved := ""
	for _, end := range []string{"-shm", "-wal", "-journal", ""} {
		if _, err := os.Lstat(path + end); errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err := os.MkdirAll(folder, 0o700); err != nil {
			return "", err
		}
		if err := os.Rename(path+end, filepath.Join(folder, filepath.Base(path)+end)); err != nil {
			return "", err
		}
		moved = folder
	}
	return moved, nil
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
