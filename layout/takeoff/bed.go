package takeoff

import (
	"fmt"

	"coursewright/layout/length"
)

// Notch is the notch of the trowel.
type Notch int

// The usual notches.
const (
	ByTile       Notch = iota
	Quarter            // 1/4 by 1/4 in (6 × 6 mm)
	ThreeEighths       // 1/4 by 3/8 in (6 × 10 mm)
	Half               // 1/2 by 1/2 in (12 × 12 mm)
)

// spread is what a notch is called and how far 50 lb (22.7 kg) of mortar go, in
// square feet: how-to pages; it fits 22.5 over the notch's depth in inches.
type spread struct {
	name      string
	low, high int64
}

func (n Notch) spread() spread {
	switch n {
	case ThreeEighths:
		return spread{"1/4 × 3/8 in (6 × 10 mm)", 60, 80}
	case Half:
		return spread{"1/2 in (12 mm) square", 40, 50}
	}
	return spread{"1/4 in (6 mm) square", 80, 100}
}

// notchFor is the notch for a tile with that longer side: common practice, no
// source.
func notchFor(side length.Length) Notch {
	switch {
	case side < 8*length.Inch:
		return Quarter
	case side < 15*length.Inch:
		return ThreeEighths
	}
	return Half
}

// mortar is a range, because walls and hands differ.
func (in Input) mortar(set Settings) Line {
	s, a := set.Notch.spread(), in.covered()
	unit, size, grams := "bag of 50 lb", "50 lb", int64(fiftyPounds)
	if in.Room.Units == length.Metric {
		unit, size, grams = "bag of 20 kg", "20 kg", 20000
	}
	reach := func(feet int64) length.Area { return length.Area(feet) * squareFoot * length.Area(grams) / fiftyPounds }
	bags := func(feet int64) int { return int(ceil(a, reach(feet))) }
	return Line{
		Item: "mortar", Unit: unit, Least: bags(s.high), Count: bags(s.low), Net: bags(s.low),
		Because: fmt.Sprintf("%s with a notch of %s; %s cover %s to %s", areaText(a, in.Room.Units), s.name, size,
			areaText(reach(s.low), in.Room.Units), areaText(reach(s.high), in.Room.Units)),
	}
}

const fiftyPounds = 22680 // grams

// board is the backing, in whole sheets by area.
func (in Input) board(set Settings) Line {
	sheet := set.Board.Wide.Times(set.Board.High)
	if sheet <= 0 {
		return Line{}
	}
	u := in.Room.Units
	return packed("backing board", "sheet of "+set.Board.text(u), in.covered(), sheet, set.Allowance,
		fmt.Sprintf("%s of wall by area; %d %% on top", areaText(in.covered(), u), set.Allowance))
}

// text is a size of board as a shop says it: "3 × 5 ft", "800 × 1200 mm".
func (s Sheet) text(u length.System) string {
	switch {
	case u == length.Metric:
		return s.Wide.Plain(u, 0) + " × " + s.High.Plain(u, 0) + " mm"
	case s.Wide%length.Foot == 0 && s.High%length.Foot == 0:
		return fmt.Sprintf("%d × %d ft", s.Wide/length.Foot, s.High/length.Foot)
	}
	return s.Wide.Plain(u, 0) + " × " + s.High.Plain(u, 0) + " in"
}

// membrane is the waterproofing, in buckets for two coats: 50 to 60 square feet
// to the gallon, a value from memory, which the line says.
func (in Input) membrane(set Settings) Line {
	const low, high = 50, 60 // square feet to the US gallon of 3.785 l
	unit, size, millilitres := "bucket of 1 gal", "1 gal", int64(3785)
	if in.Room.Units == length.Metric {
		unit, size, millilitres = "bucket of 5 l", "5 l", 5000
	}
	reach := func(feet int64) length.Area { return length.Area(feet) * squareFoot * length.Area(millilitres) / 3785 }
	u := in.Room.Units
	l := packed("membrane", unit, in.covered(), reach(low), set.Allowance,
		fmt.Sprintf("%s of wall; %d %% on top; %s cover %s to %s in two coats (from memory: the maker's sheet decides)",
			areaText(in.covered(), u), set.Allowance, size, areaText(reach(low), u), areaText(reach(high), u)))
	l.Least = packed("", "", in.covered(), reach(high), set.Allowance, "").Count
	return l
}

// spacers are two for every side of a tile that faces a joint, one near each
// end: common practice, no source. Each joint is counted once, from its left
// and from below. Tile on sheets has joints of its own: only those between sheets count.
func (in Input) spacers(set Settings) Line {
	sides, halves := 0, 0
	sheeted := map[string]bool{}
	for _, f := range in.mosaics {
		sides += len(f.Lines)
		for _, s := range f.Sheets {
			for _, id := range s.Pieces {
				sheeted[id] = true
			}
		}
	}
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			if sheeted[p.ID] {
				continue
			}
			if p.Outline != nil {
				halves += sidesOf(p.Face)
				continue
			}
			right, top := false, false
			for _, ring := range p.Face {
				for i, c := range ring {
					next := ring[(i+1)%len(ring)]
					right = right || c.On == 0 && c.X == p.Tile.Right && next.X == p.Tile.Right
					top = top || c.On == 0 && c.Y == p.Tile.Top && next.Y == p.Tile.Top
				}
			}
			sides += one(right) + one(top)
		}
	}
	sides += (halves + 1) / 2
	const bag = 100 // pieces: common practice, no source
	return packed("spacers", "bag of 100", int64(2*sides), bag, set.Allowance,
		fmt.Sprintf("%s, two spacers each, one near each end; %d %% on top", counted(sides, "joint side"), set.Allowance))
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
