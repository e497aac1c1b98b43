package survey

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"coursewright/layout/length"
)

// Bounds of bands: nobody sets more.
const (
	MostBands   = 4
	mostCourses = 100
)

// bands reads the bands, and checks that they and the course line can all stand
// on joint lines. What compares several fields waits until each could be read.
func (r *resolver) bands(p path, typed []Band, room *Room) {
	if len(typed) > MostBands {
		r.faults.add(p, fmt.Sprintf("%d bands", len(typed)), fmt.Sprintf("at most %d", MostBands))
		return
	}
	taken, before := map[string]bool{}, len(r.faults)
	for i, b := range typed {
		room.Bands = append(room.Bands, r.band(p.at(i), b, *room, taken))
	}
	if len(typed) == 0 || len(r.faults) > before || slices.Contains(r.sound, false) || room.Tile.Height == 0 || room.Joints == nil {
		return
	}
	if room.Bond.Plumb {
		r.faults.add("bond", "columns", "level courses, or a pattern: a band stands between level joints")
		return
	}
	room.stack()
	widest := *room
	widest.Joint = room.Joints[len(room.Joints)-1]
	widest.stack()
	for i := range room.Bands {
		r.bandOnWalls(p.at(i), i, &widest)
	}
	for w := range room.Walls {
		r.stacked(p, w, &widest)
	}
	if len(r.faults) > before {
		return
	}
	if room.Bond.Coursed() {
		r.onJoints(p, room)
		room.stack()
	}
	r.throughPatterns(p, room)
}

// band reads one band.
func (r *resolver) band(p path, b Band, room Room, taken map[string]bool) BandFound {
	found := BandFound{Name: r.name(value{p.dot("name"), b.Name}, taken), ToHead: b.ToHead, Courses: max(1, b.Courses)}
	found.Walls = r.bandWalls(p.dot("walls"), b.Walls, room.Walls)
	joint := Measure{Plain: b.Joint}
	if b.Joint != "" {
		found.Joint = r.length(value{p.dot("joint"), b.Joint}, bounds{1, widestJoint})
	}
	if found.Tile = r.tile(p.dot("tile"), b.Tile, joint); b.Tile.Colour == "" {
		found.Tile.Colour = UsualBand
	}
	if reflect.DeepEqual(b.Bond, Bond{}) {
		b.Bond.Kind = string(Stack)
	}
	joints := room.Joints
	if found.Joint > 0 {
		joints = []length.Length{found.Joint}
	}
	if found.Bond = r.bond(p.dot("bond"), b.Bond, found.Tile, joints); found.Bond.Plumb {
		r.faults.add(p.dot("bond"), "columns", "stack or running bond in level courses, or a pattern")
	}
	r.bandHeight(p, b, &found)
	switch {
	case !found.Bond.Coursed() && b.Courses > 0:
		r.faults.add(p.dot("courses"), fmt.Sprint(b.Courses), "nothing here: a band laid in a pattern has a height")
	case b.Courses < 0 || b.Courses > mostCourses:
		r.faults.add(p.dot("courses"), fmt.Sprint(b.Courses), fmt.Sprintf("a whole number from 1 to %d", mostCourses))
	case b.ToHead && b.Courses > 0:
		r.faults.add(p.dot("courses"), fmt.Sprint(b.Courses), "nothing here: the band goes up to the head")
	}
	if b.Upon != "" {
		r.bandUpon(p, b, room, &found)
		return found
	}
	found.Bottom = r.bandBottom(p.dot("bottom"), b.Bottom)
	found.Near = found.Bottom.From
	if b.Near != "" {
		near := r.length(value{p.dot("near"), b.Near}, upright())
		found.Near = min(max(near, found.Bottom.From), found.Bottom.To)
	}
	return found
}

