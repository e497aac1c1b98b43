package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"syscall"
	"time"

	"coursewright/migrations"
)

// keptDays is how many daily backups are kept.
const keptDays = 7

func backupFolder(path string) string { return path + "-backups" }

// Backup writes the whole store as it is now into a new file, which appears complete or not at
// all. It fails with fs.ErrExist if the file is there already.
func (s *Store) Backup(ctx context.Context, path string) error {
	return s.fault(backUp(ctx, s.db, path))
}

// BackupOf writes the data file at from into a new file as Backup does, whether a process has it open
// or not. A file that is damaged, newer or not ours is *Refused.
func BackupOf(ctx context.Context, from, path string) error {
	steps, err := migrations.Steps()
	if err != nil {
		return err
	}
	if from, err = realPath(from); err != nil {
		return err
	}
	if _, err := os.Stat(from); err != nil {
		return err
	}
	if err := inspect(from, len(steps)); err != nil {
		return err
	}
	through := backUpFile
	if readOnly(filepath.Dir(from)) {
		through = backUpCopy
	}
	if err := through(ctx, from, path); err != nil {
		return condemn(from, fault(err))
	}
	if err := condemn(from, examine(ctx, path, len(steps))); err != nil {
		return errors.Join(err, os.Remove(path))
	}
	return nil
}

func backUpFile(ctx context.Context, from, path string) error {
	defer leaveNothing(from)()
	db, err := connect(from, "ro")
	if err != nil {
		return err
	}
	defer db.Close()
	return backUp(ctx, db, path)
}

// backUpCopy takes a copy of file and log first. SQLite lays an index beside a log before it reads any of
// it, and cannot where the disk is read-only: a snapshot, or a disk that the system trusts no more.
func backUpCopy(ctx context.Context, from, path string) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return unreachable(err)
	}
	folder, err := os.MkdirTemp(filepath.Dir(path), ".copy-*")
	if err != nil {
		return unreachable(err)
	}
	defer os.RemoveAll(folder)
	copied := filepath.Join(folder, "jobs.db")
	err = copyFile(from, copied)
	if err == nil && hasLog(from) {
		err = copyFile(from+"-wal", copied+"-wal")
	}
	if err != nil {
		return unreachable(err)
	}
	return backUpFile(ctx, copied, path)
}

// readOnly tells whether no file can be made in a folder, now or ever.
func readOnly(folder string) bool {
	f, err := os.CreateTemp(folder, ".try-*")
	if err != nil {
		return errors.Is(err, syscall.EROFS) || errors.Is(err, fs.ErrPermission)
	}
	_ = errors.Join(f.Close(), os.Remove(f.Name()))
	return false
}

// backUp waits for the connection as long as the context lasts; see transact.
func backUp(ctx context.Context, db *sql.DB, path string) error {
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("backup to %s: %w", path, fs.ErrExist)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return unreachable(err)
	}
	part := path + ".part"
	if err := os.Remove(part); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return unreachable(err)
	}
	conn, err := db.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	if _, err := conn.ExecContext(context.WithoutCancel(ctx), `VACUUM INTO ?`, part); err != nil {
		os.Remove(part)
		return err
	}
	return settle(part, path)
}

// settle makes a finished file durable and gives it its name.
func settle(part, path string) error {
	err := errors.Join(os.Chmod(part, 0o600), flush(part))
	if err == nil {
		err = os.Rename(part, path)
	}
	if err == nil {
		err = flush(filepath.Dir(path))
	}
	if err != nil {
		os.Remove(part)
		return unreachable(err)
	}
	return nil
}

// flush forces a file or a folder to the disk.
func flush(path string) error {
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
			return unreachable(err)
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
