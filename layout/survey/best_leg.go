package survey

import (
	"slices"

	"coursewright/layout/length"
)

// LegReason says why a leg that is laid as is best is laid as it is.
type LegReason uint8

// A leg of which the job says how it is laid has no reason. One that is still open has
// none yet.
const (
	NoReason   LegReason = iota
	LegOnly              // the room allows no single tiles beside the rim
	LegHeld              // the set-out that is held has it so
	LegParted            // single tiles: the bond would put a joint into it wherever it starts
	LegWorse             // single tiles: the bond would leave smaller cuts, in the leg or elsewhere
	LegAlike             // in the bond, which leaves nothing smaller than single tiles
	LegBetter            // in the bond, which leaves better cuts than single tiles
	LegTooThin           // left out: nobody can cut a tile so narrow
)

// bestLegs settles the legs that are laid as is best where there is no choice: the room allows
// no single tiles, or a set-out that is held has chosen. All others stay open (OpenLegs).
func (r *resolver) bestLegs(job Job, room *Room) {
	for _, name := range sortedKeys(job.Pins.Walls) {
		if len(job.Pins.Walls[name].Legs) > 0 {
			r.faults.add(path("pins.walls").dot(name).dot("legs"), "legs", "nothing here: how a leg is laid is said by its field leg")
		}
	}
	if r.around == nil || len(r.faults) > 0 {
		return
	}
	for i := range room.Walls {
		w := &room.Walls[i]
		held := map[string]string{}
		if job.Held != nil {
			held = job.Held.Walls[w.Name].Legs
		}
		for _, l := range w.LegsBeside() {
			k, _ := w.LegOf(l)
			s, side := &w.Base[k], l.Side()
			if !s.Best {
				continue
			}
			word, kept := held[side]
			switch {
			case !room.maySingleLeg(*w, k):
				s.Why = LegOnly
			case kept && slices.Index(Legs()[:3], word) < 0:
				r.faults.add(path("held.walls").dot(w.Name).dot("legs").dot(side), quote(word), "bond, single or none")
			case kept:
				s.Leg, s.Why = Leg(slices.Index(Legs(), word)), LegHeld
			}
		}
	}
}

// maySingleLeg tells whether a leg of the wall may be in single tiles.
func (r Room) maySingleLeg(w WallFound, k int) bool {
	if !r.Bond.Coursed() || r.Bond.Plumb || len(r.Bands) > 0 || r.Tile.Sheet.Any() || w.Set != nil {
		return false
	}
	w.Base = slices.Clone(w.Base)
	w.Base[k].Leg = SingleTiles
	return !w.stripOverLeg()
}

// LegAt is a leg of a room: its wall, the segment of base under it, and what is beside it.
type LegAt struct {
	Wall, Segment int
	Beside        LegBeside
}

// OpenLegs lists the legs that are laid as is best and of which nothing has said yet how.
func (r Room) OpenLegs() []LegAt {
	return r.legsWhere(func(s SegmentFound) bool { return s.Best && s.Why == NoReason })
}

// ChosenLegs lists the legs that were laid as is best.
func (r Room) ChosenLegs() []LegAt {
	return r.legsWhere(func(s SegmentFound) bool { return s.Best && s.Why != NoReason })
}

func (r Room) legsWhere(is func(SegmentFound) bool) (all []LegAt) {
	for i, w := range r.Walls {
		for _, l := range w.LegsBeside() {
			if k, _ := w.LegOf(l); is(w.Base[k]) {
				all = append(all, LegAt{i, k, l})
			}
		}
	}
	return all
}

// LayLeg is the room with a leg laid so, for that reason.
func (r Room) LayLeg(l LegAt, how Leg, why LegReason) Room {
	r.Walls = slices.Clone(r.Walls)
	w := &r.Walls[l.Wall]
	w.Base = slices.Clone(w.Base)
	w.Base[l.Segment].Leg, w.Base[l.Segment].Why = how, why
	return r
}

// Widths are how narrow and how wide a leg may be: wherever the end of its wall stands, and with
// whatever joint of the room.
func (l LegAt) Widths(r Room) (least, most length.Length) {
	for n, joint := range r.Joints {
		w := r.Jointed(joint).Walls[l.Wall]
		one := l.Beside.Width(w, Placed{Left: w.Left.Stops.To, Right: w.Right.Stops.From})
		other := l.Beside.Width(w, Placed{Left: w.Left.Stops.From, Right: w.Right.Stops.To})
		if n == 0 {
			least, most = one, other
		}
		least, most = min(least, one), max(most, other)
	}
	return least, most
}

// LegParted tells whether the room's bond puts a joint into some course of a leg wherever it
// starts: the leg is wider than what lies clear between neighbouring joints of all courses of
// the bond, it is high enough for all of them, and no wider than a tile.
func (r Room) LegParted(l LegAt) bool {
	w := r.Walls[l.Wall]
	end, floor := w.Left, w.Base[l.Segment]
	if l.Beside.Right {
		end = w.Right
	}
	if r.Bond.Num == 0 || end.Meets {
		return false
	}
	clear, pitch := length.Length(0), length.Length(0)
	for _, joint := range r.Joints {
		clear, pitch = max(clear, r.Jointed(joint).clear()), max(pitch, r.Tile.Height+joint)
	}
	least, most := l.Widths(r)
	return most <= r.Tile.Width && least > clear && l.Beside.Rim-floor.highest()-floor.Gap >= length.Length(r.Bond.Den+1)*pitch
}

// highest is how high a stretch of base comes.
func (s SegmentFound) highest() length.Length {
	top := s.Readings[0].Value
	for _, v := range s.Readings {
		top = max(top, v.Value)
	}
	return top
}
