package plane

import (
	"math/rand/v2"
	"testing"

	"coursewright/layout/length"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
)

// BenchmarkClip cuts the same raked wall to the same thousand tiles here and by a
// general geometry library, and both must come to the same area.
func BenchmarkClip(b *testing.B) {
	const mm = length.Millimetre
	wall := Ring{{Point: Point{0, 0}}, {Point: Point{3000 * mm, 7 * mm}}, {Point: Point{2990 * mm, 2400 * mm}}, {Point: Point{5 * mm, 2395 * mm}}}
	r := rand.New(rand.NewPCG(1, 2))
	var tiles []Rect
	for range 1000 {
		x, y := length.Length(r.IntN(3000))*mm-50*mm, length.Length(r.IntN(2400))*mm-50*mm
		tiles = append(tiles, Rect{Left: x, Bottom: y, Right: x + 150*mm, Top: y + 75*mm})
	}
	var exact, general float64
	b.Run("exact", func(b *testing.B) {
		for b.Loop() {
			exact = 0
			for _, t := range tiles {
				for _, ring := range (Region{wall}).KeepAll(Above(t.Bottom), Below(t.Top), RightOf(t.Left), LeftOf(t.Right)) {
					exact += float64(ring.Area2()) / 2
				}
			}
		}
	})
	shape := polygon(b, wall)
	b.Run("general", func(b *testing.B) {
		for b.Loop() {
			general = 0
			for _, t := range tiles {
				cut, err := geom.Intersection(shape, polygon(b, t.Ring(0)))
				require.NoError(b, err)
				general += cut.Area()
			}
		}
	})
	if exact > 0 && general > 0 {
		require.InEpsilon(b, general, exact, 1e-6, "but for corners on raked edges, which go to the nearest unit")
	}
}

func polygon(b *testing.B, r Ring) geom.Geometry {
	var xys []float64
	for _, c := range append(r[:len(r):len(r)], r[0]) {
		xys = append(xys, float64(c.X), float64(c.Y))
	}
	line := geom.NewLineString(geom.NewSequence(xys, geom.DimXY))
	p := geom.NewPolygon([]geom.LineString{line})
	require.NoError(b, p.Validate())
	return p.AsGeometry()
}
