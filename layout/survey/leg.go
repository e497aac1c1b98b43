package survey

import (
	"slices"

	"coursewright/layout/length"
)

// Leg is how the tile that comes down beside a tub is laid.
type Leg uint8

// A leg is as good as the bond of its wall allows, or in single tiles cut to its
// own width, course by course, or it is left out.
const (
	InBond Leg = iota
	SingleTiles
	NoLeg
)

// IsLeg tells whether a stretch of base is the floor under a leg: at an end of the wall, beside
// a tub, shower base or curb.
func (w Wall) IsLeg(k int) bool {
	rim := func(k int) bool { return k >= 0 && k < len(w.Base) && Kind(w.Base[k].Meets).Rim() }
	return Kind(w.Base[k].Meets) == Floor && (k == 0 && rim(1) || k == len(w.Base)-1 && rim(k-1))
}

// legs reads how the legs of a wall are laid: over a floor at an end of the base
// that has a tub, shower base or curb beside it.
func (r *resolver) legs(p path, typed []Segment, found []SegmentFound) {
	for i, s := range typed {
		if s.Leg == "" {
			continue
		}
		at := value{p.at(i).dot("leg"), s.Leg}
		beside := i == 0 && len(found) > 1 && found[1].Meets.Rim() || i > 0 && i == len(found)-1 && found[i-1].Meets.Rim()
		if found[i].Meets != Floor || !beside {
			r.unused("a leg is a floor at the end of a wall, beside a tub, shower base or curb", at)
			continue
		}
		if word := r.choice(at, Legs()...); word == BestLeg {
			found[i].Best = true // which is settled once the whole room is read (bestLegs)
		} else {
			found[i].Leg = Leg(slices.Index(Legs(), word))
		}
		if found[i].Leg == SingleTiles && r.around != nil && (!r.around.Bond.Coursed() || r.around.Bond.Plumb) {
			r.faults.add(at.path, quote(s.Leg)+" beside a bond without level courses", "bond or none")
		}
	}
}

// singleLegs refuses legs in single tiles in a room with bands, whose courses begin
// anew.
func (r *resolver) singleLegs(room Room) {
	if len(room.Bands) == 0 {
		return
	}
	for i, w := range room.Walls {
		for k, s := range w.Base {
			if s.Leg == SingleTiles {
				r.faults.add(path("walls").at(i).dot("base").at(k).dot("leg"), "“single” in a room with bands", "bond or none")
			}
		}
	}
}

// Legs are the words of the job file: how a leg is laid, and that it is laid as is best.
func Legs() []string { return []string{"bond", "single", "none", BestLeg} }

// BestLeg is the word for a leg that is laid as the order of merit says.
const BestLeg = "best"

// String is the word of the job file.
func (l Leg) String() string { return Legs()[l] }

// bonded gives the first and the last segment of base that the bond of the wall
// comes down to: all but legs that are laid by themselves or left out. Where only
// such are left, all.
func (w WallFound) bonded() (first, last int) {
	last = len(w.Base) - 1
	if last > 0 && w.Base[0].Leg != InBond {
		first = 1
	}
	if last > first && w.Base[last].Leg != InBond {
		last--
	}
	return first, last
}

// SingleLegs tells whether a leg of the wall is in single tiles.
func (w WallFound) SingleLegs() bool {
	return slices.ContainsFunc(w.Base, func(s SegmentFound) bool { return s.Leg == SingleTiles })
}

// WithLegs is the wall with the legs that are laid by themselves as part of its
// region.
func (w WallFound) WithLegs() WallFound {
	w.Base = slices.Clone(w.Base)
	for i := range w.Base {
		if w.Base[i].Leg == SingleTiles {
			w.Base[i].Leg = InBond
		}
	}
	return w
}

// LegBeside is a leg that is laid by itself: at which end of the wall it is, and
// where the rim and the front beside it are, with their gaps.
type LegBeside struct {
	Right      bool
	Rim, Front length.Length
}

// Side is the side of the wall that the leg is at.
func (l LegBeside) Side() string {
	if l.Right {
		return "right"
	}
	return "left"
}

// Width is how wide the leg is where the ends of the wall are placed.
func (l LegBeside) Width(w WallFound, at Placed) length.Length {
	switch {
	case l.Right && w.Right.Meets:
		return w.Width - w.Right.Gap - w.Right.Behind - l.Front
	case l.Right:
		return at.Right - l.Front
	case w.Left.Meets:
		return l.Front - w.Left.Gap - w.Left.Behind
	}
	return l.Front - at.Left
}

// LegsBeside lists the legs of the wall, in bond or by themselves, from left to right.
func (w WallFound) LegsBeside() []LegBeside {
	var all []LegBeside
	last := len(w.Base) - 1
	if last > 0 && w.Base[0].Meets == Floor && w.Base[1].Meets.Rim() {
		tub := w.Base[1]
		all = append(all, LegBeside{Rim: tub.Readings[0].Value + tub.Gap, Front: tub.Readings[0].At - tub.Gap})
	}
	if last > 0 && w.Base[last].Meets == Floor && w.Base[last-1].Meets.Rim() {
		tub := w.Base[last-1]
		end := tub.Readings[len(tub.Readings)-1]
		all = append(all, LegBeside{Right: true, Rim: end.Value + tub.Gap, Front: end.At + tub.Gap})
	}
	return all
}

// LegOf gives the segment of base under a leg.
func (w WallFound) LegOf(l LegBeside) (index int, how Leg) {
	if l.Right {
		index = len(w.Base) - 1
	}
	return index, w.Base[index].Leg
}
