package survey_test

import (
	"fmt"
	"math"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// turned is a half wall: its face, 36 in wide, and its end panel, 5 in wide, meet in
// an outside corner. Tile 5/16 in on a bed of 3/16: together 1/2 in; joints 1/8.
func turned(spoil func(corner *survey.End)) survey.Job {
	job := sketch("in", "face", "panel")
	job.Joint.Plain, job.Tile.Thickness, job.Bed = "1/8", "5/16", "3/16"
	job.Trims = []survey.TrimTile{{Name: "nose", Kind: "bullnose", Width: "2", Length: "6"}, {Name: "bar", Kind: "profile", Width: "1/8"}}
	job.Walls[0].Width, job.Walls[1].Width = "36", "5"
	job.Walls[0].Right = survey.End{Meets: "outside corner"}
	job.Walls[1].Left = survey.End{Meets: "outside corner"}
	job.Walls[1].Right = survey.End{Stops: mark("5")}
	for i := range job.Walls {
		job.Walls[i].Base[0].Readings = drops("0", job.Walls[i].Width)
		job.Walls[i].Head = survey.Head{Stops: mark("2")}
	}
	if spoil != nil {
		spoil(&job.Walls[0].Right)
	}
	return job
}

// Where tile ends at a corner of a wall of 36 in and one of 5 in, by plain arithmetic:
// bed and tile are 3/16 + 5/16 = 1/2 in.
func TestWhereTileEndsAtAnOutsideCorner(t *testing.T) {
	for _, c := range []struct {
		name       string
		spoil      func(*survey.End)
		face       length.Length // the right end of the face
		panel      length.Length // the left end of the panel
		faceLaps   bool
		kind, edge survey.Kind
	}{
		{"lap, the wider wall laps: its tile 1/2 in out; the other's to a joint from its back, 3/16 - 1/8", nil,
			36*in + in/2, -in / 16, true, survey.Lap, survey.OutsideCorner},
		{"lap the other way", func(e *survey.End) { e.Laps = "right" },
			36*in + in/16, -in / 2, false, survey.Lap, survey.OutsideCorner},
		{"a gap as wide as the bed: cut at the corner of the boards", func(e *survey.End) { e.Gap = "3/16" },
			36*in + in/2, 0, true, survey.Lap, survey.OutsideCorner},
		{"mitre: both to where the faces meet", func(e *survey.End) { e.Corner = "mitre" },
			36*in + in/2, -in / 2, false, survey.Mitre, survey.OutsideCorner},
		{"mitre with a joint", func(e *survey.End) { e.Corner, e.Gap = "mitre", "1/16" },
			36*in + 7*in/16, -7 * in / 16, false, survey.Mitre, survey.OutsideCorner},
		{"profile: both a joint before a bar of 1/8 in", func(e *survey.End) { e.Corner, e.Trim = "profile", "bar" },
			36*in + in/4, -in / 4, true, survey.Profile, survey.Trim},
		{"bullnose tile", func(e *survey.End) { e.Corner = "bullnose" },
			36*in + in/2, -in / 16, true, survey.Bullnose, survey.Bullnose},
		{"bullnose in pieces 2 in wide: 36 1/2 - 2 - 1/8", func(e *survey.End) { e.Corner, e.Trim = "bullnose", "nose" },
			34*in + 3*in/8, -in / 16, true, survey.Bullnose, survey.Bullnose},
	} {
		room, faults := turned(c.spoil).Resolve()
		require.Empty(t, faults, c.name)
		face, panel := room.Walls[0], room.Walls[1]
		assert.Equal(t, survey.Span{From: c.face, To: c.face}, face.Right.Stops, c.name)
		assert.Equal(t, survey.Span{From: c.panel, To: c.panel}, panel.Left.Stops, c.name)
		assert.Equal(t, c.kind, face.Right.Outside.How, c.name)
		assert.Equal(t, c.faceLaps, face.Right.Outside.Laps, c.name)
		assert.Equal(t, c.edge, face.Sides()[survey.SideRight].Kind, c.name)
		assert.Equal(t, 1, face.Right.Outside.Next)
		assert.Equal(t, 0, panel.Left.Outside.Next)
		assert.Equal(t, in/2, panel.Left.Outside.Past, c.name)
		assert.Equal(t, -1, face.Right.Beyond, "no inside corner")
	}
}

// The bullnose stands on the wall that is seen more, over the other wall's cut tile, which stops a joint
// short: cut = space - 2 joints, 4 in with joints of 1/8 in leaves 3 3/4 (how-to page on
// bullnose corners). The space is between the backs of the two laps: with no bed that is the panel.
func TestACutBetweenTwoLaps(t *testing.T) {
	job := turned(nil)
	job.Bed = "0"
	job.Walls[1].Width = "4"
	job.Walls[1].Base[0].Readings = drops("0", "4")
	job.Walls[1].Right = survey.End{Meets: "outside corner", Laps: "right"}
	last := turned(nil).Walls[0]
	last.Name, last.Left, last.Right = "back of it", survey.End{Meets: "outside corner"}, survey.End{Stops: mark("36")}
	job.Walls = append(job.Walls, last)
	room, faults := job.Resolve()
	require.Empty(t, faults)
	panel := room.Walls[1]
	assert.Equal(t, 3*in+3*in/4, panel.Right.Stops.From-panel.Left.Stops.From)
}

// How far two faces meet past the corner of the boards is the depth times the tangent of half the turn; at
// 45° the depth itself. The reference is the mathematical library's tangent.
func TestMitresOfAnyAngle(t *testing.T) {
	for angle := 60; angle <= 150; angle++ {
		room, faults := turned(func(e *survey.End) { e.Corner, e.Angle = "mitre", fmt.Sprint(angle) }).Resolve()
		require.Empty(t, faults)
		want := float64(in/2) * math.Tan(float64(180-angle)/2*math.Pi/180)
		assert.InDelta(t, want, float64(room.Walls[0].Right.Stops.From-36*in), 0.51, "%d°", angle)
		assert.Equal(t, 180-angle, room.Walls[0].Right.Outside.Bevel())
	}
}

// With a wider joint of a range the tile ends sooner where a joint stands at the corner.
func TestOutsideCornersWithAnotherJoint(t *testing.T) {
	job := turned(func(e *survey.End) { e.Corner, e.Trim = "profile", "bar" })
	job.Joint = survey.Measure{Mark: free("1/8", "1/4")}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	wide := room.Jointed(in / 4)
	assert.Equal(t, 36*in+in/8, wide.Walls[0].Right.Stops.From)
	assert.Equal(t, -in/8, wide.Walls[1].Left.Stops.From)
	assert.Equal(t, 36*in+in/4, room.Walls[0].Right.Stops.From, "the room itself stays")
	assert.Equal(t, room, wide.Jointed(in/8))

	job.Trims, job.Walls[0].Right = nil, survey.End{Meets: "outside corner"}
	room, faults = job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, in/16, room.Jointed(in / 4).Walls[1].Left.Stops.From, "3/16 - 1/4: it stops short")
}

