package form

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// stretch is a part of a wall.
type stretch struct{ from, to length.Length }

func (s stretch) wide() length.Length { return s.to - s.from }

// clearOfStrips moves a niche or a window that is added to the widest stretch of its wall without a strip,
// and makes it narrower where that has no room for it.
func clearOfStrips(job *survey.Job, w *survey.Wall, o *survey.Opening) {
	if o.Left == nil {
		return
	}
	system, _ := System(job.Units)
	all := takenBy(job, w, func(k survey.Kind) bool { return k == survey.PlumbStrip })
	left, right := span(*o.Left, system), span(*o.Width, system)
	if !meets(all, stretch{left.from, left.to + right.to}) {
		return
	}
	free := widest(all, w, system)
	margin, _ := length.Parse(pick(job, "2", "50"), system)
	free.from, free.to = free.from+margin, free.to-margin
	wide := min(right.to, free.wide())
	say := func(l length.Length) string { return l.FloorTo(system.Step()).Plain(system, system.Step()) }
	switch {
	case wide < 2*margin:
		return // no room beside the strips: it is refused with its field
	case o.Left.At != "":
		o.Left.At, o.Width.At = say(free.from+(free.wide()-wide)/2), say(wide)
	default:
		*o.Left = survey.Mark{From: say(free.from), To: say(free.to - wide)}
		*o.Width = survey.Mark{From: say(min(right.from, wide)), To: say(wide)}
	}
	tidyMark(o.Left)
	tidyMark(o.Width)
}

// clearOfOpenings moves a strip that is added to the middle of the widest stretch of its wall without a niche
// or a window.
func clearOfOpenings(job *survey.Job, w *survey.Wall, s *survey.Strip) {
	system, _ := System(job.Units)
	all := takenBy(job, w, func(k survey.Kind) bool { return k != survey.Pipe })
	off, _ := length.Parse(pick(job, "4", "100"), system) // half of it, with room beside it
	at := span(s.Middle, system)
	if !meets(all, stretch{at.from - off, at.to + off}) {
		return
	}
	free := widest(all, w, system)
	say := func(l length.Length) string { return l.FloorTo(system.Step()).Plain(system, system.Step()) }
	mid := (free.from + free.to) / 2
	s.Near, s.Middle = "", survey.Mark{At: say(mid)}
}

// takenBy lists what openings and strips of some kinds may take of a wall, from left to right.
func takenBy(job *survey.Job, w *survey.Wall, is func(survey.Kind) bool) (all []stretch) {
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return nil
	}
	for _, r := range room.Walls {
		for _, o := range r.Openings {
			if r.Name == w.Name && is(o.Kind) {
				all = append(all, stretch{o.Left.From - room.Joint, o.Left.To + o.Width.To + room.Joint})
			}
		}
	}
	slices.SortFunc(all, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	return all
}

func meets(all []stretch, s stretch) bool {
	return slices.ContainsFunc(all, func(o stretch) bool { return o.from < s.to && s.from < o.to })
}

// widest is the widest stretch of a wall beside what is taken of it.
func widest(all []stretch, w *survey.Wall, system length.System) (free stretch) {
	wide, _ := length.Parse(w.Width, system)
	from := length.Length(0)
	for _, s := range append(all, stretch{wide, wide}) {
		if s.from-from > free.wide() {
			free = stretch{from, s.from}
		}
		from = max(from, s.to)
	}
	return free
}

// span reads a mark.
func span(m survey.Mark, system length.System) stretch {
	read := func(s string) length.Length { l, _ := length.Parse(s, system); return l }
	if m.At != "" {
		return stretch{read(m.At), read(m.At)}
	}
	return stretch{read(m.From), read(m.To)}
}

// tidyMark makes one value of a range that holds one alone.
func tidyMark(m *survey.Mark) {
	if m.At == "" && m.From == m.To {
		*m = survey.Mark{At: m.From}
	}
}
