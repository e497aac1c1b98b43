package store

import (
	"context"
	"database/sql"
	"time"
)

// wholeFor is how long every revision is kept.
const wholeFor = 24 * time.Hour

// atOnce is how many revisions one transaction removes, so that edits come between.
const atOnce = 200

// Thin removes revisions by one rule, and gives how many. Of the last day (24 hours) every revision
// is kept, of what is older the last one of each job on each day (UTC). The first revision of a job, the one
// it shows, those with a name and those that ticks refer to are kept for good. Undo and redo pass
// over what was removed. Thin stops early, without error, when the context ends.
func (s *Store) Thin(ctx context.Context, now time.Time) (removed int, err error) {
	for ctx.Err() == nil {
		n, err := s.thinSome(ctx, now.Add(-wholeFor))
		removed += n
		if err != nil || n < atOnce {
			return removed, err
		}
	}
	return removed, nil
}

// thinSome removes as many revisions saved before a time as one transaction may.
func (s *Store) thinSome(ctx context.Context, before time.Time) (removed int, err error) {
	const query = `
		SELECT id FROM (
			SELECT r.id, r.job, r.parent, row_number() OVER (PARTITION BY r.job, date(r.saved / 1000, 'unixepoch') ORDER BY r.id DESC) AS place
			FROM revision r WHERE r.saved < ?)  r
		WHERE place > 1 AND parent IS NOT NULL
			AND NOT EXISTS (SELECT 1 FROM job j WHERE j.id = r.job AND j.cursor = r.id)
			AND NOT EXISTS (SELECT 1 FROM name n WHERE n.revision = r.id)
			AND NOT EXISTS (SELECT 1 FROM tick t WHERE t.job = r.job AND t.revision = r.id)
		ORDER BY id LIMIT ?`
	err = s.write(ctx, func(ctx context.Context, tx *sql.Tx) error {
		old, err := collect(ctx, tx, scanID, query, before.UnixMilli(), atOnce)
		if err != nil {
			return err
		}
		for _, id := range old {
			if err := removeBetween(ctx, tx, id); err != nil {
				return err
			}
		}
		removed = len(old)
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
