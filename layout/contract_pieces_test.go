package layout_test

import (
	"math"
	"math/big"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
)

// checkPieces matches every tile's remainders with the plan's pieces, both ways.
func checkPieces(t require.TestingT, r room, p plan, w planWall, found wall, region geom.Geometry) {
	byTile := map[[4]float64][]planPiece{}
	for _, piece := range w.Pieces {
		var at [4]float64
		for i, v := range piece.Tile {
			at[i] = units(v)
		}
		byTile[at] = append(byTile[at], piece)
	}
	if w.Laid == "single" { // no course of it is shifted
		r.offset = new(big.Rat)
	}
	first, seen := 0, false
	pieces, tiles, strips := 0.0, 0.0, 0.0
	for _, tile := range r.tiles(found, units(p.Course.Line), units(w.Start.X), p.Course.Hand) {
		at := [4]float64{tile.left, tile.bottom, tile.right, tile.top}
		got := byTile[at]
		delete(byTile, at)
		inWall := must(geom.Intersection(region, tile.geometry())).Area()
		tiles += inWall
		covered := 0.0
		for _, part := range r.parts(found, tile) {
			k := matching(part, got)
			if part.margin < 3 { // on the limit: either is right
				part.sealed = k < 0
			}
			if part.sealed {
				strips += part.face.Area()
			}
			require.Equal(t, part.sealed, k < 0, "wall %s, tile %v mm: sealed strip %v; %d pieces of it in the plan: %s", w.Name, mm(at), part.sealed, len(got), part.solid.AsText())
			if k < 0 {
				continue
			}
			piece := got[k]
			got = append(got[:k:k], got[k+1:]...)
			if !seen {
				first, seen = piece.Course-tile.course, true
			}
			require.Equal(t, first, piece.Course-tile.course, "course of %s", piece.ID)
			face := piece.Face.geometry(t)
			near(t, part.face, face, 2*(r.width+r.height)+pipeSlack(found), "face of "+piece.ID)
			if missing := r.width*r.height - face.Area(); missing < nick*(r.width+r.height) {
				part.whole = piece.Whole // so little is missing that rounding decides
			}
			covered += face.Area()
			measure(t, r, part, piece)
		}
		require.Empty(t, got, "wall %s, tile %v mm: pieces that are not there", w.Name, mm(at))
		pieces += covered
		require.LessOrEqual(t, covered, inWall+4*(r.width+r.height), "no two pieces of one tile overlap")
	}
	require.Empty(t, byTile, "pieces of tiles that are not of the bond on %s", w.Name)
	joints := region.Area() - tiles
	require.InDelta(t, region.Area(), pieces+strips+joints, 960*960+pipeSlack(found), "pieces, strips and joints make the wall %s", w.Name)
}

func mm(at [4]float64) (out [4]float64) {
	for i, v := range at {
		out[i] = v / perMM
	}
	return out
}

// aside is how far, in units, a corner may stand from the oracle's: a unit of
// rounding across a leaning edge is many units along it.
const aside = 60

// nick is how thick, in units, the strip may be that is missing from a tile
// before it is cut beyond doubt.
const nick = 3

// matching finds the piece of a tile that covers a part, or -1.
func matching(p part, got []planPiece) int {
	lo, hi, _ := p.solid.Envelope().MinMaxXYs()
	for i, piece := range got {
		inside := true
		for _, ring := range piece.Face {
			for _, c := range ring {
				x, y := units(c[0]), units(c[1])
				inside = inside && x >= lo.X-aside && x <= hi.X+aside && y >= lo.Y-aside && y <= hi.Y+aside
			}
		}
		if inside {
			return i
		}
	}
	return -1
}

// measure holds wide, high, least, share and the flags of a piece.
func measure(t require.TestingT, r room, part part, piece planPiece) {
	slack := float64(aside) / 960 // mm
	require.Equal(t, part.whole, piece.Whole, "%s whole", piece.ID)
	require.InDelta(t, part.wide/perMM, piece.Wide, slack, "wide of %s: %s", piece.ID, part.solid.AsText())
	require.InDelta(t, part.high/perMM, piece.High, slack, "high of %s: %s", piece.ID, part.solid.AsText())
	require.InDelta(t, part.share, piece.Share, shareSlack(r)+slack*perMM/min(r.width, r.height), "share of %s", piece.ID)
	require.Contains(t, []float64{piece.Wide, piece.High}, piece.Least)
	require.InDelta(t, piece.Share, math.Min(piece.Wide/(r.width/perMM), piece.High/(r.height/perMM)), 1e-4)
	sliver, unworkable := part.over(r.sliver), part.over(r.unworkable)
	if math.Abs(unworkable) > slack*perMM {
		require.Equal(t, unworkable < 0, piece.Unworkable, "%s is unworkable: %s", piece.ID, part.solid.AsText())
	}
	if math.Abs(sliver) > slack*perMM {
		require.Equal(t, sliver < 0 && !piece.Unworkable, piece.Sliver, "%s is a sliver: %s", piece.ID, part.solid.AsText())
	}
}
