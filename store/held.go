package store

import (
	"context"
	"database/sql/driver"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
)

// held is the data file as it was opened, with its log. SQLite goes on writing into the two when
// they are deleted, moved away or replaced, and nobody would ever read what it writes there.
type held struct {
	path    string
	address string
	lock    *os.File // FILE.lock
	file    *os.File // FILE itself; while it is open no other file gets its number

	mu    sync.Mutex
	names note // which files are open
	left  left // how they were left
	over  bool // another program has written over one of them
}

// hold takes the locks and makes an empty file that only its owner may read. It also gives the note
// of the process that had the file before, which stays in the lock until keep is called.
func hold(path, address string) (h *held, last note, err error) {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, last, unreachable(err)
	}
	h = &held{path: path, address: address}
	if h.lock, last, err = lock(path); err != nil {
		return nil, last, err
	}
	if h.file, err = os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600); err != nil {
		return nil, last, errors.Join(unreachable(err), h.close())
	}
	if err := lockFile(h.file); err != nil {
		return nil, last, errors.Join(err, h.close())
	}
	info, err := h.file.Stat()
	if err != nil {
		return nil, last, errors.Join(unreachable(err), h.close())
	}
	h.names = note{pid: os.Getpid(), address: address, file: numberOf(info), erasing: last.erasing}
	if err := h.sign(note{pid: h.names.pid, address: address, file: last.file, log: last.log, erasing: last.erasing}); err != nil {
		return nil, last, errors.Join(err, h.close())
	}
	return h, last, nil
}

func (h *held) sign(n note) error {
	if err := n.write(h.lock); err != nil {
		return unreachable(err)
	}
	return nil
}

// astray says what no longer stands where it was opened, or nothing, and whether it was written over.
// The first look after a connection was made notes the log that it opened.
func (h *held) astray() (missing string, over bool) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if number(h.path) != h.names.file {
		return h.path, h.over
	}
	log := number(h.path + "-wal")
	if h.names.log == "" && log != "" {
		h.names.log = log
		_ = h.sign(h.names) // it only serves to name a stranger's log after a crash
	}
	if log != h.names.log {
		return h.path + "-wal", h.over
	}
	return "", h.over
}

// reopened forgets the log, which a new connection may have made anew.
func (h *held) reopened() error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if number(h.path) != h.names.file {
		return fmt.Errorf("%w: %s is not the file that was opened", ErrUnavailable, h.path)
	}
	h.names.log, h.left.log = "", start{}
	return h.sign(h.names)
}

// leave notes a clean end, after which there is no log.
func (h *held) leave() error {
	return h.sign(note{pid: h.names.pid, address: h.address, file: h.names.file, erasing: h.names.erasing})
}

// erases notes that a job is being erased, or that no byte of one is left any more. Its caller has the connection.
func (h *held) erases(is bool) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.names.erasing = is
	return h.sign(h.names)
}

// close lets go of the locks.
func (h *held) close() error {
	var file error
	if h.file != nil {
		file = h.file.Close()
	}
	return errors.Join(file, h.lock.Close())
}

// connector makes connections to the file that is held and to no other of its name.
type connector struct {
	driver.Connector
	held *held
}

// Connect implements driver.Connector.
func (c connector) Connect(ctx context.Context) (driver.Conn, error) {
	if err := c.held.reopened(); err != nil {
		return nil, err
	}
	return c.Connector.Connect(ctx)
}

// strayLog tells whether the log beside a file is that of another, by what the process that wrote
// it noted: one of the two is the one it had open, the other is not. Where both are others, the
// two were copied or moved together.
func strayLog(path string, last note) bool {
	if !hasLog(path) || last.file == "" || last.log == "" {
		return false
	}
	return (number(path) == last.file) != (number(path+"-wal") == last.log)
}
