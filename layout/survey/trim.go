package survey

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
)

// TrimTile is trim that is set in pieces along an edge where tile stops. Ends
// and heads name the one that runs along them.
type TrimTile struct {
	Name      string `json:"name"`
	Kind      string `json:"kind"`                // "bullnose", "quarter round", "pencil", "profile", "cove"
	Width     string `json:"width"`               // across the edge, as it is seen from the face
	Length    string `json:"length,omitempty"`    // of a piece or a bar, along the edge
	Thickness string `json:"thickness,omitempty"` // of a profile: the depth it is marked with
	Place     string `json:"place,omitempty"`     // "in" (default): inside the stop; "beyond" it
	Corners   string `json:"corners,omitempty"`   // "piece" or "mitre"
	Box       *Box   `json:"box,omitempty"`       // how its pieces are sold
}

// Trim that is set in pieces: tile or stone with a rounded edge, a rounded
// strip, a narrow raised strip, a bar of metal or plastic.
const (
	QuarterRound Kind = "quarter round"
	Pencil       Kind = "pencil"
	Profile      Kind = "profile"
)

// TrimFound is trim read and checked. It stands a joint from the tile it
// finishes.
type TrimFound struct {
	Name                     string
	Kind                     Kind // Bullnose, QuarterRound, Pencil, Profile or Cove
	Width, Length, Thickness length.Length
	Beyond                   bool  // it stands beyond the stop; otherwise the stop is its outer edge
	Mitred                   bool  // at an outer corner two pieces are mitred; otherwise a corner piece stands there
	BoxCount                 int   // pieces in a box, or 0
	BoxCents                 int64 // price of a box in hundredths
	Money                    Money // the sign that was typed with it
}

// Bar tells whether the trim comes in bars that are cut to length and butted
// without a joint.
func (t TrimFound) Bar() bool { return t.Kind == Profile }

// Inset is how far the tile ends before the stop: the trim's width and a joint
// where it stands inside, else nothing. Nil is no trim.
//
// A wall that stops at 40 in with trim 2 in wide and joints of 1/8 in has tile to
// 37 7/8 in.
func (t *TrimFound) Inset(joint length.Length) length.Length {
	if t == nil || t.Beyond {
		return 0
	}
	return t.Width + joint
}

// mostTrims bounds the list.
const mostTrims = 20

// trims reads the trim of a room.
func (r *resolver) trims(p path, list []TrimTile) []TrimFound {
	if len(list) > mostTrims {
		r.faults.add(p, fmt.Sprintf("%d kinds of trim", len(list)), fmt.Sprintf("at most %d", mostTrims))
		return nil
	}
	taken := map[string]bool{}
	var found []TrimFound
	for i, t := range list {
		found = append(found, r.trim(p.at(i), t, taken))
	}
	return found
}

func (r *resolver) trim(p path, t TrimTile, taken map[string]bool) TrimFound {
	found := TrimFound{
		Name: r.name(value{p.dot("name"), t.Name}, taken),
		Kind: r.kind(value{p.dot("kind"), t.Kind}, Bullnose, QuarterRound, Pencil, Profile, Cove),
	}
	found.Width = r.length(value{p.dot("width"), t.Width}, bounds{length.Millimetre / 2, length.Foot})
	long := bounds{leastTile, 4 * length.Metre}
	if found.Bar() {
		found.Length = r.or(value{p.dot("length"), t.Length}, Bar(r.units), long)
	} else {
		found.Length = r.length(value{p.dot("length"), t.Length}, long)
	}
	found.Thickness = r.or(value{p.dot("thickness"), t.Thickness}, 0, bounds{0, thickest})
	found.Beyond = t.Place != "" && r.choice(value{p.dot("place"), t.Place}, "in", "beyond") == "beyond"
	if found.Mitred = found.Kind != Bullnose; t.Corners != "" {
		found.Mitred = r.choice(value{p.dot("corners"), t.Corners}, "piece", "mitre") == "mitre"
	}
	if t.Box != nil {
		var box TileSize
		r.box(p.dot("box"), *t.Box, &box)
		found.BoxCount, found.BoxCents, found.Money = box.BoxCount, box.BoxCents, box.Money
	}
	return found
}

