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
