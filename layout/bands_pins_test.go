package layout_test

import (
	"encoding/json"
	"math"
	"testing"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// bandedRooms are random rooms of level courses or, one in six, of a pattern, with one or two
// bands: liners, accent courses and patterns, round all walls or some, measured or free,
// crossed by what openings there are.
var bandedRooms = rapid.Custom(func(t *rapid.T) []byte {
	by := byRapid{t}
	r := roomDraw{by: by, metric: by.yes("metric")}
	job := r.job()
	delete(job["bond"].(object), "along")
	if r.one(6, "pattern") {
		layPattern(by, job)
	}
	var names []string
	for _, w := range job["walls"].([]any) {
		names = append(names, w.(object)["name"].(string))
		if r.one(2, "no openings") {
			delete(w.(object), "openings")
		}
	}
	if r.one(2, "all measured") {
		allMeasured(job["walls"])
	}
	bands := []any{r.band("accent", -60, names)}
	if r.one(4, "a second band") {
		bands = append(bands, r.band("liner", 120, names))
	}
	job["bands"] = bands
	return jobFile(job)
}).Filter(accepted)

// allMeasured makes every mark that is a range a measured one.
func allMeasured(doc any) {
	switch d := doc.(type) {
	case []any:
		for _, v := range d {
			allMeasured(v)
		}
	case object:
		if from, free := d["from"]; free {
			delete(d, "from")
			delete(d, "to")
			d["at"] = from
		}
		for _, v := range d {
			allMeasured(v)
		}
	}
}

func (r roomDraw) band(name string, low int, names []string) object {
	b := object{"name": name, "bottom": r.mark(name, r.draw(name+" at", low, low+80), r.draw(name+" range", 0, 90)),
		"tile": object{"width": r.of(r.draw(name+" wide", 25, 160)), "height": r.of(r.draw(name+" high", 12, 60))}}
	if r.one(3, "half bond of "+name) {
		b["bond"] = object{"kind": "running", "offset": "1/2"}
	}
	if r.one(3, "own joint of "+name) {
		b["joint"] = r.of(r.draw("joint of "+name, 1, 3))
	}
	if r.one(4, name+" to the head") {
		b["toHead"] = true
	} else {
		b["courses"] = r.by.number("courses of "+name, 1, 3)
	}
	if r.one(6, name+" in a pattern") {
		kind := r.word("pattern of "+name, "herringbone", "hexagon", "chevron")
		b["bond"], b["tile"] = object{"kind": kind}, object{"width": "48 mm", "height": "16 mm"}
		if kind == "hexagon" {
			b["tile"] = object{"width": "40 mm", "height": "40 mm"}
		}
		if delete(b, "courses"); b["toHead"] == nil {
			b["height"] = r.of(r.draw(name+" high in all", 60, 140))
		}
	}
	if len(names) > 1 && r.one(3, name+" on one wall") {
		b["walls"] = []string{r.word("wall of "+name, names...)}
	}
	return b
}

func bandedPlanOf(t require.TestingT, job []byte) (survey.Job, layout.Plan) {
	read, err := survey.Read(job)
	require.NoError(t, err, "%s", job)
	p, err := layout.Now(read)
	require.NoError(t, err, "%s", job)
	return read, p
}

// Merit of a room with bands is that of its pieces, the field's and the bands' alike,
// where the plan says that it is proven.
func TestMeritOfBandsIsThatOfTheirPieces(t *testing.T) {
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 3) {
			return
		}
		job := bandedRooms.Draw(t, "room")
		_, p := bandedPlanOf(t, job)
		if !p.Setout.Proven {
			return
		}
		proven++
		var unworkable, slivers, fifths, thirds int
		bare := false
		for _, w := range p.Walls {
			for k := range w.Pieces {
				switch w.Pieces[k].Grade(false) {
				case piece.Hopeless:
					unworkable++
				case piece.Small:
					slivers++
				}
			}
			for _, g := range w.Gaps {
				bare = bare || !g.Low
			}
			for _, r := range w.Runs {
				laid := p.Room.Laid(r.Laid)
				full := laid.Tile.Height
				switch {
				case !laid.Bond.Coursed(): // the least width of a tile of a pattern
					full = length.Length(r.Share.Den)
				case r.Across:
					full = laid.Tile.Width
				}
				at := r.Least.FloorTo(p.Room.Tape)
				if !r.Low && 5*at < full {
					fifths++
				}
				if !r.Low && 3*at < full {
					thirds++
				}
			}
		}
		m := p.Setout.Merit
		require.Equal(t, []int{unworkable, slivers, fifths, thirds}, []int{m.Unworkable, m.Slivers, m.Fifths, m.Thirds}, "%s", job)
		require.Equal(t, bare, m.Bare > 0, "%s", job)
	})
	require.NotZero(t, proven)
}

