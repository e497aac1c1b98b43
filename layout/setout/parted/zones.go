package parted

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// far is over or under anything.
const far = 1000 * length.Metre

// zonesOf lists the ways in which a free opening may stand among the strips of
// its wall: under one, over it, or across it with both edges clear of it. What is
// typed of an opening that is wholly measured is one way, and so is an opening that
// can only stand inside a strip: it stays as low and as small as it may be.
func zonesOf(o survey.OpeningFound, strips []strip) []zone {
	if o.Kind == survey.Pipe || !o.Bottom.Free() && !o.Height.Free() {
		return []zone{{}}
	}
	var out []zone
	for bottom := 0; bottom <= len(strips); bottom++ {
		for top := bottom; top <= len(strips); top++ {
			out = append(out, zonesIn(o, strips, bottom, top)...)
		}
	}
	if out == nil {
		return []zone{{}}
	}
	return out
}

// zonesIn lists how an opening stands with its edges over so many strips: with
// all its heights and fewer bottoms, or the other way.
func zonesIn(o survey.OpeningFound, strips []strip, bottom, top int) []zone {
	low, high := bounds(strips, bottom), bounds(strips, top)
	if top == len(strips) && top > 0 && strips[top-1].toHead {
		z := zone{bottom: bottom, top: top, begins: meet(o.Bottom, low), height: o.Height, free: true, beyond: true}
		if bottom < top || z.begins.From > z.begins.To {
			return nil
		}
		return []zone{z}
	}
	z := zone{bottom: bottom, top: top, begins: meet(o.Bottom, low), height: o.Height, free: true}
	fewer := z
	z.height = meet(z.height, survey.Span{From: high.From - z.begins.From, To: high.To - z.begins.To})
	fewer.begins = meet(fewer.begins, survey.Span{From: high.From - o.Height.From, To: high.To - o.Height.To})
	var out []zone
	for _, way := range [...]zone{z, fewer} {
		if way.begins.From <= way.begins.To && way.height.From <= way.height.To && (len(out) == 0 || way != out[0]) {
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

// mostWays bounds in how many ways the free openings of a room are tried.
const mostWays = 16

// ways lists in how many ways the openings of all walls may stand among the
// strips, by wall and opening; all tells whether none was left out.
func ways(walls []survey.WallFound, strips [][]strip) (out [][][]zone, all bool) {
	first := make([][]zone, len(walls))
	for i, w := range walls {
		first[i] = make([]zone, len(w.Openings))
	}
	out, all = [][][]zone{first}, true
	for i, w := range walls {
		for k, o := range w.Openings {
			zones := zonesOf(o, strips[i])
			if len(out)*len(zones) > mostWays {
				zones, all = zones[:1], false
			}
			var next [][][]zone
			for _, way := range out {
				for _, z := range zones {
					next = append(next, with(way, i, k, z))
				}
			}
			out = next
		}
	}
	return out, all
}

// with is a way with another zone for one opening.
func with(way [][]zone, wall, opening int, z zone) [][]zone {
	out := make([][]zone, len(way))
	copy(out, way)
	out[wall] = append([]zone(nil), way[wall]...)
	out[wall][opening] = z
	return out
}
