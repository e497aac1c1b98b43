package setout

import (
	"slices"

	"coursewright/layout/length"
)

// lines lists the course lines that can be best, over one period: every one that
// the tape shows, or every turning point off it.
func (s *solver) lines(onTape bool) []length.Length {
	if s.room.Line != nil {
		return []length.Length{*s.room.Line}
	}
	pitch := s.room.Tile.Height + s.room.Joint
	from, period := s.lowest(), pitch*s.periods()
	if onTape {
		return everyMark(from, period, s.room.Tape, 0)
	}
	var fs []feature
	for _, f := range s.fields {
		l := f.levels()
		if s.room.Bond.Plumb {
			l = f.withShifts(l)
		}
		fs = append(fs, l...)
	}
	return phases(unique(fs), s.room.Tile.Height, pitch, s.fields[0].lineAxis.limit, s.room.Joint, from, period)
}

// periods is over how many pitches the line must be tried: one, unless a
// pinned start ties the courses to the line.
func (s *solver) periods() length.Length {
	for _, w := range s.room.Walls {
		if w.Pin != nil && !s.room.Bond.Plumb {
			return length.Length(max(1, s.room.Bond.Den))
		}
	}
	return 1
}

// lowest is where the course line is looked for first: the lowest tile of the
// widest wall.
func (s *solver) lowest() length.Length {
	widest := s.fields[0]
	for _, f := range s.fields {
		if f.found.Width > widest.found.Width {
			widest = f
		}
	}
	return widest.shape.Solid.Bounds().Bottom
}

// edges lists the starts that can be best on a wall, as left edges of a tile
// of course 0, over one period round the wall's centre.
func (s *solver) edges(w int, line length.Length, onTape bool) []length.Length {
	f := s.fields[w]
	if onTape || f.pinned() {
		return s.marks(w)
	}
	fs := f.startFeatures
	if !f.plumb {
		for _, h := range s.compiled(w, line, line) {
			fs = append(fs[:len(fs):len(fs)], f.rakes(h.compiled)...)
		}
	}
	return s.edgesAt(w, unique(fs), false)
}

// marks are the starts that the tape shows, and the classic ones; the pinned one
// where there is one.
func (s *solver) marks(w int) []length.Length {
	f := s.fields[w]
	tile, joint := s.room.Tile.Width, s.room.Joint
	switch p := f.found.Pin; {
	case p != nil:
		return []length.Length{p.Edge(tile, joint)}
	case f.marks == nil:
		f.marks = s.withClassics(f, everyMark(s.startFrom(f), s.startPeriod(f), s.room.Tape, joint.Half(), -tile.Half()))
	}
	return f.marks
}

// plainEdges are the starts off the tape that can be best as far as the plumb
// edges go.
func (s *solver) plainEdges(w int) []length.Length {
	if s.fields[w].pinned() {
		return s.marks(w)
	}
	return s.edgesAt(w, s.fields[w].startFeatures, false)
}

// startPeriod is how far a start may move before the wall repeats: a pitch, or
// with columns as many as the bond has before it repeats.
func (s *solver) startPeriod(f *field) length.Length {
	pitch := s.room.Tile.Width + s.room.Joint
	if f.plumb {
		return pitch * length.Length(len(f.shifts))
	}
	return pitch
}

// startFrom begins a period round the wall's centre.
func (s *solver) startFrom(f *field) length.Length {
	return f.found.Width.Half() - s.startPeriod(f).Half()
}

func (s *solver) edgesAt(w int, fs []feature, onTape bool) []length.Length {
	f := s.fields[w]
	tile, joint := s.room.Tile.Width, s.room.Joint
	out := phases(fs, tile, tile+joint, f.startAxis.limit, joint, s.startFrom(f), s.startPeriod(f))
	if onTape {
		out = onTapeOnly(out, s.room.Tape, joint.Half(), -tile.Half())
	}
	return s.withClassics(f, out)
}

// withClassics adds the classic starts, which are found without a tape.
func (s *solver) withClassics(f *field, out []length.Length) []length.Length {
	tile, joint := s.room.Tile.Width, s.room.Joint
	from, period := s.startFrom(f), s.startPeriod(f)
	for _, c := range f.classics(f.placed) {
		for x := from + length.Mod(c.edge(tile, joint)-from, tile+joint); x < from+period; x += tile + joint {
			out = append(out, x)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// everyMark lists the places in a period that the tape shows, less one of the
// offsets.
func everyMark(from, period, tape length.Length, offsets ...length.Length) []length.Length {
	var out []length.Length
	for _, o := range offsets {
		for x := (from - o).CeilTo(tape) + o; x < from+period; x += tape {
			out = append(out, x)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// onTapeOnly replaces every place by its two neighbours on the tape, where the
// tape reads the place less one of the offsets.
func onTapeOnly(places []length.Length, tape length.Length, offsets ...length.Length) []length.Length {
	var out []length.Length
	for _, x := range places {
		for _, o := range offsets {
			out = append(out, (x-o).FloorTo(tape)+o, (x-o).CeilTo(tape)+o)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
