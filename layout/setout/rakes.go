package setout

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// rakes are the features along the rows that rakes and leans bring, for one
// phase across them: where a leaning end stands at each row's edges, and where
// a raked edge comes to a limit. Each is moved back by its row's shift.
func (f *field) rakes(c *compiled) []feature {
	var fs []feature
	tightest := map[[2]int]feature{}
	for i := range c.classes {
		k := &c.classes[i]
		if len(k.plain) == 1 && k.plain[0].upright() {
			continue
		}
		shift := k.row.First
		level := len(k.plain) == 1 && k.plain[0].rake == nil
		f.corners(k.band.Solid, func(at plane.Corner, sides ...plane.Side) {
			g := feature{at: at.X - shift, seal: f.seal(sides...), cover: f.cover(sides...), solo: true}
			if !level {
				fs = append(fs, g)
			}
			f.tighten(tightest, k.row.Phase, g, sides)
		})
		if !level {
			fs = append(fs, f.limits(k, shift)...)
		}
	}
	for _, g := range tightest {
		g.solo = false
		fs = append(fs, g)
	}
	return unique(fs)
}

// tighten keeps, for each phase and end, the place farthest into the wall.
func (f *field) tighten(tightest map[[2]int]feature, phase int, g feature, sides []plane.Side) {
	for _, s := range sides {
		if s != 1 && s != 2 {
			continue
		}
		key := [2]int{phase, int(s)}
		t, there := tightest[key]
		if !there || s == 1 && g.at > t.at || s == 2 && g.at < t.at {
			tightest[key] = g
		}
	}
}

// limits are the places where a raked edge leaves just the sliver limit, half
// the tile or a strip that sealant takes.
func (f *field) limits(k *class, shift length.Length) []feature {
	var fs []feature
	low, high := k.row.Low, k.row.High
	for _, ring := range k.band.Solid {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			if a.On == 0 || a.Y == b.Y || a.X == b.X {
				continue
			}
			seal := f.seal(a.On)
			for _, y := range [...]length.Length{high - f.rule.SliverAcross, low + f.rule.SliverAcross, high - seal, low + seal,
				high - (high-low)/2, low + (high-low)/2} {
				if y > min(a.Y, b.Y) && y < max(a.Y, b.Y) {
					x := a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y)
					for d := length.Length(-1); d <= 1; d++ {
						fs = append(fs, feature{at: x + d - shift, free: true})
					}
				}
			}
		}
	}
	return fs
}
