package doubt

import (
	"fmt"

	"coursewright/layout/length"
)

// larger asks about a tile that no wall is as wide as, or as high. A slab may be cut to a wall on purpose; who
// typed the wrong unit did not. In a pattern a tile lies aslant, and only one that is broader than every wall is asked
// about. Common practice, no source.
func (a *asker) larger() {
	t := a.room.Tile
	wide, high := a.widest(), a.highest()
	if wide < a.leastWall() {
		return // the walls are asked about
	}
	d := Doubt{Rule: Shape, Wall: -1}
	switch coursed := a.room.Bond.Coursed(); {
	case !coursed && min(t.Width, t.Height) <= wide:
		return
	case !coursed:
		d.Path, d.Text = a.longer(), fmt.Sprintf("A tile of %s by %s is larger than every wall is wide. Is the unit right?", a.say(t.Width), a.say(t.Height))
	case t.Width > wide:
		d.Path, d.Text = "tile.width", fmt.Sprintf("A tile %s wide is wider than any wall, %s at most. Is the unit right?", a.say(t.Width), a.say(wide))
	case t.Height > high:
		d.Path, d.Text = "tile.height", fmt.Sprintf("A tile %s high is higher than any wall is tiled, %s at most. Is the unit right?", a.say(t.Height), a.say(high))
	default:
		return
	}
	a.ask(d, "tile.width", "tile.height")
}

// longer is the field of the longer side of the tile.
func (a *asker) longer() string {
	if a.room.Tile.Height > a.room.Tile.Width {
		return "tile.height"
	}
	return "tile.width"
}

// widest is the furthest that tile may run along a wall.
func (a *asker) widest() (most length.Length) {
	for _, w := range a.room.Walls {
		f := fieldOf(w)
		most = max(most, f.right-f.left)
	}
	return most
}

// highest is the furthest that tile may run up a wall, from the lowest point of its base.
func (a *asker) highest() (most length.Length) {
	for _, w := range a.room.Walls {
		low, high := w.Base[0].Readings[0].Value, w.Head.Stops.To
		for _, s := range w.Base {
			for _, r := range s.Readings {
				low = min(low, r.Value)
			}
		}
		for n, r := range w.Head.Readings {
			if w.Head.Meets && (n == 0 || r.Value > high) {
				high = r.Value
			}
		}
		most = max(most, high-low)
	}
	return most
}

// narrow asks about a wall that has hardly room for a strip of tile. Common practice, no source.
func (a *asker) narrow() {
	for i, w := range a.room.Walls {
		if w.Width < a.leastWall() {
			a.ask(Doubt{Rule: Narrow, Path: fmt.Sprintf("walls[%d].width", i), Wall: i,
				Text: fmt.Sprintf("%s is %s wide, which is hardly room for a strip of tile. Is the unit right?", w.Name, a.say(w.Width))})
		}
	}
}

// leastWall is the least width that is taken for a wall without asking, 2 in (50 mm): the return beside a tub is 2 1/2 in
// and more. Common practice, no source.
func (a *asker) leastWall() length.Length { return a.either(2*length.Inch, 50*length.Millimetre) }
