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

// Law 6, by plain sums: the tile of every course of the wall is drawn on over the opening, or from the front of its
// sides back, box by box, and what of the boxes lies on the face is, tile by tile, the area that its pieces have. What is
// no wider than a joint that sealant fills may be left to it. Sides on a sill that falls are left out, and those whose first
// row may be cut as the last is.
func TestBandsGoOnUponBackAndSides(t *testing.T) {
	crossed, parted := map[survey.FaceName]int{}, map[survey.FaceName]int{}
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Banded(t, 1)
		band := &room.Bands[0]
		if o := room.Walls[0].Openings; len(o) > 0 && o[0].Kind == survey.Niche && !band.ToHead {
			band.Bottom.From = o[0].Bottom.From + length.Length(rapid.IntRange(-40, 60).Draw(t, "over its foot"))*mm
		}
		band.Tile.Thickness = length.Length(rapid.IntRange(3, 16).Draw(t, "thick")) * mm
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
				for _, is := range []survey.FaceName{survey.BackFace, survey.LeftFace, survey.RightFace} {
					f := in.Find(is)
					want, known := goingOn(room, s.Bands[0], w, f)
					if !known || is != survey.BackFace && in.Rise > 0 {
						continue
					}
					got := make([]length.Area, len(want))
					for _, p := range f.Pieces {
						got[tileOf(room, f, p)] += p.Face.Area2() / 2
					}
					require.Equal(t, want, got, "%s, bands %v", f.Name(), s.Bands)
					if want[1] > 0 {
						crossed[is]++
					}
					if want[0] > 0 && want[1] > 0 {
						parted[is]++
					}
				}
			}
		}
	})
	for _, is := range []survey.FaceName{survey.BackFace, survey.LeftFace, survey.RightFace} {
		require.Greater(t, crossed[is], 10, is)
		require.Greater(t, parted[is], 5, is)
	}
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
		in := &survey.InsideFound{Depth: length.Length(rapid.IntRange(60, 250).Draw(t, "depth")) * mm, Flush: rapid.Bool().Draw(t, "flush"), Fall: rapid.SampledFrom([]length.Length{0, 0, 0, 20 * mm}).Draw(t, "fall")}
		for k := range in.Faces {
			in.Faces[k] = survey.FaceFound{Tiled: true, Depth: in.Depth, Cover: length.Length(rapid.IntRange(2, 6).Draw(t, "cover")) * mm}
		}
		out[i].Inside = in
	}
	return out
}

// goingOn are the areas of the room's tiles on a back or a side on which every course of the wall goes
// on; not known where a course has no piece on the wall.
func goingOn(room survey.Room, band plan.Band, w *plan.Wall, f *plan.Face) (areas []length.Area, known bool) {
	box := f.Shape.Region.Bounds()
	type course struct {
		laid   int
		bottom length.Length
	}
	tiles := map[course]plane.Rect{}
	for _, p := range w.Pieces {
		tile, box := p.Tile, spanOf(room, band, w, f, p.Laid)
		switch f.Is {
		case survey.BackFace:
			tile.Left -= f.Origin.X
		case survey.LeftFace:
			tile.Left = box.Left
		case survey.RightFace:
			tile.Left = box.Right - tile.Width()
		}
		tile.Right = tile.Left + p.Tile.Width()
		tiles[course{p.Laid, p.Tile.Bottom}] = tile
	}
	var courses []course
	for c := range tiles {
		courses = append(courses, c)
	}
	slices.SortFunc(courses, func(a, b course) int { return int(a.bottom - b.bottom) })
	areas = make([]length.Area, len(room.Bands)+1)
	top := length.Length(0)
	for i, c := range courses {
		tile, box := tiles[c], spanOf(room, band, w, f, c.laid)
		if i == 0 && tile.Bottom > box.Bottom || i > 0 && tile.Bottom > top+room.Joint && top < box.Top && tile.Bottom > box.Bottom {
			return nil, false
		}
		top = tile.Top
		low, high := max(tile.Bottom, box.Bottom), min(tile.Top, box.Top)
		pitch := tile.Width() + room.Joint
		if c.laid > 0 && room.Bands[c.laid-1].Joint > 0 {
			pitch = tile.Width() + room.Bands[c.laid-1].Joint
		}
		if rest := box.Width() % pitch; f.Is != survey.BackFace && rest > 0 && 4*rest < tile.Width()+4 {
			return nil, false
		}
		for x := tile.Left - ((tile.Left-box.Left)/pitch+2)*pitch; x < box.Right && low < high; x += pitch {
			from, to := max(x, box.Left), min(x+tile.Width(), box.Right)
			if from >= to || min(to-from, high-low) <= room.Sealant && !placed(room, f, c.laid, plane.Rect{Left: x, Right: x + tile.Width(), Bottom: tile.Bottom, Top: tile.Top}) {
				continue
			}
			areas[c.laid] += (to - from).Times(high - low)
		}
	}
	return areas, top >= box.Top
}

// spanOf is what of a face one of the room's tiles may take: on a side from a joint behind the wall's tile that is as thick, on the back
// less what it stands out of the sides beside it, if it is thicker than the field that is there too.
func spanOf(room survey.Room, band plan.Band, w *plan.Wall, f *plan.Face, laid int) plane.Rect {
	out, box := f.Outline.Bounds(), f.Shape.Region.Bounds()
	out.Left, out.Right, out.Bottom, out.Top = out.Left+f.Joint, out.Right-f.Joint, box.Bottom, box.Top
	thick, front := room.Laid(laid).Tile.Thickness, length.Length(0)
	at := slices.IndexFunc(w.Insides, func(in plan.Inside) bool { return in.Find(f.Is) == f })
	if !w.Found.Openings[w.Insides[at].Opening].Inside.Flush {
		front = thick + f.Joint
	}
	field := f.Tile == room.Tile && (box.Bottom < band.Bottom-room.Joint || !band.ToHead && box.Top > band.Top+room.Joint)
	switch proud := thick - room.Tile.Thickness; {
	case f.Is == survey.LeftFace:
		out.Left = front
	case f.Is == survey.RightFace:
		out.Right = f.Outline.Bounds().Right - front
	case field && proud > 0:
		out.Left, out.Right = out.Left+proud, out.Right-proud
	}
	return out
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
