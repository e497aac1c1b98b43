package layout_test

import (
	"context"
	"encoding/json"
	"testing"

	"coursewright/layout"
	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	faces "coursewright/layout/plan"
	"coursewright/layout/setout"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// patternsThatStand are rooms with bands and backs of niches in patterns, as patternsEverywhere has them, whose bands
// stand at a height and, two of three, all whose marks are measured, so that most of them can be proven.
var patternsThatStand = rapid.Custom(func(t *rapid.T) []byte {
	var job object
	if err := json.Unmarshal(patternsEverywhere.Draw(t, "room"), &job); err != nil {
		t.Fatal(err)
	}
	if bands, there := job["bands"]; there {
		allMeasured(bands)
	}
	if !rare(t, 3) {
		allMeasured(job["walls"])
	}
	return jobFile(job)
}).Filter(accepted)

// phaseMark is a mark of the tape within the box of phases about a middle, one of two times a quarter of it from where the box
// begins.
func phaseMark(t *rapid.T, what string, middle2, size, tape length.Length) length.Length {
	marks := int(max(1, size/tape))
	k := rapid.IntRange(0, marks-1).Draw(t, what)
	if rapid.Bool().Draw(t, what+" at a quarter") {
		k = marks * rapid.IntRange(0, 3).Draw(t, what+" quarter") / 4
	}
	return (middle2 - size).Half().CeilTo(tape) + length.Length(k)*tape
}

// bandPhases pins the line, starts, or both of bands that are laid in patterns.
func bandPhases(t *rapid.T, free *layout.Plan) (out []survey.HeldBand) {
	for i, b := range free.Room.Bands {
		h := survey.HeldBand{Name: b.Name}
		if room := free.Room.Laid(i + 1); !room.Bond.Coursed() {
			pattern, bottom := bond.For(room, room.Bond.Hand), b.Bottom.From
			if rapid.Bool().Draw(t, "line of "+b.Name) {
				h.Line = lengthText(phaseMark(t, "line of "+b.Name, 2*bottom+b.Height, pattern.Rise, room.Tape))
			}
			for _, w := range b.Walls {
				if wall := &free.Walls[w]; rapid.Bool().Draw(t, "start of "+b.Name) {
					if h.Walls == nil {
						h.Walls = map[string]survey.WallPin{}
					}
					box := largest(wall)
					h.Walls[wall.Found.Name] = survey.WallPin{Edge: lengthText(phaseMark(t, "start of "+b.Name, box.Left+box.Right, pattern.Reach, room.Tape))}
				}
			}
		}
		out = append(out, h)
	}
	return out
}

// No line and starts that are pinned, of the field or of bands in patterns, quarters of a pattern's reach and marks by
// chance, are better than a room that says it is proven. The back of a niche in a tile of its own is set out as a small wall
// all of whose boundaries meet something: none pinned on that wall are better than the back's.
func TestNoPinnedPhaseBeatsBandsAndBacks(t *testing.T) {
	bands, backs := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 15) {
			return
		}
		data := patternsThatStand.Draw(t, "room")
		job, err := survey.Read(data)
		require.NoError(t, err)
		free, err := layout.Quick(context.Background(), job)
		require.NoError(t, err)
		for w := range free.Walls {
			for k := range free.Walls[w].Insides {
				in := &free.Walls[w].Insides[k]
				for i := range in.Faces {
					if f := &in.Faces[i]; f.Is == survey.BackFace && f.Own && !f.Bond.Coursed() {
						backs += backStands(t, &free, free.Walls[w].Found.Openings[in.Opening], f, data)
					}
				}
			}
		}
		if !free.Setout.Proven || !unrounded(free) {
			return
		}
		bands++
		for range 4 {
			pinned := job
			if !free.Room.Bond.Coursed() && rapid.Bool().Draw(t, "the field") {
				pinned.Pins = phasePins(t, &free)
			}
			pinned.Held = &survey.Held{Bands: bandPhases(t, &free)}
			notBetter(t, free, pinned, data)
		}
	})
	t.Logf("proven: %d rooms, %d backs", bands, backs)
}

