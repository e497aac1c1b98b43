package layout_test

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
)

// start is the left edge of a tile of course 0, within a unit of the plan's
// start, as the pieces have it.
func (r room) start(w planWall) float64 {
	x := units(w.Start.X)
	if w.Start.Is == "tile" {
		return x - math.Floor(r.width/2)
	}
	return x + math.Floor(r.joint/2)
}

// checkPieces matches every tile's remainders with the plan's pieces, both
// ways, and adds up the merit.
func checkPieces(t require.TestingT, r room, p plan, w planWall, found wall, region geom.Geometry, sum *merit) {
	byTile := map[[4]float64][]planPiece{}
	for _, piece := range w.Pieces {
		var at [4]float64
		for i, v := range piece.Tile {
			at[i] = units(v)
		}
		byTile[at] = append(byTile[at], piece)
	}
	first, seen := 0, false
	left, right := math.Inf(1), math.Inf(1)
	pieces, tiles, strips := 0.0, 0.0, 0.0
	for _, tile := range r.tiles(found, units(p.Course.Line), r.start(w), p.Course.Hand) {
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
			count(part, piece, sum, &left, &right)
		}
		require.Empty(t, got, "wall %s, tile %v mm: pieces that are not there", w.Name, mm(at))
		pieces += covered
		require.LessOrEqual(t, covered, inWall+4*(r.width+r.height), "no two pieces of one tile overlap")
	}
	require.Empty(t, byTile, "pieces of tiles that are not of the bond on %s", w.Name)
	joints := region.Area() - tiles
	require.InDelta(t, region.Area(), pieces+strips+joints, 960*960+pipeSlack(found), "pieces, strips and joints make the wall %s", w.Name)
	if math.IsInf(left, 1) {
		left = r.width
	}
	if math.IsInf(right, 1) {
		right = r.width
	}
	sum.Imbalance += math.Abs(left - right)
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
	limit := math.Min(part.wide-r.sliverWide, part.high-r.sliverHigh)
	if math.Abs(limit) > slack*perMM {
		require.Equal(t, limit < 0, piece.Sliver, "%s is a sliver", piece.ID)
	}
}

// count adds a piece to the merit.
func count(part part, piece planPiece, sum *merit, left, right *float64) {
	if piece.Sliver { // held against the oracle but for what rounding decides
		sum.Slivers++
	}
	if !part.whole {
		sum.CutPieces++
		sum.Smallest = math.Min(sum.Smallest, part.share)
	}
	if part.left {
		*left = math.Min(*left, part.wide)
	}
	if part.right {
		*right = math.Min(*right, part.wide)
	}
}

// offLine counts the edges of niches and windows that coincide with no tile edge.
func offLine(r room, p plan, w planWall, found wall) (n int) {
	tiles := r.tiles(found, units(p.Course.Line), r.start(w), p.Course.Hand)
	for _, hole := range found.holes {
		for k, at := range hole {
			met := false
			for _, tile := range tiles {
				near := [2]float64{tile.left, tile.right}
				if k%2 == 1 {
					near = [2]float64{tile.bottom, tile.top}
				}
				met = met || near[0] == at || near[1] == at
			}
			if !met {
				n++
			}
		}
	}
	return n
}
