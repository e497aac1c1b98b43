package survey

import (
	"maps"
	"slices"

	"coursewright/layout/length"
)

// Held is a set-out that stays as it is: everything a solver decided for the job,
// as a plan prints it, to 0.001 mm. Pins of the job itself come first; what
// neither says is for the solver.
type Held struct {
	// Engine names the rules that gave the set-out, where it is held because other
	// rules would give another one and nobody has said yet which it shall be.
	Engine string             `json:"engine,omitempty"`
	Course CoursePin          `json:"course,omitzero"`
	Hand   string             `json:"hand,omitempty"`  // where the bond leaves it open
	Joint  string             `json:"joint,omitempty"` // one of the spacers, where the job gives a range
	Walls  map[string]WallPin `json:"walls,omitempty"`
	Bands  []HeldBand         `json:"bands,omitempty"`

	Round bool `json:"round,omitempty"` // what goes on round the edges of openings does so (Room.GoesRound); else returns are in plain rows
}

// HeldBand is a band of the job by its name.
type HeldBand struct {
	Name   string             `json:"name"`
	Bottom string             `json:"bottom,omitempty"` // where it is free
	Hand   string             `json:"hand,omitempty"`   // where its bond leaves it open
	Line   string             `json:"line,omitempty"`   // where it is laid in a pattern
	Walls  map[string]WallPin `json:"walls,omitempty"`  // where its tile starts
}

// held reads the set-out that a job holds: what the job pins itself is left out.
// The pins must have been read.
func (r *resolver) held(p path, job Job, room *Room) {
	h := job.Held
	if h == nil {
		return
	}
	r.label(value{p.dot("engine"), h.Engine}, longestName)
	if h.Hand != "" {
		hand := r.hand(value{p.dot("hand"), h.Hand}, room.Bond)
		if room.Bond.Num != 0 && room.Bond.Hand == Free {
			room.Bond.Hand = hand
		}
	}
	if h.Joint != "" {
		r.heldJoint(value{p.dot("joint"), h.Joint}, room)
	}
	r.pins(p, h.beyond(job.Pins), room)
}

// heldJoint takes one of the joints of a range. A job of one joint has no choice.
func (r *resolver) heldJoint(v value, room *Room) {
	before := len(r.faults)
	joint := r.printed(v, bounds{0, widestJoint})
	switch {
	case len(r.faults) > before || len(room.Joints) < 2:
	case !slices.Contains(room.Joints, joint):
		r.faults.add(v.path, joint.Format(r.units, 0), "one of "+r.sizes(room.Joints))
	default:
		*room = room.Jointed(joint)
		room.Joints = []length.Length{joint}
	}
}

// heldBands gives the bands of a job with what is held of them.
func (r *resolver) heldBands(p path, job Job) []Band {
	if job.Held == nil || len(job.Held.Bands) == 0 {
		return job.Bands
	}
	out := slices.Clone(job.Bands)
	for i, h := range job.Held.Bands {
		here := p.at(i)
		k := slices.IndexFunc(out, func(b Band) bool { return b.Name == h.Name })
		if k < 0 {
			r.faults.add(here.dot("name"), quote(h.Name), "the name of a band of the job")
			continue
		}
		if h.Bottom != "" && out[k].Bottom.At == "" && r.inBand(value{here.dot("bottom"), h.Bottom}, out[k].Bottom) {
			out[k].Bottom = Mark{At: h.Bottom}
		}
		if h.Hand != "" && out[k].Bond.Kind == string(Running) && out[k].Bond.Hand == "" {
			out[k].Bond.Hand = r.choice(value{here.dot("hand"), h.Hand}, "left", "right")
		}
	}
	return out
}

// inBand tells whether a held height lies in the range that a band is given, as far as that reads.
func (r *resolver) inBand(v value, free Mark) bool {
	at, err := length.ParsePrinted(v.text, r.units)
	from, badFrom := length.Parse(free.From, r.units)
	to, badTo := length.Parse(free.To, r.units)
	if err != nil || badFrom != nil || badTo != nil {
		return true // said of the band
	}
	return r.inRange(v, at, Span{from, to})
}

// heldStarts pins where the tile of held bands starts.
func (r *resolver) heldStarts(p path, job Job, room *Room) {
	if job.Held == nil {
		return
	}
	for i, h := range job.Held.Bands {
		k := slices.IndexFunc(room.Bands, func(b BandFound) bool { return b.Name == h.Name })
		if k < 0 {
			continue
		}
		starts := map[int]length.Length{}
		for _, name := range sortedKeys(h.Walls) {
			here := p.at(i).dot("walls").dot(name)
			w := slices.IndexFunc(room.Walls, func(w WallFound) bool { return w.Name == name })
			if w < 0 {
				r.faults.add(here, quote(name), "the name of a wall: "+wallNames(room.Walls))
				continue
			}
			starts[w] = r.printed(value{here.dot("edge"), h.Walls[name].Edge}, upright())
		}
		room.Bands[k].Starts = starts
		if h.Line != "" {
			line := r.printed(value{p.at(i).dot("line"), h.Line}, upright())
			room.Bands[k].Line = &line
		}
	}
}

// beyond is what a held set-out pins that the job does not pin itself. A pinned
// edge of an opening takes the place of the facing edge too, whose distance the
// opening's size decides.
func (h Held) beyond(own Pins) Pins {
	out := Pins{Course: h.Course, Walls: map[string]WallPin{}}
	if own.Course.Line != "" {
		out.Course = CoursePin{}
	}
	for name, pin := range h.Walls {
		is := own.Walls[name]
		if is.Edge != "" || is.Joint != "" || is.Tile != "" {
			pin.Edge, pin.Joint, pin.Tile, pin.Beyond = "", "", "", nil
		}
		pin.Marks = maps.Clone(pin.Marks)
		for mark, at := range is.Marks {
			if at != "" {
				delete(pin.Marks, mark)
				delete(pin.Marks, string(MarkName(mark).facing()))
			}
		}
		out.Walls[name] = pin
	}
	return out
}