// bandUpon reads the band that another stands upon: one before it in the list, on all of its
// walls, with none upon it yet.
func (r *resolver) bandUpon(p path, b Band, room Room, found *BandFound) {
	here := value{p.dot("upon"), b.Upon}
	if b.Bottom != (Mark{}) {
		r.faults.add(p.dot("bottom"), "a height", "nothing here: the band stands upon "+clip(b.Upon))
	}
	r.unused("the band it stands upon says its height", value{p.dot("near"), b.Near})
	k := slices.IndexFunc(room.Bands, func(o BandFound) bool { return o.Name == b.Upon })
	if k < 0 {
		r.faults.add(here.path, quote(b.Upon), "the name of a band that comes before it")
		return
	}
	under := room.Bands[k]
	if found.Upon = b.Upon; len(b.Walls) == 0 {
		found.Walls = slices.Clone(under.Walls)
	}
	switch {
	case under.ToHead:
		r.faults.add(here.path, quote(b.Upon)+", which goes up to the head", "a band that ends under it")
	case slices.ContainsFunc(room.Bands, func(o BandFound) bool { return o.Upon == b.Upon }):
		r.faults.add(here.path, quote(b.Upon)+", upon which another stands", "the band that stands on it")
	case slices.ContainsFunc(found.Walls, func(w int) bool { return !under.On(w) }):
		r.faults.add(p.dot("walls"), "a wall on which "+clip(b.Upon)+" does not run", "walls that both run round")
	}
}

// bandBottom reads the bottom edge. A measured one may be one a plan has printed.
func (r *resolver) bandBottom(p path, m Mark) Span {
	if m.At != "" && m.From == "" && m.To == "" {
		at := r.printed(value{p.dot("at"), m.At}, upright())
		return Span{at, at}
	}
	return r.span(p, &m, upright())
}

// bandWalls reads the names of the walls that a band runs round.
func (r *resolver) bandWalls(p path, names []string, walls []WallFound) []int {
	var out []int
	if len(names) == 0 {
		for i := range walls {
			out = append(out, i)
		}
		return out
	}
	for k, name := range names {
		i := slices.IndexFunc(walls, func(w WallFound) bool { return w.Name == name })
		switch {
		case i < 0:
			r.faults.add(p.at(k), quote(name), "the name of a wall: "+wallNames(walls))
		case slices.Contains(out, i):
			r.faults.add(p.at(k), quote(name)+" a second time", "each wall once")
		default:
			out = append(out, i)
		}
	}
	slices.Sort(out)
	return out
}

// bandOnWalls checks that a band stands over the base and under the head of each
// of its walls wherever it may go, and over what stands already.
func (r *resolver) bandOnWalls(p path, i int, room *Room) {
	b := room.Bands[i]
	top := length.Length(0)
	if !b.ToHead {
		top = b.High(room.Joints[len(room.Joints)-1])
	}
	for _, k := range b.Walls {
		w := room.Walls[k]
		low, high := w.between()
		if w.Set != nil {
			low = max(low, w.Set.Left, w.Set.Right)
		}
		if b.Bottom.From <= low || b.Bottom.To+top >= high {
			r.faults.add(p.dot("bottom"), "a band from "+b.Bottom.From.Format(r.units, r.units.FineStep())+" up",
				fmt.Sprintf("heights over %s, where the base or set tile of %s is highest, that leave it under %s, its head",
					low.Format(r.units, r.units.FineStep()), w.Name, high.Format(r.units, r.units.FineStep())))
			return
		}
	}
}

// Between is where the bases with their gaps are highest and the heads lowest: a
// band round all walls stands between the two.
func (r Room) Between() (low, high length.Length) {
	for i, w := range r.Walls {
		l, h := w.between()
		if i == 0 || l > low {
			low = l
		}
		if i == 0 || h < high {
			high = h
		}
	}
	return low, high
}

// Foot is the lowest the room's bases are: its floor, where some base is one.
func (r Room) Foot() length.Length {
	low, _ := r.Walls[0].reach()
	for _, w := range r.Walls {
		l, _ := w.reach()
		low = min(low, l)
	}
	return low
}

// between is where the base with its gap is highest and the head lowest.
func (w WallFound) between() (low, high length.Length) {
	first := true
	for _, s := range w.Base {
		for _, x := range s.Readings {
			if y := x.Value + s.Gap; first || y > low {
				low, first = y, false
			}
		}
	}
	high = w.Head.Stops.From
	if w.Head.Meets {
		high = w.Head.Readings[0].Value
		for _, x := range w.Head.Readings {
			high = min(high, x.Value)
		}
		high -= w.Head.Gap
	}
	return low, high
}

