package store

import (
	"errors"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
	"syscall"
)

// InUse is the refusal of a data file that another process has open.
type InUse struct {
	Path    string
	PID     int    // 0 if it is not known
	Address string // where the first process serves; may be empty
}

// Error implements error.
func (u *InUse) Error() string {
	who := "another Coursewright"
	if u.Address != "" {
		who += " at " + u.Address
	}
	if u.PID != 0 {
		who += fmt.Sprintf(" (process %d)", u.PID)
	} else {
		who += ", perhaps by another name of the same file"
	}
	return fmt.Sprintf("%s is already open in %s: use that one, or end it first", u.Path, who)
}

// note is what the owner of a lock writes into it: where it is, and which files it has open. The
// files stay noted when the owner is killed.
type note struct {
	pid     int
	address string
	file    string // number of the data file
	log     string // number of its log; empty after a clean end
	erasing bool   // a job is erased, and bytes of it may be left in the file
}

// lock takes FILE.lock for this process and gives what its last owner wrote into it. The system
// lets go of it when the file is closed or the process ends in any way, so a lock never outlives
// its owner. The file itself stays: removing it would let two processes lock two files of one name.
func lock(path string) (f *os.File, last note, err error) {
	f, err = os.OpenFile(path+".lock", os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, last, unreachable(err)
	}
	last = readNote(path)
	switch err := take(f); {
	case errors.Is(err, syscall.EWOULDBLOCK):
		f.Close()
		return nil, last, holder(path)
	case err != nil:
		f.Close()
		return nil, last, fmt.Errorf("%w: lock %s: %w", ErrUnavailable, f.Name(), err)
	}
	return f, readNote(path), nil
}

func take(f *os.File) error { return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) }

// lockFile takes the data file itself, so that it is locked by whatever name it is opened, hard
// links too. Where the system lets such a lock stand in the way of SQLite's own, or has none for
// this disk, FILE.lock has to be enough.
func lockFile(f *os.File) error {
	if runtime.GOOS != "linux" {
		return nil
	}
	if errors.Is(take(f), syscall.EWOULDBLOCK) {
		return &InUse{Path: f.Name()}
	}
	return nil
}

// Holder tells which process has the data file open, or nil.
func Holder(path string) *InUse {
	path, err := realPath(path)
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

func holder(path string) *InUse {
	n := readNote(path)
	return &InUse{Path: path, PID: n.pid, Address: n.address}
}

// write writes a note into a lock file, a line for each of its fields.
func (n note) write(f *os.File) error {
	if err := f.Truncate(0); err != nil {
		return err
	}
	erasing := ""
	if n.erasing {
		erasing = "erasing"
	}
	_, err := f.WriteAt(fmt.Appendf(nil, "%d\n%s\n%s\n%s\n%s\n", n.pid, n.address, n.file, n.log, erasing), 0)
	return err
}

// readNote reads what the owner of a lock wrote; what is missing is empty.
func readNote(path string) (n note) {
	body, err := os.ReadFile(path + ".lock")
	if err != nil {
		return n
	}
	lines := append(strings.Split(string(body), "\n"), "", "", "", "")
	n.pid, _ = strconv.Atoi(lines[0])
	n.address, n.file, n.log, n.erasing = lines[1], lines[2], lines[3], lines[4] != ""
	return n
}
