package store

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// realPath gives the one name of a file that may be called by others: absolute, with every
// symbolic link followed. The file itself need not be there yet, nor need its folder.
func realPath(path string) (string, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	const mostLinks = 40 // a chain longer than that is a ring
	for range mostLinks {
		if real, err := filepath.EvalSymlinks(path); err == nil {
			return real, nil
		}
		target, err := os.Readlink(path)
		if err != nil { // no link, and not there: its folder may still go by another name
			return inRealFolder(path), nil
		}
		if !filepath.IsAbs(target) {
			target = filepath.Join(filepath.Dir(path), target)
		}
		path = target
	}
	return "", fmt.Errorf("%w: %s leads round in a ring of links", ErrUnavailable, path)
}

func inRealFolder(path string) string {
	folder, err := filepath.EvalSymlinks(filepath.Dir(path))
	if err != nil {
		return path
	}
	return filepath.Join(folder, filepath.Base(path))
}

// number tells which file stands at a path, whatever its name: the device it is on and its inode
// there. It is empty where no file stands.
func number(path string) string {
	info, err := os.Stat(path)
	if err != nil {
		return ""
	}
	return numberOf(info)
}

func numberOf(info fs.FileInfo) string {
	stat, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return ""
	}
	return fmt.Sprintf("%d:%d", stat.Dev, stat.Ino)
}
