package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"
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
		return unreachable(err)
	}
	part := path + ".part"
	if err := os.Remove(part); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return unreachable(err)
	}
	if err := s.vacuumInto(ctx, part); err != nil {
		os.Remove(part)
		return s.fault(err)
	}
	return settle(part, path)
}

// vacuumInto waits for the connection as long as the context lasts; see transact.
func (s *Store) vacuumInto(ctx context.Context, path string) error {
	conn, err := s.db.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	_, err = conn.ExecContext(context.WithoutCancel(ctx), `VACUUM INTO ?`, path)
	return err
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
