package survey

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Taken is a band on a wall where a pattern is cut at the band's edges: what it takes
// from the field, or, for its own tile, all that it leaves.
type Taken struct {
	Name      string
	Low, High length.Length // where they are one, nothing is taken
	Own       bool          // what stands between is kept, and all else is taken
}

// take takes what bands take from a shape, or leave of it: two sides to a band, the first
// for what stands beside it, the second for its own tile.
func (s *Shape) take(w WallFound) {
	side := SideBase + plane.Side(len(w.Base)+len(w.Openings))
	for i, t := range w.Taken {
		on := side + plane.Side(2*i)
		level := func(low, high length.Length) {
			ring := plane.Rect{Left: -beyond, Right: beyond, Bottom: low, Top: high}.Ring(0)
			whole := len(s.Visible) == len(s.Solid) && (len(s.Solid) == 0 || &s.Visible[0] == &s.Solid[0])
			if s.Solid = s.Solid.Less(ring, on); whole {
				s.Visible = s.Solid
			} else {
				s.Visible = s.Visible.Less(ring, on)
			}
		}
		switch {
		case t.Low == t.High:
		case t.Own:
			on++
			level(-beyond, t.Low)
			level(t.High, beyond)
		default:
			level(t.Low, t.High)
		}
	}
}

// Top is where a band ends that begins at a height: far over everything where it goes
// up to the head.
func (b BandFound) Top(bottom, joint length.Length) length.Length {
	if b.ToHead {
		return beyond / 2
	}
	return bottom + b.High(joint)
}

// Beside is a wall with what the bands of the room take from its field, by where each
// begins: the field ends a joint from them.
func (r Room) Beside(wall int, bottoms []length.Length) WallFound {
	w := r.Walls[wall]
	w.Taken = nil
	for i, b := range r.Bands {
		t := Taken{Name: b.Name}
		if b.On(wall) {
			t.Low, t.High = bottoms[i]-r.Joint, b.Top(bottoms[i], r.Joint)+r.Joint
		}
		w.Taken = append(w.Taken, t)
	}
	return w
}

// Within is a wall with all taken that is not in a band.
func (r Room) Within(wall, band int, bottom length.Length) WallFound {
	w := r.Walls[wall]
	w.Taken = nil
	for i, b := range r.Bands {
		t := Taken{Name: b.Name, Own: true}
		if i == band {
			t.Low, t.High = bottom, b.Top(bottom, r.Joint)
		}
		w.Taken = append(w.Taken, t)
	}
	return w
}
