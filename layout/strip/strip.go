// Package strip lays the tile of strips: from a wall whose field is set out it makes
// each strip's own wall, from base to head or between its heights, and sets it out.
//
// Laws, each with a test:
//
//  1. Every column of a strip is whole in its width where the wall does not lean into
//     it, and a joint parts it from the field on either side.
//  2. Pieces of field and strips with the joints between them make up the wall.
//  3. Where the pitch of one is a whole multiple of the other's, and neither is in
//     columns that shift, the level joints of field and strip run through.
//  4. A wall without strips stays as it was.
package strip

import (
	"context"
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/setout"
	"coursewright/layout/survey"
)

// Lay lays the tile of every strip. The walls are those of the set-out, with the
// room's joint. The error is the context's.
func Lay(ctx context.Context, room survey.Room, s plan.Setout, walls []plan.Wall) error {
	for i := range walls {
		w := &walls[i]
		for k, o := range w.Found.Openings {
			if o.Strip == nil {
				continue
			}
			l := layer{room: room, setout: s, wall: i, on: w, opening: k, found: o, hole: w.Start.Placed.Openings[k]}
			laid, err := l.lay(ctx, len(w.Strips)+1)
			if err != nil {
				return err
			}
			w.Strips = append(w.Strips, laid)
		}
	}
	return nil
}

// layer is one strip in the making.
type layer struct {
	room    survey.Room
	setout  plan.Setout
	wall    int
	on      *plan.Wall
	opening int
	found   survey.OpeningFound
	hole    survey.Edges // that the field leaves
}

// lay sets the strip out as a room of one wall.
func (l *layer) lay(ctx context.Context, n int) (plan.Strip, error) {
	strip := l.found.Strip
	room := l.room
	room.Tile, room.Joint, room.Bond = strip.Tile, strip.Inner(l.room.Joint), strip.Bond
	room.Joints, room.Bands, room.Course, room.Passed, room.Trims = []length.Length{room.Joint}, nil, nil, nil, nil
	room.Line = l.runsOn(room)
	wall := l.alone(n)
	room.Walls = []survey.WallFound{wall}
	_, s, walls, err := setout.Quick(ctx, room)
	if err != nil {
		return plan.Strip{}, err
	}
	out := plan.Strip{Opening: l.opening, Box: walls[0].Shape.Region.Bounds(),
		Face: plan.Face{Wall: walls[0], Tile: strip.Tile, Joint: room.Joint, Bond: strip.Bond, Line: s.Line, Own: true}}
	out.Outline, out.Soft = walls[0].Shape.Region, soft(walls[0].Found)
	first := 0
	for i, p := range out.Pieces {
		if i == 0 || p.Row < first {
			first = p.Row
		}
	}
	for i := range out.Pieces {
		out.Pieces[i].Course = out.Pieces[i].Row - first + 1
		out.Pieces[i].ID = fmt.Sprintf("%s-%02d", wall.Letter, i+1)
	}
	return out, nil
}

// alone is the wall that the strip is: its ends a joint from the field on either
// side, its base and head the wall's where it goes to them.
func (l *layer) alone(n int) survey.WallFound {
	joint := l.room.Joint
	w := l.on.Found
	left, right := l.hole.Left+joint, l.hole.Right-joint
	end := func(x length.Length) survey.EndFound {
		return survey.EndFound{Stops: survey.Span{From: x, To: x}, Beyond: -1}
	}
	out := survey.WallFound{Name: "strip " + l.found.Name, Letter: fmt.Sprintf("%s-S%d", w.Letter, n), Width: w.Width, Order: w.Order,
		Left: end(left), Right: end(right), Base: w.WithLegs().Base, Head: w.Head,
		Pin: &survey.StartPin{X: left, Is: survey.OnEdge}}
	if !l.found.Strip.Low {
		y := l.hole.Bottom + joint
		out.Base = []survey.SegmentFound{{Readings: []survey.Reading{{At: 0, Value: y}, {At: w.Width, Value: y}}}}
	}
	switch {
	case !l.found.Strip.High:
		out.Head = stops(l.hole.Top - joint)
	case !w.Head.Meets:
		out.Head = stops(l.on.Start.Placed.Head)
		out.Head.Sight = w.Head.Sight
	}
	for _, o := range w.Openings {
		if e := o.Takes(l.room.Units); o.Kind == survey.Pipe && e.Right > left && e.Left < right {
			out.Openings = append(out.Openings, o)
		}
	}
	return out
}

func stops(y length.Length) survey.HeadFound {
	return survey.HeadFound{Stops: survey.Span{From: y, To: y}}
}

// runsOn is a joint line of the field at the strip, where its courses can run on in
// the strip: nil where they cannot, and the strip finds its own.
func (l *layer) runsOn(own survey.Room) *length.Length {
	if !l.room.Bond.Coursed() || l.room.Bond.Plumb && l.room.Bond.Num != 0 || own.Bond.Plumb && own.Bond.Num != 0 || len(l.room.BandsOn(l.wall)) > 0 {
		return nil
	}
	field, pitch := l.room.Tile.Height+l.room.Joint, own.Tile.Height+own.Joint
	if field%pitch != 0 && pitch%field != 0 {
		return nil
	}
	line := l.setout.Line
	return &line
}

// soft are the sides of a strip that meet something: its base and its head.
func soft(w survey.WallFound) []plane.Side {
	var out []plane.Side
	for i, s := range w.Base {
		if s.Meets != "" {
			out = append(out, survey.SideBase+plane.Side(i))
		}
	}
	if w.Head.Meets {
		out = append(out, survey.SideHead)
	}
	return out
}
