package store

import (
	"context"
	"database/sql"
	"fmt"
	"io/fs"
	"time"
)

// Pass lets one device of the network in.
type Pass struct {
	ID   int64
	Hash [32]byte // SHA-256 of the secret that the device keeps
	Name string
	Made time.Time
	Seen time.Time // when it was last seen, by the day
}

// AddPass keeps a new pass.
func (s *Store) AddPass(ctx context.Context, name string, hash [32]byte) (p Pass, err error) {
	err = s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		now := s.Now().UnixMilli()
		id, err := insert(ctx, tx, `INSERT INTO pass (hash, name, made, seen) VALUES (?, ?, ?, ?)`, hash[:], name, now, now)
		p = Pass{ID: id, Hash: hash, Name: name, Made: moment(now), Seen: moment(now)}
		return err
	})
	return p, err
}

// Passes lists the passes, the oldest first.
func (s *Store) Passes(ctx context.Context) (list []Pass, err error) {
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		list, err = collect(ctx, tx, scanPass, `SELECT id, hash, name, made, seen FROM pass ORDER BY id`)
		return err
	})
	return list, err
}

// NamePass gives a pass another name. One that is not there is fs.ErrNotExist.
func (s *Store) NamePass(ctx context.Context, id int64, name string) error {
	return s.onPass(ctx, id, `UPDATE pass SET name = ? WHERE id = ?`, name, id)
}

// SeePass notes that a device with a pass came.
func (s *Store) SeePass(ctx context.Context, id int64, now time.Time) error {
	return s.onPass(ctx, id, `UPDATE pass SET seen = ? WHERE id = ?`, now.UnixMilli(), id)
}

// TakePass takes a pass back. One that is not there is fs.ErrNotExist.
func (s *Store) TakePass(ctx context.Context, id int64) error {
	return s.onPass(ctx, id, `DELETE FROM pass WHERE id = ?`, id)
}

func (s *Store) onPass(ctx context.Context, id int64, query string, args ...any) error {
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		result, err := tx.ExecContext(ctx, query, args...)
		if err != nil {
			return err
		}
		if n, err := result.RowsAffected(); err != nil || n == 1 {
			return err
		}
		return fmt.Errorf("pass %d: %w", id, fs.ErrNotExist)
	})
}

func scanPass(rows *sql.Rows) (Pass, error) {
	var (
		p          Pass
		hash       []byte
		made, seen int64
	)
	err := rows.Scan(&p.ID, &hash, &p.Name, &made, &seen)
	copy(p.Hash[:], hash)
	p.Made, p.Seen = moment(made), moment(seen)
	return p, err
}
