package keep_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/doubt"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"
	"coursewright/static"
)

func read(t *testing.T, file []byte) survey.Job {
	t.Helper()
	job, err := survey.Read(file)
	require.NoError(t, err)
	return job
}

func solved(t *testing.T, job survey.Job) layout.Plan {
	t.Helper()
	plan, err := layout.Solve(context.Background(), job)
	require.NoError(t, err)
	return plan
}

func judged(p layout.Plan) keep.Judged {
	return keep.Judged{Room: p.Room, Setout: p.Setout, Walls: p.Walls}
}

func kept(job survey.Job, p layout.Plan) survey.Held {
	return keep.Of(layout.Engine, job, p.Setout, p.Walls)
}

// rooms are jobs that ship and together hold all that a solver decides, those that take seconds left out.
func rooms(t *testing.T, test func(t *testing.T, job survey.Job)) {
	for _, name := range []string{"jobs/alcove", "jobs/boxing", "jobs/corner-shower", "jobs/half-wall", "jobs/old-house", "jobs/one-wall", "jobs/toy", "cases/c-4x16-free", "cases/closed-room",
		"cases/c2-4x16-fixed", "cases/d-4x4-wainscot", "cases/mark-off-line-only-middle", "cases/min-free-end",
		"cases/mark-sliver-3-pinned", "cases/two-free-niches-side-by-side"} {
		t.Run(name, func(t *testing.T) {
			file, err := os.ReadFile("../../testdata/" + name + ".json")
			require.NoError(t, err)
			test(t, read(t, file))
		})
	}
}

// Laws 2, 3 and 4.
func TestAJobThatHoldsItsSetOutKeepsItsPlan(t *testing.T) {
	rooms(t, func(t *testing.T, job survey.Job) {
		plan := solved(t, job)
		is := kept(job, plan)

		written, err := keep.Write(is)
		require.NoError(t, err)
		back, err := keep.Read(written)
		require.NoError(t, err)
		require.Equal(t, is, back)
		again, err := keep.Write(back)
		require.NoError(t, err)
		require.Equal(t, string(written), string(again))

		held := keep.Hold(job, back)
		stays := solved(t, held)
		require.True(t, keep.Same(plan.Walls, stays.Walls), "the pieces of the plan")
		require.Equal(t, plan.Setout.Joint, stays.Setout.Joint)
		require.Equal(t, is, kept(job, stays), "what is kept of it again")
		require.Equal(t, job, keep.LetGo(held))
		document, err := survey.Write(held)
		require.NoError(t, err)
		require.Equal(t, held, read(t, document), "a job file holds it")
		require.Equal(t, merit.None, keep.Differ(judged(plan), judged(stays)).Term)
	})
}

// Law 1: nothing that the solver decides is missing, so no other engine can decide otherwise. The
// order of merit is turned round by the preferences, which gives another plan; the held one stays.
func TestAHeldJobStaysWhateverTheOrderOfMeritSays(t *testing.T) {
	turned := 0
	rooms(t, func(t *testing.T, job survey.Job) {
		plan := solved(t, job)
		other := keep.Hold(job, kept(job, plan))
		other.Prefer = []string{"large cuts", "openings", "shared"}
		if free := solved(t, keep.LetGo(other)); !keep.Same(plan.Walls, free.Walls) {
			turned++
		}
		require.True(t, keep.Same(plan.Walls, solved(t, other).Walls))
	})
	require.Greater(t, turned, 1, "other orders give other plans, or this tests nothing")
}

