package piece_test

import (
	"testing"

	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

func rowsOf(rows ...int) (out []piece.Piece) {
	for _, r := range rows {
		out = append(out, piece.Piece{Row: r})
	}
	return out
}

func idsOf(pieces []piece.Piece) (out []string) {
	for _, p := range pieces {
		out = append(out, p.ID)
	}
	return out
}

// Formats.md: courses are counted from 1 for the lowest course of the room, pieces from the
// left of their course.
func TestCoursesAreNumberedFromTheLowestOfTheRoom(t *testing.T) {
	walls := [][]piece.Piece{rowsOf(2, 2, 3), rowsOf(-1, 0, 0, 2), nil}
	piece.Number(walls, []string{"A", "B", "C"}, false)
	require.Equal(t, []string{"A-04-01", "A-04-02", "A-05-01"}, idsOf(walls[0]))
	require.Equal(t, []string{"B-01-01", "B-02-01", "B-02-02", "B-04-01"}, idsOf(walls[1]))
	require.Equal(t, 4, walls[0][0].Course)

	high := [][]piece.Piece{nil, rowsOf(5, 6), rowsOf(3)}
	piece.Number(high, []string{"A", "B", "C"}, false)
	require.Equal(t, []string{"B-03-01", "B-04-01"}, idsOf(high[1]), "a wall without a piece has no lowest course")
}

// Columns are counted on each wall by itself.
func TestColumnsAreNumberedWallByWall(t *testing.T) {
	walls := [][]piece.Piece{rowsOf(2, 3), rowsOf(-1, 0)}
	piece.Number(walls, []string{"A", "B"}, true)
	require.Equal(t, []string{"A-01-01", "A-02-01"}, idsOf(walls[0]))
	require.Equal(t, []string{"B-01-01", "B-02-01"}, idsOf(walls[1]))
}

// Courses of bands count: tile over a band of two courses is lifted by two.
func TestCoursesOverABandCountOn(t *testing.T) {
	pieces := rowsOf(0, 0, 1)
	pieces[1].Lift, pieces[2].Lift = 1, 2
	walls := [][]piece.Piece{pieces}
	piece.Number(walls, []string{"A"}, false)
	require.Equal(t, []string{"A-01-01", "A-02-01", "A-04-01"}, idsOf(walls[0]))
}

// Pieces of a part of a wall, named as those of the wall: every edge is renamed, and nothing
// else changes, nor the piece that it was.
func TestRenamedPieces(t *testing.T) {
	w := sketch("1000x600 300x100+2 window=100,300,50,200 pipe=250,20,10", 0, 0)
	p := w.at(t, 50, 80)
	was := append([]plane.Side(nil), p.Cuts...)
	to := func(s plane.Side) plane.Side { return 20 - s }
	q := p.Renamed(to)
	require.Equal(t, was, p.Cuts)
	require.Equal(t, p.Face.Area2(), q.Face.Area2())
	require.Equal(t, p.Kind, q.Kind)
	require.Len(t, was, 2, "the window and the pipe")
	require.Equal(t, []plane.Side{to(was[1]), to(was[0])}, q.Cuts, "ascending")
	for i, ring := range p.Face {
		for k, c := range ring {
			d := q.Face[i][k]
			require.Equal(t, c.Point, d.Point)
			if c.On == 0 {
				require.Zero(t, d.On, "an edge of the tile stays one")
				continue
			}
			require.Equal(t, to(c.On), d.On)
		}
	}
	require.Len(t, q.Across, len(p.Across))
	for i, e := range p.Across {
		require.Contains(t, q.Across, piece.EdgeOf(to(e.Side()), e.Facing()), "edge %d", i)
	}
	require.IsIncreasing(t, append([]piece.Edge{-1}, q.Up...))
	require.Equal(t, p.Face, q.Renamed(to).Face, "renamed back it is what it was")

	g := piece.Gap{Edge: piece.EdgeOf(survey.SideLeft, piece.OnLeft), Length: 5}
	require.Equal(t, piece.Gap{Edge: piece.EdgeOf(20-survey.SideLeft, piece.OnLeft), Length: 5}, g.Renamed(to))
}
