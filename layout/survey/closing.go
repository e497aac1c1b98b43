package survey

import (
	"fmt"

	"coursewright/layout/length"
)

// give is what a pattern may lack to close, which its joints take up: half a
// millimetre, under what a tape shows. Common practice, no source.
const give = length.Millimetre / 2

// Flats is the distance between two sides of a hexagon. Of a tile that is given
// with both, the smaller size; a tile given with the same size twice is given by its
// flats.
func Flats(t TileSize) length.Length { return min(t.Width, t.Height) }

// TileArea is the face of one tile of the room. Of a hexagon with flats F apart it is
// √3/2·F², of a picket with points of 45° height·width − width²/2.
func (r Room) TileArea() length.Area {
	long, short := max(r.Tile.Width, r.Tile.Height), min(r.Tile.Width, r.Tile.Height)
	switch r.Bond.Kind {
	case Hexagon:
		return short.Times(short) / 1000 * 866 // √3/2 to one in 30,000
	case Picket:
		return long.Times(short) - short.Times(short)/2
	}
	return long.Times(short)
}

// Weave is how many tiles stand side by side in one square of a basket weave.
func Weave(long, short, joint length.Length) length.Length {
	return max(1, (2*(long+joint)+short+joint)/(2*(short+joint)))
}

// closes tells whether tiles of these sizes fit together with a joint: what was
// found, and the sizes or the joint that would; empty where they do.
func (b BondRule) closes(units length.System, t TileSize, j length.Length) (found, want string) {
	long, short := max(t.Width, t.Height), min(t.Width, t.Height)
	say := func(l length.Length) string { return l.Fine(units) }
	found = fmt.Sprintf("a %s of tile %s × %s with a joint of %s, which do not close", b.Kind, say(t.Width), say(t.Height), say(j))
	switch b.Kind {
	case Herringbone:
		if long == short {
			return found, "a tile that is longer than wide, such as " + say(long) + " × " + say(max(1, (long-j)/2)) + "; squares are laid diagonal or in a pinwheel"
		}
	case DoubleHerringbone:
		if long+j < 2*(short+j) {
			want = "a tile at least " + say(2*short+j) + " long: two of " + say(short) + " and a joint"
			if wide := (long - j) / 2; wide > 0 {
				want += ", or one at most " + say(wide) + " wide"
			}
			return found, want
		}
	case BasketWeave:
		if len(b.Others) > 0 {
			return found, b.dotted(say, long, short, j)
		}
		return found, woven(say, units.FineStep(), long, short, j)
	case Hexagon:
		// Point to point is 2/√3 of flat to flat; a fiftieth is left for sizes rounded on the box.
		if points := short * 1_154_701 / 1_000_000; long != short && (long-points).Abs() > points/50 {
			return found, "the distance between two sides as both sizes, or " + say(points) + " from point to point"
		}
	case Picket:
		if along, across := t.Height, t.Width; (along > across) == b.Swapped || along == across {
			want = "a tile longer from point to point than across, such as " + say(short) + " across and " + say(2*short) + " from point to point as " + b.alongName() + ", with any joint: its points are 45°"
			if along != across {
				want = "the " + say(long) + " from point to point as " + b.alongName() + " and the " + say(short) + " across as the other size, or rows the other way: points are 45°"
			}
			return found, want
		}
	case MixedHeights:
		for _, o := range b.Others {
			if own, other := t.Width, o.Width; !b.Swapped && own != other {
				return found, "tiles of one width, " + say(own) + ", and several heights"
			}
			if own, other := t.Height, o.Height; b.Swapped && own != other {
				return found, "tiles of one height, " + say(own) + ", and several widths"
			}
		}
	case Pinwheel:
		switch o := b.Others[0]; {
		case long != short:
			return found, "a square as the first tile, such as " + say(short) + " both ways, and another of any size"
		case o.Width != o.Height:
			return found, "a square as tile 2 too, such as " + say(min(o.Width, o.Height)) + " both ways"
		}
	case Modular:
		return found, b.modules(say, long, short, j)
	}
	return "", ""
}

// alongName is which size of a picket's tile goes from point to point.
func (b BondRule) alongName() string {
	if b.Swapped {
		return "width"
	}
	return "height"
}

// woven says what would close a basket weave without a dot: L = n·W + (n − 1)·j. One square tile closes too,
// as a stack (layout/doubt asks about it), but is wished of no other tile; step is the least that is told of
// a size.
func woven(say func(length.Length) string, step, long, short, j length.Length) string {
	if long-short <= give {
		return ""
	}
	n := max(2, Weave(long, short, j))
	fits := n*short + (n-1)*j
	if (long - fits).Abs() <= give {
		return ""
	}
	want := fmt.Sprintf("a tile %s long: %d of %s side by side with their joints", say(fits), n, say(short))
	if wide := ((long-(n-1)*j)/n + step/2).FloorTo(step); wide > 0 && (long-n*wide-(n-1)*j).Abs() <= give {
		want += ", or one " + say(wide) + " wide"
	}
	if spare := long - n*short; spare >= n*give {
		want += ", or a joint of " + say(spare/(n-1))
	}
	return want
}

// dotted says what would close a basket weave with a dot: L = W + 2·(dot + j).
func (b BondRule) dotted(say func(length.Length) string, long, short, j length.Length) string {
	dot := b.Others[0]
	if dot.Width != dot.Height {
		return "a square dot"
	}
	fits := short + 2*(dot.Width+j)
	if (long - fits).Abs() <= give {
		return ""
	}
	want := "a tile " + say(fits) + " long: its width, two dots and two joints"
	if d := (long - short - 2*j) / 2; d > 0 {
		want += ", or a dot of " + say(d)
	}
	return want
}

// modules says what would close a modular: every size is a whole number of modules
// less one joint, and the smallest tile is one module.
func (b BondRule) modules(say func(length.Length) string, long, short, j length.Length) string {
	if long != short {
		return "a square as the first tile, such as " + say(short) + " both ways: one module less a joint"
	}
	module := short + j
	for i, n := range [...][2]length.Length{{2, 1}, {2, 2}, {3, 2}} {
		o := b.Others[i]
		l, s := n[0]*module-j, n[1]*module-j
		if (max(o.Width, o.Height)-l).Abs() > give || (min(o.Width, o.Height)-s).Abs() > give {
			return fmt.Sprintf("%s × %s as tile %d: %d by %d modules of %s less a joint", say(l), say(s), i+2, n[0], n[1], say(module))
		}
	}
	return ""
}