// Law 2 for every pattern, and for columns.
func TestAPatternIsHeld(t *testing.T) {
	for _, b := range survey.Bonds {
		t.Run(string(b), func(t *testing.T) {
			job := read(t, niche)
			job.Bond = survey.Bond{Kind: string(b)}
			switch b {
			case survey.Herringbone, survey.DoubleHerringbone, survey.BasketWeave:
				job.Tile.Width = "302"
			case survey.Picket:
				job.Tile.Height = "300"
			case survey.MixedHeights:
				job.Bond.Tiles = []survey.Tile{{Width: "150", Height: "74"}}
			case survey.Pinwheel:
				job.Bond.Tiles = []survey.Tile{{Width: "74", Height: "74"}}
			case survey.Modular:
				job.Bond.Tiles = []survey.Tile{{Width: "302", Height: "150"}, {Width: "302", Height: "302"}, {Width: "454", Height: "302"}}
			}
			if _, faults := job.Resolve(); len(faults) > 0 {
				t.Fatal("this tile lays no such pattern: ", faults)
			}
			plan := solved(t, job)
			is := kept(job, plan)
			stays := solved(t, keep.Hold(job, is))
			require.True(t, keep.Same(plan.Walls, stays.Walls))
			require.Equal(t, is, kept(job, stays))
		})
	}
	job := read(t, niche)
	job.Bond = survey.Bond{Kind: "running", Offset: "1/3", Along: "plumb"}
	plan := solved(t, job)
	require.True(t, keep.Same(plan.Walls, solved(t, keep.Hold(job, kept(job, plan))).Walls), "columns")
}

// Law 2 for strips: where a free one stands, whatever the bond.
func TestAStripIsHeld(t *testing.T) {
	for _, bond := range []survey.Bond{{Kind: "running", Offset: "1/2"}, {Kind: "stack"}} {
		for _, top := range []*survey.Mark{nil, {From: "2", To: "10"}} {
			job := read(t, static.Demo)
			job.Bond = bond
			job.Walls[0].Strips = []survey.Strip{{Name: "slate", Columns: 3, Middle: survey.Mark{From: "16", To: "22"}, Top: top,
				Tile: survey.Tile{Width: "1 7/8", Height: "1 7/8"}}}
			plan := solved(t, job)
			is := kept(job, plan)
			require.NotEmpty(t, is.Walls["left"].Marks["strip slate left"])
			require.Equal(t, top != nil, is.Walls["left"].Marks["strip slate top"] != "")
			again := solved(t, keep.Hold(job, is))
			require.True(t, keep.Same(plan.Walls, again.Walls), "%v", bond)
		}
	}
}

// Law 2 for bands: where they stand, how they step, and where they start.
func TestABandIsHeld(t *testing.T) {
	job := read(t, static.Demo)
	job.Bands = []survey.Band{{Name: "slate", Courses: 2, Bottom: survey.Mark{From: "16", To: "22"},
		Tile: survey.Tile{Width: "1 7/8", Height: "1 7/8", Thickness: "1/4"}, Bond: survey.Bond{Kind: "running", Offset: "1/3"}}}
	plan := solved(t, job)
	is := kept(job, plan)
	require.Len(t, is.Bands, 1)
	require.NotEmpty(t, is.Bands[0].Bottom)
	require.Contains(t, []string{"left", "right"}, is.Bands[0].Hand)
	held := keep.Hold(job, is)
	stays := solved(t, held)
	require.True(t, keep.Same(plan.Walls, stays.Walls))
	require.Equal(t, is, kept(job, stays))

	name := job.Walls[1].Name
	is.Bands[0].Walls[name] = survey.WallPin{Edge: "10 mm"}
	is.Bands[0].Hand = map[string]string{"left": "right", "right": "left"}[is.Bands[0].Hand]
	other := solved(t, keep.Hold(job, is))
	edge, found := other.Setout.Bands[0].Edge(1)
	require.True(t, found)
	require.Equal(t, 10*length.Millimetre, edge, "held, not found")
	require.NotEqual(t, plan.Setout.Bands[0].Hand, other.Setout.Bands[0].Hand)
	require.Contains(t, keep.Differ(judged(other), judged(plan)).Moves[0].What, "tile edge of slate on")

	is.Bands[0].Bottom = "100 mm"
	_, err := layout.Solve(context.Background(), keep.Hold(job, is))
	refused(t, err, "held.bands[0].bottom", "a length")
	is.Bands[0].Name = "gone"
	_, err = layout.Solve(context.Background(), keep.Hold(job, is))
	refused(t, err, "held.bands[0].name", "the name of a band")
}

func TestWhatIsKeptOfTheDemo(t *testing.T) {
	job := read(t, static.Demo)
	is := kept(job, solved(t, job))
	assert.Equal(t, layout.Engine, is.Engine)
	assert.NotEmpty(t, is.Course.Line)
	assert.Len(t, is.Walls, len(job.Walls))
	for _, w := range job.Walls {
		assert.NotEmpty(t, is.Walls[w.Name].Edge, w.Name)
	}
}

