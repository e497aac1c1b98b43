package store

import (
	"context"
	"database/sql"
	"slices"
	"time"
)

// wholeFor is how long every revision is kept.
const wholeFor = 24 * time.Hour

// atOnce is how many revisions one transaction removes, so that edits come between.
const atOnce = 50

// Thin removes revisions by one rule, and gives how many. Of the last day (24 hours) every revision
// is kept, of what is older the last one of each job on each day (UTC). The first revision of a job, the one
// it shows, those with a name and those that ticks refer to are kept for good. Undo and redo pass
// over what was removed. Thin stops early, without error, when the context ends.
func (s *Store) Thin(ctx context.Context, now time.Time) (removed int, err error) {
	old, err := s.old(ctx, now.Add(-wholeFor))
	for some := range slices.Chunk(old, atOnce) {
		if err != nil || ctx.Err() != nil {
			break
		}
		var n int
		n, err = s.removeSpare(ctx, some)
		removed += n
	}
	if ctx.Err() != nil {
		err = nil
	}
	return removed, err
}

// spare is what a revision r has to be to be removed, whenever it was saved.
const spare = `r.parent IS NOT NULL
	AND NOT EXISTS (SELECT 1 FROM job j WHERE j.id = r.job AND j.cursor = r.id)
	AND NOT EXISTS (SELECT 1 FROM name n WHERE n.revision = r.id)
	AND NOT EXISTS (SELECT 1 FROM tick t WHERE t.job = r.job AND t.revision = r.id)`

// old lists the spare revisions saved before a time that are not the last of their job on their day.
func (s *Store) old(ctx context.Context, before time.Time) (ids []int64, err error) {
	const query = `
		SELECT id FROM (
			SELECT r.id, r.job, r.parent, row_number() OVER (PARTITION BY r.job, date(r.saved / 1000, 'unixepoch') ORDER BY r.id DESC) AS place
			FROM revision r WHERE r.saved < ?) r
		WHERE place > 1 AND ` + spare + ` ORDER BY id`
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		ids, err = collect(ctx, tx, scanID, query, before.UnixMilli())
		return err
	})
	return ids, err
}

// removeSpare removes those of some revisions that are spare still: others may have been named, shown or
// erased since they were listed.
func (s *Store) removeSpare(ctx context.Context, ids []int64) (removed int, err error) {
	err = s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		removed = 0
		for _, id := range ids {
			var is bool
			err := tx.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM revision r WHERE r.id = ? AND `+spare+`)`, id).Scan(&is)
			if err != nil {
				return err
			}
			if !is {
				continue
			}
			if err := removeBetween(ctx, tx, id); err != nil {
				return err
			}
			removed++
		}
		return nil
	})
	if err != nil {
		return 0, err
	}
	return removed, nil
}

// removeBetween removes a revision and gives its children to its parent.
func removeBetween(ctx context.Context, tx *sql.Tx, id int64) error {
	const hand = `UPDATE revision SET parent = (SELECT parent FROM revision WHERE id = ?1) WHERE parent = ?1`
	if _, err := tx.ExecContext(ctx, hand, id); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, `DELETE FROM revision WHERE id = ?`, id)
	return err
}

func scanID(rows *sql.Rows) (id int64, err error) {
	err = rows.Scan(&id)
	return id, err
}
