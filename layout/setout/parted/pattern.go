package parted

import (
	"context"

	"coursewright/layout/bond"
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/setout/phase"
	"coursewright/layout/survey"
)

// Where a pattern meets a band it is cut at the band's edges: one that a band is laid in
// at its lower and upper edge, and one that the room is laid in a joint from them; behind
// the band it goes on. Runs along these edges are judged as all runs are.

// setPattern sets out a band that is laid in a pattern, with the marks of its walls where
// the field has them.
func (p *parter) setPattern(r *Result, i int) error {
	b, band := p.room.Bands[i], &r.Bands[i]
	room := p.room.Laid(i + 1)
	room.Bands, room.Course, room.Joints, room.Walls = nil, nil, nil, nil
	room.Line = b.Line
	for _, w := range b.Walls {
		room.Walls = append(room.Walls, p.patternWall(r, w, i))
	}
	apart(room.Walls, b.Walls)
	got, err := phase.Room(p.ctx, &room)
	if err != nil {
		return err
	}
	band.Line, band.Hand, band.Merit, band.bound = got.Line, b.Bond.Hand, got.Merit, got.Merit
	if !got.Proven {
		band.bound = got.Bound
	}
	band.bound.Part = true // of rim and head, which only the whole room shows
	for k, c := range got.Walls {
		band.Edges, band.placed = append(band.Edges, c.Edge), append(band.placed, placedBand{c.Placed, room.Walls[k]})
	}
	return nil
}

// patternWall is a wall with all taken that is not in a band. What stands over a band that
// goes up to the head is still free.
func (p *parter) patternWall(r *Result, wall, band int) survey.WallFound {
	b, placed := p.room.Bands[band], r.Placed(wall)
	w := p.room.Within(wall, band, r.Bands[band].Bottom)
	w.Left.Stops, w.Right.Stops = fixed(placed.Left), fixed(placed.Right)
	if !b.ToHead {
		w.Head.Stops = fixed(placed.Head)
	}
	w.Set, w.Pin, w.MarkPins, w.Fixtures = nil, nil, nil, nil
	if x, held := b.Starts[wall]; held {
		w.Pin = &survey.StartPin{X: x, Is: survey.OnEdge}
	}
	if y, there := p.room.Walls[wall].MarkPins[survey.HeadMark]; there && b.ToHead {
		w.MarkPins = pinned(nil, survey.HeadMark, y)
	}
	w.Openings = nil
	for k, o := range p.room.Walls[wall].Openings {
		switch z := r.zones[wall][k]; {
		case o.Kind == survey.Pipe:
		case z.beyond:
			o.Bottom, o.Height = z.begins, z.height
		default:
			e := placed.Openings[k]
			o.Left, o.Width, o.Bottom, o.Height = fixed(e.Left), fixed(e.Right-e.Left), fixed(e.Bottom), fixed(e.Top-e.Bottom)
		}
		w.Openings = append(w.Openings, o)
	}
	return w
}

// patternBand is what is laid in a strip of a wall in a pattern, and in how many rows.
func (r *Result) patternBand(wall int, s strip, shape survey.Shape) (piece.Laid, int) {
	b, k := r.Bands[s.band], indexOf(r.room.Bands[s.band].Walls, wall)
	room := r.room.Laid(s.band + 1)
	pattern := bond.For(room, b.Hand)
	own := b.placed[k].wall.Shape(room.Units, b.placed[k].Placed)
	out := piece.Laid{Tile: s.band + 1, Pattern: &pattern, Origin: pattern.Origin(b.Line, b.Edges[k]), Shape: own,
		Rule: piece.RuleFor(room, r.room.Walls[wall], shape.Sides)}
	low, high := out.Reach()
	out.Lift = -low
	return out, high - low + 1
}

// Through sets out the bands of a room whose field is laid in a pattern, where its marks
// stand. A band that is free stands where it is wished: there are no joint lines to put it on.
func Through(ctx context.Context, room survey.Room, placed []survey.Placed) (Result, error) {
	p := parter{ctx: ctx, room: room}
	r := Result{room: room, standing: placed}
	zones := make([][]zone, len(room.Walls))
	for w := range room.Walls {
		zones[w] = make([]zone, len(room.Walls[w].Openings))
	}
	if err := p.setBands(&r, p.strips(nil), zones); err != nil {
		return r, err
	}
	for i := range r.Bands {
		r.Bound = r.Bound.Plus(&r.Bands[i].bound)
	}
	order, free := merit.OrderFor(room.Prefer), p.anyHeight(func(survey.BandFound) bool { return true })
	for i := range r.Bands {
		free = free || p.freeEnds(i)
	}
	r.Proven = !free && !order.Better(&r.Bound, &r.Merit)
	return r, nil
}

// Heights are where the bands of such a room begin.
func Heights(room survey.Room) (out []length.Length) {
	for _, b := range room.Bands {
		out = append(out, b.Near)
	}
	return out
}

// Among gives the pieces of a wall laid in a pattern with those of its bands among them,
// from the bottom up, and what is bare in the bands.
func (r *Result) Among(wall int, shape survey.Shape, field []piece.Piece) (all []piece.Piece, bare []piece.Gap) {
	rest := field
	lift, top := 0, 0
	for i, q := range field {
		if i == 0 || q.Row-1 < top {
			top = q.Row - 1
		}
	}
	for _, s := range r.strips[wall] {
		var over []piece.Piece
		for _, q := range rest {
			if q.Face.Bounds().Bottom >= s.bottom {
				over = append(over, q)
				continue
			}
			q.Lift = lift
			top = max(top, q.Row+lift)
			all = append(all, q)
		}
		band, rows := r.band(wall, s, shape, shape.Solid.Bounds().Top)
		if band.Pattern == nil {
			first := band.Rows[0].Course
			band.Shape, band.Lift = r.room.Within(wall, s.band, s.bottom).Shape(r.room.Units, r.Placed(wall)), -first
		}
		band.Lift += top + 1
		pieces, gaps := piece.CutLaid(band.Shape, []piece.Laid{band})
		all, bare = append(all, pieces...), append(bare, gaps...)
		top += rows
		for i, q := range over {
			if i == 0 || top+1-q.Row > lift {
				lift = max(0, top+1-q.Row)
			}
		}
		rest = over
	}
	for _, q := range rest {
		q.Lift = lift
		all = append(all, q)
	}
	return all, bare
}
