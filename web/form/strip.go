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
	clearOfOpenings(job, w, &s)
	var taken []string
	for _, x := range w.Strips {
		taken = append(taken, x.Name)
	}
	s.Name = freeName("mosaic", taken)
	w.Strips = append(w.Strips, s)
	return nil
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
