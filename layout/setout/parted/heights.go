package parted

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// line is the course line that is fixed, whole pitches aside.
func (p *parter) line() length.Length {
	for i, b := range p.room.Bands {
		if p.room.Line == nil && !b.Bottom.Free() {
			return b.Bottom.From - p.room.Under(b.Walls[0], i)
		}
	}
	return *p.room.Line
}

// fixed tells whether the course line is pinned, or said by a band.
func (p *parter) fixed() bool {
	for _, b := range p.room.Bands {
		if !b.Bottom.Free() {
			return true
		}
	}
	return p.room.Line != nil
}

// clear tells whether every opening stays clear of all heights at which a band of its
// wall may stand, or stands as it does on its wall whatever is found.
func (p *parter) clear() bool {
	for w := range p.room.Walls {
		if !p.clearOn(w) {
			return false
		}
	}
	return true
}

// clearOn is clear of one wall. What is measured may stand across a measured band.
func (p *parter) clearOn(wall int) bool {
	for _, i := range p.room.BandsOn(wall) {
		b := p.room.Bands[i]
		low, high := b.Bottom.From-p.room.Joint, b.Bottom.To+b.High(p.room.Joint)+p.room.Joint
		for _, o := range p.room.Walls[wall].Openings {
			e := o.Reach()
			meets := e.Top > low && (b.ToHead || e.Bottom < high)
			if meets && (b.Bottom.Free() || o.Left.Free() || o.Width.Free() || o.Bottom.Free() || o.Height.Free()) {
				return false
			}
		}
	}
	return true
}

// fullHeads are the course lines with which the tile of a free band that goes up to
// the head ends there in a full course, wall by wall.
func (p *parter) fullHeads() (out []found) {
	for i, b := range p.room.Bands {
		if !b.ToHead || b.Upon != "" {
			continue
		}
		pitch := b.Tile.Height + b.Inner(p.room.Joint)
		for _, w := range b.Walls {
			top := headOf(p.room.Walls[w])
			y := b.Bottom.From + length.Mod(top-b.Tile.Height-b.Bottom.From, pitch)
			for ; y <= b.Bottom.To && len(out) < mostHeads; y += pitch {
				if line := y - p.room.Under(w, i); p.stands(line) {
					from := y
					out = append(out, found{line: line, from: &from})
				}
			}
		}
	}
	return out
}

// otherJoints are the joint lines of one course line on which a free band that goes
// up to the head may begin as well.
func (p *parter) otherJoints(line length.Length) (out []found) {
	for i, b := range p.room.Bands {
		if !b.ToHead || b.Upon != "" {
			continue
		}
		wished := p.bottom(b.Walls[0], i, &found{line: line})
		up := p.room.Under(b.Walls[0], i)
		for y := b.Bottom.From + length.Mod(line+up-b.Bottom.From, p.pitch()); y <= b.Bottom.To && len(out) < mostHeads; y += p.pitch() {
			if y != wished {
				from := y
				out = append(out, found{line: line, from: &from})
			}
		}
	}
	return out
}

// flush are the course lines with which a free band ends or begins at an edge of a measured
// opening of its wall, instead of running into its side by a strip.
func (p *parter) flush() (out []found) {
	for i, b := range p.room.Bands {
		if !b.Bottom.Free() || b.ToHead || b.Upon != "" {
			continue
		}
		high, joint := b.High(p.room.Joint), p.room.Joint
		for _, w := range b.Walls {
			for _, o := range p.room.Walls[w].Openings {
				if o.Kind == survey.Pipe || o.Bottom.Free() || o.Height.Free() {
					continue
				}
				low, top := o.Bottom.From, o.Bottom.From+o.Height.From
				for _, from := range []length.Length{low - high, low + joint, top - high - joint, top} {
					line := from - p.room.Under(w, i)
					if b.Bottom.From <= from && from <= b.Bottom.To && p.stands(line) && len(out) < mostFlush {
						out = append(out, found{line: line})
					}
				}
			}
		}
	}
	return out
}

// mostFlush bounds how many more lines are tried beside measured openings.
const mostFlush = 4

// mostHeads bounds how many more lines are tried for bands that go up to the head.
const mostHeads = 4

func (p *parter) stands(line length.Length) bool {
	for _, c := range p.room.Course {
		if !c.Congruent(line, p.pitch()) {
			return false
		}
	}
	return true
}

// headOf is the lowest the head of a wall is, with its gap.
func headOf(w survey.WallFound) length.Length {
	if !w.Head.Meets {
		return w.Head.Stops.To
	}
	top := w.Head.Readings[0].Value
	for _, r := range w.Head.Readings {
		top = min(top, r.Value)
	}
	return top - w.Head.Gap
}

// bottom is where the bottom edge of band i stands, with the courses of a wall on a
// line: where it is wished, without one; else on the joint line nearest to that.
func (p *parter) bottom(wall, i int, at *found) length.Length {
	b := p.room.Bands[i]
	switch {
	case at == nil || !b.Bottom.Free():
		return b.Near
	case b.ToHead && at.from != nil:
		return *at.from
	}
	pitch := p.pitch()
	low := b.Bottom.From + length.Mod(at.line+p.room.Under(wall, i)-b.Bottom.From, pitch)
	best := low
	for y := low; y <= b.Bottom.To; y += pitch {
		if (y - b.Near).Abs() < (best - b.Near).Abs() {
			best = y
		}
	}
	return best
}

// strips are the strips of every wall from the bottom up, with the course line given.
func (p *parter) strips(at *found) [][]strip {
	out := make([][]strip, len(p.room.Walls))
	for w := range p.room.Walls {
		for _, i := range p.room.BandsOn(w) {
			b := p.room.Bands[i]
			s := strip{band: i, bottom: p.bottom(b.Walls[0], i, at), toHead: b.ToHead}
			if b.Upon != "" && len(out[w]) > 0 {
				s.bottom = out[w][len(out[w])-1].next
			}
			if s.top, s.next = s.bottom, s.bottom; !b.ToHead {
				s.top += b.High(p.room.Joint)
				s.next = s.top + p.room.Joint
			}
			out[w] = append(out[w], s)
		}
	}
	return out
}
