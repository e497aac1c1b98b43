package plan_test

import (
	"context"
	"maps"
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout"
	"coursewright/layout/setout/chance"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// solve sets a room out.
func solve(t *rapid.T, room survey.Room) (plan.Setout, []plan.Wall) {
	_, s, walls, err := setout.Solve(context.Background(), room)
	require.NoError(t, err)
	return s, walls
}

// somewhere pins the course line and the starts of the walls anywhere, but for
// the start of one: to find the best takes long, and others test that.
func somewhere(t *rapid.T, room survey.Room, open int) survey.Room {
	line := -length.Length(rapid.IntRange(0, 300).Draw(t, "line")) * mm
	room.Line, room.Bond.Hand = &line, survey.Left
	for i := range room.Walls {
		if i != open {
			room.Walls[i].Pin = &survey.StartPin{X: length.Length(rapid.IntRange(0, 300).Draw(t, "start")) * mm, Is: survey.OnEdge}
		}
	}
	return room
}

// Law 1: every size of a run is that of its piece, and every cut piece is in
// the run of its edges, no smaller than the run says.
func TestRunsAreRunsOfPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := somewhere(t, chance.Room(t, 2), -1)
		s, walls := solve(t, room)
		least := piece.Share{Num: 1, Den: 1}
		for i, w := range walls {
			for _, r := range w.Runs {
				p := named(t, w, r.Piece)
				size, full, names := sizeOf(room, w, p, r.Across)
				require.Equal(t, size, r.Least, "%s of %v", p.ID, r.Edges)
				require.Equal(t, piece.Part(size, full), r.Share)
				require.Equal(t, names, r.Edges)
				if !r.Low {
					least = least.Min(r.Share)
				}
			}
			for k := range w.Pieces {
				for _, across := range [...]bool{true, false} {
					holdsRun(t, room, w, &w.Pieces[k], across)
				}
			}
			if s.Least.Piece != "" && s.Least.Wall == i {
				p := named(t, w, s.Least.Piece)
				require.Contains(t, []length.Length{p.Wide, p.High}, s.Least.Size)
			}
		}
		if s.Least.Piece != "" {
			require.Equal(t, least.Float(), s.Least.Share.Float(), "the least of all runs in sight")
		}
	})
}

func named(t *rapid.T, w plan.Wall, id string) *piece.Piece {
	i := slices.IndexFunc(w.Pieces, func(p piece.Piece) bool { return p.ID == id })
	require.GreaterOrEqual(t, i, 0, "piece %s exists", id)
	return &w.Pieces[i]
}

// sizeOf is a piece's size in a direction, that of its tile, and what cuts it there.
func sizeOf(room survey.Room, w plan.Wall, p *piece.Piece, across bool) (size, full length.Length, names []string) {
	size, full, cut := p.High, room.Tile.Height, p.Up
	if across {
		size, full, cut = p.Wide, room.Tile.Width, p.Across
	}
	for _, e := range cut {
		names = append(names, e.Name(w.Shape.Sides))
	}
	return size, full, names
}

// holdsRun wants one run for what cuts a piece in a direction, and none where
// nothing does.
func holdsRun(t *rapid.T, room survey.Room, w plan.Wall, p *piece.Piece, across bool) {
	size, _, names := sizeOf(room, w, p, across)
	class := 0
	if across != room.Bond.Plumb {
		class = int(length.Mod(length.Length(p.Row), length.Length(room.Bond.Den)))
	}
	found := 0
	for _, r := range w.Runs {
		if r.Across == across && r.Class == class && len(names) > 0 && slices.Equal(r.Edges, names) {
			require.GreaterOrEqual(t, size, r.Least, "%s in the run of %v", p.ID, names)
			found++
		}
	}
	require.Equal(t, min(1, len(names)), found, "runs that %s stands in", p.ID)
}

