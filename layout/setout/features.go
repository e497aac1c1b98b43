package setout

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// feature is a place on a wall where a row's phase decides what is cut.
type feature struct {
	at    length.Length
	seal  length.Length // how much beyond its gap sealant fills there; 0 where it stops
	cover length.Length // lap cover there
	free  bool          // a limit of a free mark's range: only tile edges matter
	solo  bool          // not weighed against other features
}

// phases lists every phase, in [from, from+period), at which some piece at a
// feature may change from better to worse, so that between two of them in a
// row each term of the order of merit stands still or runs straight: where the
// feature meets a tile edge, the sliver limit, half a tile, the reach of
// sealant; and where the pieces at two features are equal.
func phases(fs []feature, tile, pitch, limit, joint, from, period length.Length) []length.Length {
	var out []length.Length
	add := func(x length.Length) {
		for x = from + length.Mod(x-from, pitch); x < from+period; x += pitch {
			out = append(out, x)
		}
	}
	for _, f := range fs {
		add(f.at)
		add(f.at - tile)
		if f.free {
			continue
		}
		for _, c := range shades(f.cover) {
			for _, o := range [...]length.Length{limit, tile - limit, tile / 2, (tile + 1) / 2} {
				add(f.at + c - o)
			}
		}
		if f.seal > 0 {
			for _, o := range [...]length.Length{f.seal, tile - f.seal, -f.seal, tile + f.seal, f.seal - joint, tile - f.seal + joint} {
				add(f.at - o)
				add(f.at - o + 1)
				add(f.at - o - 1)
			}
		}
	}
	for i, f := range fs {
		for _, g := range fs[i+1:] {
			if f.free || g.free || f.solo || g.solo {
				continue
			}
			for _, c := range shades(f.cover) {
				for _, d := range shades(g.cover) {
					sum := f.at + g.at + c + d - tile
					for _, half := range [...]length.Length{sum, sum + pitch} {
						add(half.Half())
						add((half + 1).Half())
					}
				}
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// shades are the ways a lap may shift what is seen of a piece at a feature.
func shades(cover length.Length) []length.Length {
	if cover == 0 {
		return []length.Length{0}
	}
	return []length.Length{0, cover, -cover}
}

// levels are the features of a wall in height, from its region's corners.
func (f *field) levels() []feature {
	var fs []feature
	f.corners(f.shape.Solid, func(c plane.Corner, sides ...plane.Side) {
		fs = append(fs, feature{at: c.Y, seal: f.seal(sides...)})
	})
	h := f.found.Head
	if !h.Meets && h.Stops.Free() {
		fs = append(fs, feature{at: h.Stops.From, free: true}, feature{at: h.Stops.To, free: true})
	}
	for _, i := range f.free {
		o := f.found.Openings[i]
		for _, y := range [...]length.Length{o.Bottom.From, o.Bottom.To, o.Bottom.From + o.Height.From, o.Bottom.To + o.Height.To} {
			fs = append(fs, feature{at: y, free: true})
		}
	}
	return unique(fs)
}

// plumbs are the features of a wall in breadth.
func (f *field) plumbs() []feature {
	var fs []feature
	f.corners(f.shape.Solid, func(c plane.Corner, sides ...plane.Side) {
		fs = append(fs, feature{at: c.X, seal: f.seal(sides...), cover: f.cover(sides...)})
	})
	for _, e := range [...]struct{ from, to length.Length }{{f.found.Left.Stops.From, f.found.Left.Stops.To}, {f.found.Right.Stops.From, f.found.Right.Stops.To}} {
		if e.from < e.to {
			fs = append(fs, feature{at: e.from, free: true}, feature{at: e.to, free: true})
		}
	}
	for _, i := range f.free {
		o := f.found.Openings[i]
		for _, x := range [...]length.Length{o.Left.From, o.Left.To, o.Left.From + o.Width.From, o.Left.To + o.Width.To} {
			fs = append(fs, feature{at: x, free: true})
		}
	}
	return unique(fs)
}

func (f *field) corners(r plane.Region, each func(c plane.Corner, sides ...plane.Side)) {
	for _, ring := range r {
		for i, c := range ring {
			each(c, c.On, ring[(i+len(ring)-1)%len(ring)].On)
		}
	}
}

func (f *field) seal(sides ...plane.Side) length.Length {
	most := length.Length(0)
	for _, s := range sides {
		if b := f.rule.Sides[s]; b.Meets {
			most = max(most, f.rule.Sealant-b.Gap)
		}
	}
	return most
}

// cover is how much more of a piece the lap hides than the corner's gap.
func (f *field) cover(sides ...plane.Side) length.Length {
	most := length.Length(0)
	for _, s := range sides {
		switch s {
		case 1:
			most = max(most, f.found.Left.Cover-f.found.Left.Gap-f.found.Left.Behind)
		case 2:
			most = max(most, f.found.Right.Cover-f.found.Right.Gap-f.found.Right.Behind)
		}
	}
	return most
}

func unique(fs []feature) []feature {
	slices.SortFunc(fs, func(a, b feature) int { return int(max(-1, min(1, a.at-b.at))) })
	return slices.Compact(fs)
}

// withShifts repeats every feature for every shift of the bond along a row.
func (f *field) withShifts(fs []feature) []feature {
	var out []feature
	for _, s := range f.shifts {
		for _, g := range fs {
			g.at -= s
			out = append(out, g)
		}
	}
	return unique(out)
}

func sortStable[T any](s []T, key func(T) int64) {
	slices.SortStableFunc(s, func(a, b T) int {
		ka, kb := key(a), key(b)
		switch {
		case ka < kb:
			return -1
		case ka > kb:
			return 1
		}
		return 0
	})
}
