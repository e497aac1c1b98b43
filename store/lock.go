package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
)

// InUse is the refusal of a data file that another process has open.
type InUse struct {
	Path    string
	PID     int    // 0 if the first process did not get to write it
	Address string // where the first process serves; may be empty
}

// Error implements error.
func (u *InUse) Error() string {
	where := ""
	if u.Address != "" {
		where = " at " + u.Address
	}
	return fmt.Sprintf("%s is already open in another Coursewright%s (process %d): use that one, or end it first",
		u.Path, where, u.PID)
}

// lock takes FILE.lock for this process and writes into it where the process is. The system lets
// go of it when the file is closed or the process ends in any way, so a lock never outlives its
// owner. The file itself stays: removing it would let two processes lock two files of one name.
func lock(path, address string) (*os.File, error) {
	f, err := os.OpenFile(path+".lock", os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		defer f.Close()
		if errors.Is(err, syscall.EWOULDBLOCK) {
			return nil, holder(path)
		}
		return nil, fmt.Errorf("%w: lock %s: %w", ErrUnavailable, f.Name(), err)
	}
	if err := sign(f, address); err != nil {
		f.Close()
		return nil, fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	return f, nil
}

// Holder tells which process has the data file open, or nil.
func Holder(path string) *InUse {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil
	}
	f, err := os.Open(path + ".lock")
	if err != nil {
		return nil
	}
	defer f.Close()
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_SH|syscall.LOCK_NB); errors.Is(err, syscall.EWOULDBLOCK) {
		return holder(path)
	}
	return nil
}

// sign writes two lines into a lock file: process and address.
func sign(f *os.File, address string) error {
	if err := f.Truncate(0); err != nil {
		return err
	}
	_, err := f.WriteAt(fmt.Appendf(nil, "%d\n%s\n", os.Getpid(), address), 0)
	return err
}

// holder reads what the owner of the lock wrote.
func holder(path string) *InUse {
	u := &InUse{Path: path}
	body, err := os.ReadFile(path + ".lock")
	if err != nil {
		return u
	}
	pid, rest, _ := strings.Cut(string(body), "\n")
	u.PID, _ = strconv.Atoi(pid)
	u.Address, _, _ = strings.Cut(rest, "\n")
	return u
}
