package niche_test

import (
	"context"
	"testing"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/niche"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawn is a room of one wall with a niche or a window of any size in it, and
// where it is set out.
func drawn(t *rapid.T) (survey.Room, plan.Setout, plan.Wall) {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name)) * mm
	}
	r := survey.Room{Units: length.Metric, Tape: mm, Joint: n("joint", 0, 6), Bed: 5 * mm, Sealant: 6 * mm,
		Tile: survey.TileSize{Width: n("wide", 20, 400), Height: n("high", 20, 300), Thickness: n("thick", 4, 12)},
		Bond: survey.BondRule{Kind: survey.Stack, Den: 1, Plumb: rapid.Bool().Draw(t, "plumb")}}
	if den := rapid.IntRange(1, 4).Draw(t, "den"); den > 1 {
		r.Bond = survey.BondRule{Kind: survey.Running, Num: 1, Den: int64(den), Plumb: r.Bond.Plumb, Hand: survey.Left}
	}
	in := &survey.InsideFound{Depth: n("depth", 40, 250), Flush: rapid.Bool().Draw(t, "flush"), Fall: n("fall", 0, 60)}
	if rapid.Bool().Draw(t, "gap") {
		gap := n("gap is", 1, 6)
		in.Gap = &gap
	}
	kind := survey.Niche
	if rapid.Bool().Draw(t, "window") {
		kind = survey.Window
	}
	for i := range in.Faces {
		in.Faces[i] = survey.FaceFound{Tiled: i > 0 && (i == 1 || rapid.Bool().Draw(t, "tiled")), Depth: in.Depth, Cover: r.Bed + r.Tile.Thickness}
		if i == 0 && kind == survey.Niche {
			in.Faces[i].Tiled = true
		}
		if i > 0 && rapid.Bool().Draw(t, "own") {
			in.Faces[i].Tile = &survey.TileSize{Width: n("own wide", 15, 100), Height: n("own high", 15, 100), Thickness: r.Tile.Thickness}
			in.Faces[i].Joint = n("own joint", 1, 3)
		}
		if side := survey.FaceName(i); side == survey.LeftFace || side == survey.RightFace {
			in.Faces[i].AtSill = rapid.Bool().Draw(t, "from the sill")
		}
	}
	left, bottom := n("left", 200, 600), n("bottom", -300, 300)
	hole := survey.Edges{Left: left, Bottom: bottom, Right: left + n("across", 80, 500), Top: bottom + n("up", 80, 500)}
	w := plan.Wall{Found: survey.WallFound{Name: "a", Letter: "A", Openings: []survey.OpeningFound{{Kind: kind, Name: "n", Inside: in}}},
		Start: plan.Start{Edge: n("edge", 0, 400), Placed: survey.Placed{Openings: []survey.Edges{hole}}}}
	return r, plan.Setout{Line: n("line", -200, 200), Joint: r.Joint, Hand: survey.Left}, w
}

// Law 1, by a general geometry library (simplefeatures): the pieces of a face,
// its joints, what is sealed away, and the soft joints round it are as large as
// the face together, and no two pieces overlap. Joints are what the tiles of the
// bond, drawn one by one, leave.
func TestPiecesJointsAndGapsMakeUpAFace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, s, w := drawn(t)
		walls := []plan.Wall{w}
		require.NoError(t, niche.Lay(context.Background(), room, s, walls))
		for _, f := range walls[0].Insides[0].Faces {
			face, laid := outside(t, f.Outline), outside(t, f.Shape.Region)
			pieces, tiles := 0.0, 0.0
			for _, p := range f.Pieces {
				pieces += outside(t, p.Face).Area()
			}
			for _, tile := range tilesOf(room, s, f) {
				part, err := geom.Intersection(outside(t, plane.Region{tile.Ring(0)}), laid)
				require.NoError(t, err)
				tiles += part.Area()
				if part.Area() > 0 && !stands(f, tile) {
					box := part.Envelope()
					thin := float64(min(box.Width(), box.Height()))
					require.LessOrEqual(t, thin, float64(room.Sealant)+1, "%s of %v is left bare", f.Name(), tile)
					pieces += part.Area()
				}
			}
			// Edges that rake are cut to whole units: a unit along each piece at most.
			slack := float64(len(f.Pieces)+1) * float64(f.Outline.Bounds().Width()+f.Outline.Bounds().Height())
			require.InDelta(t, tiles, pieces, slack, f.Name())
			joints, err := geom.Difference(face, laid)
			require.NoError(t, err)
			require.InDelta(t, face.Area(), pieces+(laid.Area()-tiles)+joints.Area(), slack, f.Name())
			for i, p := range f.Pieces {
				for _, q := range f.Pieces[i+1:] {
					require.False(t, p.Tile != q.Tile && p.Face.Bounds().Overlaps(q.Face.Bounds()), "%s and %s", p.ID, q.ID)
				}
			}
		}
	})
}

