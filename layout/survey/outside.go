package survey

import (
	"fmt"
	"slices"
	"strconv"

	"coursewright/layout/length"
)

// OutsideCorner is the kind of an end where the wall turns away from the room: a
// half wall, a curb, the front of a bench, boxing round pipes, the skirt of a tub.
const OutsideCorner Kind = "outside corner"

// How the tile of two walls is joined at an outside corner.
const (
	Lap   Kind = "lap"   // a tile laps over the cut edge of the other wall's
	Mitre Kind = "mitre" // both are cut at half the angle
	// Profile and Bullnose: a bar or rounded strip, or a lap with a rounded edge.
)

// OutsideFound is an outside corner as one of its two walls has it. Its tile ends at
// a line that is known, so to the solver the end stops: it counts as an exposed
// end, of two such ends the wall's cuts are mirrored, and no term of inside corners
// speaks of it.
type OutsideFound struct {
	Next  int            // the wall round the corner, or -1 where that is refused
	How   Kind           // Lap, Mitre, Profile or Bullnose
	Laps  bool           // this wall's tile laps over the edge of the other's; at a profile: it carries the bar
	Angle int            // degrees between the walls, through what stands behind the tile
	Strip *TrimFound     // the trim at the corner, on whichever wall it stands
	Past  length.Length  // how far the finished edge stands past the corner of the boards
	gap   *length.Length // what it keeps, where the job says so
}

// Bevel is how far the saw is tilted to mitre an edge, in half degrees: 90 for two
// walls that are square to each other.
func (o OutsideFound) Bevel() int { return 180 - o.Angle }

// HalfDegrees writes an angle in half degrees: "45°", "22.5°".
func HalfDegrees(n int) string {
	if n%2 == 0 {
		return fmt.Sprintf("%d°", n/2)
	}
	return fmt.Sprintf("%d.5°", n/2)
}

// Back is how much shorter than its face the back of a mitred tile is, which is
// as far as the saw goes in under the face: its thickness times the tangent of the
// bevel, at 45° the thickness.
func (o OutsideFound) Back(thickness length.Length) length.Length {
	return along(thickness, o.Bevel())
}

// Kerf is what a cut of a kerf costs along the face where the saw is tilted by the
// bevel: the kerf over its cosine, 1.414 kerfs at 45°.
func (o OutsideFound) Kerf(kerf length.Length) length.Length {
	_, cos := slant(o.Bevel())
	return length.Length((2*int64(kerf)*whole + cos) / (2 * cos))
}

// outsideEnd reads an end that meets an outside corner. What is done there stands
// at the right end of the wall before it; a gap and trim belong to it too.
func (r *resolver) outsideEnd(p path, e End, sealant length.Length) EndFound {
	o := &OutsideFound{Next: -1, Angle: 90}
	found := EndFound{Beyond: -1, Outside: o, Sight: r.sight(value{p.dot("sight"), e.Sight}, Plain)}
	if len(e.Lean) > 0 {
		r.faults.add(p.dot("lean"), "readings", "nothing here: at an outside corner tile ends plumb, and the bed takes up a lean")
	}
	r.unused("how an outside corner is made says its finish", value{p.dot("finish"), e.Finish})
	if e.Gap != "" {
		gap := r.length(value{p.dot("gap"), e.Gap}, bounds{0, sealant})
		o.gap = &gap
	}
	return found
}

// outsideCorners ties the walls at outside corners, reads what is done there, and
// puts both ends where their tile ends.
func (r *resolver) outsideCorners(typed []Wall, room *Room) {
	walls := room.Walls
	for i := range walls {
		left, right := &walls[i].Left, &walls[i].Right
		if left.Outside != nil {
			r.beginsRound(i, typed, walls)
		}
		if right.Outside != nil {
			r.endsRound(i, typed, walls)
		}
	}
	room.turn()
}

