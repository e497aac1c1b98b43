package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"time"

	"coursewright/migrations"
)

// Store is an open data file. Its methods may be called from many goroutines; they take turns on
// one connection, so there is one order of all edits.
type Store struct {
	// Now gives the time that rows are stamped with. It is time.Now unless a caller sets it
	// before the first use.
	Now func() time.Time

	path    string
	address string
	lock    *os.File
	db      *sql.DB
}

// Option changes how Open opens.
type Option func(*Store)

// Address says where this process serves, for the message that a second process shows.
func Address(address string) Option {
	return func(s *Store) { s.address = address }
}

// Open opens the data file, making it if it is missing and bringing an older one up to date after
// a backup. It fails with *InUse if another process has the file open, with *Refused if the file
// is damaged, newer or not ours.
func Open(ctx context.Context, path string, options ...Option) (*Store, error) {
	steps, err := migrations.Steps()
	if err != nil {
		return nil, err
	}
	return open(ctx, path, steps, options...)
}

func open(ctx context.Context, path string, steps []migrations.Step, options ...Option) (*Store, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	s := &Store{Now: time.Now, path: path}
	for _, o := range options {
		o(s)
	}
	if err := inspect(path, len(steps)); err != nil {
		return nil, err
	}
	if err := s.claim(); err != nil {
		return nil, err
	}
	if err := s.ready(ctx, steps); err != nil {
		return nil, errors.Join(condemn(s.path, err), s.Close())
	}
	return s, nil
}

// claim makes the folder, takes the lock, and makes an empty file that only its owner may read.
func (s *Store) claim() error {
	if err := os.MkdirAll(filepath.Dir(s.path), 0o700); err != nil {
		return fmt.Errorf("%w: %w", ErrUnavailable, err)
	}
	held, err := lock(s.path, s.address)
	if err != nil {
		return err
	}
	f, err := os.OpenFile(s.path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return errors.Join(fmt.Errorf("%w: %w", ErrUnavailable, err), held.Close())
	}
	s.lock = held
	return f.Close()
}

// ready checks the file, connects, checks SQLite, migrates, and switches to the write-ahead log.
func (s *Store) ready(ctx context.Context, steps []migrations.Step) error {
	if err := examine(ctx, s.path, len(steps)); err != nil {
		return err
	}
	db, err := connect(s.path, "rw")
	if err != nil {
		return err
	}
	s.db = db
	if err := s.checkEngine(ctx); err != nil {
		return err
	}
	if err := s.migrate(ctx, steps); err != nil {
		return err
	}
	return s.logAhead(ctx)
}

// connect gives a handle of one connection, so that there is one writer.
func connect(path, mode string) (*sql.DB, error) {
	db, err := sql.Open("sqlite", dsn(path, mode))
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1)
	return db, nil
}

// dsn names the file, how it is opened (ro, rw) and the settings of every connection. The write-ahead log is not among them:
// it is a property of the file, set once that file is known to be ours.
func dsn(path, mode string) string {
	q := url.Values{}
	q.Add("_pragma", "busy_timeout(5000)")
	q.Add("_pragma", "foreign_keys(1)")
	q.Add("_pragma", "synchronous(FULL)")
	q.Set("mode", mode)
	q.Set("_txlock", "immediate")
	q.Set("_dqs", "0")
	u := url.URL{Scheme: "file", Path: path, RawQuery: q.Encode()}
	return u.String()
}

func (s *Store) logAhead(ctx context.Context) error {
	var mode string
	if err := s.db.QueryRowContext(ctx, `PRAGMA journal_mode = WAL`).Scan(&mode); err != nil {
		return fault(err)
	}
	if mode != "wal" {
		return fmt.Errorf("%w: no write-ahead log on this disk (journal mode %s)", ErrUnavailable, mode)
	}
	return nil
}

// Close ends all use of the file and lets another process open it.
func (s *Store) Close() error {
	var err error
	if s.db != nil {
		err = fault(s.db.Close())
	}
	return errors.Join(err, s.lock.Close())
}

// write runs do as one transaction that is on disk when write returns without error.
func (s *Store) write(ctx context.Context, do func(*sql.Tx) error) error {
	return s.transact(ctx, nil, do)
}

// read runs do as one transaction that sees one state of the file and needs no room on the disk.
func (s *Store) read(ctx context.Context, do func(*sql.Tx) error) error {
	return s.transact(ctx, &sql.TxOptions{ReadOnly: true}, do)
}

func (s *Store) transact(ctx context.Context, options *sql.TxOptions, do func(*sql.Tx) error) error {
	tx, err := s.db.BeginTx(ctx, options)
	if err != nil {
		return fault(err)
	}
	defer tx.Rollback() // does nothing after Commit
	if err := do(tx); err != nil {
		return fault(err)
	}
	return fault(tx.Commit())
}