// notBetter holds what is pinned to a set-out that is proven, where the pins are not refused.
func notBetter(t *rapid.T, free layout.Plan, pinned survey.Job, data []byte) {
	if _, faults := pinned.Resolve(); len(faults) > 0 {
		return
	}
	p, err := layout.Quick(context.Background(), pinned)
	require.NoError(t, err)
	order, term := free.Setout.Order.Until(&p.Setout.Merit, &free.Setout.Merit, free.Setout.Order.Shared())
	pins, err := json.Marshal([]any{pinned.Pins, pinned.Held})
	require.NoError(t, err)
	require.GreaterOrEqual(t, order, 0, "better in %s with %s\n%+v\n%+v\n%s", term, pins, p.Setout.Merit, free.Setout.Merit, data)
}

// backStands holds the back of an opening to lines and starts that are pinned, and tells whether it is proven.
func backStands(t *rapid.T, p *layout.Plan, opening survey.OpeningFound, f *faces.Face, data []byte) int {
	room := backRoom(p, opening, f)
	_, free, _, err := setout.Quick(context.Background(), room)
	require.NoError(t, err)
	own := pinnedBack(t, room, f.Line, f.Start.Edge)
	order, term := free.Order.Until(&own, &free.Merit, free.Order.Shared())
	require.Zero(t, order, "the back differs from its wall in %s\n%+v\n%+v\n%s", term, own, free.Merit, data)
	if !free.Proven {
		return 0
	}
	pattern, box := bond.For(room, room.Bond.Hand), f.Outline.Bounds()
	for range 6 {
		line := phaseMark(t, "line", box.Bottom+box.Top, pattern.Rise, room.Tape)
		edge := phaseMark(t, "start", box.Left+box.Right, pattern.Reach, room.Tape)
		m := pinnedBack(t, room, line, edge)
		order, term := free.Order.Until(&m, &free.Merit, free.Order.Shared())
		require.GreaterOrEqual(t, order, 0, "at %v and %v it is better in %s\n%+v\n%+v\n%s", line, edge, term, m, free.Merit, data)
	}
	return 1
}

// backRoom is a room of one wall as large as the back of an opening, in its tile.
func backRoom(p *layout.Plan, o survey.OpeningFound, f *faces.Face) survey.Room {
	room, box, gap := p.Room, f.Outline.Bounds(), p.Setout.Joint
	if o.Inside.Gap != nil {
		gap = *o.Inside.Gap
	}
	room.Tile, room.Joint, room.Joints, room.Bond = f.Tile, f.Joint, []length.Length{f.Joint}, f.Bond
	room.Line, room.Passed, room.Bands, room.Course = nil, nil, nil, nil
	end := survey.EndFound{Meets: true, Gap: gap, Beyond: -1}
	level := func(y length.Length) []survey.Reading {
		return []survey.Reading{{Value: y}, {At: box.Width(), Value: y}}
	}
	room.Walls = []survey.WallFound{{Name: "back", Letter: "B", Width: box.Width(), Left: end, Right: end,
		Base: []survey.SegmentFound{{Meets: survey.Corner, Gap: gap, Readings: level(box.Bottom)}},
		Head: survey.HeadFound{Meets: true, Gap: gap, Readings: level(box.Top)}}}
	return room
}

// pinnedBack is the merit of such a room with its line and start pinned.
func pinnedBack(t *rapid.T, room survey.Room, line, edge length.Length) merit.Merit {
	room.Line = &line
	room.Walls = []survey.WallFound{room.Walls[0]}
	room.Walls[0].Pin = &survey.StartPin{X: edge, Is: survey.OnEdge}
	_, s, _, err := setout.Quick(context.Background(), room)
	require.NoError(t, err)
	return s.Merit
}