// beginsRound looks at a left end: the wall before it must end in the corner, and
// says what is done there.
func (r *resolver) beginsRound(i int, typed []Wall, walls []WallFound) {
	p, e := path("walls").at(i).dot("left"), typed[i].Left
	before := (i + len(walls) - 1) % len(walls)
	if i == 0 && len(walls) < 4 {
		r.faults.add(p.dot("meets"), quote(string(OutsideCorner))+" without a wall before it", `"corner", or "stops" with a mark; four walls or more may close a room`)
		return
	}
	if walls[before].Right.Outside == nil {
		r.faults.add(p.dot("meets"), quote(string(OutsideCorner))+", where "+walls[before].Name+" does not end in one",
			"the same at the right end of "+walls[before].Name)
		return
	}
	r.unused("what is done at an outside corner stands at the right end of "+walls[before].Name,
		value{p.dot("corner"), e.Corner}, value{p.dot("laps"), e.Laps}, value{p.dot("angle"), e.Angle}, value{p.dot("gap"), e.Gap}, value{p.dot("trim"), e.Trim})
}

// endsRound looks at a right end and reads the corner for both walls.
func (r *resolver) endsRound(i int, typed []Wall, walls []WallFound) {
	p, e := path("walls").at(i).dot("right"), typed[i].Right
	next := i + 1
	if next == len(walls) {
		next = 0
		if len(walls) < 4 {
			r.faults.add(p.dot("meets"), quote(string(OutsideCorner))+" without a wall after it", `"corner", or "stops" with a mark; four walls or more may close a room`)
			return
		}
	}
	a, b := &walls[i], &walls[next]
	if b.Left.Outside == nil {
		r.faults.add(p.dot("meets"), quote(string(OutsideCorner))+", where "+b.Name+" does not begin in one", "the same at the left end of "+b.Name)
		return
	}
	o := a.Right.Outside
	o.How = Lap
	if e.Corner != "" {
		o.How = r.kind(value{p.dot("corner"), e.Corner}, Lap, Mitre, Profile, Bullnose)
	}
	o.Laps = r.laps(value{p.dot("laps"), e.Laps}, o.How, a.Width >= b.Width)
	o.Angle = r.angleOf(value{p.dot("angle"), e.Angle}, o.How)
	o.Strip = r.strip(p, e, o.How)
	if o.How == Profile {
		r.unused("a profile has its own edge; it needs no gap", value{p.dot("gap"), e.Gap})
	}
	its := *o
	o.Next, its.Next, its.Laps = next, i, !o.Laps
	b.Left.Outside = &its
	for _, end := range []*EndFound{&a.Right, &b.Left} {
		if end.Outside.Laps {
			end.Trim = o.Strip
			if o.How == Bullnose {
				end.Finish = Bullnose
			}
		}
	}
}

// laps tells whether the wall before the corner laps over the other: by default the
// wider of the two, which is seen more (bullnose on the more seen wall, over the
// other wall's cut tile: how-to page).
func (r *resolver) laps(v value, how Kind, wider bool) bool {
	switch {
	case how == Mitre:
		r.unused("at a mitre neither wall laps", v)
		return false
	case how == Profile:
		r.unused("at a profile neither wall laps", v)
		return true
	case v.text == "":
		return wider
	}
	return r.choice(v, "left", "right") == "left"
}

// angleOf reads the angle of a mitre in whole degrees.
func (r *resolver) angleOf(v value, how Kind) int {
	if v.text == "" {
		return 90
	}
	if how != Mitre {
		r.unused("an angle belongs to a mitre; other corners are square", v)
		return 90
	}
	n, err := strconv.Atoi(v.text)
	if err != nil || n < leastAngle || n > mostAngle {
		r.faults.add(v.path, quote(v.text), fmt.Sprintf("whole degrees from %d to %d", leastAngle, mostAngle))
		return 90
	}
	return n
}

// Angles between two walls: what stands at a sharper corner is no wall, and at a
// blunter one tile is butted.
const leastAngle, mostAngle = 60, 150

// strip finds the trim at an outside corner. A profile needs one; a bullnose may be
// the tile's own.
func (r *resolver) strip(p path, e End, how Kind) *TrimFound {
	kinds := []Kind{Bullnose}
	switch how {
	case Profile:
		kinds = []Kind{Profile, QuarterRound}
	case Bullnose:
	default:
		r.unused("trim belongs to a profile or a bullnose", value{p.dot("trim"), e.Trim})
		return nil
	}
	if e.Trim == "" {
		if how == Profile {
			r.faults.add(p.dot("trim"), "nothing", "the name of one of the trims, of the kind profile or quarter round")
		}
		return nil
	}
	t := r.edged(p.dot("trim"), e.Trim, "")
	switch {
	case t == nil:
	case !slices.Contains(kinds, t.Kind):
		r.faults.add(p.dot("trim"), quote(e.Trim)+", which is a "+string(t.Kind), "trim of the kind "+kindList(kinds))
		return nil
	case t.Beyond:
		r.faults.add(p.dot("trim"), quote(e.Trim)+", which stands beyond a stop", "trim with the place “in”")
		return nil
	}
	return t
}

