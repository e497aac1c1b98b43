package phase

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// atEnd is what an end of a wall leaves of the tiles that it alone cuts: the least width, and the share of the run, which is not
// always of the same piece where tiles are of several widths.
type atEnd struct {
	least length.Length
	share piece.Share
}

// with takes a run that the end alone cuts.
func (e atEnd) with(r *run) atEnd {
	e.least = min(e.least, r.narrowest)
	if share := r.share(); share.Less(e.share) {
		e.share = share
	}
	return e
}

var third = piece.Share{Num: 1, Den: 3}
