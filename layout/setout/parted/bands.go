package parted

import (
	"maps"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// setBands sets out the tile of every band in the strip that is left to it, with
// the ends and openings of the walls where the field has them, and with its laps:
// thinner tile is brought out to the face of the field.
func (p *parter) setBands(r *Result, strips [][]strip, zones [][]zone) error {
	r.strips, r.zones = strips, zones
	for i, b := range p.room.Bands {
		s := stripOf(strips[b.Walls[0]], i)
		r.Bands = append(r.Bands, Band{Bottom: s.bottom, Top: s.top})
		if err := p.setBand(r, i); err != nil {
			return err
		}
		r.Merit = r.Merit.Plus(&r.Bands[i].Merit)
	}
	return nil
}

// setBand sets out the tile of one band: where its plumb joints can run on from the
// field's they do, unless that spoils a wall.
func (p *parter) setBand(r *Result, i int) error {
	if !p.room.Bands[i].Bond.Coursed() {
		return p.setPattern(r, i)
	}
	room, band := p.bandRoom(r, i), &r.Bands[i]
	got, err := search.Room(p.ctx, &room)
	if err != nil {
		return err
	}
	band.bound = bound(&got)
	if with, runs := p.runsOn(r, i, room); runs {
		on, err := search.Room(p.ctx, &with)
		if err != nil {
			return err
		}
		if worse, _ := got.Order().Until(&got.Merit, &on.Merit, merit.Openings); worse == 0 {
			got = on
		}
	}
	band.Hand, band.Merit = got.Hand, got.Merit
	for k, c := range got.Walls {
		band.Edges, band.placed = append(band.Edges, c.Edge), append(band.placed, placedBand{c.Placed, room.Walls[k]})
	}
	return nil
}

// bandRoom is the strip of a band as a room of its own.
func (p *parter) bandRoom(r *Result, i int) survey.Room {
	b, room := p.room.Bands[i], p.room.Laid(i+1)
	room.Bands, room.Course, room.Joints, room.Walls = nil, nil, nil, nil
	line := r.Bands[i].Bottom
	room.Line = &line
	for _, w := range b.Walls {
		room.Walls = append(room.Walls, p.bandWall(r, w, i))
	}
	apart(room.Walls, b.Walls)
	return room
}

func stripOf(strips []strip, band int) strip {
	return strips[slices.IndexFunc(strips, func(s strip) bool { return s.band == band })]
}

// bandWall is the part of a wall that a band covers: a wall of its own, from the
// strip's bottom to its top, or to the head.
func (p *parter) bandWall(r *Result, wall, band int) survey.WallFound {
	w, b, s := p.room.Walls[wall], p.room.Bands[band], stripOf(r.strips[wall], band)
	placed := r.Placed(wall)
	w.Base = []survey.SegmentFound{{Readings: []survey.Reading{{At: 0, Value: s.bottom}, {At: w.Width, Value: s.bottom}}}}
	top := far
	if !s.toHead {
		top = s.top
		w.Head = survey.HeadFound{Stops: survey.Span{From: top, To: top}}
	}
	w.Left.Stops, w.Right.Stops = fixed(placed.Left), fixed(placed.Right)
	w.Set, w.Pin = nil, nil
	if x, held := b.Starts[wall]; held {
		w.Pin = &survey.StartPin{X: x, Is: survey.OnEdge}
	}
	pins := w.MarkPins
	w.MarkPins = nil
	if y, there := pins[survey.HeadMark]; there && s.toHead {
		w.MarkPins = pinned(nil, survey.HeadMark, y)
	}
	w.Openings = nil
	for i, o := range p.room.Walls[wall].Openings {
		if o, there := within(o, placed.Openings[i], r.zones[wall][i], s.bottom-p.room.Joint, top); there {
			w.Openings = append(w.Openings, o)
		}
	}
	return w
}

// pinned is marks with one more pinned.
func pinned(marks map[survey.MarkName]length.Length, mark survey.MarkName, at length.Length) map[survey.MarkName]length.Length {
	out := maps.Clone(marks)
	if out == nil {
		out = map[survey.MarkName]length.Length{}
	}
	out[mark] = at
	return out
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

// runsOn is a band's strip with its tile started where its plumb joints run on from the
// field's, on every wall on which no start is held; false where they cannot: both must be in
// stack bond, and the field's pitch a multiple of the band's.
func (p *parter) runsOn(r *Result, i int, room survey.Room) (survey.Room, bool) {
	b, pitch := p.room.Bands[i], p.room.Tile.Width+p.room.Joint
	if !p.room.Bond.Coursed() || p.room.Bond.Num != 0 || b.Bond.Num != 0 || length.Mod(pitch, b.Tile.Width+b.Inner(p.room.Joint)) != 0 {
		return room, false
	}
	runs := false
	room.Walls = slices.Clone(room.Walls)
	for k, w := range b.Walls {
		if room.Walls[k].Pin == nil {
			room.Walls[k].Pin, runs = &survey.StartPin{X: r.Field.Walls[w].Edge, Is: survey.OnEdge}, true
		}
	}
	return room, runs
}

// apart ties the corners of a band's walls to each other, where both have the band.
func apart(walls []survey.WallFound, of []int) {
	for i := range walls {
		for _, e := range []*survey.EndFound{&walls[i].Left, &walls[i].Right} {
			e.Beyond = slices.Index(of, e.Beyond)
		}
	}
}