func TestARangeOfJointsKeepsTheOneThatWasTaken(t *testing.T) {
	job := read(t, niche)
	job.Joint = survey.Measure{Mark: &survey.Mark{From: "1.5", To: "2.5"}}
	plan := solved(t, job)
	is := kept(job, plan)
	require.Equal(t, plan.Setout.Joint.MillimetreText()+" mm", is.Joint)
	for _, other := range []string{"1.5", "2", "2.5"} {
		is.Joint = other + " mm"
		assert.Equal(t, other, solved(t, keep.Hold(job, is)).Setout.Joint.MillimetreText())
	}
	is.Joint = "1/8 in"
	_, err := layout.Solve(context.Background(), keep.Hold(job, is))
	refused(t, err, "held.joint", "one of ")
}

func refused(t *testing.T, err error, path, want string) {
	t.Helper()
	var faults survey.Faults
	require.True(t, errors.As(err, &faults), "%v", err)
	require.Equal(t, path, faults[0].Path)
	require.Contains(t, faults[0].Want, want)
}

func TestAHandIsHeldWhereTheBondLeavesItOpen(t *testing.T) {
	job := read(t, static.Demo)
	job.Bond = survey.Bond{Kind: "running", Offset: "1/3"}
	is := kept(job, solved(t, job))
	for word, hand := range map[string]survey.Hand{"left": survey.Left, "right": survey.Right} {
		is.Hand = word
		assert.Equal(t, hand, solved(t, keep.Hold(job, is)).Setout.Hand, word)
	}
	job.Bond.Hand = "left"
	is.Hand = "right"
	assert.Equal(t, survey.Left, solved(t, keep.Hold(job, is)).Setout.Hand, "what the job says counts")
	is.Hand = "up"
	_, err := layout.Solve(context.Background(), keep.Hold(job, is))
	refused(t, err, "held.hand", "left, right")
}

// Law 4: a pin of the job's own comes before what is held.
func TestAPinOfTheJobCountsBeforeWhatIsHeld(t *testing.T) {
	job := read(t, static.Demo)
	plan := solved(t, job)
	job = keep.Hold(job, kept(job, plan))
	line := plan.Setout.Line + length.Inch
	job.Pins.Course.Line = line.MillimetreText() + " mm"
	name := job.Walls[0].Name
	edge := plan.Setout.Walls[0].Edge + length.Inch
	job.Pins.Walls = map[string]survey.WallPin{name: {Edge: edge.MillimetreText() + " mm"}}
	moved := solved(t, job)
	assert.Equal(t, line, moved.Setout.Line)
	assert.Equal(t, edge, moved.Setout.Walls[0].Edge)
	assert.Equal(t, plan.Setout.Walls[1].Edge, moved.Setout.Walls[1].Edge, "the others stay")
}

func TestAnOpeningThatIsMovedByAPinLeavesItsOtherEdge(t *testing.T) {
	job := read(t, niche)
	plan := solved(t, job)
	job = keep.Hold(job, kept(job, plan))
	require.Len(t, job.Held.Walls["back"].Marks, 4)
	from := plan.Setout.Walls[0].Placed.Openings[0]
	job.Pins.Walls = map[string]survey.WallPin{"back": {Marks: map[string]string{"niche shelf left": (from.Left + 50*length.Millimetre).MillimetreText() + " mm"}}}
	to := solved(t, job).Setout.Walls[0].Placed.Openings[0]
	assert.Equal(t, from.Left+50*length.Millimetre, to.Left)
	assert.Equal(t, []length.Length{from.Bottom, from.Top}, []length.Length{to.Bottom, to.Top})
}

var niche = []byte(`{"format": "coursewright-job/1", "title": "a niche", "units": "mm",
 "tile": {"width": "150", "height": "150"}, "joint": "2", "bond": {"kind": "stack"},
 "walls": [{"name": "back", "width": "1500", "left": {"stops": {"at": "0"}}, "right": {"stops": {"at": "1500"}},
  "base": [{"meets": "tub", "gap": "3", "readings": [{"at": "0", "drop": "900"}]}], "head": {"stops": {"at": "700"}},
  "openings": [{"kind": "niche", "name": "shelf", "left": {"from": "300", "to": "900"}, "width": {"from": "280", "to": "420"},
   "bottom": {"from": "-200", "to": "200"}, "height": {"from": "280", "to": "420"}}]}]}`)

