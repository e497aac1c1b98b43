package niche_test

import (
	"context"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/niche"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Law 6, by plain sums: the tile of every course of the wall is drawn on over the opening, box by
// box, and what of the boxes lies on the back is, tile by tile, the area that its pieces have. What is
// no wider than a joint that sealant fills may be left to it.
func TestBandsGoOnUponTheBack(t *testing.T) {
	crossed, parted := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Banded(t, 1)
		band := &room.Bands[0]
		band.Bottom.To, band.Near = band.Bottom.From, band.Bottom.From
		room = room.WithJoint(room.Joint)
		room.Walls[0].Pin = &survey.StartPin{X: length.Length(rapid.IntRange(0, 400).Draw(t, "start")) * mm, Is: survey.OnEdge}
		room.Walls[0].Openings = lined(t, room.Walls[0].Openings)
		room, s, walls, err := setout.Quick(context.Background(), room)
		require.NoError(t, err)
		require.NoError(t, niche.Lay(context.Background(), room, s, walls))
		for i := range walls {
			w := &walls[i]
			for _, in := range w.Insides {
				back := in.Find(survey.BackFace)
				want, known := goingOn(room, w, back)
				if !known {
					continue
				}
				got := make([]length.Area, len(want))
				for _, p := range back.Pieces {
					got[tileOf(room, back, p)] += p.Face.Area2() / 2
				}
				require.Equal(t, want, got, "%s, bands %v", back.Name(), s.Bands)
				if want[1] > 0 {
					crossed++
				}
				if want[0] > 0 && want[1] > 0 {
					parted++
				}
			}
		}
	})
	require.Greater(t, crossed, 20)
	require.Greater(t, parted, 10)
}

// lined gives niches a back that goes on with the wall, and measures all openings.
func lined(t *rapid.T, openings []survey.OpeningFound) []survey.OpeningFound {
	out := slices.Clone(openings)
	for i := range out {
		o := &out[i]
		o.Left.To, o.Width.To, o.Bottom.To, o.Height.To = o.Left.From, o.Width.From, o.Bottom.From, o.Height.From
		if out[i].Kind != survey.Niche {
			continue
		}
		in := &survey.InsideFound{Depth: 90 * mm, Flush: rapid.Bool().Draw(t, "flush"), Fall: length.Length(rapid.IntRange(0, 60).Draw(t, "fall")) * mm}
		for k := range in.Faces {
			in.Faces[k] = survey.FaceFound{Tiled: true, Depth: in.Depth, Cover: length.Length(rapid.IntRange(2, 6).Draw(t, "cover")) * mm}
		}
		out[i].Inside = in
	}
	return out
}

// goingOn are the areas of the room's tiles on a back on which every course of the wall goes
// on; not known where a course has no piece on the wall.
func goingOn(room survey.Room, w *plan.Wall, back *plan.Face) (areas []length.Area, known bool) {
	box := back.Shape.Region.Bounds()
	box.Left, box.Right = box.Left+back.Origin.X, box.Right+back.Origin.X
	type course struct {
		laid   int
		bottom length.Length
	}
	tiles := map[course]plane.Rect{}
	for _, p := range w.Pieces {
		tiles[course{p.Laid, p.Tile.Bottom}] = p.Tile
	}
	var courses []course
	for c := range tiles {
		courses = append(courses, c)
	}
	slices.SortFunc(courses, func(a, b course) int { return int(a.bottom - b.bottom) })
	areas = make([]length.Area, len(room.Bands)+1)
	top := length.Length(0)
	for i, c := range courses {
		tile := tiles[c]
		if i == 0 && tile.Bottom > box.Bottom || i > 0 && tile.Bottom > top+room.Joint && top < box.Top && tile.Bottom > box.Bottom {
			return nil, false
		}
		top = tile.Top
		low, high := max(tile.Bottom, box.Bottom), min(tile.Top, box.Top)
		pitch := tile.Width() + room.Joint
		if c.laid > 0 && room.Bands[c.laid-1].Joint > 0 {
			pitch = tile.Width() + room.Bands[c.laid-1].Joint
		}
		for x := tile.Left - ((tile.Left-box.Left)/pitch+2)*pitch; x < box.Right && low < high; x += pitch {
			from, to := max(x, box.Left), min(x+tile.Width(), box.Right)
			if from >= to || min(to-from, high-low) <= room.Sealant && !placed(room, back, c.laid, plane.Rect{Left: x - back.Origin.X, Right: x + tile.Width() - back.Origin.X, Bottom: tile.Bottom, Top: tile.Top}) {
				continue
			}
			areas[c.laid] += (to - from).Times(high - low)
		}
	}
	return areas, top >= box.Top
}

// placed tells whether a piece of a tile is on a face.
func placed(room survey.Room, f *plan.Face, laid int, tile plane.Rect) bool {
	return slices.ContainsFunc(f.Pieces, func(p piece.Piece) bool { return tileOf(room, f, p) == laid && p.Tile == tile })
}

// tileOf is which of the room's tiles a piece of a face is; over the line of a band that goes up
// to the head the whole face is in the band's.
func tileOf(room survey.Room, f *plan.Face, p piece.Piece) int {
	if p.Laid == 0 && f.Tile != room.Tile {
		return 1
	}
	return p.Laid
}
