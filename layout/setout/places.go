package setout

import (
	"slices"

	"coursewright/layout/length"
)

// near are the lines that can be best within one step of the tape.
func (s *solver) near(line length.Length) []length.Length {
	return slices.DeleteFunc(s.lines(false), func(x length.Length) bool { return (x - line).Abs() >= s.room.Tape })
}

// lines lists the course lines that can be best, over one period.
func (s *solver) lines(onTape bool) []length.Length {
	if s.room.Line != nil {
		return []length.Length{*s.room.Line}
	}
	pitch := s.room.Tile.Height + s.room.Joint
	from, period := s.lowest(), pitch*s.periods()
	var fs []feature
	for _, f := range s.fields {
		l := f.levels()
		if s.room.Bond.Plumb {
			l = f.withShifts(l)
		}
		fs = append(fs, l...)
	}
	out := phases(unique(fs), s.room.Tile.Height, pitch, s.fields[0].lineAxis.limit, s.room.Joint, from, period)
	if onTape {
		out = onTapeOnly(out, s.room.Tape, 0)
	}
	return out
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
	tile, joint := s.room.Tile.Width, s.room.Joint
	if p := f.found.Pin; p != nil {
		return []length.Length{edgeAt(p.X, p.OnTile, tile, joint)}
	}
	fs := f.startFeatures
	if !f.plumb {
		for _, h := range s.compiled(w, line, line) {
			fs = append(fs[:len(fs):len(fs)], f.rakes(h.compiled)...)
		}
		if len(fs) == len(f.startFeatures) {
			if f.plain[onTape] == nil {
				f.plain[onTape] = s.edgesAt(w, fs, onTape)
			}
			return slices.Clone(f.plain[onTape])
		}
	}
	return s.edgesAt(w, unique(fs), onTape)
}

// plainEdges are the starts that can be best as far as the plumb edges go.
func (s *solver) plainEdges(w int) []length.Length {
	return s.edgesAt(w, s.fields[w].startFeatures, false)
}

func (s *solver) edgesAt(w int, fs []feature, onTape bool) []length.Length {
	f := s.fields[w]
	tile, joint := s.room.Tile.Width, s.room.Joint
	pitch := tile + joint
	period := pitch
	if f.plumb {
		period *= length.Length(len(f.shifts))
	}
	from := f.found.Width.Half() - period.Half()
	out := phases(fs, tile, pitch, f.startAxis.limit, joint, from, period)
	if onTape {
		out = onTapeOnly(out, s.room.Tape, joint.Half(), -tile.Half())
	}
	for _, c := range f.classics(f.placed) {
		for x := from + length.Mod(c.edge(tile, joint)-from, pitch); x < from+period; x += pitch {
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