// A set-out that no longer fits what was measured is refused by the place where it clashes.
func TestASetOutThatNoLongerFitsIsRefusedByName(t *testing.T) {
	job := read(t, niche)
	job = keep.Hold(job, kept(job, solved(t, job)))
	job.Walls[0].Openings[0].Left = &survey.Mark{From: "1000", To: "1100"}
	_, err := layout.Solve(context.Background(), job)
	refused(t, err, "held.walls.back.marks.niche shelf left", "a length")
	job.Walls[0].Openings[0].Left = &survey.Mark{From: "300", To: "900"}
	job.Held.Walls["gone"] = survey.WallPin{Edge: "0 mm"}
	_, err = layout.Solve(context.Background(), job)
	refused(t, err, "held.walls.gone", "the name of a wall")
}

// What a plan prints is finer than a tape: a mark that was measured where it stands is held, and stands where it
// was measured.
func TestAMarkMeasuredWhereItStandsIsHeld(t *testing.T) {
	job := read(t, niche)
	job.Tile.Width, job.Tile.Height = "150.3", "150.4"
	plan := solved(t, job)
	job = keep.Hold(job, kept(job, plan))
	shelf, at := &job.Walls[0].Openings[0], plan.Setout.Walls[0].Placed.Openings[0]
	room := plan.Room
	taped := func(l length.Length) *survey.Mark { return &survey.Mark{At: l.Plain(room.Units, room.Tape)} }
	shelf.Left, shelf.Width = taped(at.Left), taped(at.Right-at.Left)
	shelf.Bottom, shelf.Height = taped(at.Bottom), &survey.Measure{Mark: taped(at.Top - at.Bottom)}
	now := solved(t, job)
	stands := now.Setout.Walls[0].Placed.Openings[0]
	for name, is := range map[string][2]length.Length{
		"left": {at.Left, stands.Left}, "width": {at.Right - at.Left, stands.Right - stands.Left},
		"bottom": {at.Bottom, stands.Bottom}, "height": {at.Top - at.Bottom, stands.Top - stands.Bottom},
	} {
		assert.NotEqual(t, is[0], is[1], "%s is off the marks of the tape", name)
		assert.Equal(t, is[0].RoundTo(room.Tape), is[1], name)
	}
	assert.Equal(t, plan.Setout.Walls[0].Edge, now.Setout.Walls[0].Edge, "all else stays")
}

// What is measured of a niche once it is built counts more than what is held for it, edge by edge; line and starts stay, which are on the wall.
func TestWhatIsMeasuredSinceCountsMoreThanWhatIsHeld(t *testing.T) {
	held := read(t, niche)
	plan := solved(t, held)
	held = keep.Hold(held, kept(held, plan))
	at := plan.Setout.Walls[0].Placed.Openings[0]
	off := func(from length.Length, mm int) *survey.Mark {
		return &survey.Mark{At: (from + length.Length(mm)*length.Millimetre).RoundTo(plan.Room.Tape).Plain(plan.Room.Units, 0)}
	}
	place := func(o *survey.Opening, mm int) { o.Left = off(at.Left, mm) }
	width := func(o *survey.Opening, mm int) { o.Width = off(at.Right-at.Left, mm) }
	sill := func(o *survey.Opening, mm int) { o.Bottom = off(at.Bottom, mm) }
	height := func(o *survey.Opening, mm int) { o.Height = &survey.Measure{Mark: off(at.Top-at.Bottom, mm)} }
	for _, c := range []struct {
		name  string
		typed []func(*survey.Opening, int)
		by    int
		asked string // the field that is asked about, if any
		moved [4]bool
	}{
		{"the left edge a little off", []func(*survey.Opening, int){place}, 6, "", [4]bool{true, true, false, false}},
		{"the width a little off", []func(*survey.Opening, int){width}, -6, "", [4]bool{false, true, false, false}},
		{"place and width", []func(*survey.Opening, int){place, width}, 6, "", [4]bool{true, true, false, false}},
		{"all four", []func(*survey.Opening, int){place, width, sill, height}, 6, "", [4]bool{true, true, true, true}},
		{"the left edge far off", []func(*survey.Opening, int){place, width}, 60, "walls[0].openings[0].left.at", [4]bool{true, true, false, false}},
		{"the height far off", []func(*survey.Opening, int){height}, 60, "walls[0].openings[0].height.at", [4]bool{false, false, false, true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := held
			job.Walls = slices.Clone(held.Walls)
			job.Walls[0].Openings = slices.Clone(held.Walls[0].Openings)
			for _, typed := range c.typed {
				typed(&job.Walls[0].Openings[0], c.by)
			}
			now := solved(t, job)
			stands := now.Setout.Walls[0].Placed.Openings[0]
			assert.Equal(t, plan.Setout.Line, now.Setout.Line)
			assert.Equal(t, plan.Setout.Walls[0].Edge, now.Setout.Walls[0].Edge)
			assert.Equal(t, c.moved, [4]bool{stands.Left != at.Left, stands.Right != at.Right, stands.Bottom != at.Bottom, stands.Top != at.Top})
			var asked []string
			for _, d := range now.Doubts {
				asked = append(asked, d.Path)
			}
			if c.asked == "" {
				assert.Empty(t, asked)
			} else {
				assert.Equal(t, []string{c.asked}, asked)
				assert.Equal(t, doubt.Moved, now.Doubts[0].Rule)
			}
		})
	}
}

