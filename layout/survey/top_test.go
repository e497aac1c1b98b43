package survey_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// topped is a wall 36 in wide between two others, finished 18 in under the level line,
// with a top. Tile 5/16 in on a bed of 3/16: together 1/2 in; joints 1/8.
func topped(spoil func(*survey.Job, *survey.Wall)) survey.Job {
	job := sketch("in", "bench")
	job.Joint.Plain, job.Tile.Thickness, job.Bed = "1/8", "5/16", "3/16"
	job.Trims = []survey.TrimTile{{Name: "nose", Kind: "bullnose", Width: "2", Length: "6"}, {Name: "bar", Kind: "profile", Width: "1/8"},
		{Name: "foot", Kind: "cove", Width: "4", Length: "6"}}
	w := &job.Walls[0]
	w.Width, w.Left, w.Right = "36", survey.End{Meets: "wall"}, survey.End{Meets: "wall"}
	w.Base[0].Readings = drops("0", "36")
	w.Head = survey.Head{Stops: mark("-18")}
	w.Top = &survey.Top{Kind: "seat", Depth: "16"}
	if spoil != nil {
		spoil(&job, w)
	}
	return job
}

// Where the wall's tile ends under a finished edge at -18 in, and how far behind the
// edge the top's begins, by plain arithmetic.
func TestWhereTileEndsUnderATop(t *testing.T) {
	for _, c := range []struct {
		name   string
		spoil  func(*survey.Top)
		head   length.Length
		behind length.Length
		edge   survey.Kind
	}{
		{"lap of the top: a joint under the back of its tile, 5/16 + 1/8", nil, -18*in - 7*in/16, 0, survey.OutsideCorner},
		{"lap of the front: flush with the top, which begins a joint behind its tile", func(t *survey.Top) { t.Laps = "front" }, -18 * in, 7 * in / 16, survey.OutsideCorner},
		{"mitre: both to the edge", func(t *survey.Top) { t.Corner = "mitre" }, -18 * in, 0, survey.OutsideCorner},
		{"profile: both a joint before a bar of 1/8", func(t *survey.Top) { t.Corner, t.Trim = "profile", "bar" }, -18*in - in/4, in / 4, survey.Trim},
		{"bullnose tile on the top", func(t *survey.Top) { t.Corner = "bullnose" }, -18*in - 7*in/16, 0, survey.OutsideCorner},
		{"bullnose in pieces of 2 in on the top", func(t *survey.Top) { t.Corner, t.Trim = "bullnose", "nose" }, -18*in - 7*in/16, 17 * in / 8, survey.OutsideCorner},
		{"bullnose in pieces on the front", func(t *survey.Top) { t.Corner, t.Trim, t.Laps = "bullnose", "nose", "front" }, -18*in - 17*in/8, 7 * in / 16, survey.Bullnose},
		{"a slab of 3/4: 3/4 + 1/8", func(t *survey.Top) { t.Face.Slab = "3/4" }, -18*in - 7*in/8, 0, survey.OutsideCorner},
		{"boards at -18: 1/2 in of bed and tile over them, less 7/16", func(t *survey.Top) { t.Sizes = "lined" }, -18*in + in/16, 0, survey.OutsideCorner},
	} {
		t.Run(c.name, func(t *testing.T) {
			room, faults := topped(func(_ *survey.Job, w *survey.Wall) {
				if c.spoil != nil {
					c.spoil(w.Top)
				}
			}).Resolve()
			require.Empty(t, faults)
			h := room.Walls[0].Head
			assert.Equal(t, survey.Span{From: c.head, To: c.head}, h.Stops)
			assert.Equal(t, c.behind, h.Top.Behind(room))
			assert.Equal(t, c.edge, room.Walls[0].Sides()[survey.SideHead].Kind)
			assert.Equal(t, -18*in, h.Stops.From+h.Inset(room), "the stop as it was typed")
		})
	}
}

// Depths from board to board: with an open far edge there is 1/2 in of bed and tile on
// both sides, before a wall as much in front as is lost behind.
func TestDepthsFromBoardToBoard(t *testing.T) {
	for kind, want := range map[string]length.Length{"seat": 16 * in, "ledge": 16 * in, "curb": 17 * in, "cap": 17 * in} {
		room, faults := topped(func(_ *survey.Job, w *survey.Wall) { w.Top.Kind, w.Top.Sizes = kind, "lined" }).Resolve()
		require.Empty(t, faults)
		assert.Equal(t, want, room.Walls[0].Head.Top.Left, kind)
	}
}

// Published: 5 in at 1/4 in to the foot falls 0.104 in, 4 1/2 in 3/32 (trade papers); 16 in
// a third of an inch; 400 mm at 21 mm to the metre 8.4 mm, by plain arithmetic.
func TestTheFallOfATop(t *testing.T) {
	top := survey.TopFound{Fall: survey.UsualFall(length.Imperial)}
	assert.InDelta(t, 0.104, top.Rise(5*in, length.Imperial).Millimetres()/25.4, 0.0005)
	assert.Equal(t, 3*in/32, top.Rise(9*in/2, length.Imperial))
	assert.Equal(t, in/3, top.Rise(16*in, length.Imperial))
	top.Fall = survey.UsualFall(length.Metric)
	assert.Equal(t, 84*mm/10, top.Rise(400*mm, length.Metric))
}

