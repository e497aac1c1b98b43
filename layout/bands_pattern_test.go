package layout_test

import (
	"encoding/json"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// patternBands are bands through patterns and bands laid in them, by what they are and what
// the room is laid in.
func patternBands() map[string]survey.Job {
	out := map[string]survey.Job{}
	herringbone := survey.Band{Name: "herringbone", Height: "6", Bond: survey.Bond{Kind: "herringbone"}, Tile: survey.Tile{Width: "3", Height: "1"}}
	hexagons := survey.Band{Name: "hexagons", Height: "5", Joint: "1/16", Bond: survey.Bond{Kind: "hexagon"}, Tile: survey.Tile{Width: "2", Height: "2"}}
	liner := survey.Band{Name: "liner", Tile: survey.Tile{Width: "8", Height: "1/2"}}
	above := survey.Band{Name: "above", ToHead: true, Tile: survey.Tile{Width: "3 7/8", Height: "3 7/8"}}
	chevron := survey.Band{Name: "chevron", ToHead: true, Bond: survey.Bond{Kind: "chevron"}, Tile: survey.Tile{Width: "6", Height: "2"}}
	several := func(name string, tile survey.Tile, bond survey.Bond) survey.Band {
		return survey.Band{Name: name, Height: "7", Joint: "1/8", Bond: bond, Tile: tile}
	}
	dots := several("dots", survey.Tile{Width: "4", Height: "2"}, survey.Bond{Kind: "basket weave", Tiles: []survey.Tile{{Width: "7/8"}}})
	pinwheel := several("pinwheel", survey.Tile{Width: "2", Height: "2"}, survey.Bond{Kind: "pinwheel", Turn: "45", Tiles: []survey.Tile{{Width: "7/8"}}})
	mixed := several("mixed", survey.Tile{Width: "3", Height: "2"}, survey.Bond{Kind: "mixed heights", Offset: "1/2", Tiles: []survey.Tile{{Height: "7/8"}, {Height: "1/2"}}})
	modular := several("modular", survey.Tile{Width: "7/8", Height: "7/8"}, survey.Bond{Kind: "modular", Tiles: []survey.Tile{{Width: "1 7/8", Height: "7/8"}, {Width: "1 7/8"}, {Width: "2 7/8", Height: "1 7/8"}}})
	mixed.ToHead, mixed.Height = true, ""
	for field, bands := range map[string][]survey.Band{
		"running":     {herringbone, hexagons, chevron, dots, pinwheel, mixed, modular},
		"herringbone": {mosaic(survey.Mark{}), liner, herringbone, above, modular},
		"hexagon":     {hexagons, above, dots},
		"diagonal":    {liner, chevron},
	} {
		for i, band := range bands {
			job := survey.Job{Bond: survey.Bond{Kind: field}}
			switch band.Bottom = (survey.Mark{At: "-20"}); {
			case band.ToHead: // clear of the niche, which is free
				band.Bottom = survey.Mark{At: "27"}
			case i == 0:
				band.Bottom = survey.Mark{From: "-24", To: "-17"}
			}
			if field == "hexagon" {
				job.Tile = survey.Tile{Width: "4", Height: "4"}
			}
			job.Bands = []survey.Band{band}
			out[band.Name+" in "+field] = job
		}
	}
	return out
}

func withBands(t *testing.T, of survey.Job) survey.Job {
	job := demo(t)
	job.Bond, job.Bands = of.Bond, of.Bands
	if of.Tile.Width != "" {
		job.Tile = of.Tile
	}
	return job
}

// Where a pattern meets a band: pieces of field and band with the joints between them make
// up the wall, by a general geometry library (simplefeatures); no two overlap; each keeps to
// its side of the band's edges; ids are told apart; the band's tile is bought.
func TestBandsThroughPatternsConserveTheWall(t *testing.T) {
	for name, of := range patternBands() {
		t.Run(name, func(t *testing.T) {
			plan, err := layout.Now(withBands(t, of))
			require.NoError(t, err)
			file, err := plan.File()
			require.NoError(t, err)
			var p bandedPlan
			require.NoError(t, json.Unmarshal(file, &p))
			b, joint := p.Bands[0], 25.4/8
			for _, w := range p.Walls {
				wallMadeUp(t, w.Name, w.Region, w.Pieces, b, of.Bands[0].ToHead, joint)
			}
			bought := false
			for _, l := range p.Takeoff {
				bought = bought || strings.HasSuffix(l.Item, "for the "+b.Name) && l.Net > 0
			}
			assert.True(t, bought, "the band's tile is bought")
		})
	}
}

func wallMadeUp(t *testing.T, wall string, rings [][][2]float64, pieces []bandedPiece, b bandedAt, toHead bool, joint float64) {
	region := geometry(t, rings)
	sum, band, ids := 0.0, 0, map[string]bool{}
	shapes := make([]geom.Geometry, len(pieces))
	for i, q := range pieces {
		require.False(t, ids[q.ID], q.ID)
		ids[q.ID] = true
		shapes[i] = geometry(t, q.Face)
		sum += shapes[i].Area()
		outside, err := geom.Difference(shapes[i], region)
		require.NoError(t, err)
		require.Less(t, outside.Area(), 0.5, "%s leaves the wall", q.ID)
		high, _ := shapes[i].Envelope().Max().XY()
		low, _ := shapes[i].Envelope().Min().XY()
		switch {
		case q.Band != "":
			band++
			require.True(t, low.Y > b.Bottom-0.002 && (toHead || high.Y < b.Top+0.002), "%s stands in the band", q.ID)
		default:
			require.True(t, high.Y < b.Bottom-joint+0.002 || !toHead && low.Y > b.Top+joint-0.002, "%s stands beside the band", q.ID)
		}
		for k := range i {
			if !mayMeet(shapes[i], shapes[k]) {
				continue
			}
			both, err := geom.Intersection(shapes[i], shapes[k])
			require.NoError(t, err)
			require.Less(t, both.Area(), 0.5, "%s and %s", q.ID, pieces[k].ID)
		}
	}
	require.NotZero(t, band, wall)
	left := 1 - sum/region.Area()
	assert.True(t, left > 0.02 && left < 0.16, "%.3f of wall %s is joints", left, wall)
}

func mayMeet(a, b geom.Geometry) bool {
	p, _ := a.Envelope().Min().XY()
	q, _ := a.Envelope().Max().XY()
	r, _ := b.Envelope().Min().XY()
	s, _ := b.Envelope().Max().XY()
	return p.X < s.X && r.X < q.X && p.Y < s.Y && r.Y < q.Y
}

// What is kept of such a set-out gives it again, to the piece.
func TestBandsThroughPatternsAreHeld(t *testing.T) {
	for name, of := range patternBands() {
		t.Run(name, func(t *testing.T) {
			job := withBands(t, of)
			p, err := layout.Now(job)
			require.NoError(t, err)
			again, err := layout.Now(keep.Hold(job, keep.Of("", job, p.Setout, p.Walls)))
			require.NoError(t, err)
			require.True(t, keep.Same(p.Walls, again.Walls))
		})
	}
}
