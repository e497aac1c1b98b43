package form

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// bandRoom is between which heights a wall has room for the bottom edge of a band.
func bandRoom(room survey.Room, band, wall int) (over, under length.Length) {
	b := room.Bands[band]
	over, under = survey.Room{Walls: room.Walls[wall : wall+1]}.Between()
	if !b.ToHead {
		under -= b.High(room.Joints[len(room.Joints)-1])
	}
	return over, under
}

// HasRoom tells whether a wall has room for a band at some height at which that may stand: a bench, a
// curb and a half wall end under it, and a strip from base to head goes through one in a pattern.
func HasRoom(room survey.Room, band, wall int) bool {
	if band >= len(room.Bands) || wall >= len(room.Walls) {
		return true
	}
	parts := func(o survey.OpeningFound) bool { return o.Kind == survey.PlumbStrip && o.Parts() }
	if !room.Bands[band].Bond.Coursed() && slices.ContainsFunc(room.Walls[wall].Openings, parts) {
		return false
	}
	over, under := bandRoom(room, band, wall)
	bottom := room.Bands[band].Bottom
	return max(bottom.From, over+1) <= min(bottom.To, under-1)
}

// fitBand narrows the range of a free band to what a wall on which it is to run as well has room for.
func fitBand(job *survey.Job, band int, wall string) {
	system, _ := System(job.Units)
	room, faults := job.Resolve()
	k := slices.IndexFunc(job.Walls, func(w survey.Wall) bool { return w.Name == wall })
	b := &job.Bands[band]
	if len(faults) > 0 || k < 0 || b.Upon != "" || b.Bottom.At != "" || !HasRoom(room, band, k) {
		return
	}
	over, under := bandRoom(room, band, k)
	found, step := room.Bands[band], system.Step()
	from, to := max(found.Bottom.From, (over+step).CeilTo(step)), min(found.Bottom.To, (under-step).FloorTo(step))
	if from > to || from == found.Bottom.From && to == found.Bottom.To {
		return
	}
	say := func(l length.Length) string { return l.Plain(system, step) }
	b.Bottom, b.Near = survey.Mark{From: say(from), To: say(to)}, say(min(max(found.Near, from), to))
	tidyMark(&b.Bottom)
	if b.Bottom.At != "" {
		b.Near = ""
	}
}

// clearOfReach moves a new band in a room that is laid in a pattern away from where openings that are free may stand:
// over them all, or under them where over them is no room. Among courses openings keep clear of a band themselves.
func clearOfReach(job *survey.Job, b *survey.Band) {
	with := *job
	with.Bands = append(slices.Clone(job.Bands), *b)
	room, faults := job.Resolve()
	if _, clash := with.Resolve(); len(clash) == 0 || len(faults) > 0 || room.Bond.Coursed() || b.Upon != "" {
		return
	}
	plain := *job // without what may be in the way
	plain.Bands, plain.Walls = []survey.Band{*b}, slices.Clone(job.Walls)
	for i := range plain.Walls {
		plain.Walls[i].Openings = nil
	}
	clear, faults := plain.Resolve()
	if len(faults) > 0 {
		return
	}
	system, _ := System(job.Units)
	step, joint, it := system.Step(), room.Joints[len(room.Joints)-1], clear.Bands[0]
	low, head := clear.Between()
	under, over := head, low
	for _, k := range it.Walls {
		for _, o := range room.Walls[k].Openings {
			if e := o.Reach(); o.Kind != survey.Pipe && !o.Measured() {
				under, over = min(under, e.Bottom), max(over, e.Top)
			}
		}
	}
	most, _ := length.Parse(pick(job, "6", "150"), system) // it stands where it is wished there, and may grow
	high, wide := max(0, it.High(joint))+joint, min(it.Bottom.To-it.Bottom.From, most)
	from, to := (over + joint + step).CeilTo(step), (under - high - step).FloorTo(step)
	for _, at := range []survey.Span{{From: from, To: min(from+wide, (head - high - step).FloorTo(step))}, {From: max(to-wide, (low + step).CeilTo(step)), To: to}} {
		if at.From > at.To {
			continue
		}
		moved, say := *b, func(l length.Length) string { return l.Plain(system, step) }
		moved.Bottom, moved.Near = survey.Mark{From: say(at.From), To: say(at.To)}, say((at.From + at.To).Half())
		tidyMark(&moved.Bottom)
		if moved.Bottom.At != "" {
			moved.Near = ""
		}
		with.Bands[len(with.Bands)-1] = moved
		if _, faults := with.Resolve(); len(faults) == 0 {
			*b = moved
			return
		}
	}
}
