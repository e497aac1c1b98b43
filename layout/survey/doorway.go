package survey

import "slices"

// doorway reads a doorway: where it stands along the wall and how high its top is. It goes down
// to whatever stands below (downToBase), so that a floor measured anew takes it along.
func (r *resolver) doorway(p path, o Opening, across bounds, found *OpeningFound) {
	before := len(r.faults)
	found.Kind, found.Doorway, found.Down = Window, true, true
	found.Left = r.measuredMark(p.dot("left"), o.Left, across)
	found.Width = r.measuredMark(p.dot("width"), o.Width, bounds{1, across.high})
	switch {
	case o.Height == nil:
		r.faults.add(p.dot("height"), "nothing", upright().text(r.units))
	case o.Height.Mark != nil:
		r.faults.add(p.dot("height"), "a mark", "the height of the doorway's top over the level line as one length in quotes")
	default:
		found.Up = r.length(value{p.dot("height"), o.Height.Plain}, upright())
	}
	if o.Bottom != nil {
		r.faults.add(p.dot("bottom"), "a mark", "nothing here: a doorway goes down to the floor")
	}
	if o.Near != nil {
		r.faults.add(p.dot("near"), "a place", "nothing here: a doorway stays where it is")
	}
	if o.Inside != nil {
		r.faults.add(p.dot("inside"), "an inside", "nothing here: a doorway has none")
	}
	r.unused(`a doorway has "left", "width" and "height"`, value{p.dot("at"), o.At}, value{p.dot("diameter"), o.Diameter})
	if len(r.faults) == before {
		r.endsOnWall(p, *found, across)
	}
}

// measuredMark reads a mark that nobody may leave open.
func (r *resolver) measuredMark(p path, m *Mark, b bounds) Span {
	if m != nil && m.At == "" && m.From+m.To != "" {
		r.faults.add(p, "a range", `{"at": …}: a doorway stays where it is`)
		return Span{}
	}
	return r.span(p, m, b)
}

// downToBase lets the doorways of a wall begin where its base is lowest below them.
func (r *resolver) downToBase(p path, typed []Opening, w *WallFound) {
	bare := *w
	bare.Base = slices.Clone(w.Base)
	for i := range bare.Base {
		bare.Base[i].Gap = 0
	}
	for i := range w.Openings {
		o := &w.Openings[i]
		if !o.Down {
			continue
		}
		floor, _ := bare.farthest(o.Left.From, o.Left.From+o.Width.From)
		if o.Up <= floor {
			r.faults.add(p.at(i).dot("height"), quote(typed[i].Height.Plain), "a height of the doorway's top over the floor there, which is at "+floor.Plain(r.units, r.units.FineStep()))
			continue
		}
		o.Bottom, o.Height = Span{floor, floor}, Span{o.Up - floor, o.Up - floor}
	}
}