// stacked checks that the bands of a wall stand clear of each other.
func (r *resolver) stacked(p path, wall int, room *Room) {
	on := room.BandsOn(wall)
	for k := 1; k < len(on); k++ {
		under, over := room.Bands[on[k-1]], room.Bands[on[k]]
		least := under.Bottom.To + under.High(room.Joints[len(room.Joints)-1])
		if over.Upon == under.Name {
			continue
		}
		if under.ToHead || over.Bottom.From < least {
			want := "a height over " + least.Format(r.units, r.units.FineStep()) + ", the top of the band " + clip(under.Name)
			if under.ToHead {
				want = "nothing over the band " + clip(under.Name) + ", which goes up to the head"
			}
			r.faults.add(p.at(on[k]).dot("bottom"), over.Bottom.From.Format(r.units, r.units.FineStep()), want)
			return
		}
	}
}

// onJoints keeps the joints with which all bands can stand on joint lines of one
// set of courses, and refuses bands for which there is none.
func (r *resolver) onJoints(p path, room *Room) {
	var kept []length.Length
	for _, j := range room.Joints {
		if with := room.WithJoint(j); with.anyLine() {
			kept = append(kept, j)
		}
	}
	if kept == nil {
		r.clash(p, *room)
		return
	}
	room.Joints, room.Joint = kept, kept[0]
}

// Courses says where course lines must stand, whole pitches aside, so that the
// bottom edge of every band stands on a joint line. A course line is told on the
// tile under all bands, and each band moves the courses over it up.
func (r Room) courses() []Span {
	var out []Span
	for w := range r.Walls {
		up := length.Length(0)
		for _, i := range r.BandsOn(w) {
			b := r.Bands[i]
			s := Span{b.Bottom.From - up, b.Bottom.To - up}
			if !slices.Contains(out, s) {
				out = append(out, s)
			}
			up += b.High(r.Joint) + r.Joint
		}
	}
	return out
}

// WithJoint is the room with one joint, and where its course lines must stand with it.
func (r Room) WithJoint(j length.Length) Room {
	r = r.Jointed(j)
	r.Course = r.courses()
	return r
}

// anyLine tells whether there is a course line with which every band stands on a
// joint line. If there is one, the lowest place of some span is one.
func (r Room) anyLine() bool {
	pitch := r.Tile.Height + r.Joint
	good := func(y length.Length) bool {
		return !slices.ContainsFunc(r.Course, func(s Span) bool { return !s.Congruent(y, pitch) })
	}
	if r.Line != nil {
		return good(*r.Line)
	}
	return slices.ContainsFunc(r.Course, func(s Span) bool { return good(s.From) })
}

// clash says what two things cannot both stand on joint lines, and by how much.
func (r *resolver) clash(p path, room Room) {
	room = room.WithJoint(room.Joints[0])
	pitch := room.Tile.Height + room.Joint
	last := len(room.Bands) - 1
	if room.Line == nil {
		var names []string
		for _, b := range room.Bands {
			names = append(names, b.Name)
		}
		r.faults.add(p.at(last).dot("bottom"), "heights with which no course line puts "+clip(strings.Join(names, " and "))+" on joint lines",
			`a free height, {"from": …, "to": …}, as wide as a course, `+pitch.Format(r.units, r.units.FineStep()))
		return
	}
	for i, b := range room.Bands {
		up := room.Under(b.Walls[0], i)
		off := length.Mod(*room.Line+up-b.Bottom.From, pitch)
		if off <= b.Bottom.To-b.Bottom.From {
			continue
		}
		near := b.Bottom.From + off
		if 2*off > pitch {
			near -= pitch
		}
		r.faults.add(p.at(i).dot("bottom"), "a height that misses the joint lines of the course line at "+room.Line.Format(r.units, 0)+
			" by "+(near-b.Bottom.From).Abs().Format(r.units, r.units.FineStep()), near.Plain(r.units, 0)+", or let go of the course line")
		return
	}
}

// Under is how far the bands under band i on a wall move the courses up.
func (r Room) Under(wall, i int) length.Length {
	up := length.Length(0)
	for _, k := range r.BandsOn(wall) {
		if k == i {
			break
		}
		up += r.Bands[k].High(r.Joint) + r.Joint
	}
	return up
}
