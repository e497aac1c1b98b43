package count

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// cutter cuts rows of a wall, and keeps what came of them.
type cutter struct {
	w       *facts
	marks   *Marks
	runs    *registry
	grounds table[[3]length.Length, *ground] // by where the ends and the head stand
	rows    table[rowKey, *rowCount]
	bands   map[string]int // numbers of the bands that rows cover, by their keys
	patches table[patchKey, *rowCount]
	bare    table[bareKey, *tally]
	lonely  table[aloneKey, merit.Merit] // what free openings give that stand clear
	corners int                          // of the wall's shape, once they were counted
	meter   *meter
}

func newCutter(w *facts, marks *Marks, m *meter) *cutter {
	return &cutter{w: w, marks: marks, runs: &registry{w: w, numbers: map[runKey]int{}}, bands: map[string]int{}, meter: m,
		grounds: newTable[[3]length.Length, *ground](mostGrounds, m), rows: newTable[rowKey, *rowCount](mostRows, m),
		patches: newTable[patchKey, *rowCount](mostPatches, m), bare: newTable[bareKey, *tally](mostBare, m), lonely: newTable[aloneKey, merit.Merit](mostPatches, m)}
}

// cornerCount is how many corners the wall's shape has, for what it costs to cut. It is counted once.
func (c *cutter) cornerCount() int {
	if c.corners == 0 {
		for _, ring := range c.w.found.Drilled(c.w.room.Units, c.w.field).Region {
			c.corners += len(ring)
		}
	}
	return c.corners
}

// ground is a wall with its free ends and its head placed and without its free
// openings: what many set-outs have in common.
type ground struct {
	shape   survey.Shape
	box     plane.Rect // of the tile field
	profile *profile
	cover   *piece.Cover
	bands   map[length.Length]numbered // by where they begin
}

// mostGrounds and mostRows bound how many grounds and rows are kept.
const (
	mostGrounds = 256
	mostRows    = 20_000
)

// ground is the ground of a setting, made once.
func (c *cutter) ground(p survey.Placed) *ground {
	return c.grounds.of([3]length.Length{p.Left, p.Right, p.Head}, func() *ground { return c.groundOf(p) })
}

func (c *cutter) groundOf(p survey.Placed) *ground {
	if c.grounds.full() { // the numbers of bands begin anew, so that rows are told apart by others
		clear(c.bands)
		c.rows.empty()
	}
	n := c.cornerCount()
	c.meter.add(10*n + n*n/500)
	shape := c.w.found.Shape(c.w.room.Units, c.w.without(p))
	return &ground{shape: shape, box: shape.Solid.Bounds(), profile: profileOf(c.w, shape), cover: piece.NewCover(shape, c.w.rule), bands: map[length.Length]numbered{}}
}

// fitted is a ground with the free openings where a setting has them. Its shape is
// made when a row has to be cut.
type fitted struct {
	*ground
	c      *cutter
	placed survey.Placed
	made   *survey.Shape
}

func (c *cutter) fit(p survey.Placed) *fitted { return &fitted{ground: c.ground(p), c: c, placed: p} }

// outline is the profile of the ground with the openings.
func (f *fitted) outline() *profile {
	if len(f.c.w.free) == 0 {
		return f.profile
	}
	return f.profile.with(f.placed)
}

// bare is the cover of the shape, with nothing on it: that of the ground, unless an
// opening takes some of its boundary.
func (f *fitted) bare() *piece.Cover {
	for _, ring := range f.shape.Solid {
		for k, a := range ring {
			edge := edgeBox(a.Point, ring[(k+1)%len(ring)].Point)
			for _, i := range f.c.w.free {
				if touch(edge, f.c.w.boxOf(i, f.c.w.found.Openings[i], f.placed)) {
					f.c.meter.add(20)
					return piece.NewCover(f.whole(), f.c.w.rule)
				}
			}
		}
	}
	f.cover.Clear()
	return f.cover
}

// whole is the shape of the ground without what the free openings take.
func (f *fitted) whole() survey.Shape {
	if f.made == nil {
		w, s := f.c.w, f.shape
		for _, i := range w.free {
			if e := f.placed.Openings[i]; e != Away {
				s = s.Less(plane.Rect{Left: e.Left, Bottom: e.Bottom, Right: e.Right, Top: e.Top}, survey.SideBase+plane.Side(len(w.found.Base)+i))
			}
		}
		f.made = &s
	}
	return *f.made
}