// Law 3: what stands at the front has its factory edge there, or is cut as much as what stands at the back.
func TestTheFrontKeepsAFactoryEdge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, s, w := drawn(t)
		walls := []plan.Wall{w}
		require.NoError(t, niche.Lay(context.Background(), room, s, walls))
		in := w.Found.Openings[0].Inside
		for _, f := range walls[0].Insides[0].Faces {
			box := f.Shape.Region.Bounds()
			for _, p := range f.Pieces {
				face := p.Face.Bounds()
				less, deep, tile, front := length.Length(0), box.Width(), f.Tile.Width, true
				switch {
				case f.Is == survey.LeftFace && face.Left == box.Left:
					less = face.Left - p.Tile.Left
				case f.Is == survey.RightFace && face.Right == box.Right:
					less = p.Tile.Right - face.Right
				case f.Is == survey.SillFace && face.Bottom == box.Bottom:
					less, deep, tile = face.Bottom-p.Tile.Bottom, box.Height(), f.Tile.Height
				case f.Is == survey.TopFace && face.Top == box.Top:
					less, deep, tile = p.Tile.Top-face.Top, box.Height(), f.Tile.Height
				default:
					front = false
				}
				if !front || less == 0 {
					continue
				}
				rest := length.Mod(deep, tile+f.Joint)
				require.False(t, in.Flush, "%s is cut where it shows", p.ID)
				require.Less(t, rest, (tile+3)/4, "%s is cut though no sliver would be left behind", p.ID)
				require.InDelta(t, int64(tile+rest), int64(2*(tile-less)), 1, "%s is cut otherwise than the last row", p.ID)
			}
		}
	})
}

// stands tells whether a piece of a tile is on the face.
func stands(f plan.Face, tile plane.Rect) bool {
	for _, p := range f.Pieces {
		if p.Tile == tile {
			return true
		}
	}
	return false
}

// tilesOf lists the tiles of a face's bond that meet it.
func tilesOf(room survey.Room, s plan.Setout, f plan.Face) []plane.Rect {
	room.Tile, room.Joint, room.Bond = f.Tile, f.Joint, f.Bond
	b, box := bond.Of(room, s.Hand), f.Outline.Bounds()
	line, edge := f.Line, f.Start.Edge
	if room.Bond.Plumb {
		box, line, edge = box.Transposed(), edge, line
	}
	var out []plane.Rect
	for _, r := range b.Rows(line, edge, box.Bottom, box.Top) {
		for x := r.First - ((r.First-box.Left)/r.Pitch+2)*r.Pitch; x < box.Right; x += r.Pitch {
			tile := plane.Rect{Left: x, Bottom: r.Low, Right: x + r.Width, Top: r.High}
			if room.Bond.Plumb {
				tile = tile.Transposed()
			}
			out = append(out, tile)
		}
	}
	return out
}

// outside is a region as the geometry library has it.
func outside(t *rapid.T, r plane.Region) geom.Geometry {
	var rings []geom.LineString
	for _, ring := range r {
		var xy []float64
		for i := range len(ring) + 1 {
			c := ring[i%len(ring)]
			xy = append(xy, float64(c.X), float64(c.Y))
		}
		rings = append(rings, geom.NewLineString(geom.NewSequence(xy, geom.DimXY)))
	}
	return geom.NewPolygon(rings).AsGeometry()
}
