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

const gramsPerTenPounds = 4536 // 10 lb, rounded up from 4535.9 g

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
	net, unit := int(ceil(grams, 1000)), "kg"
	if u == length.Imperial {
		net, unit = int(ceil(10*grams, gramsPerTenPounds)), "lb"
	}
	return bought(kind, unit, net, set.Allowance, fmt.Sprintf("%s of joints, %s deep, at %s kg per litre",
		areaText(area, u), set.GroutDepth.Fine(u), decimal(density/10, 2)))
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
	soft := func(b survey.Boundary) bool { return b.Meets && b.Gap > 0 }
	in.sides(soft, func(w plan.Wall, side plane.Side, b survey.Boundary) {
		if in.behind(w, side) {
			return
		}
		for _, l := range runs(w, side) {
			long += l
			ml += millilitres(l.Times(b.Gap), set.SealantDepth)
		}
	})
	l := bought("sealant", "cartridge of 300 ml", 0, 0, fmt.Sprintf("%s of soft joints, %s deep, %d %% on top",
		long.Tape(in.Room.Units), set.SealantDepth.Fine(in.Room.Units), set.Allowance))
	l.Net = int(ceil(ml, cartridge))
	l.Count = int(ceil(ml*int64(100+set.Allowance), 100*cartridge))
	l.Spare = l.Count - l.Net
	return l
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
