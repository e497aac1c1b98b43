package survey

import (
	"fmt"
	"strconv"

	"coursewright/layout/length"
)

// Sheet says that tile comes glued to sheets, and of how many tiles one is, along its
// rows and from row to row; in patterns whose tiles come in groups, of how many groups
// (see BondRule.Sheet). Within a sheet the joints are those of the job.
type Sheet struct {
	Across int `json:"across"`
	Up     int `json:"up"`
}

// SheetSize is the same once it is read; zero for tile that is set one by one.
type SheetSize struct {
	Across, Up int
	Each       int // tiles of one group, 0 and 1 where tiles are counted
}

// Any tells whether tile comes on sheets.
func (s SheetSize) Any() bool { return s.Across > 0 }

// Tiles is how many tiles a sheet has.
func (s SheetSize) Tiles() int { return s.Across * s.Up * max(1, s.Each) }

// Counted says how large a sheet or a part of one is: "6 × 4 tiles", or
// "6 × 4 groups of 2 tiles".
func (s SheetSize) Counted(wide, high int) string {
	if s.Each > 1 {
		return fmt.Sprintf("%d × %d groups of %d tiles", wide, high, s.Each)
	}
	return fmt.Sprintf("%d × %d tiles", wide, high)
}

// Sheet is how large the sheets of a tile are that is laid in the bond. Groups are
// counted where rows of single tiles are not seen: in herringbones those that make a V,
// in a basket weave one square of tiles or a tile with its dot, in a pinwheel a large
// tile with its small one, in a modular one of each of its six places.
func (b BondRule) Sheet(t TileSize, joint length.Length) SheetSize {
	s := t.Sheet
	if !s.Any() {
		return s
	}
	switch b.Kind {
	case Herringbone, Pinwheel:
		s.Each = 2
	case DoubleHerringbone:
		s.Each = 4
	case BasketWeave:
		if s.Each = 2; len(b.Others) == 0 {
			s.Each = int(Weave(max(t.Width, t.Height), min(t.Width, t.Height), joint))
		}
	case Modular:
		s.Each = 6
	}
	return s
}

// SheetRepeat is how many tiles or groups along and up stand before a pattern repeats:
// a sheet has whole multiples of them, so that all sheets are alike.
func (b BondRule) SheetRepeat() (across, up int) {
	across, up = 1, 1
	switch b.Kind {
	case BasketWeave:
		return 2, 2
	case Chevron:
		across = 2
	case MixedHeights:
		heights := len(b.Others) + 1
		for up = heights; up%int(max(1, b.Den)) != 0; {
			up += heights
		}
	}
	if b.Swapped {
		across, up = up, across
	}
	return across, up
}

// mostOnSheet is how many tiles a sheet has at most each way: 12 in of 3/8 in tile
// with its joints are 24 to 32. A practical bound.
const mostOnSheet = 100

// sheet reads how many tiles are on a sheet.
func (r *resolver) sheet(p path, s *Sheet) SheetSize {
	if s == nil {
		return SheetSize{}
	}
	before := len(r.faults)
	count := func(p path, n int) {
		if n < 1 || n > mostOnSheet {
			r.faults.add(p, strconv.Itoa(n), fmt.Sprintf("how many tiles a sheet has that way, a whole number from 1 to %d", mostOnSheet))
		}
	}
	count(p.dot("across"), s.Across)
	count(p.dot("up"), s.Up)
	if len(r.faults) > before {
		return SheetSize{}
	}
	return SheetSize{Across: s.Across, Up: s.Up}
}

// sheeted refuses sheets that cannot be alike in the bond; p is the path of the sheet.
func (r *resolver) sheeted(p path, b BondRule, t TileSize, joints ...length.Length) {
	s := t.Sheet
	if !s.Any() || b.Kind == "" {
		return
	}
	joint := length.Length(0)
	if len(joints) > 0 {
		joint = joints[0]
	}
	if b.Sheet(t, joint).Tiles() == 1 {
		r.faults.add(p, "a sheet of one tile", "more tiles on a sheet, or no sheet")
		return
	}
	across, up := b.SheetRepeat()
	whole := func(p path, n, of int) {
		if n%of != 0 {
			r.faults.add(p, strconv.Itoa(n), fmt.Sprintf("a multiple of %d: the %s repeats after %d that way, and sheets are alike", of, b.Kind, of))
		}
	}
	whole(p.dot("across"), s.Across, across)
	whole(p.dot("up"), s.Up, up)
}

// sheetedLegs refuses legs in single tiles beside tile on sheets.
func (r *resolver) sheetedLegs(room Room) {
	for i, w := range room.Walls {
		for k, s := range w.Base {
			if room.Tile.Sheet.Any() && s.Leg == SingleTiles {
				r.faults.add(path("walls").at(i).dot("base").at(k).dot("leg"), "“single” beside tile on sheets", "bond or none")
			}
		}
	}
}
