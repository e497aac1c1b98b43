package trim

import "coursewright/layout/length"

// full says where whole pieces begin.
type full uint8

// Where whole pieces begin.
const (
	low       full = iota // at the lower or left end
	high                  // at the upper or right end
	shared                // the two ends are alike
	following             // with the tile
)

// splitting is an edge to be made of pieces.
type splitting struct {
	from, to    length.Length
	long, joint length.Length // of a piece, and between two
	full        full
	anchor      length.Length // following: an edge of a tile, and how far tiles stand apart
	pitch       length.Length
	phases      int // following: tiles to a piece
}

// span is one piece, from one place to another.
type span struct{ from, to length.Length }

// spans gives the pieces from one end to the other. An edge that leaves less than
// a quarter of a piece at one end has two alike at both. Common practice, no
// source.
func (s splitting) spans() []span {
	if s.to <= s.from {
		return nil
	}
	if s.full == following {
		return s.follow()
	}
	n := s.count()
	last := s.to - s.from - length.Length(n-1)*(s.long+s.joint)
	switch {
	case n == 1:
		return []span{{s.from, s.to}}
	case s.full == shared || 4*last < s.long:
		return s.run(s.from + (s.long + last).Half() - s.long)
	case s.full == high:
		return s.run(s.to - length.Length(n)*(s.long+s.joint) + s.joint)
	}
	return s.run(s.from)
}

// count is how few pieces make up the edge: 84 in of pieces 6 in long with joints
// of 1/8 in are 14.
func (s splitting) count() int {
	step := s.long + s.joint
	return int((s.to - s.from + s.joint + step - 1) / step)
}

// run lays pieces one after the other from a place at or before the edge's
// beginning, and cuts the first and the last to it.
func (s splitting) run(at length.Length) []span {
	var out []span
	for ; at < s.to; at += s.long + s.joint {
		if p := (span{max(at, s.from), min(at+s.long, s.to)}); p.from < p.to {
			out = append(out, p)
		}
	}
	return out
}

// follow lets joints stand where those of the tile are. Of several ways the one
// with the larger least piece is taken, of equal ones the first.
func (s splitting) follow() []span {
	var best []span
	most := length.Length(-1)
	for k := range s.phases {
		anchor := s.anchor + length.Length(k)*s.pitch
		spans := s.run(s.from - length.Mod(s.from-anchor, s.long+s.joint))
		if least := min(spans[0].size(), spans[len(spans)-1].size()); least > most {
			best, most = spans, least
		}
	}
	return best
}

func (s span) size() length.Length { return s.to - s.from }
