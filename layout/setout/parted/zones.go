package parted

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// far is over or under anything.
const far = 1000 * length.Metre

// joints are the heights at which joints of the field's courses end: where the edges
// of openings are best.
type joints struct{ line, pitch, joint length.Length }

// within lists the top edges of courses in a range, and its ends.
func (j joints) within(s survey.Span) []length.Length {
	out := []length.Length{s.From}
	for y := s.From + length.Mod(j.line-j.joint-s.From, j.pitch); y < s.To && len(out) < mostWays; y += j.pitch {
		if y > s.From {
			out = append(out, y)
		}
	}
	return append(out, s.To)
}

// zonesOf lists the ways in which a free opening may stand among the strips of
// its wall: under one, over it, or across it with both edges clear of it. What is
// typed of an opening that is wholly measured is one way, and so is an opening that
// can only stand inside a strip: it stays as low and as small as it may be.
//
// Without joints it gives the first of them alone, with all its ranges as typed, to
// find a course line by.
func zonesOf(o survey.OpeningFound, strips []strip, on *joints) []zone {
	if o.Kind == survey.Pipe || len(strips) == 0 || !o.Bottom.Free() && !o.Height.Free() {
		return []zone{{}}
	}
	var out []zone
	for bottom := 0; bottom <= len(strips); bottom++ {
		for top := bottom; top <= len(strips); top++ {
			out = append(out, zonesIn(o, strips, bottom, top, on)...)
		}
	}
	switch {
	case out == nil:
		return []zone{{}}
	case on == nil:
		return out[:1]
	}
	return out
}

// zonesIn lists how an opening stands with its edges over so many strips. How low it
// begins bounds how high it may be: each joint line at which it may begin gives a way
// of its own, with all lower ones or all higher ones.
func zonesIn(o survey.OpeningFound, strips []strip, bottom, top int, on *joints) []zone {
	low, high := bounds(strips, bottom), bounds(strips, top)
	z := zone{bottom: bottom, top: top, begins: meet(o.Bottom, low), height: o.Height, free: true}
	if top == len(strips) && top > 0 && strips[top-1].toHead {
		z.beyond = true
		if bottom < top || z.begins.From > z.begins.To {
			return nil
		}
		return []zone{z}
	}
	z.begins = meet(z.begins, survey.Span{From: high.From - o.Height.To, To: high.To - o.Height.From})
	switch {
	case z.begins.From > z.begins.To:
		return nil
	case on == nil:
		return []zone{z}
	case bottom == top && high.To-z.begins.To >= o.Height.To, bottom < top && top == len(strips) && high.From-z.begins.From <= o.Height.From:
		return []zone{z} // nothing of its heights is out of reach
	}
	var out []zone
	for _, y := range on.within(z.begins) {
		way := z
		if bottom == top {
			way.begins.To = y
		} else {
			way.begins = survey.Span{From: y, To: min(z.begins.To, max(y, high.To-o.Height.From))}
		}
		way.height = meet(o.Height, survey.Span{From: high.From - way.begins.From, To: high.To - way.begins.To})
		if way.begins.From <= way.begins.To && way.height.From <= way.height.To && !slices.Contains(out, way) {
			out = append(out, way)
		}
	}
	return out
}

// bounds are the heights between which an edge stands over n strips and under the next.
func bounds(strips []strip, n int) survey.Span {
	s := survey.Span{From: -far, To: far}
	if n > 0 {
		s.From = strips[n-1].top
	}
	if n < len(strips) {
		s.To = strips[n].bottom
	}
	return s
}

func meet(a, b survey.Span) survey.Span {
	return survey.Span{From: max(a.From, b.From), To: min(a.To, b.To)}
}

// mostWays bounds in how many ways the free openings of a wall are tried.
const mostWays = 16

// ways lists by wall in how many ways its openings may stand among the strips: by
// way and opening.
func ways(walls []survey.WallFound, strips [][]strip, on *joints) [][][]zone {
	out := make([][][]zone, len(walls))
	for i, w := range walls {
		out[i] = [][]zone{make([]zone, len(w.Openings))}
		for k, o := range w.Openings {
			zones := zonesOf(o, strips[i], on)
			if n := max(1, mostWays/len(out[i])); len(zones) > n {
				zones = zones[:n]
			}
			var next [][]zone
			for _, way := range out[i] {
				for _, z := range zones {
					next = append(next, with(way, k, z))
				}
			}
			out[i] = next
		}
	}
	return out
}

// with is a way with another zone for one opening.
func with(way []zone, opening int, z zone) []zone {
	out := slices.Clone(way)
	out[opening] = z
	return out
}

// firsts are the first ways of all walls.
func firsts(all [][][]zone) [][]zone {
	out := make([][]zone, len(all))
	for w, ways := range all {
		out[w] = ways[0]
	}
	return out
}