// Bar is the length of a stock bar of trim: 8 ft, or 2.5 m. Common practice, no
// source.
func Bar(units length.System) length.Length {
	if units == length.Metric {
		return 2500 * length.Millimetre
	}
	return 8 * length.Foot
}

// edged finds the trim that an end or a head names. Nil is none, or one that
// is refused.
func (r *resolver) edged(p path, name string, finish Kind) *TrimFound {
	if name == "" {
		return nil
	}
	i := slices.IndexFunc(r.around.Trims, func(t TrimFound) bool { return t.Name == name })
	switch {
	case i < 0 && len(r.around.Trims) == 0:
		r.faults.add(p, quote(name), "nothing here, or give trim of that name in trims")
		return nil
	case i < 0:
		names := make([]string, len(r.around.Trims))
		for k, t := range r.around.Trims {
			names[k] = t.Name
		}
		r.faults.add(p, quote(name), "the name of one of the trims: "+clip(strings.Join(names, ", ")))
		return nil
	case finish == Casing:
		r.faults.add(p, quote(name)+" where a casing covers the edge", "nothing here, or no casing as the finish")
		return nil
	}
	t := r.around.Trims[i]
	if t.Kind == Cove && !strings.Contains(string(p), ".base[") {
		r.faults.add(p, quote(name)+", which is a cove", "a trim of another kind: a cove stands along a base")
		return nil
	}
	return &t
}

// finishOf is what a boundary with trim is finished with: bullnose, or else trim.
func finishOf(finish Kind, t *TrimFound) Kind {
	switch {
	case t == nil:
		return finish
	case t.Kind == Bullnose:
		return Bullnose
	}
	return Trim
}

// Moved is the span further to the right or up by a length.
func (s Span) Moved(by length.Length) Span { return Span{s.From + by, s.To + by} }

// Jointed is the room with another joint. Where trim stands inside a stop the
// tile ends a joint before it, and so it moves; so does the field beside a strip.
func (r Room) Jointed(joint length.Length) Room {
	was, by := r, joint-r.Joint
	r.Joint = joint
	if by == 0 {
		return r
	}
	r.Walls = slices.Clone(r.Walls)
	for i := range r.Walls {
		w := &r.Walls[i]
		w.Base = slices.Clone(w.Base)
		for k := range w.Base {
			w.Base[k].rejoint(joint-by, joint)
		}
		w.Openings = slices.Clone(w.Openings)
		for k := range w.Openings {
			w.Openings[k].rejoint(joint-by, joint)
		}
		if t := w.Left.Trim; t != nil && !t.Beyond {
			w.Left.Stops = w.Left.Stops.Moved(by)
		}
		if t := w.Right.Trim; t != nil && !t.Beyond {
			w.Right.Stops = w.Right.Stops.Moved(-by)
		}
		w.Head.Stops = w.Head.Stops.Moved(w.Head.Inset(was) - w.Head.Inset(r))
	}
	r.turn()
	r.stack()
	return r
}

// trimEnds moves the stops of a wall to where its tile ends, and refuses trim that would
// stand beyond the wall.
func (r *resolver) trimEnds(p path, w *WallFound) {
	w.Left.Stops = w.Left.Stops.Moved(w.Left.Trim.Inset(r.around.Joint))
	w.Right.Stops = w.Right.Stops.Moved(-w.Right.Trim.Inset(r.around.Joint))
	w.Head.Stops = w.Head.Stops.Moved(-w.Head.Inset(*r.around))
	over := func(p path, t *TrimFound, room length.Length) {
		if t != nil && t.Beyond && room < t.Width+r.around.Joint {
			r.faults.add(p, fmt.Sprintf("trim that would stand %s beyond the wall", (t.Width+r.around.Joint-room).Format(r.units, 0)),
				"a stop that leaves "+(t.Width+r.around.Joint).Format(r.units, 0)+" of wall for it, or trim with the place “in”")
		}
	}
	over(p.dot("left.trim"), w.Left.Trim, w.Left.Stops.From)
	over(p.dot("right.trim"), w.Right.Trim, w.Width-w.Right.Stops.To)
}