// A niche that is built, and whose lining may move, is measured too: it stood in a range, as if nobody had measured it, and
// a set-out that is held refused it wherever it was. It stands within the tolerance of where it was measured.
func TestANicheThatIsBuiltWithAToleranceStandsWhereItWasMeasured(t *testing.T) {
	held := read(t, niche)
	plan := solved(t, held)
	held = keep.Hold(held, kept(held, plan))
	at, tolerance := plan.Setout.Walls[0].Placed.Openings[0], 3*length.Millimetre
	for _, c := range []struct {
		place, size length.Length // how far off, in mm
		asked       []string
	}{
		{9, 0, nil}, {-9, -9, nil}, {0, 9, nil}, {0, -9, nil},
		{60, 60, []string{"walls[0].openings[0].left.at", "walls[0].openings[0].bottom.at"}},
		{0, -60, []string{"walls[0].openings[0].width.at", "walls[0].openings[0].height.at"}},
	} {
		t.Run(fmt.Sprintf("%d and %d mm off", c.place, c.size), func(t *testing.T) {
			mark := func(l length.Length) *survey.Mark { return &survey.Mark{At: l.Plain(length.Metric, 0) + " mm"} }
			by, wider := c.place*length.Millimetre, c.size*length.Millimetre
			job := held
			job.Walls = slices.Clone(held.Walls)
			job.Walls[0].Openings = slices.Clone(held.Walls[0].Openings)
			o := &job.Walls[0].Openings[0]
			o.Left, o.Width = mark(at.Left+by), mark(at.Right-at.Left+wider)
			o.Bottom, o.Height = mark(at.Bottom+by), &survey.Measure{Mark: mark(at.Top - at.Bottom + wider)}
			o.Inside = &survey.Inside{Depth: "90 mm", Sizes: "finished", DepthIs: "finished", Tolerance: "3 mm"}
			now := solved(t, job)
			stands := now.Setout.Walls[0].Placed.Openings[0]
			assert.Equal(t, plan.Setout.Line, now.Setout.Line)
			assert.Equal(t, plan.Setout.Walls[0].Edge, now.Setout.Walls[0].Edge)
			for edge, is := range map[string][2]length.Length{"left": {at.Left + by, stands.Left}, "right": {at.Right + by + wider, stands.Right},
				"bottom": {at.Bottom + by, stands.Bottom}, "top": {at.Top + by + wider, stands.Top}} {
				assert.LessOrEqual(t, (is[0] - is[1]).Abs(), tolerance, edge)
			}
			var asked []string
			for _, d := range now.Doubts {
				if d.Rule == doubt.Moved {
					asked = append(asked, d.Path)
				}
			}
			assert.Equal(t, c.asked, asked)
		})
	}
}

