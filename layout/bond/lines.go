package bond

import (
	"cmp"
	"slices"

	"coursewright/layout/length"
)

// Lines are the joint lines of a pattern that run one way, counted from the factory
// edges of its tiles: on a joint line edges that face one way come again and again, and make up
// at least a tenth of it. Patterns whose edges drift, as a herringbone's of which the length
// is no multiple of the width with its joint, have none, nor do those laid at 45°; hexagons
// have them along their flat sides.
//
// All places are measured from the lattice's origin, along the wall for plumb lines and up
// it for level ones.
type Lines struct {
	Pitch  length.Length   // after how much the lines repeat
	Begins []length.Length // where tiles begin, in [0, Pitch)
	Ends   []length.Length // where tiles end
	joint  length.Length
	tiles  []extent
	struck extent        // the tile of the first place, by which a phase is struck
	repeat length.Length // how far it is from one copy of it to the next on its row
	middles
}

// extent is what a tile takes across the lines.
type extent struct{ from, size length.Length }

// drift is how far edges may lie apart and make one line: what a basket weave or a modular may
// lack to close. Under what a tape shows; common practice, no source.
const drift = length.Millimetre / 2

// rarest is the part of a line that its edges take at least, as one over it. The narrowest
// courses of mixed heights in four shifts take a tenth. Common practice, no source.
const rarest = 10

// PlumbLines are the joint lines that run up the wall.
func (p Pattern) PlumbLines() Lines {
	pitch := gcd(p.U.X, p.V.X)
	l := Lines{Pitch: pitch, joint: p.Joint, repeat: length.Length(p.Area2()/2) / gcd(p.U.Y, p.V.Y)}
	long := length.Length(p.Area2()/2) / pitch // after how much a line repeats
	var begins, ends []edgeAt
	for i, place := range p.Places {
		tile := p.Tiles[place.Tile]
		e := extent{place.At.X + tile.Box.Left, tile.Box.Width()}
		if l.tiles = append(l.tiles, e); i == 0 {
			l.struck = e
		}
		if left, right := plumbSides(tile); left > 0 || right > 0 {
			begins = append(begins, edgeAt{length.Mod(e.from, pitch), left})
			ends = append(ends, edgeAt{length.Mod(e.from+e.size, pitch), right})
		}
	}
	for _, g := range grouped(begins, pitch) {
		if rarest*g.long >= long {
			l.Begins = append(l.Begins, length.Mod(g.first, pitch))
		}
	}
	for _, g := range grouped(ends, pitch) {
		if rarest*g.long >= long {
			l.Ends = append(l.Ends, length.Mod(g.last, pitch))
		}
	}
	l.middles = middlesOf(&p, &l)
	return l
}

// LevelLines are the joint lines that run along the wall.
func (p Pattern) LevelLines() Lines { return p.Transposed().PlumbLines() }

// edgeAt is a factory edge across the lines, and how long it is.
type edgeAt struct{ at, long length.Length }

// line is some edges that make one line.
type line struct{ first, last, long length.Length }

// plumbSides are the lengths of a tile's edges that look to the left and to the right,
// where its box ends.
func plumbSides(t Tile) (left, right length.Length) {
	for i, c := range t.Outline {
		d := t.Outline[(i+1)%len(t.Outline)]
		switch {
		case c.X != d.X:
		case c.X == t.Box.Left && d.Y < c.Y:
			left += c.Y - d.Y
		case c.X == t.Box.Right && d.Y > c.Y:
			right += d.Y - c.Y
		}
	}
	return left, right
}

// grouped gathers edges that are no farther apart than drift, round and round the pitch.
func grouped(edges []edgeAt, pitch length.Length) (out []line) {
	slices.SortFunc(edges, func(a, b edgeAt) int { return cmp.Compare(a.at, b.at) })
	for _, e := range edges {
		if n := len(out); n > 0 && e.at-out[n-1].last <= drift {
			out[n-1].last, out[n-1].long = e.at, out[n-1].long+e.long
			continue
		}
		out = append(out, line{e.at, e.at, e.long})
	}
	if n := len(out); n > 1 && out[0].first+pitch-out[n-1].last <= drift {
		out[n-1].last, out[n-1].long = out[0].last+pitch, out[n-1].long+out[0].long
		out = out[1:]
	}
	return out
}

func gcd(a, b length.Length) length.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a.Abs()
}

// None tells whether the pattern has no such lines.
func (l *Lines) None() bool { return len(l.Begins) == 0 || len(l.Ends) == 0 }

// Any tells whether one of some lines lies between two places, both included.
func (l *Lines) Any(lines []length.Length, from, to length.Length) bool {
	for _, at := range lines {
		if from+length.Mod(at-from, l.Pitch) <= to {
			return true
		}
	}
	return false
}

// Clear tells whether an opening from low to high has a joint line at both edges, or leaves
// equal cuts of at least half a tile on both sides, each measured across the lines. Where there
// are no lines every opening is clear.
func (l *Lines) Clear(low, high length.Length) bool {
	if l.None() || l.Any(l.Ends, low, low) && l.Any(l.Begins, high, high) {
		return true
	}
	before, after := l.cuts(low, true), l.cuts(high, false)
	return before != nil && after != nil && slices.Equal(before, after)
}

// cuts are what a line at x leaves of the tiles that it cuts, on one side, in order; nil
// where one of them is under half its tile.
func (l *Lines) cuts(x length.Length, before bool) []extent {
	out := []extent{}
	for _, t := range l.tiles {
		for into := length.Mod(x-t.from, l.Pitch); into < t.size; into += l.Pitch {
			left := into
			if !before {
				left = t.size - into
			}
			switch {
			case into == 0:
			case 2*left < t.size:
				return nil
			default:
				out = append(out, extent{left, t.size})
			}
		}
	}
	slices.SortFunc(out, func(a, b extent) int { return cmp.Or(cmp.Compare(a.size, b.size), cmp.Compare(a.from, b.from)) })
	return out
}

// Within lists, ascending, the lines of a list of them between two places, at most so many.
func (l *Lines) Within(lines []length.Length, from, to length.Length, most int) (out []length.Length) {
	for _, at := range lines {
		for x := from + length.Mod(at-from, l.Pitch); x <= to && len(out) < most; x += l.Pitch {
			out = append(out, x)
		}
	}
	slices.Sort(out)
	return out
}

// Centred tells whether the middle of a joint line, or that of the struck tile or of the joint
// before it on its row, stands in the middle of what twice is twice of, to a unit.
func (l *Lines) Centred(twice length.Length) bool {
	on := func(at, pitch length.Length) bool { return length.Mod(twice-at+1, 2*pitch) <= 2 }
	if on(2*l.struck.from+l.struck.size, l.repeat) || on(2*l.struck.from-l.joint, l.repeat) {
		return true
	}
	return slices.ContainsFunc(l.Begins, func(at length.Length) bool { return on(2*at-l.joint, l.Pitch) })
}
