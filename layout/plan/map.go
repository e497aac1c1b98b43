package plan

import (
	"coursewright/layout/length"
	"coursewright/layout/piece"
)

// Map says of a wall laid in a pattern what the worst run would be with other lines
// and starts, as far as the edges that stand decide it: one box of phases, in which
// every set-out of the pattern is found.
type Map struct {
	Edge, Line  length.Length // of the first entry
	Across, Up  length.Length // from one entry to the next
	Columns     int
	Shares      []piece.Share // row by row, the lowest line first; 0 where wall would be bare
	Unworkable  []int         // pieces that nobody can cut, by entry
	Reach, Rise length.Length // the box
}

// At is the entry for a column and a row.
func (m *Map) At(column, row int) (edge, line length.Length, share piece.Share) {
	return m.Edge + length.Length(column)*m.Across, m.Line + length.Length(row)*m.Up, m.Shares[row*m.Columns+column]
}

// Rows is how many lines the map has.
func (m *Map) Rows() int { return len(m.Shares) / max(1, m.Columns) }
