package store

import (
	"context"
	"database/sql"
	"time"
)

// Tick says that a piece has been set on the wall. Ticks stand beside the revisions of a job: an
// edit, undo or redo leaves them alone, and only Untick takes one off.
type Tick struct {
	Mark     string // what was set; a job has each mark once
	Piece    string // the id it had in the plan of that revision
	Revision int64
	Ticked   time.Time
}

// Ticks lists the ticks of a job, the oldest first.
func (s *Store) Ticks(ctx context.Context, id int64) (list []Tick, err error) {
	const query = `SELECT mark, piece, revision, ticked FROM tick WHERE job = ? ORDER BY ticked, piece, mark`
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := load(ctx, tx, id); err != nil {
			return err
		}
		list, err = collect(ctx, tx, scanTick, query, id)
		return err
	})
	return list, err
}

// Tick adds ticks to a job, all or none, stamped with the time now. A mark that is ticked already
// stays as it is, so a tick sent twice counts once.
func (s *Store) Tick(ctx context.Context, id int64, ticks ...Tick) error {
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := load(ctx, tx, id); err != nil {
			return err
		}
		return s.addTicks(ctx, tx, id, ticks)
	})
}

func (s *Store) addTicks(ctx context.Context, tx *sql.Tx, id int64, ticks []Tick) error {
	const query = `INSERT INTO tick (job, mark, piece, revision, ticked) VALUES (?, ?, ?, ?, ?)
		ON CONFLICT (job, mark) DO NOTHING`
	now := s.Now().UnixMilli()
	for _, t := range ticks {
		if _, err := tx.ExecContext(ctx, query, id, t.Mark, t.Piece, t.Revision, now); err != nil {
			return err
		}
	}
	return nil
}

// Untick takes ticks off a job, all or none. A mark without a tick is passed over.
func (s *Store) Untick(ctx context.Context, id int64, marks ...string) error {
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		if _, err := load(ctx, tx, id); err != nil {
			return err
		}
		for _, mark := range marks {
			if _, err := tx.ExecContext(ctx, `DELETE FROM tick WHERE job = ? AND mark = ?`, id, mark); err != nil {
				return err
			}
		}
		return nil
	})
}

func scanTick(rows *sql.Rows) (Tick, error) {
	var (
		t      Tick
		ticked int64
	)
	err := rows.Scan(&t.Mark, &t.Piece, &t.Revision, &ticked)
	t.Ticked = moment(ticked)
	return t, err
}
