package count

import (
	"slices"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// everyPlace gives each way to place the free marks of a wall with a start on a line.
func (w *Wall) everyPlace(line, edge length.Length, each func(Setting)) {
	for _, left := range w.Places.Ends(edge, false) {
		for _, right := range w.Places.Ends(edge, true) {
			for _, head := range w.Places.Heads(line) {
				s := Setting{Line: line, Edge: edge, Placed: w.Outer()}
				if !w.Found.Left.Meets {
					s.Placed.Left = left
				}
				if !w.Found.Right.Meets {
					s.Placed.Right = right
				}
				if !w.Found.Head.Meets {
					s.Placed.Head = head
				}
				w.everyOpening(s, 0, each)
			}
		}
	}
}

// everyOpening places the free openings from one on, none into another.
func (w *Wall) everyOpening(s Setting, from int, each func(Setting)) {
	if from == len(w.Free()) {
		if !w.Places.Overlap(s.Placed) {
			each(s)
		}
		return
	}
	i := w.Free()[from]
	for _, x := range w.Places.LevelPairs(i, s.Edge) {
		for _, y := range w.Places.UprightPairs(i, s.Line) {
			s.Placed.Openings = slices.Clone(s.Placed.Openings)
			s.Placed.Openings[i] = survey.Edges{Left: x.Low, Right: x.High, Bottom: y.Low, Top: y.High}
			w.everyOpening(s, from+1, each)
		}
	}
}

// best is the best that a start on a line gives, by brute force over all places of the free marks.
func (w *Wall) best(line, edge length.Length) (best Counted) {
	found := false
	w.everyPlace(line, edge, func(s Setting) {
		if c := w.Count(s); !found || w.facts.order.Better(&c.Merit, &best.Merit) {
			best, found = c, true
		}
	})
	return best
}

// claimed is what a bound claims of 121 set-outs of a wall together: in how many of them it
// is as good as the best of all placings in every term before those out of sight, and how
// much it is sure of.
type claimed struct {
	equal       int
	bare        length.Length // in sight and out of it, in whole millimetres
	small, runs int           // unworkable pieces and slivers; runs under a half
	work        int
	mirror      length.Length // in whole millimetres
}

func (c *claimed) add(m *merit.Merit) {
	for _, of := range []*merit.Sight{&m.Sight, &m.OutOfSight} {
		c.bare += of.Bare / mm
		c.small += of.Unworkable + of.Slivers
		c.runs += len(of.Runs)
	}
	c.work += m.Work
	c.mirror += m.Mirror / mm
}

func (c *claimed) noLess(t *testing.T, than claimed, name string) {
	require.True(t, c.equal >= than.equal && c.bare >= than.bare && c.small >= than.small && c.runs >= than.runs && c.work >= than.work && c.mirror >= than.mirror,
		"%s claims less: %v, not %v", name, *c, than)
}

// everyKind has a wall of every kind, with what bounds are known to claim of it.
var everyKind = []struct {
	sketch        string
	both, plainly claimed
}{
	{"1000x600 300x100+2", claimed{56, 0, 308, 220, 2090, 10912}, claimed{77, 0, 388, 220, 2090, 10912}},
	{"1000x600 300x100+2 1/2", claimed{49, 2024, 264, 330, 2046, 5940}, claimed{70, 2822, 304, 330, 2046, 8789}},
	{"1000x600 300x100+2 1/3 gap=3", claimed{34, 0, 312, 462, 2123, 12771}, claimed{55, 0, 379, 462, 2123, 12771}},
	{"1000x600 300x100+2 1/3 columns", claimed{0, 0, 276, 343, 1968, 10912}, claimed{88, 0, 364, 418, 1968, 10912}},
	{"1000x600 300x100+2 columns gap=3", claimed{40, 0, 326, 220, 2068, 10912}, claimed{88, 0, 458, 220, 2068, 10912}},
	{"1000x600 150x150+3 gap=3", claimed{30, 9600, 403, 220, 1795, 3058}, claimed{54, 12812, 487, 220, 1795, 4796}},
	{"1000x600 400x300+3 1/2 gap=3", claimed{0, 3000, 64, 210, 684, 0}, claimed{0, 3297, 108, 330, 684, 70}},
	{"1000x600 50x50+2 gap=3", claimed{49, 15024, 1137, 198, 6145, 2607}, claimed{70, 15508, 1197, 198, 6145, 2607}},
	{"1000x600 100x300+8 gap=3", claimed{43, 6000, 392, 209, 2296, 3910}, claimed{55, 12714, 480, 209, 2296, 5680}},
	{"1000x600 300x100+2 1/2 gap=3 cover=13 leanleft=0,5", claimed{0, 2156, 322, 352, 2651, 5060}, claimed{30, 3024, 390, 352, 2667, 8902}},
	{"1000x600 300x100+2 gap=3 cover=13 leanright=-4,4", claimed{0, 0, 344, 231, 2717, 9966}, claimed{31, 0, 432, 231, 2717, 10874}},
	{"1000x600 300x100+2 1/2 gap=3 cover=13 leanleft=0,5 leanright=-4,4", claimed{0, 0, 300, 352, 3212, 3872}, claimed{1, 897, 398, 363, 3266, 9179}},
	{"1000x600 300x100+2 columns gap=3 cover=13 leanleft=0,5 leanright=-4,4", claimed{0, 0, 326, 242, 3036, 9438}, claimed{0, 0, 458, 242, 3036, 9438}},
	{"1000x600 300x100+2 1/2 gap=3 base=0,-8", claimed{29, 2156, 278, 330, 2046, 7348}, claimed{40, 2591, 326, 330, 2046, 8855}},
	{"1000x600 100x100+8 base=0,-20", claimed{17, 23226, 332, 198, 3136, 3080}, claimed{19, 24114, 386, 198, 3136, 4448}},
	{"1000x600 300x100+2 1/2 gap=3 base=0,-8 ceiling=600,594", claimed{29, 2442, 256, 341, 2002, 6680}, claimed{40, 2442, 302, 341, 2002, 8050}},
	{"1000x600 300x100+2 1/2 columns gap=3 base=0,-8 ceiling=600,594", claimed{0, 4312, 179, 319, 1920, 0}, claimed{0, 7097, 321, 357, 1924, 0}},
	{"1000x600 300x100+2 gap=3 leg=150", claimed{30, 0, 311, 396, 1892, 10912}, claimed{53, 0, 497, 396, 2068, 10912}},
	{"1000x600 300x100+2 gap=3 leg=40", claimed{0, 0, 344, 396, 2134, 10912}, claimed{44, 0, 777, 396, 2266, 10912}},
	{"1000x600 300x100+2 gap=3 leg=310", claimed{30, 0, 377, 330, 2255, 10912}, claimed{53, 0, 497, 330, 2134, 10912}},
	{"1000x600 300x300+2 leg=40 base=0,-6", claimed{0, 0, 88, 220, 704, 9920}, claimed{0, 0, 172, 220, 704, 9920}},
	{"1000x600 300x100+2 1/2 gap=3 leg=150 columns", claimed{30, 4312, 247, 441, 2022, 10208}, claimed{67, 4312, 380, 526, 1896, 10208}},
	{"1000x600 300x100+2 1/2 left=0..80", claimed{63, 2024, 176, 341, 1903, 0}, claimed{70, 2822, 196, 341, 1903, 0}},
	{"1000x600 300x100+2 1/2 left=0..80 leg=150", claimed{14, 2024, 176, 485, 1827, 0}, claimed{35, 2424, 236, 518, 1827, 0}},
	{"1000x600 150x150+2 left=0..120 leg=100", claimed{39, 6248, 242, 162, 1369, 0}, claimed{41, 6248, 282, 162, 1369, 0}},
	{"1000x600 300x300+2 left=0..70 leg=100", claimed{9, 0, 55, 253, 572, 0}, claimed{72, 0, 114, 330, 572, 0}},
	{"1000x600 300x100+2 left=0..80 base=0,-8", claimed{0, 0, 198, 187, 1925, 0}, claimed{0, 0, 238, 187, 1925, 0}},
	{"1000x600 300x100+2 left=0..80 head=540..640", claimed{81, 0, 140, 132, 1352, 0}, claimed{99, 0, 182, 132, 1473, 0}},
	{"1000x600 300x100+2 left=0..80 leanright=0,5", claimed{63, 0, 143, 187, 2420, 0}, claimed{77, 0, 212, 187, 2502, 0}},
	{"700x600 300x100+2 left=0..80 leanright=0,5 gap=3", claimed{45, 0, 172, 209, 2074, 0}, claimed{55, 0, 216, 209, 2074, 0}},
	{"1000x600 300x100+2 right=920..1000 gap=3", claimed{45, 0, 238, 187, 1975, 0}, claimed{55, 0, 282, 187, 1975, 0}},
	{"1000x600 300x100+2 left=0..80 right=920..1000", claimed{28, 0, 44, 154, 1320, 0}, claimed{28, 0, 44, 154, 1320, 0}},
	{"700x600 300x100+2 left=0..40 right=620..660", claimed{7, 0, 0, 198, 1045, 0}, claimed{7, 0, 0, 198, 1045, 0}},
	{"1000x600 300x100+2 left=0..80 window=100,200,150,200", claimed{16, 0, 231, 473, 1911, 0}, claimed{12, 0, 249, 418, 1559, 0}},
	{"1000x600 300x100+2 left=0..80 pipe=900,300,40", claimed{63, 0, 168, 187, 1760, 0}, claimed{77, 0, 238, 187, 1760, 0}},
	{"1000x600 300x100+2 left=0..80 pipe=150,300,40", claimed{63, 0, 198, 187, 1805, 0}, claimed{77, 0, 238, 187, 1640, 0}},
	{"500x600 300x100+2 1/2 right=420..480 leanleft=0,5 gap=3", claimed{0, 0, 84, 352, 1643, 0}, claimed{55, 0, 129, 352, 1643, 0}},
	{"1000x600 300x100+2 columns gap=3 leg=60", claimed{40, 0, 386, 396, 2090, 10912}, claimed{88, 0, 544, 396, 2046, 10912}},
	{"1000x600 300x400+2 gap=3 window=400,280,200,160", claimed{0, 0, 86, 385, 484, 4960}, claimed{0, 0, 204, 385, 264, 0}},
	{"1000x600 300x100+2 1/2 left=20 gap=3", claimed{36, 0, 313, 352, 2134, 0}, claimed{55, 0, 399, 352, 2134, 0}},
	{"1000x600 300x100+2 1/2 head=540..640 gap=3", claimed{40, 2156, 210, 275, 1474, 7348}, claimed{80, 2981, 270, 275, 1708, 8855}},
	{"1000x600 300x100+2 1/2 columns head=540..640 gap=3", claimed{50, 4312, 153, 220, 1668, 10208}, claimed{88, 4312, 203, 220, 1668, 10208}},
	{"1000x600 300x100+2 columns head=540..640 gap=3 leg=150", claimed{48, 0, 302, 341, 1573, 10912}, claimed{68, 0, 400, 341, 1573, 10912}},
	{"1000x600 300x100+2 1/2 columns head=540..640 gap=3 left=0..80", claimed{42, 0, 146, 176, 1210, 0}, claimed{59, 0, 173, 176, 1210, 0}},
	{"1000x600 300x100+2 1/2 gap=3 window=400,200,150,200", claimed{1, 2156, 338, 571, 2332, 7348}, claimed{0, 1946, 386, 615, 1892, 4032}},
	{"1000x600 300x100+2 1/2 gap=3 window=360,250,150,200 pipe=800,120,40", claimed{0, 1666, 309, 573, 2145, 7348}, claimed{0, 1946, 382, 661, 1755, 4032}},
	{"1000x600 300x100+2 1/2 gap=3 columns window=360,250,150,200 pipe=800,120,40", claimed{0, 3234, 198, 398, 1760, 10208}, claimed{58, 3234, 405, 598, 960, 10208}},
	{"1000x900 200x100+2 gap=3 niche=380..420,250,300..340,204", claimed{25, 0, 703, 363, 3696, 10120}, claimed{61, 0, 829, 363, 3511, 10120}},
	{"1000x900 100x200+2 gap=3 niche=380..420,250,300..340,404", claimed{30, 0, 526, 308, 4171, 2926}, claimed{47, 0, 602, 308, 4171, 3223}},
	{"1000x900 200x100+2 1/2 gap=3 niche=380..420,250..260,300..340,204 head=800..870", claimed{40, 3234, 494, 528, 2970, 6721}, claimed{68, 4353, 574, 528, 2925, 7161}},
	{"1000x900 200x100+2 1/2 columns gap=3 niche=380..420,250,300..340,204", claimed{24, 11902, 528, 484, 3784, 8283}, claimed{49, 12893, 618, 484, 3784, 8283}},
	{"1000x600 200x100+2 gap=3 niche=150..190,250,180..220,204 niche=560,250,180..220,204", claimed{3, 0, 316, 330, 2112, 8280}, claimed{9, 0, 670, 330, 2112, 8280}},
}

// Law 2 in every kind of room, by brute force over all places of the free marks at 11
// starts on 11 lines; and no bound claims less than it is known to: one that claims
// nothing would hold too, and every search would look at everything. A bound that claims
// less for good reason gets its new figures here.
func TestBoundsHoldAndAreTight(t *testing.T) {
	for _, c := range everyKind {
		w := drawWall(c.sketch)
		both, plainly := w.claims(t, c.sketch)
		both.noLess(t, c.both, "OfBoth of "+c.sketch)
		plainly.noLess(t, c.plainly, "Plainly of "+c.sketch)
	}
}

// What a search adds up of the best placing before it looks, and what it counts without the
// free openings: no more than the best gives, and no less than is known.
func TestWhatPlacingsPromiseIsTight(t *testing.T) {
	for _, c := range []struct {
		sketch           string
		promised, beyond claimed
	}{
		{"1000x600 400x300+3 1/2 gap=3", claimed{0, 3000, 64, 210, 684, 0}, claimed{121, 3299, 208, 330, 2352, 16918}},
		{"1000x600 300x100+2 1/3 columns", claimed{0, 0, 276, 343, 1968, 10912}, claimed{121, 0, 470, 418, 3516, 10912}},
		{"1000x600 300x100+2 gap=3 leg=40", claimed{0, 0, 344, 275, 2134, 10912}, claimed{121, 44, 914, 396, 4551, 10912}},
		{"1000x600 300x100+2 1/2 left=0..80", claimed{63, 2024, 176, 341, 1903, 0}, claimed{66, 2956, 280, 341, 3143, 0}},
		{"1000x600 300x100+2 1/2 left=0..80 leg=150", claimed{14, 2024, 176, 485, 1827, 0}, claimed{66, 2956, 360, 583, 3974, 0}},
		{"1000x600 300x300+2 left=0..70 leg=100", claimed{9, 0, 55, 198, 572, 0}, claimed{22, 1045, 177, 393, 3114, 0}},
		{"700x600 300x100+2 left=0..40 right=620..660", claimed{7, 0, 0, 198, 605, 0}, claimed{121, 0, 128, 198, 2780, 10956}},
		{"1000x600 300x100+2 right=920..1000 gap=3", claimed{45, 0, 238, 187, 1975, 0}, claimed{33, 0, 402, 187, 3361, 0}},
		{"1000x600 300x100+2 1/2 columns head=540..640 gap=3", claimed{50, 4312, 161, 231, 1764, 10208}, claimed{121, 5929, 257, 231, 2860, 12595}},
		{"1000x600 300x100+2 1/2 columns head=540..640 gap=3 left=0..80", claimed{42, 0, 146, 176, 1232, 0}, claimed{33, 0, 244, 209, 2729, 0}},
		{"1000x600 300x100+2 1/2 gap=3 window=360,250,150,200 pipe=800,120,40", claimed{0, 1666, 309, 573, 2145, 7348}, claimed{121, 3088, 638, 677, 7779, 8855}},
		{"1000x900 200x100+2 gap=3 niche=380..420,250,300..340,204", claimed{25, 0, 703, 363, 3696, 10120}, claimed{18, 0, 937, 220, 4899, 10120}},
		{"1000x900 100x200+2 gap=3 niche=380..420,250,300..340,404", claimed{30, 0, 526, 308, 4139, 2926}, claimed{20, 0, 688, 220, 4733, 3223}},
		{"1000x900 200x100+2 gap=3 leg=150 niche=380..420,250,300..340,204 pipe=800,400,40", claimed{6, 0, 655, 418, 3432, 10120}, claimed{18, 44, 1110, 341, 7265, 10120}},
		{"1000x900 200x100+2 1/2 gap=3 niche=380..420,250..260,300..340,204 head=800..870", claimed{22, 3234, 494, 528, 2772, 6721}, claimed{0, 1182, 671, 278, 3615, 7161}},
		{"1000x900 200x100+2 1/2 columns gap=3 niche=380..420,250,300..340,204", claimed{24, 11902, 528, 484, 3776, 8283}, claimed{24, 10400, 696, 330, 4754, 8481}},
		{"1000x600 200x100+2 gap=3 niche=150..190,250,180..220,204 niche=560,250,180..220,204", claimed{12, 0, 426, 440, 2464, 8280}, claimed{18, 0, 804, 220, 3696, 10120}},
	} {
		w := drawWall(c.sketch)
		promised, beyond := w.placings(t, c.sketch)
		promised.noLess(t, c.promised, "the promise of "+c.sketch)
		beyond.noLess(t, c.beyond, "Beyond of "+c.sketch)
	}
}

// placings holds what is known of the best placing before it is counted to what it gives.
func (w *Wall) placings(t *testing.T, sketch string) (promised, beyond claimed) {
	w.setOuts(func(line, edge length.Length) {
		best := w.best(line, edge)
		promised.hold(t, w, &best.Merit, w.promise(best.Setting), sketch)
		beyond.hold(t, w, &best.Merit, w.Bounds.Beyond(best.Setting), sketch)
	})
	return promised, beyond
}

// claims holds both bounds to the best that there is, and adds up what they claim.
func (w *Wall) claims(t *testing.T, sketch string) (both, plainly claimed) {
	w.setOuts(func(line, edge length.Length) {
		best := w.best(line, edge)
		both.hold(t, w, &best.Merit, w.Bounds.OfBoth(line, edge), sketch)
		plainly.hold(t, w, &best.Merit, w.Bounds.Plainly(line, edge), sketch)
	})
	return both, plainly
}

// setOuts gives 11 starts on each of 11 lines.
func (w *Wall) setOuts(each func(line, edge length.Length)) {
	tried, pitch := w.Starts.Tried(), w.facts.room.Tile.Height+w.facts.room.Joint
	for i := range 11 {
		for k := range length.Length(11) {
			each((k * pitch / 11).FloorTo(mm), tried[i*len(tried)/11])
		}
	}
}

// hold holds a bound to what there is, and adds up what it claims.
func (c *claimed) hold(t *testing.T, w *Wall, best *merit.Merit, to merit.Merit, sketch string) {
	order, term := w.facts.order.Compare(best, &to)
	require.GreaterOrEqual(t, order, 0, "%s claims more in %s", sketch, term)
	if order, _ := w.facts.order.Until(best, &to, merit.HiddenBare); order == 0 {
		c.equal++
	}
	c.add(&to)
}