// A niche that is typed board to board is asked about in figures between its boards.
func TestANicheTypedBoardToBoardIsAskedAboutBoardToBoard(t *testing.T) {
	held := read(t, niche)
	plan := solved(t, held)
	held = keep.Hold(held, kept(held, plan))
	at := plan.Setout.Walls[0].Placed.Openings[0]
	typed := func(l length.Length) *survey.Mark {
		return &survey.Mark{At: l.RoundTo(plan.Room.Tape).Plain(plan.Room.Units, 0)}
	}
	for off, asked := range map[length.Length]bool{9 * length.Millimetre: false, 60 * length.Millimetre: true} {
		job := held
		job.Walls = slices.Clone(held.Walls)
		job.Walls[0].Openings = slices.Clone(held.Walls[0].Openings)
		o := &job.Walls[0].Openings[0]
		boards := func(by length.Length) length.Length { return at.Left + by - 13*length.Millimetre }
		o.Left, o.Width = typed(boards(off)), typed(at.Right-at.Left+26*length.Millimetre)
		o.Bottom, o.Height = typed(at.Bottom-13*length.Millimetre), &survey.Measure{Mark: typed(at.Top - at.Bottom + 26*length.Millimetre)}
		o.Inside = &survey.Inside{Depth: "90 mm", Sizes: "lined", DepthIs: "lined"}
		job.Bed, job.Tile.Thickness = "5 mm", "8 mm"
		now := solved(t, job)
		var doubts []doubt.Doubt
		for _, d := range now.Doubts {
			if d.Rule == doubt.Moved {
				doubts = append(doubts, d)
			}
		}
		if !asked {
			assert.Empty(t, doubts)
			continue
		}
		require.Len(t, doubts, 1)
		assert.Equal(t, "walls[0].openings[0].left.at", doubts[0].Path)
		assert.Equal(t, typed(boards(0)).At, doubts[0].Fits)
	}
}

// So of ends and the head, each asked about at the box it was typed in, with where it is held, which raises no question.
func TestAnEndOrAHeadThatIsMeasuredFarOffIsAskedAbout(t *testing.T) {
	job := read(t, niche)
	free := func(from, to string) *survey.Mark { return &survey.Mark{From: from, To: to} }
	w := &job.Walls[0]
	w.Left.Stops, w.Right.Stops, w.Head.Stops = free("0", "40"), free("1460", "1500"), free("660", "720")
	plan := solved(t, job)
	held := keep.Hold(job, kept(job, plan))
	at := plan.Setout.Walls[0].Placed
	for path, mark := range map[string]func(*survey.Wall) (**survey.Mark, length.Length){
		"walls[0].left.stops.at": func(w *survey.Wall) (**survey.Mark, length.Length) {
			return &w.Left.Stops, at.Left + 100*length.Millimetre
		},
		"walls[0].right.stops.at": func(w *survey.Wall) (**survey.Mark, length.Length) {
			return &w.Right.Stops, at.Right - 100*length.Millimetre
		},
		"walls[0].head.stops.at": func(w *survey.Wall) (**survey.Mark, length.Length) {
			return &w.Head.Stops, at.Head - 100*length.Millimetre
		},
	} {
		job := held.Clone()
		stops, is := mark(&job.Walls[0])
		*stops = &survey.Mark{At: is.Plain(plan.Room.Units, plan.Room.Tape)}
		now := solved(t, job)
		assert.Equal(t, plan.Setout.Walls[0].Edge, now.Setout.Walls[0].Edge, path)
		require.Len(t, now.Doubts, 1, path)
		assert.Equal(t, doubt.Moved, now.Doubts[0].Rule)
		assert.Equal(t, path, now.Doubts[0].Path)
		(*stops).At = now.Doubts[0].Fits
		assert.Empty(t, solved(t, job).Doubts, path)
	}
}