func kindList(kinds []Kind) string {
	text := string(kinds[0])
	for _, k := range kinds[1:] {
		text += " or " + string(k)
	}
	return text
}

// turn puts the ends at outside corners where their tile ends with the room's bed,
// thickness and joint.
func (r *Room) turn() {
	for i := range r.Walls {
		w := &r.Walls[i]
		if o := w.Left.Outside; o != nil && o.Next >= 0 {
			o = w.Left.turned(*r)
			at := -w.Left.out(*r)
			w.Left.Outside, w.Left.Stops = o, Span{at, at}
		}
		if o := w.Right.Outside; o != nil && o.Next >= 0 {
			o = w.Right.turned(*r)
			at := w.Width + w.Right.out(*r)
			w.Right.Outside, w.Right.Stops = o, Span{at, at}
		}
	}
}

// Turns tells whether a wall of the room meets another in an outside corner.
func (r Room) Turns() bool {
	return slices.ContainsFunc(r.Walls, func(w WallFound) bool { return w.Right.Outside != nil })
}

// turnedOr is what an end that does not meet an inside corner is edged with: what
// is bought along it, or an outside corner where nothing is.
func (e EndFound) turnedOr(finish Kind) Kind {
	if e.Outside != nil && finish == "" {
		return OutsideCorner
	}
	return finish
}

// turned is the corner with the place of its finished edge.
func (e EndFound) turned(r Room) *OutsideFound {
	o := *e.Outside
	deep := r.Bed + r.Tile.Thickness
	o.Past = along(deep, o.Bevel())
	return &o
}

// out is how far past the corner of the boards the wall's tile goes; less than zero
// is short of it.
//
//   - A lap: bed and thickness of the other wall, so that its own edge is seen, flush
//     with the other's face. The other wall's tile goes on under it to a joint from its
//     back: as far as the bed less the joint. Between two laps of 4 in from back to back
//     with joints of 1/8 in that leaves a piece of 4 - 2 × 1/8 = 3 3/4 in (how-to page).
//   - A mitre: to where the two faces meet, on both walls.
//   - A profile: to a joint before it, on both walls; its edge stands where the faces meet.
//   - A bullnose: a lap, which with trim in pieces ends a joint before these.
func (e EndFound) out(r Room) length.Length {
	o, deep := e.Outside, r.Bed+r.Tile.Thickness
	gap := r.Joint
	if o.gap != nil {
		gap = *o.gap
	}
	switch {
	case o.How == Mitre:
		if o.gap == nil {
			gap = 0
		}
		return along(deep, o.Bevel()) - gap
	case o.How == Profile:
		return deep - o.Strip.Inset(r.Joint)
	case o.Laps:
		return deep - o.Strip.Inset(r.Joint)
	}
	return r.Bed - gap
}

// whole is one, in the parts that sines and cosines are counted in.
const whole = 1_000_000_000

// along is a depth times the tangent of an angle in half degrees, to the nearest
// unit: how far two faces at a depth meet past the corner behind them. At 45° it is
// the depth itself.
func along(deep length.Length, halves int) length.Length {
	if halves == 90 {
		return deep
	}
	sin, cos := slant(halves)
	return length.Length((2*int64(deep)*sin + cos) / (2 * cos))
}

// slant is the sine and the cosine of an angle in half degrees, from those of half a
// degree. The error after 120 steps is under a millionth, a tenth of a unit over
// 100 mm.
func slant(halves int) (sin, cos int64) {
	const sin1, cos1 = 8_726_535, 999_961_923
	sin, cos = 0, whole
	for range halves {
		sin, cos = (sin*cos1+cos*sin1+whole/2)/whole, (cos*cos1-sin*sin1+whole/2)/whole
	}
	return sin, cos
}
