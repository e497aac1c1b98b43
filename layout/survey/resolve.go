package survey

import (
	"fmt"

	"coursewright/layout/length"
)

// Resolve reads every length of the job, fills in the defaults of formats.md
// and checks that the room can be built. All faults come at once; where there
// are any the room is not to be used. The faults of fields come first in the
// order of the document; what compares several fields of one wall is looked at
// when each of that wall's fields has been read.
func (j Job) Resolve() (Room, Faults) {
	r := &resolver{}
	if j.Format != Format {
		r.faults.add("format", quote(j.Format), Format)
	}
	r.label(value{"title", j.Title}, longestTitle)
	if r.choice(value{"units", j.Units}, "in", "mm") == "mm" {
		r.units = length.Metric
	}
	room := Room{Title: j.Title, Units: r.units}
	r.measured(j.Measured, &room)
	room.Tile = r.tile("tile", j.Tile, j.Joint)
	if room.Joints = r.joints("joint", j.Joint); room.Joints != nil {
		room.Joint = room.Joints[0]
	}
	room.Bed = r.or(value{"bed", j.Bed}, r.usual(3*length.Inch/16, 5*length.Millimetre), bounds{0, thickest})
	room.Bond = r.bond("bond", j.Bond, room.Tile, room.Joints)
	r.limits(j.Limits, &room)
	room.Prefer = r.prefer("prefer", j.Prefer)
	r.around = &room
	room.Trims = r.trims("trims", j.Trims)
	r.walls(j, &room)
	r.pins("pins", j.Pins, &room)
	r.held("held", j, &room)
	for i := range room.Walls {
		if r.sound[i] {
			room.Walls[i].keepInside()
			room.Walls[i].doorways()
		}
	}
	r.stand(j.Walls, &room)
	r.bands(path("bands"), r.heldBands("held.bands", j), &room)
	r.heldStarts("held.bands", j, &room)
	r.singleLegs(room)
	r.partedRoom(room)
	r.sheetedLegs(room)
	r.singles(j, &room)
	r.bestLegs(j, &room)
	room.InRows = j.Held != nil && !j.Held.Round
	room.Work = r.work("work", j.Work, j.Joint)
	room.Grout = r.colour(value{"grout", j.Grout}, UsualGrout)
	r.choices(j)
	r.paths("confirmed", j.Confirmed)
	r.paths("guess", j.Guess)
	room.Guesses = r.guesses(j)
	r.pieces(room)
	if r.faults != nil {
		return Room{}, r.faults
	}
	return room, nil
}

func (r *resolver) measured(m Measured, room *Room) {
	finest := r.usual(length.Inch/64, length.Millimetre/2) // a finer one has more marks than can be tried
	room.Tape = r.or(value{"measured.tape", m.Tape}, r.usual(length.Inch/16, length.Millimetre), bounds{finest, length.Inch})
	room.Doubt = r.or(value{"measured.doubt", m.Doubt}, r.usual(length.Inch/8, 3*length.Millimetre), bounds{0, thickest})
}

// limits reads the person's own limits. A sealant limit that does not read
// must not make every gap a fault as well.
func (r *resolver) limits(l Limits, room *Room) {
	before := len(r.faults)
	room.Sealant = r.or(value{"limits.sealant", l.Sealant}, r.usual(length.Inch/4, 6*length.Millimetre), bounds{0, widestJoint})
	if len(r.faults) > before {
		room.Sealant = widestJoint
	}
	if l.Sliver != "" {
		room.Sliver = r.length(value{"limits.sliver", l.Sliver}, bounds{1, largestTile})
	}
}

// walls reads the walls, then who is neighbour to whom and what laps over what.
func (r *resolver) walls(j Job, room *Room) {
	switch n := len(j.Walls); {
	case n == 0:
		r.faults.add("walls", "no wall", "at least one wall")
	case n > mostWalls:
		r.faults.add("walls", fmt.Sprintf("%d walls", n), fmt.Sprintf("at most %d", mostWalls))
		return
	}
	taken := map[string]bool{}
	for i, w := range j.Walls {
		before := len(r.faults)
		room.Walls = append(room.Walls, r.wall(path("walls").at(i), w, room.Sealant, taken))
		r.sound = append(r.sound, len(r.faults) == before)
	}
	letter(room.Walls)
	r.order(j.SetOrder, room.Walls)
	neighbours(room.Walls)
	lap(room.Walls, room.Bed+room.Tile.Thickness)
	r.outsideCorners(j.Walls, room)
	r.beneath(room)
	r.topsUnder(j.Walls, room)
	for i, w := range room.Walls {
		if r.sound[i] {
			r.leftOver(path("walls").at(i), w)
		}
	}
}

// pieces bounds the number of pieces by the walls' areas.
func (r *resolver) pieces(room Room) {
	if r.faults != nil {
		return
	}
	total := room.About()
	if total > mostPieces {
		r.faults.add("walls", fmt.Sprintf("about %d pieces", total),
			fmt.Sprintf("at most %d pieces: a larger tile or fewer walls", mostPieces))
	}
}

// About is about how many pieces a room has, from the areas of its walls alone; never fewer than
// whole tiles fit.
func (r Room) About() int64 {
	total := int64(0)
	wide, high, each := r.Tile.Width, r.Tile.Height, int64(1)
	for _, t := range r.Bond.Others {
		wide, high, each = min(wide, t.Width), min(high, t.Height), int64(len(r.Bond.Others))
	}
	for _, w := range r.Walls {
		low, top := w.reach()
		across := length.DivFloor(w.Width, wide+r.Joint) + 1
		up := length.DivFloor(top-low, high+r.Joint) + 1
		total += across * up
	}
	return total * each
}