// A wall that meets the run of others has no neighbour in the list, and keeps clear of the
// tile on them: 1/2 in and the gap of 1/8.
func TestAWallBetweenTwoOthers(t *testing.T) {
	job := topped(func(j *survey.Job, w *survey.Wall) {
		j.Walls = append(j.Walls, *w, *w, *w)
		for i, name := range []string{"a", "b", "c", "d"} {
			j.Walls[i].Name = name
		}
	})
	room, faults := job.Resolve()
	require.Empty(t, faults)
	for _, w := range room.Walls {
		assert.Equal(t, [2]int{-1, -1}, [2]int{w.Left.Beyond, w.Right.Beyond}, w.Name)
		box := w.Shape(length.Imperial, survey.Placed{Head: -18 * in}).Region.Bounds()
		assert.Equal(t, [2]length.Length{5 * in / 8, 36*in - 5*in/8}, [2]length.Length{box.Left, box.Right}, w.Name)
	}
}

// With a range of joints the head moves as each joint asks for it.
func TestATopFollowsTheJoint(t *testing.T) {
	room, faults := topped(nil).Resolve()
	require.Empty(t, faults)
	wide := room.Jointed(in / 4)
	assert.Equal(t, -18*in-9*in/16, wide.Walls[0].Head.Stops.From)
	assert.Equal(t, room.Walls[0].Head.Stops, wide.Jointed(in / 8).Walls[0].Head.Stops)
}

func TestTopsThatAreRefused(t *testing.T) {
	for _, c := range []struct {
		spoil func(*survey.Job, *survey.Wall)
		fault string
	}{
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Kind = "shelf" }, "walls[0].top.kind: found “shelf”; write one of seat, ledge, curb, cap"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Depth = "" }, "walls[0].top.depth: found nothing"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Depth = "60" }, "walls[0].top.depth: found “60”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Right = "x" }, "walls[0].top.right: found “x”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Fall = "4" }, "walls[0].top.fall: found “4”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Gap = "1" }, "walls[0].top.gap: found “1”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Sizes = "rough" }, "walls[0].top.sizes: found “rough”; write one of finished, lined"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Corner = "weld" }, "walls[0].top.corner: found “weld”; write one of lap, mitre, profile, bullnose"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Laps = "left" }, "walls[0].top.laps: found “left”; write one of top, front"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Corner, w.Top.Laps = "mitre", "top" }, "walls[0].top.laps: found “top”; write nothing here: at a mitre neither laps"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Corner = "profile" }, "walls[0].top.trim: found nothing"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Corner, w.Top.Trim = "bullnose", "bar" }, "walls[0].top.trim: found “bar”, which is a profile"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Trim = "nose" }, "walls[0].top.trim: found “nose”; write nothing here"},
		{func(_ *survey.Job, w *survey.Wall) {
			w.Top.Corner, w.Top.Trim, w.Top.Face.Slab = "profile", "bar", "3/4"
		}, "walls[0].top.corner: found “profile” round a slab; write a lap or a mitre"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Face.Cased = true }, "walls[0].top.face.cased: found true"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Face.Depth = "4" }, "walls[0].top.face.depth: found “4”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Face.Lining = "1/2" }, "walls[0].top.face.lining: found “1/2”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Top.Face.Joint = "1/8" }, "walls[0].top.face.joint: found “1/8”"},
		{func(_ *survey.Job, w *survey.Wall) { w.Head.Finish = "trim" }, "walls[0].head.finish: found “trim”; write nothing here: the edge under a top is made as the top says"},
		{func(_ *survey.Job, w *survey.Wall) { w.Head.Trim = "nose" }, "walls[0].head.trim: found “nose”; write nothing here"},
		{func(_ *survey.Job, w *survey.Wall) {
			w.Head = survey.Head{Meets: "ceiling", Readings: []survey.Rise{{At: "0", Rise: "40"}}}
		}, "walls[0].top: found a top; write nothing here: a top lies on a wall whose head stops"},
		// A curb with 2 in of bullnose and a joint at both edges.
		{func(_ *survey.Job, w *survey.Wall) {
			w.Top.Kind, w.Top.Corner, w.Top.Trim, w.Top.Depth = "curb", "bullnose", "nose", "4 1/4"
		}, "walls[0].top.depth: found “4 1/4”; write more than 4 1/4, which its edges take"},
		{func(_ *survey.Job, w *survey.Wall) { w.Width = "1 1/2"; w.Base[0].Readings = drops("0", "1 1/2") }, "walls[0].top: found a top on a wall with"},
	} {
		_, faults := topped(c.spoil).Resolve()
		if assert.NotEmpty(t, faults, c.fault) {
			assert.Contains(t, faults[0].String(), c.fault)
		}
	}
}
