package setout

import (
	"context"
	"fmt"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/setout/phase"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// ofPattern finds the best phase of a room laid in a pattern, with the best of its
// joints, and cuts its walls.
func ofPattern(ctx context.Context, room survey.Room, of telling) (survey.Room, plan.Setout, []plan.Wall, error) {
	asFound := room
	r, room, joints, err := phaseJoint(ctx, room)
	if err != nil {
		return room, plan.Setout{}, nil, err
	}
	s := plan.Setout{Line: r.Line, Hand: room.Bond.Hand, Joint: room.Joint, Pinned: room.Line != nil, Merit: r.Merit,
		Order: r.Order(), Proven: r.Proven, Joints: joints, Rise: r.Wall(0).Pattern.Rise, Courses: max(1, len(r.Wall(0).Pattern.Courses))}
	s.Bound = boundOf(room, r)
	if len(room.Bands) > 0 {
		room = asFound.Jointed(room.Joint)
	}
	bands, err := bandsThrough(ctx, room, r, &s)
	if err != nil {
		return room, plan.Setout{}, nil, err
	}
	walls := make([]plan.Wall, len(room.Walls))
	pieces := make([][]piece.Piece, len(room.Walls))
	letters := make([]string, len(room.Walls))
	for i, w := range room.Walls {
		shape, cut, gaps := r.Wall(i).Cut(r.Walls[i].Setting)
		start := phaseStart(room, r, i, of)
		if bands != nil {
			start.Placed = bands.Placed(i)
			shape, cut, gaps = among(room, bands, i, shape, cut, gaps)
		}
		walls[i] = plan.Wall{Found: w, Shape: shape, Start: start, Gaps: gaps, Bare: places(gaps)}
		s.Walls = append(s.Walls, walls[i].Start)
		pieces[i], letters[i] = cut, w.Letter
	}
	piece.Number(pieces, letters, false)
	for i := range walls {
		walls[i].Pieces = pieces[i]
		walls[i].Runs = plan.FindRuns(room, walls[i])
		for _, p := range pieces[i] {
			if !p.Whole {
				s.CutTiles++
			}
		}
	}
	if bands != nil {
		s.Bands = bandsOf(room, bands, walls)
	}
	dress(room, walls, r.Line)
	s.Least = tell.Least(walls)
	if of == everything {
		s.Reasons = append(phaseReasons(&s, room, walls, r.Free), unjudged(r, len(walls))...)
	}
	return room, s, walls, ctx.Err()
}

// phaseJoint solves the room with each joint that it may have, and takes the best. The work for one
// room goes round them all.
func phaseJoint(ctx context.Context, room survey.Room) (*phase.Result, survey.Room, []plan.Joint, error) {
	list := room.Joints
	if len(list) == 0 {
		list = []length.Length{room.Joint}
	}
	var best *phase.Result
	chosen := room
	results := make([]phase.Result, len(list))
	left := phase.Work
	for i, j := range list {
		with, share := besideBands(room.Jointed(j)), left/(len(list)-i)
		var err error
		if results[i], err = phase.Within(ctx, &with, share); err != nil {
			return nil, room, nil, err
		}
		left -= min(results[i].Spent(), share)
		if r := &results[i]; best == nil || r.Order().Better(&r.Merit, &best.Merit) {
			best, chosen = r, with
		}
	}
	if len(list) == 1 {
		return best, chosen, nil, nil
	}
	var told []plan.Joint
	for i := range results {
		told = append(told, plan.Joint{Size: list[i], Line: results[i].Line, Figures: phaseFigures(&chosen, best, results[i].Walls, &results[i].Merit)})
	}
	return best, chosen, told, nil
}

// phaseFigures compares a set-out with the best one.
func phaseFigures(room *survey.Room, best *phase.Result, walls []phase.Counted, its *merit.Merit) plan.Figures {
	f := plan.Figures{Slivers: its.Slivers, Unworkable: its.Unworkable, Bare: its.Bare, Share: piece.Share{Num: 1, Den: 1}}
	for _, w := range walls {
		if s := piece.Part(w.Least, w.Full); s.Less(f.Share) {
			f.Least, f.Share = w.Least, s
		}
	}
	tell.Against(&f, room.Units, best.Order(), its, &best.Merit)
	return f
}

// phaseStart says where a wall starts, and what the classic starts would give.
func phaseStart(room survey.Room, r *phase.Result, i int, of telling) plan.Start {
	w, c := r.Wall(i), r.Walls[i]
	s := plan.Start{Edge: c.Edge, X: c.Edge - room.Joint.Half(), Placed: c.Placed, Pinned: w.Found.Pin != nil, From: c.Edge, To: c.Edge}
	if p := w.Found.Pin; p != nil && p.Is != survey.OnEdge {
		s.X, s.OnTile = p.X, p.Is == survey.OnTile
	}
	classics := w.Classics()
	if of == little {
		classics = nil
	}
	for _, k := range classics {
		its, whole := r.With(i, k.Edge)
		x := k.Edge - room.Joint.Half()
		if k.OnTile {
			x = k.Edge + w.Pattern.Tiles[w.Pattern.Places[0].Tile].Box.Width().Half()
		}
		s.Classic = append(s.Classic, plan.Classic{Name: k.Name, Edge: k.Edge, X: x, OnTile: k.OnTile, Figures: phaseFigures(&room, r, []phase.Counted{its}, &whole)})
	}
	s.Classic = append(s.Classic, plan.Classic{Name: "best", Edge: c.Edge, X: s.X, OnTile: s.OnTile, Figures: phaseFigures(&room, r, []phase.Counted{c}, &r.Merit)})
	if of == everything {
		s.Map = r.Map(i)
	}
	return s
}

// boundOf says what no phase can beat where the best is not proven.
func boundOf(room survey.Room, r *phase.Result) string {
	if r.Proven {
		return ""
	}
	return tell.Unproven(room.Units, r.Order(), &r.Bound, &r.Merit)
}

// phaseReasons are plain sentences: where the smallest cut is, what decided against
// the classic starts, and what is proven.
func phaseReasons(s *plan.Setout, room survey.Room, walls []plan.Wall, free bool) []string {
	var out []string
	if s.Least.Piece == "" {
		out = append(out, "No tile in sight needs a cut under its full width.")
	} else {
		out = append(out, fmt.Sprintf("The smallest cut in sight is %s: %s wide, %s of a tile, on wall %s.",
			s.Least.Piece, s.Least.Size.Fine(room.Units), tell.Percent(s.Least.Share), walls[s.Least.Wall].Found.Name))
	}
	for _, w := range walls {
		out = append(out, tell.Because(w))
	}
	if free {
		out = append(out, "Ends, heads and openings that are free were tried on joint lines where the pattern has them, where they are wished, and at a dozen even steps of their ranges or fewer; openings also centred on a tile, on a joint, and on a line of symmetry.")
	}
	if s.Bound != "" {
		out = append(out, s.Bound)
	}
	return out
}

// unjudged says which joint lines the pattern has not, where some would have been judged.
func unjudged(r *phase.Result, walls int) []string {
	var most []string
	for i := range walls {
		if ways := r.Wall(i).Unjudged(); len(ways) > len(most) {
			most = ways
		}
	}
	if len(most) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("This pattern has no joint lines that run %s, so what stops the tile there is not judged by them.", strings.Join(most, " or "))}
}
