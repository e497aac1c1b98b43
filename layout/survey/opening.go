package survey

import (
	"coursewright/layout/length"
)

// openingList reads the openings of one wall.
func (r *resolver) openingList(p path, openings []Opening, across bounds) []OpeningFound {
	r.count(p, &r.openings, len(openings), mostOpenings, "openings")
	taken := map[string]bool{}
	var found []OpeningFound
	for i, o := range openings {
		found = append(found, r.opening(p.at(i), o, across, taken))
	}
	return found
}

func (r *resolver) opening(p path, o Opening, across bounds, taken map[string]bool) OpeningFound {
	found := OpeningFound{
		Kind:  r.kind(value{p.dot("kind"), o.Kind}, Niche, Window, Doorway, Pipe),
		Name:  r.name(value{p.dot("name"), o.Name}, taken),
		Sight: r.sight(value{p.dot("sight"), o.Sight}, Plain),
	}
	switch found.Kind {
	case Pipe:
		r.pipe(p, o, across, &found)
	case Doorway:
		r.doorway(p, o, across, &found)
	case Niche, Window:
		r.hole(p, o, across, &found)
	}
	return found
}

// pipe reads a pipe: its centre and the diameter of what goes through.
func (r *resolver) pipe(p path, o Opening, across bounds, found *OpeningFound) {
	before := len(r.faults)
	found.At = r.length(value{p.dot("at"), o.At}, across)
	found.Diameter = r.length(value{p.dot("diameter"), o.Diameter}, bounds{1, length.Metre})
	switch {
	case o.Height == nil:
		r.faults.add(p.dot("height"), "nothing", upright().text(r.units))
	case o.Height.Mark != nil:
		r.faults.add(p.dot("height"), "a mark", "the height of the pipe's middle as one length in quotes")
	default:
		found.Up = r.length(value{p.dot("height"), o.Height.Plain}, upright())
	}
	if o.Near != nil {
		r.faults.add(p.dot("near"), "a place", "nothing here: a pipe stays where it is")
	}
	r.noMark(p.dot("left"), o.Left)
	r.noMark(p.dot("width"), o.Width)
	r.noMark(p.dot("bottom"), o.Bottom)
	if o.Inside != nil {
		r.faults.add(p.dot("inside"), "an inside", "nothing here: a pipe has none")
	}
	if inside := (bounds{found.Diameter.Half(), across.high - found.Diameter.Half()}); len(r.faults) == before &&
		(found.At < inside.low || found.At > inside.high) {
		r.faults.add(p.dot("at"), quote(o.At), inside.text(r.units)+", so that the pipe is inside the wall")
	}
}

// noMark refuses a mark that a pipe does not have.
func (r *resolver) noMark(p path, m *Mark) {
	if m != nil {
		r.faults.add(p, "a mark", `nothing here: a pipe has "at", "height" and "diameter"`)
	}
}

// hole reads a niche or a window.
func (r *resolver) hole(p path, o Opening, across bounds, found *OpeningFound) {
	before := len(r.faults)
	size := bounds{1, across.high}
	if o.Inside == nil || o.Inside.Studs == nil || o.Left != nil || o.Width != nil { // else it is placed between its studs
		found.Left = r.span(p.dot("left"), o.Left, across)
		found.Width = r.span(p.dot("width"), o.Width, size)
	}
	found.Bottom = r.span(p.dot("bottom"), o.Bottom, upright())
	var height *Mark
	if o.Height != nil {
		height = o.Height.Mark
	}
	if height == nil && o.Height != nil {
		r.faults.add(p.dot("height"), quote(o.Height.Plain), `a mark, {"at": "`+clip(o.Height.Plain)+`"}`)
	} else {
		found.Height = r.span(p.dot("height"), height, bounds{1, widestWall})
	}
	found.Near = r.near(p.dot("near"), o.Near, across)
	r.unused(`a niche or window has "left" and "width"`, value{p.dot("at"), o.At}, value{p.dot("diameter"), o.Diameter})
	if o.Inside != nil {
		found.Inside = r.inside(p.dot("inside"), o, found.Kind, across)
		if len(r.faults) == before {
			found.place(o, r.around)
			r.leavesRoom(p, found)
		}
	}
	if len(r.faults) == before {
		r.endsOnWall(p, *found, across)
	}
}

// endsOnWall refuses an opening that reaches past the wall wherever it may stand.
func (r *resolver) endsOnWall(p path, o OpeningFound, across bounds) {
	if end := o.Left.From + o.Width.From; end > across.high {
		r.faults.add(p.dot("width"), "a right edge at "+end.Plain(r.units, 0)+" or more",
			"a left edge and a width that end by "+across.high.Plain(r.units, 0)+", the wall's width")
	}
}

// near reads where the middle of a niche or window is wished.
func (r *resolver) near(p path, wish *Place, across bounds) Near {
	if wish == nil {
		return Near{}
	}
	if *wish == (Place{}) {
		r.faults.add(p, "nothing", `{"x": …, "y": …}, or one of them`)
	}
	return Near{r.chosen(value{p.dot("x"), wish.X}, across), r.chosen(value{p.dot("y"), wish.Y}, upright())}
}

// Measured tells whether nothing of the opening is left to the solver.
func (o OpeningFound) Measured() bool {
	return !o.Left.Free() && !o.Width.Free() && !o.Bottom.Free() && !o.Height.Free()
}

// Reach is the opening, or the square round a pipe, at its largest reach.
func (o OpeningFound) Reach() Edges {
	if o.Kind == Pipe {
		half := o.Diameter.Half()
		return Edges{o.At - half, o.Up - half, o.At + half, o.Up + half}
	}
	return Edges{o.Left.From, o.Bottom.From, o.Left.To + o.Width.To, o.Bottom.To + o.Height.To}
}

// Takes is what an opening takes of the tile at most: its reach, and round a pipe what tile
// keeps clear of it.
func (o OpeningFound) Takes(units length.System) Edges {
	e := o.Reach()
	if o.Kind == Pipe {
		clear := PipeClear(units) + 1
		e = Edges{e.Left - clear, e.Bottom - clear, e.Right + clear, e.Top + clear}
	}
	return e
}
