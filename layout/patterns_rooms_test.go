package layout_test

import (
	"fmt"
	"testing"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// smallPattern is a pattern of small tile, as bands and backs of niches have it: in millimetres, closing
// with a joint of 2 mm.
func smallPattern(by chooser, what string) object {
	type tiles struct {
		kind  string
		w, h  int
		other []int // the other tiles, by twos
	}
	p := oneOf(by, "kind of "+what,
		tiles{"herringbone", 60, 20, nil}, tiles{"hexagon", 50, 50, nil}, tiles{"picket", 30, 75, nil}, tiles{"chevron", 75, 25, nil},
		tiles{"diagonal", 48, 48, nil}, tiles{"double herringbone", 60, 20, nil}, tiles{"basket weave", 62, 30, nil}, tiles{"basket weave", 50, 22, []int{12, 12}},
		tiles{"pinwheel", 48, 48, []int{23, 23}}, tiles{"mixed heights", 70, 25, []int{70, 12}}, tiles{"mixed heights", 70, 25, []int{70, 12, 70, 40}},
		tiles{"modular", 23, 23, []int{48, 23, 48, 48, 73, 48}})
	bond := object{"kind": p.kind}
	var others []any
	for i := 0; i < len(p.other); i += 2 {
		others = append(others, object{"width": fmt.Sprintf("%d mm", p.other[i]), "height": fmt.Sprintf("%d mm", p.other[i+1])})
	}
	if others != nil {
		bond["tiles"] = others
	}
	if survey.BondKind(p.kind).Turns() && by.yes("turned "+what) {
		bond["turn"] = "45"
	}
	return object{"tile": object{"width": fmt.Sprintf("%d mm", p.w), "height": fmt.Sprintf("%d mm", p.h)}, "joint": "2 mm", "bond": bond}
}

// patternsEverywhere are random rooms in courses or, two of three, in patterns, with a band in a pattern,
// measured or free, round all walls or some, and with niches whose backs are laid in patterns.
var patternsEverywhere = rapid.Custom(func(t *rapid.T) []byte {
	by := byRapid{t}
	r := roomDraw{by: by, metric: by.yes("metric")}
	job := r.job()
	delete(job["bond"].(object), "along")
	if !r.one(3, "courses") {
		layPattern(by, job)
	}
	var names []string
	for _, w := range job["walls"].([]any) {
		w := w.(object)
		names = append(names, w["name"].(string))
		openings, _ := w["openings"].([]any)
		for _, o := range openings {
			if o := o.(object); o["kind"] == "niche" && !r.one(3, "bare niche") {
				allMeasured(o)
				o["inside"] = object{"depth": "90 mm", "back": smallPattern(by, "back")}
			}
		}
	}
	if !r.one(3, "no band") {
		b := smallPattern(by, "band")
		b["name"] = "stripe"
		b["bottom"] = r.mark("stripe", r.draw("stripe at", -100, 100), r.draw("stripe range", 0, 40))
		b["height"] = r.of(r.draw("stripe high", 40, 160))
		if len(names) > 1 && r.one(3, "stripe on some walls") {
			b["walls"] = names[:1]
		}
		job["bands"] = []any{b}
	}
	return jobFile(job)
}).Filter(accepted)

// Rooms with patterns in their field, their bands and their niches: on every wall and every face the
// pieces stay within the region and off one another, by a general geometry library (simplefeatures), what is left
// is joints, and what is kept of the set-out gives it again.
func TestPatternsInFieldsBandsAndNichesMakeUpTheRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 20) {
			return
		}
		data := patternsEverywhere.Draw(t, "room")
		job, err := survey.Read(data)
		require.NoError(t, err)
		p, err := layout.Now(job)
		require.NoError(t, err, string(data))
		for i := range p.Walls {
			piecesMakeUp(t, &p.Walls[i])
			for _, f := range p.Walls[i].Folded() {
				piecesMakeUp(t, &f.Wall)
			}
		}
		again, err := layout.Now(keep.Hold(job, keep.Of("", job, p.Setout, p.Walls)))
		require.NoError(t, err)
		require.True(t, keep.Same(p.Walls, again.Walls), "held, it is another\n%s", data)
	})
}

// piecesMakeUp holds the pieces of a wall or a face to its region.
func piecesMakeUp(t require.TestingT, w *layout.Wall) {
	const rounding = 0.5 // mm²
	region := inGeometry(t, w.Shape.Region)
	sum := 0.0
	shapes := make([]geom.Geometry, len(w.Pieces))
	for i, q := range w.Pieces {
		shapes[i] = inGeometry(t, q.Face)
		sum += shapes[i].Area()
		outside, err := geom.Difference(shapes[i], region)
		require.NoError(t, err)
		require.Less(t, outside.Area(), rounding, "%s leaves %s", q.ID, w.Found.Name)
		for k := range i {
			if !mayMeet(shapes[i], shapes[k]) {
				continue
			}
			both, err := geom.Intersection(shapes[i], shapes[k])
			require.NoError(t, err)
			require.Less(t, both.Area(), rounding, "%s and %s", q.ID, w.Pieces[k].ID)
		}
	}
	require.LessOrEqual(t, sum, region.Area()+rounding, w.Found.Name)
}

func inGeometry(t require.TestingT, r plane.Region) geom.Geometry {
	rings := make([][][2]float64, len(r))
	for i, ring := range r {
		for _, c := range ring {
			rings[i] = append(rings[i], [2]float64{c.X.Millimetres(), c.Y.Millimetres()})
		}
	}
	return geometry(t, rings)
}

// A window that can stand inside a band alone: found by the rooms above, where it rose by ten
// millimetres once its set-out was held, because its pin was read in heights without the band.
func TestAnOpeningInsideABandStandsWhereItIsPinned(t *testing.T) {
	mark := func(from, to string) *survey.Mark { return &survey.Mark{From: from, To: to} }
	job := survey.Job{Format: survey.Format, Units: "mm", Tile: survey.Tile{Width: "41", Height: "40"}, Joint: survey.Measure{Plain: "2"}, Bond: survey.Bond{Kind: "stack"},
		Walls: []survey.Wall{{Name: "b", Width: "253", Left: survey.End{Meets: "corner"}, Right: survey.End{Meets: "corner"},
			Base: []survey.Segment{{Meets: "tub", Readings: []survey.Drop{{At: "0", Drop: "400"}}}}, Head: survey.Head{Stops: &survey.Mark{At: "300"}},
			Openings: []survey.Opening{{Kind: "window", Name: "o", Left: &survey.Mark{At: "28"}, Width: &survey.Mark{At: "47"},
				Bottom: mark("28", "88"), Height: &survey.Measure{Mark: &survey.Mark{At: "132"}}}}}},
		Bands: []survey.Band{{Name: "stripe", Bottom: survey.Mark{At: "18"}, Height: "118", Joint: "2 mm", Bond: survey.Bond{Kind: "diagonal"}, Tile: survey.Tile{Width: "48 mm", Height: "48 mm"}}}}
	for pinned, at := range map[string]int{"": 28, "28": 28, "60": 60} {
		job.Pins.Walls = nil
		if pinned != "" {
			job.Pins.Walls = map[string]survey.WallPin{"b": {Marks: map[string]string{"window o bottom": pinned}}}
		}
		p, err := layout.Now(job)
		require.NoError(t, err)
		e := p.Walls[0].Start.Placed.Openings[0]
		require.EqualValues(t, at, e.Bottom/960, "pinned at %q", pinned)
		require.EqualValues(t, 132, (e.Top-e.Bottom)/960)
	}
}
