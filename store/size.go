package store

import (
	"context"
	"database/sql"
)

// InUse is how many bytes of the data file hold something, what still stands in its log included.
// Pages that were emptied, as when old revisions are thinned out, are taken again by what comes
// next and do not count.
func (s *Store) InUse(ctx context.Context) (bytes int64, err error) {
	const query = `SELECT (c.page_count - f.freelist_count) * p.page_size
		FROM pragma_page_count() c, pragma_freelist_count() f, pragma_page_size() p`
	err = s.read(ctx, func(ctx context.Context, tx *sql.Tx) error {
		return tx.QueryRowContext(ctx, query).Scan(&bytes)
	})
	return bytes, err
}