// The last wall of a closed room of four turns into the first.
func TestAClosedPillar(t *testing.T) {
	job := sketch("in", "a", "b", "c", "d")
	for i := range job.Walls {
		job.Walls[i].Left, job.Walls[i].Right = survey.End{Meets: "outside corner"}, survey.End{Meets: "outside corner"}
	}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	for i, w := range room.Walls {
		assert.Equal(t, (i+1)%4, w.Right.Outside.Next)
		assert.Equal(t, (i+3)%4, w.Left.Outside.Next)
	}
	job.Walls = job.Walls[:3]
	_, faults = job.Resolve()
	require.Len(t, faults, 2)
	assert.Contains(t, faults[0].String(), "walls[0].left.meets: found “outside corner” without a wall before it")
	assert.Contains(t, faults[1].String(), "walls[2].right.meets: found “outside corner” without a wall after it")
}

func TestOutsideCornersAreRefused(t *testing.T) {
	for _, c := range []struct {
		spoil func(*survey.Job, *survey.End)
		fault string
	}{
		{func(j *survey.Job, e *survey.End) { e.Corner = "weave" }, "walls[0].right.corner: found “weave”; write one of lap, mitre, profile, bullnose"},
		{func(j *survey.Job, e *survey.End) { e.Laps = "both" }, "walls[0].right.laps: found “both”; write one of left, right"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Laps = "mitre", "left" }, "walls[0].right.laps: found “left”; write nothing here: at a mitre neither wall laps"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Laps, e.Trim = "profile", "left", "bar" }, "walls[0].right.laps: found “left”; write nothing here: at a profile neither"},
		{func(j *survey.Job, e *survey.End) { e.Angle = "120" }, "walls[0].right.angle: found “120”; write nothing here: an angle belongs to a mitre"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Angle = "mitre", "59" }, "walls[0].right.angle: found “59”; write whole degrees from 60 to 150"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Angle = "mitre", "90.5" }, "walls[0].right.angle: found “90.5”; write whole degrees"},
		{func(j *survey.Job, e *survey.End) { e.Corner = "profile" }, "walls[0].right.trim: found nothing; write the name of one of the trims, of the kind profile or quarter round"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Trim = "profile", "nose" }, "walls[0].right.trim: found “nose”, which is a bullnose; write trim of the kind profile or quarter round"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Trim = "bullnose", "bar" }, "walls[0].right.trim: found “bar”, which is a profile; write trim of the kind bullnose"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Trim = "bullnose", "brass" }, "walls[0].right.trim: found “brass”; write the name of one of the trims: nose, bar"},
		{func(j *survey.Job, e *survey.End) { j.Trims[1].Place, e.Corner, e.Trim = "beyond", "profile", "bar" }, "walls[0].right.trim: found “bar”, which stands beyond a stop"},
		{func(j *survey.Job, e *survey.End) { e.Trim = "nose" }, "walls[0].right.trim: found “nose”; write nothing here: trim belongs to a profile or a bullnose"},
		{func(j *survey.Job, e *survey.End) { e.Corner, e.Trim, e.Gap = "profile", "bar", "1/8" }, "walls[0].right.gap: found “1/8”; write nothing here: a profile has its own edge"},
		{func(j *survey.Job, e *survey.End) { e.Gap = "1" }, "walls[0].right.gap: found “1”; write a length from 0\" to 1/4\""},
		{func(j *survey.Job, e *survey.End) { e.Finish = "bullnose" }, "walls[0].right.finish: found “bullnose”; write nothing here: how an outside corner is made says its finish"},
		{func(j *survey.Job, e *survey.End) { e.Lean = []survey.Lean{{Height: "0", Off: "0"}} }, "walls[0].right.lean: found readings; write nothing here: at an outside corner tile ends plumb"},
		{func(j *survey.Job, e *survey.End) { e.Stops, j.Walls[1].Left = mark("30"), survey.End{Meets: "corner"} }, "walls[0].right: found meets and stops"},
		{func(j *survey.Job, e *survey.End) { e.Sight = "hidden" }, "walls[0].right.sight: found “hidden”"},
		{func(j *survey.Job, e *survey.End) { j.Walls[1].Left = survey.End{Meets: "corner"} }, "walls[0].right.meets: found “outside corner”, where panel does not begin in one; write the same at the left end of panel"},
		{func(j *survey.Job, e *survey.End) { *e = survey.End{Meets: "corner"} }, "walls[1].left.meets: found “outside corner”, where face does not end in one; write the same at the right end of face"},
		{func(j *survey.Job, e *survey.End) { j.Walls[1].Left.Corner = "mitre" }, "walls[1].left.corner: found “mitre”; write nothing here: what is done at an outside corner stands at the right end of face"},
		{func(j *survey.Job, e *survey.End) { j.Walls[1].Left.Gap = "1/8" }, "walls[1].left.gap: found “1/8”; write nothing here: what is done at an outside corner stands at the right end"},
		{func(j *survey.Job, e *survey.End) {
			*e = survey.End{Meets: "corner", Corner: "lap"}
			j.Walls[1].Left = survey.End{Meets: "corner"}
		}, "walls[0].right.corner: found “lap”; write nothing here: it belongs to an outside corner"},
		{func(j *survey.Job, e *survey.End) {
			j.Pins.Walls = map[string]survey.WallPin{"face": {Marks: map[string]string{"end right": "36"}}}
		}, "pins.walls.face.marks.end right: found “36”, which is 1/2\" past where the survey lets it stand"},
	} {
		job := turned(nil)
		c.spoil(&job, &job.Walls[0].Right)
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, c.fault) {
			assert.Contains(t, faults[0].String(), c.fault)
		}
	}
}