// Law 1, of set-outs that were not chosen: pinned, a classic start gives the
// smallest cut and the term that were told of it.
func TestAClassicStartGivesWhatIsToldOfIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := chance.Room(t, 2)
		i := slices.IndexFunc(room.Walls, func(w survey.WallFound) bool { return !free(w) })
		if i < 0 {
			t.Skip("its marks may move with the start")
		}
		room = somewhere(t, room, i)
		s, walls := solve(t, room)
		c := rapid.SampledFrom(walls[i].Start.Classic).Draw(t, "classic")
		with := pinned(room, s, walls)
		with.Walls[i].Pin = &survey.StartPin{X: c.Edge, Is: survey.OnEdge}
		its, cut := solve(t, with)
		least := piece.Share{Num: 1, Den: 1}
		for _, r := range cut[i].Runs {
			if !r.Low {
				least = least.Min(r.Share)
			}
		}
		require.Equal(t, least.Float(), c.Share.Float(), "%s of %s", c.Name, walls[i].Found.Name)
		require.Equal(t, its.Merit.Slivers, c.Slivers)
		require.Equal(t, its.Merit.Unworkable, c.Unworkable)
		require.Equal(t, its.Merit.Bare, c.Bare)
		_, term := s.Order.Until(&its.Merit, &s.Merit, merit.Slack)
		if c.Term != merit.Slack {
			require.Equal(t, term.String(), c.Term.String(), "the term in which %s differs", c.Name)
		}
	})
}

// free tells whether a mark of the wall may be placed.
func free(w survey.WallFound) bool {
	free := w.Left.Stops.Free() || w.Right.Stops.Free() || w.Head.Stops.Free()
	for _, o := range w.Openings {
		free = free || o.Left.Free() || o.Width.Free() || o.Bottom.Free() || o.Height.Free()
	}
	return free
}

// pinned is the room with everything pinned where a set-out has it.
func pinned(room survey.Room, s plan.Setout, walls []plan.Wall) survey.Room {
	room.Line, room.Joint, room.Joints, room.Bond.Hand = &s.Line, s.Joint, []length.Length{s.Joint}, s.Hand
	room.Walls = slices.Clone(room.Walls)
	for i, w := range walls {
		f := &room.Walls[i]
		f.Pin = &survey.StartPin{X: w.Start.Edge, Is: survey.OnEdge}
		f.MarkPins = maps.Clone(f.MarkPins)
		if f.MarkPins == nil {
			f.MarkPins = map[survey.MarkName]length.Length{}
		}
		put := func(meets bool, name survey.MarkName, x length.Length) {
			if !meets {
				f.MarkPins[name] = x
			}
		}
		at := w.Start.Placed
		put(f.Left.Meets, survey.EndLeft, at.Left)
		put(f.Right.Meets, survey.EndRight, at.Right)
		put(f.Head.Meets, survey.HeadMark, at.Head)
		for k, o := range f.Openings {
			pipe, e := o.Kind == survey.Pipe, at.Openings[k]
			put(pipe, o.Mark(survey.LeftEdge), e.Left)
			put(pipe, o.Mark(survey.RightEdge), e.Right)
			put(pipe, o.Mark(survey.BottomEdge), e.Bottom)
			put(pipe, o.Mark(survey.TopEdge), e.Top)
		}
	}
	return room
}

// Law 2: pinned as it is, a set-out comes out the same.
func TestASetOutCanBePinned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := somewhere(t, chance.Room(t, 2), -1)
		s, walls := solve(t, room)
		again, cut := solve(t, pinned(room, s, walls))
		require.Equal(t, s.Line, again.Line)
		require.True(t, again.Pinned)
		for i, w := range walls {
			require.Equal(t, w.Start.Edge, cut[i].Start.Edge, w.Found.Name)
			require.Equal(t, w.Start.Placed, cut[i].Start.Placed, w.Found.Name)
			require.Equal(t, w.Runs, cut[i].Runs, w.Found.Name)
		}
		order, term := s.Order.Until(&s.Merit, &again.Merit, merit.Slack)
		require.Zero(t, order, "%s", term)
	})
}
