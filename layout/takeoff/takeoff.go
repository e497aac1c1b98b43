// Package takeoff says what to buy for a plan, as a shop sells it: counted from
// its pieces and joints, every line with its reason.
//
// Laws, each with a test:
//
//  1. Nothing is rounded up twice: the allowance is added to the exact need, and
//     only what is bought is a whole number.
//  2. What is bought is never less than the need with its allowance; one pack
//     less would be.
//  3. What the plan has but the job does not measure, as the inside of a niche
//     without a depth, is named and not counted.
package takeoff

import (
	"fmt"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/mosaic"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// Input is the plan to buy for.
type Input struct {
	Room  survey.Room
	Walls []plan.Wall  // in the job's order
	Cuts  cuts.Offcuts // the tiles that are cut into, as the cut schedule pairs them

	Others []cuts.Offcuts // the same of each tile that only faces of niches and windows have

	mosaics []mosaic.Field // what is laid by the sheet
}

// Takeoff is the shopping list.
type Takeoff struct {
	Lines    []Line
	Whole    int  // tiles set whole
	TilesCut int  // tiles cut into
	Net      int  // tiles of the walls, or sheets of them, without spare
	Spare    int  // tiles for breakage
	Flat     Line // what the flat 10 % rule would buy, to compare
}

// Line is one thing to buy.
type Line struct {
	Item    string
	Count   int // how many to buy: Net + Spare
	Least   int // the lower end where Count is the upper end of a range, else 0
	Unit    string
	Net     int
	Spare   int
	Boxes   int   // 0 where it is not sold in boxes
	Cents   int64 // price in hundredths, 0 where it is not known
	Money   survey.Money
	Further int  // which of the bond's further tiles it is, from 1
	Other   bool // it is tile beside the room's own: of a band, a strip, or a face
	Open    bool // it is needed, but cannot be counted from what is measured
	Because string
}

// Settings are what a person may choose about buying. Zero measures stand for
// the tile's own, as each says.
type Settings struct {
	Breakage     int           // percent of the tiles kept as spare; below 0: by the tile's size
	Allowance    int           // percent on grout, sealant, sheets and spacers
	GroutDepth   length.Length // 0: the tile's thickness
	SealantDepth length.Length // 0: the tile's thickness
	Thickness    length.Length // taken where the job gives no thickness
	Sanded       length.Length // from this joint on the grout is sanded
	Trim         length.Length // a stock bar of trim
	Bullnose     length.Length // a bullnose piece; 0: the tile's longer side
	Kerf         length.Length // of the saw that cuts trim
	Notch        Notch         // of the trowel; 0: by the tile's size
	Board        Sheet         // one sheet of backing board
	Niche        Niche
}

// Sheet is how large a sheet of board is.
type Sheet struct{ Wide, High length.Length }

// Niche says what is bought for the inside of the niches.
type Niche struct {
	Depth length.Length   // 0: nothing
	Back  bool            // tile on the back too
	Trim  bool            // trim round the opening
	Tile  survey.TileSize // its own tile; a zero size is the room's tile
}

// Usual gives the settings people start from: spare by the tile's size; grout
// sanded from 1/8 in (3 mm), other allowances 10 %, trim in bars of 8 ft (2.5
// m), board of 3 by 5 ft (0.8 by 1.2 m): common practice, no source.
func Usual(s length.System) Settings {
	set := Settings{
		Breakage: -1, Allowance: 10,
		Thickness: 5 * length.Inch / 16, Sanded: length.Inch / 8,
		Trim: 8 * length.Foot, Kerf: length.Inch / 8,
		Board: Sheet{3 * length.Foot, 5 * length.Foot},
	}
	if s == length.Metric {
		set.Thickness, set.Sanded, set.Kerf = 8*length.Millimetre, 3*length.Millimetre, 3*length.Millimetre
		set.Trim = 2500 * length.Millimetre
		set.Board = Sheet{800 * length.Millimetre, 1200 * length.Millimetre}
	}
	return set
}

// Of counts what a plan needs. Lines that come to nothing are left out. Tiles
// stand first, then what goes with them, in the order of use.
func Of(in Input, set Settings) Takeoff {
	typed := set
	set = set.of(in.Room.Tile, in.Room.Bond)
	in.mosaics = mosaic.Of(in.Room, in.Walls)
	field := in.field()
	t := Takeoff{Whole: field.whole(), TilesCut: in.Cuts.TilesCut}
	tiles := field.kinds(set, typed)
	for _, l := range tiles {
		t.Net, t.Spare = t.Net+l.Net, t.Spare+l.Spare
	}
	t.Flat = field.flat(in.bands())
	lines := tiles
	lines = append(lines, in.others(typed)...)
	lines = append(lines, in.slabs()...)
	lines = append(lines, in.inside(set)...)
	lines = append(lines, in.bars(set), in.bullnose(set), in.bullnoseCorners())
	lines = append(lines, in.trims(set)...)
	lines = append(lines, in.fixtures()...)
	all := in.faces()
	lines = append(lines, all.board(set), all.membrane(set), all.mortar(set), all.spacers(set), all.grout(set), all.sealant(set))
	for _, l := range lines {
		if l.Count > 0 || l.Open {
			t.Lines = append(t.Lines, l)
		}
	}
	return t
}

// of fills the measures that the tile itself gives, and how it is laid.
func (s Settings) of(t survey.TileSize, b survey.BondRule) Settings {
	if t.Thickness > 0 {
		s.Thickness = t.Thickness
	}
	first := func(l *length.Length, other length.Length) {
		if *l == 0 {
			*l = other
		}
	}
	if s.Breakage < 0 && !b.Coursed() {
		s.Breakage = sparePattern(b)
	}
	if s.Breakage < 0 {
		s.Breakage = spareFor(max(t.Width, t.Height))
	}
	first(&s.GroutDepth, s.Thickness)
	first(&s.SealantDepth, s.Thickness)
	first(&s.Bullnose, max(t.Width, t.Height))
	if s.Notch == ByTile {
		s.Notch = notchFor(max(t.Width, t.Height))
	}
	if s.Niche.Tile.Width == 0 || s.Niche.Tile.Height == 0 {
		s.Niche.Tile = t
	}
	return s
}

// spareFor is the percentage of spare for a tile with that longer side: 5 under
// 15 in, 10 from there on, because a large tile lost is a large part of a box.
// Common practice, no source; NTCA trainers say 5 to 15 % by shape and pattern
// (TileLetter).
func spareFor(side length.Length) int {
	if side < 15*length.Inch {
		return 5
	}
	return 10
}

// bought is a line with its spare on top.
func bought(item, unit string, net, percent int, because string) Line {
	spare := int(ceil(int64(net)*int64(percent), 100))
	return Line{Item: item, Unit: unit, Net: net, Spare: spare, Count: net + spare, Because: because}
}

// packed is a line of whole packs that hold a need with its allowance.
func packed[T ~int64](item, unit string, need, pack T, percent int, because string) Line {
	n := int(ceil(need*T(100+percent), 100*pack))
	return Line{Item: item, Unit: unit, Net: n, Count: n, Because: because}
}

// counted writes a number with its noun.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