// A dish has no field among the openings that could be asked about: it stands where it was measured, and that is all.
func TestADishThatIsMeasuredSinceStandsThere(t *testing.T) {
	job := read(t, static.Demo)
	job.Walls[1].Fixtures = []survey.Fixture{{Kind: "soap dish", Name: "dish", Width: "5 7/8", High: "2 7/8", Flush: true,
		Along: &survey.Mark{From: "12", To: "24"}, Height: survey.Measure{Mark: &survey.Mark{From: "-20", To: "-8"}}}}
	plan := solved(t, job)
	job = keep.Hold(job, kept(job, plan))
	require.Contains(t, job.Held.Walls["back"].Marks, "soap dish dish left")
	dish := len(plan.Setout.Walls[1].Placed.Openings) - 1
	at := plan.Setout.Walls[1].Placed.Openings[dish]
	job.Walls[1].Fixtures[0].Along = &survey.Mark{At: "16"}
	if off := (at.Left + at.Right).Half() - 16*length.Inch; off.Abs() < 2*length.Inch {
		job.Walls[1].Fixtures[0].Along.At = "20"
	}
	now := solved(t, job)
	assert.Greater(t, (now.Setout.Walls[1].Placed.Openings[dish].Left - at.Left).Abs(), length.Inch)
	assert.Equal(t, plan.Setout.Walls[1].Edge, now.Setout.Walls[1].Edge)
	assert.Empty(t, now.Doubts)
}

// What is held was printed in millimetres: it is told in the units of the job.
func TestWhatIsHeldIsToldInTheUnitsOfTheJob(t *testing.T) {
	job := read(t, static.Demo)
	job = keep.Hold(job, kept(job, solved(t, job)))
	job.Walls[1].Openings[0].Left = &survey.Mark{From: "40", To: "41"}
	_, err := layout.Solve(context.Background(), job)
	var faults survey.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, `32 7/8", which is 7 1/8" past where the survey lets it stand`, faults[0].Found)
}

// Law 5.
func TestTheSameTilesByAnotherCourseAreTheSameSetOut(t *testing.T) {
	job := read(t, static.Demo)
	plan := solved(t, job)
	is := kept(job, plan)
	pitch := plan.Room.Tile.Height + plan.Room.Joint
	is.Course.Line = (plan.Setout.Line + 2*pitch).MillimetreText() + " mm" // the demo is in half bond: two courses on, the joints stand as here
	other := solved(t, keep.Hold(job, is))
	require.NotEqual(t, plan.Setout.Line, other.Setout.Line)
	assert.True(t, keep.Same(plan.Walls, other.Walls))

	is.Course.Line = (plan.Setout.Line + pitch/3).MillimetreText() + " mm"
	assert.False(t, keep.Same(plan.Walls, solved(t, keep.Hold(job, is)).Walls))
}

func TestTheDifferenceNamesTheTermAndThePlaces(t *testing.T) {
	job := read(t, static.Demo)
	anew := solved(t, job)
	is := kept(job, anew)
	is.Course.Line = (anew.Setout.Line - length.Inch).MillimetreText() + " mm"
	name := job.Walls[1].Name
	pin := is.Walls[name]
	pin.Edge = (anew.Setout.Walls[1].Edge + length.Inch/2).MillimetreText() + " mm"
	is.Walls[name] = pin
	was := solved(t, keep.Hold(job, is))

	d := keep.Differ(judged(was), judged(anew))
	require.NotEqual(t, merit.None, d.Term)
	assert.NotEqual(t, d.Kept, d.Anew)
	require.Len(t, d.Moves, 2, "the first wall starts with another tile, in the same place")
	assert.Equal(t, "line to strike", d.Moves[0].What)
	assert.Equal(t, "36 7/8\" below the level line", d.Moves[0].Kept, "the first joint line over the tub, an inch lower")
	assert.Equal(t, "35 7/8\" below the level line", d.Moves[0].Anew)
	assert.Contains(t, d.Moves, keep.Move{What: "tile edge on " + name, Kept: "27 1/2\"", Anew: "27\""})
	for _, m := range d.Moves {
		assert.NotEqual(t, m.Kept, m.Anew, m.What)
	}
	assert.Empty(t, keep.Differ(judged(was), judged(was)).Moves)
}

func TestWhatDoesNotReadAsASetOutIsSaid(t *testing.T) {
	_, err := keep.Read([]byte("{"))
	require.Error(t, err)
	var syntax *json.SyntaxError
	require.ErrorAs(t, err, &syntax)
}

