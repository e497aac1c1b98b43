package store

import (
	"context"
	"database/sql"
)

// KeepSetout writes down the set-out that a revision gives, if it has none yet: it is no edit, and
// the job stays where it is. One that is kept already stays.
func (s *Store) KeepSetout(ctx context.Context, id, revision int64, setout []byte) error {
	return s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		return keepSetout(ctx, tx, id, revision, setout)
	})
}

func keepSetout(ctx context.Context, tx *sql.Tx, id, revision int64, setout []byte) error {
	if setout == nil {
		return nil
	}
	const query = `UPDATE revision SET setout = ? WHERE job = ? AND id = ? AND setout IS NULL`
	_, err := tx.ExecContext(ctx, query, setout, id, revision)
	return err
}

// TickOn saves a state of the job below base, as Save does, and ticks pieces on the revision that
// comes of it: both or neither. If the job has moved on from base, the error is a *Conflict.
func (s *Store) TickOn(ctx context.Context, id, base int64, state State, ticks ...Tick) (Job, error) {
	return s.revise(ctx, id, func(ctx context.Context, tx *sql.Tx, now Job) error {
		if err := s.saveState(ctx, tx, now, base, state); err != nil {
			return err
		}
		after, err := load(ctx, tx, id)
		if err != nil {
			return err
		}
		for i := range ticks {
			ticks[i].Revision = after.Revision
		}
		return s.addTicks(ctx, tx, id, ticks)
	})
}