// bandPins draws pins of the course line, of starts, and of where bands stand and start,
// each or none, at marks of the tape and at classic places.
func bandPins(t *rapid.T, job survey.Job, p layout.Plan) survey.Job {
	some := func(name string) bool { return rapid.Bool().Draw(t, name) }
	tape := float64(p.Room.Tape)
	mark := func(name string, from, wide float64) string {
		steps := int(wide / tape)
		return exactly((math.Ceil(from/tape) + float64(rapid.IntRange(0, max(0, steps)).Draw(t, name))) * tape)
	}
	// start is a tile edge on a wall, of tile of a width and joint.
	start := func(name string, w survey.WallFound, at survey.Placed, wide, joint float64) string {
		left, right := fieldOf(w, at)
		middle := (left + right) / 2
		classic := []float64{left, right - wide, math.Floor(middle - wide/2), math.Floor(middle + joint/2)}
		if some(name + " classic") {
			return exactly(math.Round(rapid.SampledFrom(classic).Draw(t, name)))
		}
		return mark(name, left, wide+joint)
	}
	joint := float64(p.Setout.Joint)
	job.Pins = survey.Pins{Walls: map[string]survey.WallPin{}}
	job.Held = &survey.Held{}
	if pitch := float64(p.Room.Tile.Height) + joint; onTape(p) && some("line") {
		job.Pins.Course.Line = mark("line at", float64(p.Setout.Line)-pitch/2, pitch)
	}
	for i, w := range p.Room.Walls {
		if some("start of " + w.Name) {
			job.Pins.Walls[w.Name] = survey.WallPin{Edge: start("start", w, p.Setout.Walls[i].Placed, float64(p.Room.Tile.Width), joint)}
		}
	}
	for i, b := range p.Room.Bands {
		h := survey.HeldBand{Name: b.Name, Walls: map[string]survey.WallPin{}}
		if b.Bottom.Free() && some("height of "+b.Name) {
			h.Bottom = mark("height", float64(b.Bottom.From), float64(b.Bottom.To-b.Bottom.From))
		}
		for _, w := range b.Walls {
			if some("start of " + b.Name) {
				laid := p.Room.Laid(i + 1)
				h.Walls[p.Room.Walls[w].Name] = survey.WallPin{Edge: start("start of the band", p.Room.Walls[w], p.Setout.Walls[w].Placed, float64(laid.Tile.Width), float64(laid.Joint))}
			}
		}
		job.Held.Bands = append(job.Held.Bands, h)
	}
	return job
}

// fieldOf is where a wall's tile begins and ends, gaps aside where it meets something.
func fieldOf(w survey.WallFound, at survey.Placed) (left, right float64) {
	left, right = float64(at.Left), float64(at.Right)
	if w.Left.Meets {
		left = float64(w.Left.Gap)
	}
	if w.Right.Meets {
		right = float64(w.Width - w.Right.Gap)
	}
	return left, right
}

// No pins of course line, starts, or of where bands stand and start are better than what is
// said to be proven, by all pieces of field and bands.
func TestNoPinsBeatAProvenRoomWithBands(t *testing.T) {
	proven := 0
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 3) {
			return
		}
		data := bandedRooms.Draw(t, "room")
		job, free := bandedPlanOf(t, data)
		if !free.Setout.Proven || !unrounded(free) {
			return
		}
		proven++
		for range 4 {
			pinned := bandPins(t, job, free)
			if _, faults := pinned.Resolve(); len(faults) > 0 {
				continue
			}
			p, err := layout.Now(pinned)
			require.NoError(t, err)
			order, term := free.Setout.Order.Until(&p.Setout.Merit, &free.Setout.Merit, merit.Slack)
			pins, err := json.Marshal([]any{pinned.Pins, pinned.Held})
			require.NoError(t, err)
			require.GreaterOrEqual(t, order, 0, "%s is better with %s\n%s", term, pins, data)
		}
	})
	require.NotZero(t, proven)
}
