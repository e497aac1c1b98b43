package survey

import (
	"fmt"
	"strconv"

	"coursewright/layout/length"
)

// empty tells whether nothing was typed.
func (b Bond) empty() bool {
	return b.Kind == "" && b.Offset == "" && b.Hand == "" && b.Along == "" && b.Turn == "" && b.Angle == "" && len(b.Tiles) == 0
}

// Tiles is how few and how many tiles a bond is laid of beside the job's.
func (k BondKind) Tiles() (least, most int) {
	switch k {
	case BasketWeave:
		return 0, 1
	case MixedHeights:
		return 1, 2
	case Pinwheel:
		return 1, 1
	case Modular:
		return 3, 3
	}
	return 0, 0
}

// Shifts tells whether courses of the bond may shift against each other.
func (k BondKind) Shifts() bool { return k == Running || k == Diagonal || k == MixedHeights }

// pattern reads the fields that only patterns have.
func (r *resolver) pattern(p path, b Bond, rule *BondRule, tile TileSize, joints []length.Length) {
	before := len(r.faults)
	k := rule.Kind
	if k.Turns() && b.Turn != "" {
		rule.Turned = r.choice(value{p.dot("turn"), b.Turn}, "45") == "45"
	} else {
		r.unused("a "+string(k)+" has one way to stand", value{p.dot("turn"), b.Turn})
	}
	if k == Chevron {
		rule.Angle = 45
		if b.Angle != "" {
			rule.Angle, _ = strconv.Atoi(r.choice(value{p.dot("angle"), b.Angle}, "30", "45", "60"))
		}
	} else {
		r.unused("only a chevron has an angle", value{p.dot("angle"), b.Angle})
	}
	if !rule.Coursed() {
		rule.Swapped, rule.Plumb = rule.Plumb && k != Diagonal && !rule.Turned, false
		r.shifted(p, b, rule)
	}
	r.others(p.dot("tiles"), b.Tiles, rule, tile)
	if len(r.faults) > before || rule.Coursed() || len(joints) == 0 || tile.Width == 0 || tile.Height == 0 {
		return
	}
	for _, j := range joints {
		if found, want := rule.closes(r.units, tile, j); want != "" {
			r.faults.add(p.dot("kind"), found, want)
			return
		}
	}
}

// shifted reads how the courses of a pattern shift, where it has any. Without an
// offset they do not.
func (r *resolver) shifted(p path, b Bond, rule *BondRule) {
	if !rule.Kind.Shifts() {
		r.unused("a "+string(rule.Kind)+" has no courses that shift", value{p.dot("offset"), b.Offset}, value{p.dot("hand"), b.Hand})
		return
	}
	if b.Offset == "" {
		r.unused("courses do not shift without an offset", value{p.dot("hand"), b.Hand})
		return
	}
	rule.Num, rule.Den = r.offset(value{p.dot("offset"), b.Offset})
	rule.Hand = Left
	if b.Hand != "" {
		rule.Hand = r.hand(value{p.dot("hand"), b.Hand}, *rule)
	}
}

// others reads the tiles of a pattern beside the job's. A square may be given by
// its width alone, and a course of another height by its height.
func (r *resolver) others(p path, tiles []Tile, rule *BondRule, tile TileSize) {
	least, most := rule.Kind.Tiles()
	if n := len(tiles); n < least || n > most {
		r.faults.add(p, fmt.Sprintf("%d tiles", n), rule.Kind.wanted())
		return
	}
	for i, t := range tiles {
		same := func(text, other string) string {
			if text == "" {
				return other
			}
			return text
		}
		own := tile.Width.Format(r.units, 0)
		if rule.Kind == MixedHeights && rule.Swapped {
			t.Height = same(t.Height, tile.Height.Format(r.units, 0))
		} else if rule.Kind == MixedHeights {
			t.Width = same(t.Width, own)
		} else {
			t.Height = same(t.Height, t.Width)
		}
		if t.Sheet != nil {
			r.faults.add(p.at(i).dot("sheet"), "a sheet", "nothing here: what a sheet has stands at the first tile")
		}
		if t.Thickness == "" {
			t.Thickness = tile.Thickness.Format(r.units, 0)
		}
		found := r.tile(p.at(i), t, Measure{Plain: "0"})
		if t.Colour == "" { // as one buys them
			found.Colour = tile.Colour
		}
		rule.Others = append(rule.Others, found)
	}
}

// wanted says which tiles a bond is laid of beside the job's.
func (k BondKind) wanted() string {
	switch k {
	case BasketWeave:
		return "nothing, or the dot: one small square"
	case MixedHeights:
		return "one or two tiles of the same width and other heights"
	case Pinwheel:
		return "one square of another size"
	case Modular:
		return "three tiles of 2 by 1, 2 by 2 and 3 by 2 modules; the first is the small square, one module"
	}
	return "nothing here: a " + string(k) + " is laid of one tile"
}
