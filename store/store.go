package store

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"net/url"
	"path/filepath"
	"strings"
	"time"

	"modernc.org/sqlite"

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
	held    *held
	db      *sql.DB
	copied  rescue
}

// Option changes how Open opens.
type Option func(*Store)

// Address says where this process serves, for the message that a second process shows.
func Address(address string) Option {
	return func(s *Store) { s.address = address }
}

// Open opens the data file, making it if it is missing and bringing an older one up to date after
// a backup. It fails with *InUse if another process has the file open by any of its names, with
// *Refused if the file is damaged, newer or not ours, or its log belongs to another.
func Open(ctx context.Context, path string, options ...Option) (*Store, error) {
	steps, err := migrations.Steps()
	if err != nil {
		return nil, err
	}
	return open(ctx, path, steps, options...)
}

func open(ctx context.Context, path string, steps []migrations.Step, options ...Option) (*Store, error) {
	path, err := realPath(path)
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
	held, last, err := hold(path, s.address)
	if err != nil {
		return nil, err
	}
	s.held = held
	if err := s.ready(ctx, steps, last); err != nil {
		return nil, errors.Join(condemn(path, err), s.letGo())
	}
	return s, nil
}

// Path is where the data file stands, with every symbolic link followed.
func (s *Store) Path() string { return s.path }

// ready checks the file and its log, connects, checks SQLite, migrates, and switches to the
// write-ahead log.
func (s *Store) ready(ctx context.Context, steps []migrations.Step, last note) error {
	if strayLog(s.path, last) {
		return ErrStrayLog
	}
	if err := examine(ctx, s.path, len(steps)); err != nil {
		return err
	}
	file, err := sqlite.NewConnector(dsn(s.path, "rw"))
	if err != nil {
		return err
	}
	s.db = single(connector{file, s.held})
	if err := s.checkEngine(ctx); err != nil {
		return err
	}
	if err := s.migrate(ctx, steps); err != nil {
		return err
	}
	if err := s.logAhead(ctx); err != nil {
		return err
	}
	if err := s.inPlace(ctx); err != nil {
		return err
	}
	s.held.wrote()
	if last.erasing {
		_ = s.writeAnew(ctx) // without room for it the next start tries again
	}
	return nil
}

// connect gives a handle of one connection to a file that is not held.
func connect(path, mode string, settings ...string) (*sql.DB, error) {
	path, err := filepath.Abs(path) // in the address of a file a name without its folder would be a machine's
	if err != nil {
		return nil, err
	}
	file, err := sqlite.NewConnector(dsn(path, mode, settings...))
	if err != nil {
		return nil, err
	}
	return single(file), nil
}

// single gives a handle of one connection, so that there is one writer.
func single(c driver.Connector) *sql.DB {
	db := sql.OpenDB(c)
	db.SetMaxOpenConns(1)
	return db
}

// dsn names the file, how it is opened (ro, rw) and the settings of every connection. The write-ahead log is not among them:
// it is a property of the file, set once that file is known to be ours.
func dsn(path, mode string, settings ...string) string {
	q := url.Values{}
	q.Add("_pragma", "busy_timeout(5000)")
	q.Add("_pragma", "foreign_keys(1)")
	q.Add("_pragma", "synchronous(FULL)")
	q.Add("_pragma", "secure_delete(1)")
	q.Set("mode", mode)
	q.Set("_txlock", "immediate")
	q.Set("_dqs", "0")
	for _, setting := range settings {
		name, value, _ := strings.Cut(setting, "=")
		q.Set(name, value)
	}
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

// Close ends all use of the file and lets another process open it. It fails with *Astray if the
// file no longer stands where it was opened. One that was written over is left to the end of the process:
// SQLite would move the log into it.
func (s *Store) Close() error {
	over := s.held.writtenOver()
	astray := s.inPlace(context.Background())
	if over {
		return errors.Join(astray, s.held.close())
	}
	closed := fault(s.db.Close())
	if astray == nil && closed == nil {
		closed = s.held.leave()
	}
	return errors.Join(astray, closed, s.held.close())
}

// letGo closes what is open of a file that was not taken.
func (s *Store) letGo() error {
	var err error
	if s.db != nil {
		err = fault(s.db.Close())
	}
	return errors.Join(err, s.held.close())
}

// write runs do as one transaction that is on disk, in the file that stands at the path, when write
// returns without error.
func (s *Store) write(ctx context.Context, do func(context.Context, *sql.Tx) error) error {
	if err := s.inPlace(ctx); err != nil {
		return err
	}
	if err := s.transact(ctx, nil, do); err != nil && !errors.Is(err, errWrittenOver) {
		return err
	}
	return s.inPlace(ctx)
}

// errWrittenOver is why a transaction was not begun: what stands in the way is said by inPlace.
var errWrittenOver = errors.New("the data file was written over")

// read runs do as one transaction that sees one state of the file and needs no room on the disk.
func (s *Store) read(ctx context.Context, do func(context.Context, *sql.Tx) error) error {
	return s.transact(ctx, &sql.TxOptions{ReadOnly: true}, do)
}

// transact waits for the connection as long as the context lasts. What has begun is not cut off,
// because SQLite's log is taken up anew by a connection that follows one that was interrupted.
func (s *Store) transact(ctx context.Context, options *sql.TxOptions, do func(context.Context, *sql.Tx) error) error {
	conn, err := s.db.Conn(ctx)
	if err != nil {
		return fault(err)
	}
	defer conn.Close()
	ctx = context.WithoutCancel(ctx)
	if options == nil {
		if s.held.writtenOver() {
			return errWrittenOver
		}
		defer s.held.wrote()
	}
	tx, err := conn.BeginTx(ctx, options)
	if err != nil {
		return s.fault(err)
	}
	defer tx.Rollback() // does nothing after Commit
	if err := do(ctx, tx); err != nil {
		return s.fault(err)
	}
	return s.fault(tx.Commit())
}
