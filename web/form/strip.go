package form

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// addStrip adds a strip of three columns of 2 in (50 mm) tile from base to head: free
// behind the lowest pipe of the wall, within a tile or so of it, or else in its middle.
// Common practice, no source.
func addStrip(job *survey.Job, w *survey.Wall) error {
	s := survey.Strip{Columns: 3, Tile: survey.Tile{Width: pick(job, "1 7/8", "48"), Height: pick(job, "1 7/8", "48")}}
	at := middle(job, "0", w.Width)
	for _, o := range w.Openings {
		if o.Kind == string(survey.Pipe) {
			at = o.At
			break
		}
	}
	off := pick(job, "3", "75")
	s.Near = at
	s.Middle = survey.Mark{From: less(job, at, off), To: compute(job, at, off, func(x, y length.Length) length.Length { return x + y })}
	if !(survey.BondRule{Kind: survey.BondKind(job.Bond.Kind)}).Coursed() { // no joint lines of a pattern say where, and bands need to know
		s.Middle, s.Near = survey.Mark{At: at}, ""
	}
	clearOfOpenings(job, w, &s)
	narrowStrip(job, w, &s)
	underPatterns(job, w, &s)
	var taken []string
	for _, x := range w.Strips {
		taken = append(taken, x.Name)
	}
	s.Name = freeName("mosaic", taken)
	w.Strips = append(w.Strips, s)
	return nil
}

// RoomForStrip tells whether a wall has room for one more strip.
func RoomForStrip(job survey.Job, wall int) bool {
	if _, faults := job.Resolve(); len(faults) > 0 || len(job.Walls[wall].Strips) == 0 {
		return true
	}
	with := job.Clone()
	if add(&with, At("walls", wall)+".strips") != nil {
		return false
	}
	_, faults := with.Resolve()
	return len(faults) == 0
}

// narrowStrip leaves out columns that a narrow wall has no room for, as the end of a half wall, with some of its
// own tile on both sides.
func narrowStrip(job *survey.Job, w *survey.Wall, s *survey.Strip) {
	system, _ := System(job.Units)
	read := func(text string) length.Length { l, _ := length.Parse(text, system); return l }
	joint := max(read(job.Joint.Plain), 0)
	if job.Joint.Mark != nil {
		joint = read(job.Joint.Mark.To)
	}
	wide, beside := read(w.Width), read(pick(job, "3/4", "20"))
	need := func(columns int) length.Length {
		return length.Length(columns)*(read(s.Tile.Width)+joint) + joint + 2*beside
	}
	off := read(pick(job, "3", "75"))
	if need(s.Columns)+2*off <= wide {
		return
	}
	for s.Columns > 1 && need(s.Columns) > wide {
		s.Columns--
	}
	s.Middle, s.Near = survey.Mark{At: middle(job, "0", w.Width)}, ""
}

// underPatterns ends a strip under bands in a pattern: one from base to head parts the field, and they
// cannot be parted.
func underPatterns(job *survey.Job, w *survey.Wall, s *survey.Strip) {
	room, faults := job.Resolve()
	k := slices.IndexFunc(room.Walls, func(o survey.WallFound) bool { return o.Name == w.Name })
	if len(faults) > 0 || k < 0 {
		return
	}
	system, _ := System(job.Units)
	joint := room.Joints[len(room.Joints)-1]
	low, top := survey.Room{Walls: room.Walls[k : k+1]}.Between()
	patterned := false
	for _, i := range room.BandsOn(k) {
		patterned, top = patterned || !room.Bands[i].Bond.Coursed(), min(top, room.Bands[i].Bottom.From)
	}
	if !patterned {
		return
	}
	course := room.Tile.Height + joint
	from, to := low+2*course, top-2*course
	if from+course > to {
		return // no room under them: it is refused with its field
	}
	say := func(l length.Length) string { return l.FloorTo(system.Step()).Plain(system, system.Step()) }
	s.Bottom, s.Top = &survey.Mark{At: say(from)}, &survey.Mark{At: say(to)}
}

// reach lets a strip begin at the base or end at the head, or gives it a height where
// it does: "PATH bottom", "PATH top".
func reach(job *survey.Job, rest string) error {
	path, edge, _ := strings.Cut(rest, " ")
	way, err := steps(path)
	if err != nil || len(way) != 4 || way[0].name != "walls" || way[2].name != "strips" || way[1].index < 0 || way[1].index >= len(job.Walls) ||
		way[3].index < 0 || way[3].index >= len(job.Walls[way[1].index].Strips) {
		return fmt.Errorf("there is no strip at %q", path)
	}
	s := &job.Walls[way[1].index].Strips[way[3].index]
	switch edge {
	case "bottom":
		s.Bottom = turned(s.Bottom, pick(job, "-24", "-600"))
	case "top":
		s.Top = turned(s.Top, pick(job, "24", "600"))
	default:
		return fmt.Errorf("a strip has a bottom and a top, not %q", edge)
	}
	return nil
}

// turned is no mark where there is one, and one at a place where there is none.
func turned(m *survey.Mark, at string) *survey.Mark {
	if m != nil {
		return nil
	}
	return &survey.Mark{At: at}
}

// tidyStrips drops what means nothing in a strip.
func tidyStrips(w *survey.Wall) {
	for i := range w.Strips {
		s := &w.Strips[i]
		if s.Middle.At != "" {
			s.Near = ""
		}
		for _, m := range []**survey.Mark{&s.Bottom, &s.Top} {
			if *m != nil && **m == (survey.Mark{}) {
				*m = nil
			}
		}
		if s.Bottom != nil || s.Top != nil {
			s.Beside = ""
		}
		if s.Bond.Kind == "stack" {
			s.Bond = survey.Bond{}
		}
		if s.Bond.Kind == "running" {
			s.Bond.Along = "plumb"
		}
		if box := s.Tile.Box; box != nil && *box == (survey.Box{}) {
			s.Tile.Box = nil
		}
	}
	if len(w.Strips) == 0 {
		w.Strips = nil
	}
}

// placeStrip moves a measured strip: its middle, and its heights where it has them.
func placeStrip(w *survey.Wall, name, value string) error {
	i := slices.IndexFunc(w.Strips, func(s survey.Strip) bool { return s.Name == name })
	if i < 0 || w.Strips[i].Middle.At == "" {
		return fmt.Errorf("wall %q has no measured strip %q", w.Name, name)
	}
	w.Strips[i].Middle = survey.Mark{At: value}
	return nil
}