// A set-out of before narrow walls were laid in single tiles holds the start of an end panel, and
// with it the bond there: nothing moves on the wall, and the difference says what would.
func TestAPanelThatWasKeptInTheBondStaysSo(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/half-wall.json")
	require.NoError(t, err)
	job := read(t, file)
	job.Walls[3].Laid = "bond"
	was := solved(t, job)
	held := kept(job, was)
	job.Walls[3].Laid = ""
	stays, anew := solved(t, keep.Hold(job, held)), solved(t, job)
	assert.True(t, keep.Same(was.Walls, stays.Walls))
	assert.False(t, keep.Same(was.Walls, anew.Walls))
	assert.Contains(t, keep.Differ(judged(stays), judged(anew)).Moves, keep.Move{What: "the tile on panel", Kept: "in the bond", Anew: "in single tiles"})
	assert.True(t, kept(job, anew).Walls["panel"].Single, "and single tiles are kept where the job does not say")
	job.Walls[3].Laid = "single"
	assert.False(t, kept(job, solved(t, job)).Walls["panel"].Single, "where it does, it says so alone")
}

// How a leg is laid is kept where the job leaves it to the order of merit, and stays so whatever the
// leg would be judged anew.
func TestALegIsHeldAsItWasLaid(t *testing.T) {
	file, err := os.ReadFile("../../testdata/cases/leg-rules-the-room.json")
	require.NoError(t, err)
	job := read(t, file)
	for i := range job.Walls {
		for k := range job.Walls[i].Base {
			if job.Walls[i].IsLeg(k) {
				job.Walls[i].Base[k].Leg = survey.BestLeg
			}
		}
	}
	was := solved(t, job)
	is := kept(job, was)
	for _, l := range was.Room.ChosenLegs() {
		side, w := l.Beside.Side(), was.Room.Walls[l.Wall]
		require.Equal(t, w.Base[l.Segment].Leg.String(), is.Walls[w.Name].Legs[side])
		for _, how := range []string{"bond", "none"} {
			is.Walls[w.Name].Legs[side] = how
			stays := solved(t, keep.Hold(job, is))
			require.Equal(t, how, stays.Room.Walls[l.Wall].Base[l.Segment].Leg.String())
			require.Equal(t, is, kept(job, stays))
		}
		anew := keep.Differ(judged(solved(t, keep.Hold(job, is))), judged(was)).Moves
		require.Contains(t, anew, keep.Move{What: "the leg at the " + side + " of " + w.Name, Kept: "left out", Anew: "in single tiles"})
		is.Walls[w.Name].Legs[side] = w.Base[l.Segment].Leg.String()
	}
	require.NotEmpty(t, was.Room.ChosenLegs())
	require.True(t, keep.Same(was.Walls, solved(t, keep.Hold(job, is)).Walls))
}

// A set-out that an earlier version gave to a wall in hexagons has plain rows on the sides of its niche: they stay so, although the
// walls are the same, and the difference says what would be. What is kept by now goes on round the edge.
func TestReturnsThatWereKeptInPlainRowsStaySo(t *testing.T) {
	file, err := os.ReadFile("../../testdata/jobs/hexagon.json")
	require.NoError(t, err)
	job := read(t, file)
	job.Walls[0].Openings[0].Inside = &survey.Inside{Depth: "90"}
	anew := solved(t, job)
	is := kept(job, anew)
	assert.True(t, is.Round)
	assert.True(t, keep.Same(solved(t, keep.Hold(job, is)).Walls, anew.Walls))
	is.Round = false
	was := solved(t, keep.Hold(job, is))
	assert.False(t, keep.Same(was.Walls, anew.Walls))
	assert.Equal(t, []keep.Move{{What: "the tile round the inside of the openings of long", Kept: "in plain rows", Anew: "as the wall goes on round the edge"}},
		keep.Differ(judged(was), judged(anew)).Moves)
	assert.False(t, kept(keep.Hold(job, is), was).Round)

	job.Tile.Width, job.Tile.Height, job.Bond.Kind = "100", "100", "stack"
	anew = solved(t, job)
	is = kept(job, anew)
	is.Round = false
	assert.True(t, keep.Same(solved(t, keep.Hold(job, is)).Walls, anew.Walls), "courses came round before as they do now")
}
