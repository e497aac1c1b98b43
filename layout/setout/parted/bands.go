package parted

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// setBands sets out the tile of every band in the strip that is left to it, with
// the ends and openings of the walls where the field has them, and with its laps:
// thinner tile is brought out to the face of the field.
func (p *parter) setBands(r *Result, strips [][]strip, zones [][]zone) error {
	for i, b := range p.room.Bands {
		room := p.room.Laid(i + 1)
		room.Bands, room.Course, room.Joints, room.Walls = nil, nil, nil, nil
		s := stripOf(strips[b.Walls[0]], i)
		line := s.bottom
		room.Line = &line
		for _, w := range b.Walls {
			room.Walls = append(room.Walls, p.bandWall(r, w, b, s, zones[w]))
		}
		apart(room.Walls, b.Walls)
		got, err := search.Room(p.ctx, &room)
		if err != nil {
			return err
		}
		out := Band{Bottom: s.bottom, Top: s.top, Hand: got.Hand, Merit: got.Merit}
		for k, c := range got.Walls {
			out.Edges, out.placed = append(out.Edges, c.Edge), append(out.placed, placedBand{c.Placed, room.Walls[k]})
		}
		r.Bands = append(r.Bands, out)
		r.Merit = r.Merit.Plus(&got.Merit)
	}
	return nil
}

func stripOf(strips []strip, band int) strip {
	return strips[slices.IndexFunc(strips, func(s strip) bool { return s.band == band })]
}

// bandWall is the part of a wall that a band covers: a wall of its own, from the
// strip's bottom to its top, or to the head.
func (p *parter) bandWall(r *Result, wall int, b survey.BandFound, s strip, zones []zone) survey.WallFound {
	w := p.room.Walls[wall]
	placed := r.Placed(wall)
	w.Base = []survey.SegmentFound{{Readings: []survey.Reading{{At: 0, Value: s.bottom}, {At: w.Width, Value: s.bottom}}}}
	top := far
	if !s.toHead {
		top = s.top
		w.Head = survey.HeadFound{Stops: survey.Span{From: top, To: top}}
	}
	w.Left.Stops, w.Right.Stops = fixed(placed.Left), fixed(placed.Right)
	w.Set, w.Pin = nil, p.runsOn(r, wall, b)
	pins := w.MarkPins
	w.MarkPins = nil
	if y, there := pins[survey.HeadMark]; there && s.toHead {
		w.MarkPins = map[survey.MarkName]length.Length{survey.HeadMark: y}
	}
	w.Openings = nil
	for i, o := range p.room.Walls[wall].Openings {
		if o, there := within(o, placed.Openings[i], zones[i], s.bottom-p.room.Joint, top); there {
			w.Openings = append(w.Openings, o)
		}
	}
	return w
}

// within is what of an opening is in a strip, with its marks where the field has
// them; false where nothing is.
func within(o survey.OpeningFound, e survey.Edges, z zone, bottom, top length.Length) (survey.OpeningFound, bool) {
	switch {
	case o.Kind == survey.Pipe:
		return o, true
	case z.beyond:
		o.Bottom, o.Height = z.begins, z.height
		return o, true
	}
	o.Left, o.Width = fixed(e.Left), fixed(e.Right-e.Left)
	low, high := max(e.Bottom, bottom), min(e.Top, top)
	o.Bottom, o.Height = fixed(low), fixed(high-low)
	return o, low < high
}

func fixed(x length.Length) survey.Span { return survey.Span{From: x, To: x} }

// placedBand is where the marks of a band's wall stand.
type placedBand struct {
	survey.Placed
	wall survey.WallFound
}

// opening is where the band has an opening of its wall; false where it has none.
func (p placedBand) opening(o survey.OpeningFound) (survey.Edges, bool) {
	for i, its := range p.wall.Openings {
		if its.Key() == o.Key() {
			return p.Openings[i], true
		}
	}
	return survey.Edges{}, false
}

// runsOn is where the band's tile starts: where that is held, or where its plumb joints can run on from
// the field's: both in stack bond, and the field's pitch a multiple of the band's.
// Nil lets the band find its own start.
func (p *parter) runsOn(r *Result, wall int, b survey.BandFound) *survey.StartPin {
	if x, held := b.Starts[wall]; held {
		return &survey.StartPin{X: x, Is: survey.OnEdge}
	}
	pitch := p.room.Tile.Width + p.room.Joint
	if p.room.Bond.Num != 0 || b.Bond.Num != 0 || length.Mod(pitch, b.Tile.Width+b.Inner(p.room.Joint)) != 0 {
		return nil
	}
	return &survey.StartPin{X: r.Field.Walls[wall].Edge, Is: survey.OnEdge}
}

// apart ties the corners of a band's walls to each other, where both have the band.
func apart(walls []survey.WallFound, of []int) {
	for i := range walls {
		for _, e := range []*survey.EndFound{&walls[i].Left, &walls[i].Right} {
			e.Beyond = slices.Index(of, e.Beyond)
		}
	}
}
