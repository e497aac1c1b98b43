package chance

import (
	"coursewright/layout/length"
	"coursewright/layout/survey"

	"pgregory.net/rapid"
)

// Pattern draws tile, joint and any bond, of sizes that close, the room's tile no
// smaller than least.
func Pattern(t *rapid.T, least length.Length) survey.Room {
	n := func(name string, low, high int) length.Length {
		return length.Length(rapid.IntRange(low, high).Draw(t, name))
	}
	kind := rapid.SampledFrom(survey.Bonds).Draw(t, "kind")
	r := survey.Room{Units: length.Metric, Tape: mm, Bed: 5 * mm, Sealant: 6 * mm, Joint: n("joint", 0, 6000), Bond: survey.BondRule{Kind: kind, Den: 1}}
	w, h := n("width", int(least), 300_000), n("height", int(least), 300_000)
	other := func(w, h length.Length) { r.Bond.Others = append(r.Bond.Others, survey.TileSize{Width: w, Height: h}) }
	switch kind {
	case survey.Running, survey.MixedHeights, survey.Diagonal:
		r.Bond.Den = int64(n("den", 1, 4))
		r.Bond.Num = int64(n("num", 0, int(r.Bond.Den)-1))
		if kind == survey.MixedHeights {
			other(w, n("other", 20_000, 200_000))
		}
	case survey.BasketWeave:
		if rapid.Bool().Draw(t, "dot") {
			d := n("dot", 5_000, 100_000)
			w = h + 2*d + 2*r.Joint
			other(d, d)
		} else {
			k := n("tiles", 1, 5)
			w = k*h + (k-1)*r.Joint
		}
	case survey.Hexagon:
		w = h
	case survey.Picket:
		h = w + n("drawn out", 1000, 200_000)
	case survey.DoubleHerringbone:
		w = 2*h + r.Joint + n("longer", 0, 100_000)
	case survey.Chevron:
		r.Bond.Angle = rapid.SampledFrom([]int{30, 45, 60}).Draw(t, "angle")
	case survey.Pinwheel:
		h = w
		o := n("other", 20_000, 300_000)
		other(o, o)
	case survey.Modular:
		h = w
		m := w + r.Joint
		other(2*m-r.Joint, w)
		other(2*m-r.Joint, 2*m-r.Joint)
		other(3*m-r.Joint, 2*m-r.Joint)
	}
	r.Tile = survey.TileSize{Width: w, Height: h, Thickness: 8 * mm}
	r.Joints = []length.Length{r.Joint}
	switch turn := rapid.IntRange(0, 2).Draw(t, "turn"); {
	case turn == 1 && r.Bond.Coursed():
		r.Bond.Plumb = true
	case turn == 1:
		r.Bond.Swapped = true
	case turn == 2 && kind.Turns():
		r.Bond.Turned = true
	}
	return r
}
