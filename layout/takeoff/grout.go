package takeoff

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// Densities of fresh grout in grams per litre, fitted to a grout maker's
// published coverage chart (see the test).
const (
	unsanded = 1600
	sanded   = 1580
)

// bags are the packs that grout is sold in, in grams, the smaller first: 10 and
// 25 lb, as the chart counts them, or 2.5 and 5 kg. Common practice, no source.
type bags struct {
	small, large         int64
	smallName, largeName string
}

func bagsOf(s length.System) bags {
	if s == length.Metric {
		return bags{2500, 5000, "bag of 2.5 kg", "bag of 5 kg"}
	}
	return bags{4535, 11339, "bag of 10 lb", "bag of 25 lb"} // rounded down, so that they hold what they say
}

// cartridge is the contents of one in millilitres.
const cartridge = 300

// grout is reckoned from the exact area of the joints.
func (in Input) grout(set Settings) Line {
	kind, density := "unsanded grout", int64(unsanded)
	if in.Room.Joint >= set.Sanded {
		kind, density = "sanded grout", sanded
	}
	area, u := in.joints(), in.Room.Units
	grams := groutGrams(area, set.GroutDepth, density)
	because := fmt.Sprintf("%s for %s of joints, %s deep, at %s kg per litre; %d %% on top",
		weightText(grams, u), areaText(area, u), set.GroutDepth.Fine(u), decimal(density/10, 2), set.Allowance)
	b := bagsOf(u)
	if l := packed(kind, b.smallName, grams, b.small, set.Allowance, because); l.Count <= 2 {
		return l
	}
	return packed(kind, b.largeName, grams, b.large, set.Allowance, because)
}

// weightText writes a weight in tenths of a pound, or hundredths of a kilogram.
func weightText(grams int64, s length.System) string {
	if s == length.Metric {
		return decimal(ceil(grams, 10), 2) + " kg"
	}
	return decimal(ceil(grams*100, 4536), 1) + " lb" // 45.36 g are a tenth of a pound
}

// groutGrams is the weight of grout that fills joints of an area to a depth.
func groutGrams(joints length.Area, depth length.Length, gramsPerLitre int64) int64 {
	return ceil(millilitres(joints, depth)*gramsPerLitre, 1000)
}

// millilitres is the volume over an area, rounded up. The area is first
// rounded up to square millimetres.
func millilitres(a length.Area, depth length.Length) int64 {
	mm2 := int64(ceil(a, squareMM))
	return ceil(mm2*int64(depth), int64(length.Millimetre)*1000)
}

// sealant is reckoned from the soft joints: every boundary that meets
// something. At a corner the joint is counted on the wall set later.
func (in Input) sealant(set Settings) Line {
	var long length.Length
	var ml int64
	soft := func(b survey.Boundary) bool { return b.Meets && b.Gap > 0 || b.Under > 0 }
	in.sides(soft, func(w plan.Wall, side plane.Side, b survey.Boundary) {
		if in.behind(w, side) {
			return
		}
		for _, l := range runs(w, side) {
			long += l
			ml += millilitres(l.Times(b.Gap+b.Under), set.SealantDepth)
		}
	})
	unit := "cartridge of 300 ml"
	if in.Room.Units == length.Imperial {
		unit = "cartridge of 10 fl oz (300 ml)"
	}
	return packed("sealant", unit, ml, cartridge, set.Allowance, fmt.Sprintf("%s of soft joints, %s deep; %d %% on top",
		long.Tape(in.Room.Units), set.SealantDepth.Fine(in.Room.Units), set.Allowance))
}

// behind tells whether a wall's end lies behind the tile of a wall set later.
func (in Input) behind(w plan.Wall, side plane.Side) bool {
	end := w.Found.Left
	switch side {
	case survey.SideRight:
		end = w.Found.Right
	case survey.SideLeft:
	default:
		return false
	}
	return end.Beyond >= 0 && end.Beyond < len(in.Walls) && in.Walls[end.Beyond].Found.Order > w.Found.Order
}

// decimal writes a whole number of tenths, hundredths and so on.
func decimal(n int64, places int) string {
	scale := int64(1)
	for range places {
		scale *= 10
	}
	return fmt.Sprintf("%d.%0*d", n/scale, places, n%scale)
}
