package survey

// BondKind names a bond.
type BondKind string

// The bonds of the job file: those laid in courses, and the patterns.
const (
	Stack   BondKind = "stack"
	Running BondKind = "running"

	Diagonal          BondKind = "diagonal"
	Herringbone       BondKind = "herringbone"
	DoubleHerringbone BondKind = "double herringbone"
	BasketWeave       BondKind = "basket weave"
	Hexagon           BondKind = "hexagon"
	Picket            BondKind = "picket"
	Chevron           BondKind = "chevron"
	MixedHeights      BondKind = "mixed heights"
	Pinwheel          BondKind = "pinwheel"
	Modular           BondKind = "modular"
)

// Bonds lists every bond, as it is offered.
var Bonds = []BondKind{Stack, Running, Diagonal, Herringbone, DoubleHerringbone, BasketWeave, Hexagon, Picket, Chevron, MixedHeights, Pinwheel, Modular}

// Coursed tells whether the bond is laid in courses of one tile, which are set
// out by a course line and a start; a pattern is set out by a phase in two
// directions.
func (b BondRule) Coursed() bool { return b.Kind == Stack || b.Kind == Running || b.Kind == "" }

// Turns tells whether the bond may be laid at 45°: those of rectangles.
func (k BondKind) Turns() bool {
	switch k {
	case Herringbone, DoubleHerringbone, BasketWeave, MixedHeights, Pinwheel, Modular:
		return true
	}
	return false
}
