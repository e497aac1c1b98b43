package layout_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/count"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// searchedSmall draws a small room, and how much may be counted for it, and holds the search to brute force. One in
// sixteen of those that are proven is held to what is asked of any room as well.
func searchedSmall(t require.TestingT, by chooser) {
	work := oneOf(by, "work", 30_000, 30_000, 30_000, 10_000, 500) // mostly enough, at times so little that a bound is all there is
	job, room, ok := smallRoom(by)
	if ok && noneBeats(t, by, room, work) && by.number("as any room", 1, 16) == 16 {
		searched(t, by, job)
	}
}

// smallRoom is a room of few tiles whose tape shows few marks in a pitch, so that a search through
// it takes hardly longer than trying all of them. A sixth of the marks that could be free is.
func smallRoom(by chooser) (survey.Job, survey.Room, bool) {
	r := roomDraw{by: by, metric: by.yes("metric"), small: true}
	size := oneOf(by, "small size", roomSize{90, 150, 130, 280, 1}, roomSize{100, 170, 130, 320, 1}, roomSize{90, 150, 130, 300, 2}, roomSize{130, 220, 200, 500, 3})
	doc := r.jobOf(size)
	doc["measured"] = object{"tape": r.of(oneOf(by, "small tape", 16, 16, 15, 11))}
	if r.metric {
		doc["measured"] = object{"tape": r.of(oneOf(by, "small tape", 25, 25, 24, 18))}
	}
	if by.number("openings stay", 1, 4) < 4 {
		for _, wall := range doc["walls"].([]any) {
			delete(wall.(object), "openings")
		}
	}
	job, err := survey.Read(jobFile(doc))
	if err != nil {
		return job, survey.Room{}, false
	}
	room, faults := job.Resolve()
	return job, room, len(faults) == 0
}

// noneBeats searches a room and holds what comes of it to brute force: every mark of the tape in one
// pitch as course line and as start of each wall, in both hands, with its free marks at marks of the
// tape. Each is counted by itself, and no queue, bound or choice of places has a say in it. None is better
// than what is proven best, and none than the bound where nothing is proven. It tells which of the two.
func noneBeats(t require.TestingT, by chooser, room survey.Room, work int) (proven bool) {
	found, err := search.Within(context.Background(), &room, work)
	require.NoError(t, err)
	best := found.Merit
	if !found.Proven {
		best = found.Bound
		require.False(t, found.Order().Better(&found.Merit, &best), "a bound is no worse than what was found")
	}
	marks := bySeed{rand.New(rand.NewPCG(uint64(by.number("seed of the marks", 0, 65535)), 0))}
	for _, hand := range []survey.Hand{survey.Left, survey.Right} {
		if room.Bond.Hand != survey.Free && room.Bond.Hand != hand {
			continue
		}
		walls := make([]*count.Wall, len(room.Walls))
		for i := range walls {
			walls[i] = count.NewWall(&room, room.Walls[i], hand)
		}
		for _, line := range marksFrom(found.Lowest(), room.Tile.Height+room.Joint, room.Tape) {
			sum, all := bestOnLine(marks, &room, found.Order(), walls, line)
			if !all {
				continue
			}
			order, term := found.Order().Until(&sum, &best, found.Order().Shared())
			if term > merit.Mirror && slices.ContainsFunc(room.Walls, mayBeAlike) {
				continue // how alike ends are counts in whole marks: of places that are alike by that not each is listed
			}
			require.GreaterOrEqual(t, order, 0, "line %v is better in %s (proven: %v)", line, term, found.Proven)
		}
	}
	return found.Proven
}

// bestOnLine is the best that the starts of all walls give on a course line before the terms that
// walls share.
func bestOnLine(marks chooser, room *survey.Room, order merit.Order, walls []*count.Wall, line length.Length) (sum merit.Merit, all bool) {
	pitch := room.Tile.Width + room.Joint
	if room.Bond.Plumb && room.Bond.Num > 0 {
		pitch *= length.Length(room.Bond.Den)
	}
	for _, w := range walls {
		starts := marksFrom(w.Found.Width.Half()-pitch.Half(), pitch, room.Tape)
		if w.Found.Single {
			starts = w.Starts.Tried() // its tile is cut to its width, so it begins where the wall does
		}
		var best *merit.Merit
		for _, edge := range starts {
			placed := placedOnTape(marks, room, w)
			if w.Found.Head.Sight == survey.Low || onOneCourse(room, w, placed.Head) || besideBareEnd(room, w) { // a cut there puts a run out of sight, or is judged neither as rim nor as head: only heads that are listed
				heads := w.Places.Heads(line)
				placed.Head = heads[marks.which("head", len(heads))]
			}
			if w.Places.Overlap(placed) {
				continue
			}
			if c := w.Count(count.Setting{Line: line, Edge: edge, Placed: placed}); best == nil || order.Better(&c.Merit, best) {
				best = &c.Merit
			}
		}
		if best == nil {
			return sum, false
		}
		sum = sum.Plus(best)
	}
	return sum, true
}

// mayBeAlike tells whether a wall has like ends of which one is free.
func mayBeAlike(w survey.WallFound) bool {
	return w.LikeEnds() && (!w.Left.Meets && w.Left.Stops.Free() || !w.Right.Meets && w.Right.Stops.Free())
}

// onOneCourse tells whether a free head somewhere stands no farther than a tile over the base.
func onOneCourse(room *survey.Room, w *count.Wall, head length.Length) bool {
	for _, segment := range w.Found.Base {
		for _, at := range segment.Readings {
			if !w.Found.Head.Meets && w.Found.Head.Stops.Free() && head-at.Value < room.Tile.Height {
				return true
			}
		}
	}
	return false
}

// besideBareEnd tells whether columns stand beside an end out of sight, which may stay bare for its whole length: a head that is
// lower then leaves less bare wall, between the places that are listed.
func besideBareEnd(room *survey.Room, w *count.Wall) bool {
	return room.Bond.Plumb && (w.Found.Left.Sight == survey.Low || w.Found.Right.Sight == survey.Low)
}

// marksFrom are the marks of the tape in one pitch.
func marksFrom(from, pitch, tape length.Length) (out []length.Length) {
	for x := from.CeilTo(tape); x < from+pitch; x += tape {
		out = append(out, x)
	}
	return out
}

// placedOnTape puts the free marks of a wall at limits of their ranges or marks of the tape in them.
func placedOnTape(by chooser, room *survey.Room, w *count.Wall) survey.Placed {
	on := func(s survey.Span) length.Length {
		marks := []length.Length{s.From}
		if s.From < s.To {
			marks = append(append(marks, marksFrom(s.From, s.To-s.From, room.Tape)...), s.To)
		}
		return marks[by.which("mark", len(marks))]
	}
	p := w.Outer()
	if !w.Found.Left.Meets {
		p.Left = on(w.Found.Left.Stops)
	}
	if !w.Found.Right.Meets {
		p.Right = on(w.Found.Right.Stops)
	}
	if !w.Found.Head.Meets {
		p.Head = on(w.Found.Head.Stops)
	}
	p.Openings = slices.Clone(p.Openings)
	for _, i := range w.Free() {
		o := w.Found.Openings[i]
		left, bottom := on(o.Left), on(o.Bottom)
		p.Openings[i] = o.Within(survey.Edges{Left: left, Right: left + on(o.Width), Bottom: bottom, Top: bottom + on(o.Height)})
	}
	return p
}

// bySeed chooses by chance, always alike with the same seed: many small things that need no byte each.
type bySeed struct{ *rand.Rand }

func (s bySeed) number(_ string, low, high int) int { return low + s.IntN(high-low+1) }

func (s bySeed) which(_ string, n int) int { return s.IntN(n) }

func (s bySeed) yes(string) bool { return s.IntN(2) == 1 }

func TestNoneBeatsWhatIsFoundInASmallRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { searchedSmall(t, byRapid{t}) })
}
