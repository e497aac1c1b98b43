package survey

import "coursewright/layout/length"

// Fixture is what is fixed to a tiled wall: a shelf or a foot rest in a corner, a
// soap dish, a grab bar, or the line of a glass panel or door.
type Fixture struct {
	Kind   string    `json:"kind"` // "corner shelf", "foot rest", "soap dish", "grab bar", "glass line"
	Name   string    `json:"name"`
	Corner string    `json:"corner,omitempty"` // of a shelf or a foot rest: "left", "right"
	At     string    `json:"at,omitempty"`     // of the others: the middle, from the wall's left end
	Height Measure   `json:"height,omitzero"`  // over the level line: plain, or a range; none of a glass line
	Near   string    `json:"near,omitempty"`   // the height that is wished within a range
	Width  string    `json:"width,omitempty"`  // along the wall; of a grab bar between the middles of its plates
	High   string    `json:"high,omitempty"`   // of a soap dish
	Flush  bool      `json:"flush,omitempty"`  // a soap dish that takes the place of tile, with a joint round it
	Along  *Mark     `json:"along,omitempty"`  // of a flush one, in place of "at": between which places its middle may stand
	Holes  []Drilled `json:"holes,omitempty"`  // of a glass line
}

// Drilled is a hole in the line of a fixture, by its height over the level line.
type Drilled struct {
	Height string `json:"height"`
}

// Kinds of fixtures.
const (
	CornerShelf Kind = "corner shelf"
	FootRest    Kind = "foot rest"
	SoapDish    Kind = "soap dish"
	GrabBar     Kind = "grab bar"
	GlassLine   Kind = "glass line"
)

// FixtureFound is a fixture read and checked. Where its height is a range it is
// placed when the wall is set out.
type FixtureFound struct {
	Kind        Kind
	Name        string
	Right       bool          // a shelf or a foot rest in the right corner, else in the left
	At          length.Length // the middle; of a shelf or a foot rest the corner
	Height      Span
	Near        length.Length // the height wished; the middle of the range where none is
	Width, High length.Length
	Holes       []length.Length
	Flush       bool // it takes the place of tile: an opening of its wall
}

// InCorner tells whether the fixture stands in a corner, on a joint line.
func (f FixtureFound) InCorner() bool { return f.Kind == CornerShelf || f.Kind == FootRest }

// reach is what a fixture takes along its wall; a glass line has no width.
func (f FixtureFound) reach() Span {
	switch {
	case f.Kind == GlassLine:
		return Span{f.At, f.At}
	case !f.InCorner():
		return Span{f.At - f.Width.Half(), f.At + f.Width.Half()}
	case f.Right:
		return Span{f.At - f.Width, f.At}
	}
	return Span{f.At, f.At + f.Width}
}

// Blocked tells whether the fixture needs blocking behind the board.
func (f FixtureFound) Blocked() bool {
	return f.Kind == GrabBar || f.Kind == GlassLine || f.Kind == FootRest
}

// Bounds of fixtures.
const (
	mostFixtures = 100
	mostHoles    = 20
)

// fixtures reads the fixtures of one wall.
func (r *resolver) fixtures(p path, list []Fixture, w WallFound, across bounds) []FixtureFound {
	r.count(p, &r.fitted, len(list), mostFixtures, "fixtures")
	taken := map[string]bool{}
	var found []FixtureFound
	for i, f := range list {
		found = append(found, r.fixture(p.at(i), f, w, across, taken))
	}
	return found
}

func (r *resolver) fixture(p path, f Fixture, w WallFound, across bounds, taken map[string]bool) FixtureFound {
	found := FixtureFound{
		Kind: r.kind(value{p.dot("kind"), f.Kind}, CornerShelf, FootRest, SoapDish, GrabBar, GlassLine),
		Name: r.name(value{p.dot("name"), f.Name}, taken),
	}
	switch {
	case found.Kind == "":
		return found
	case found.InCorner():
		r.inCorner(p, f, w, &found)
	case found.Kind == SoapDish && f.Flush && f.Along != nil:
		r.unused("a flush soap dish has “at” or “along”", value{p.dot("at"), f.At})
		span := r.span(p.dot("along"), f.Along, across)
		found.At = span.From + (span.To - span.From).Half()
	default:
		found.At = r.length(value{p.dot("at"), f.At}, across)
		r.unused("only a shelf or a foot rest stands in a corner", value{p.dot("corner"), f.Corner})
	}
	if f.Flush && found.Kind != SoapDish {
		r.faults.add(p.dot("flush"), "true", "nothing here: only a soap dish takes the place of tile")
	}
	if found.Flush = f.Flush && found.Kind == SoapDish; f.Along != nil && !found.Flush {
		r.faults.add(p.dot("along"), "a mark", "nothing here: only a soap dish that is flush takes a range along the wall")
	}
	size := bounds{length.Centimetre, across.high}
	switch found.Kind {
	case GlassLine:
		r.glass(p, f, &found)
		return found
	case SoapDish:
		found.High = r.length(value{p.dot("high"), f.High}, size)
	default:
		r.unused("only a soap dish has a height of its own", value{p.dot("high"), f.High})
	}
	found.Width = r.length(value{p.dot("width"), f.Width}, size)
	r.fixtureHeight(p, f, &found)
	if len(f.Holes) > 0 {
		r.faults.add(p.dot("holes"), "holes", "nothing here: only those of a glass line are given")
	}
	return found
}

// inCorner finds the corner that a shelf or a foot rest stands in.
func (r *resolver) inCorner(p path, f Fixture, w WallFound, found *FixtureFound) {
	r.unused("a shelf or a foot rest stands in a corner", value{p.dot("at"), f.At})
	at := value{p.dot("corner"), f.Corner}
	switch r.choice(at, "left", "right") {
	case "left":
		if !w.Left.Meets {
			r.faults.add(at.path, quote(f.Corner)+", where the wall meets no corner", "an end that meets a corner")
		}
	case "right":
		if !w.Right.Meets {
			r.faults.add(at.path, quote(f.Corner)+", where the wall meets no corner", "an end that meets a corner")
		}
		found.Right, found.At = true, w.Width
	}
}

// fixtureHeight reads how high a fixture is: a length, or a range and what is wished.
func (r *resolver) fixtureHeight(p path, f Fixture, found *FixtureFound) {
	if f.Height.Mark == nil {
		h := r.length(value{p.dot("height"), f.Height.Plain}, upright())
		found.Height = Span{h, h}
	} else {
		found.Height = r.span(p.dot("height"), f.Height.Mark, upright())
	}
	found.Near = found.Height.From + (found.Height.To - found.Height.From).Half()
	if f.Near == "" {
		return
	}
	if !found.Height.Free() {
		r.unused("a wish belongs to a height that is a range", value{p.dot("near"), f.Near})
		return
	}
	found.Near = r.length(value{p.dot("near"), f.Near}, bounds{found.Height.From, found.Height.To})
}

// glass reads the holes of a glass line.
func (r *resolver) glass(p path, f Fixture, found *FixtureFound) {
	r.unused("a glass line has “at” and “holes”", value{p.dot("width"), f.Width}, value{p.dot("high"), f.High}, value{p.dot("near"), f.Near}, value{p.dot("height"), f.Height.typed()})
	if f.Height.Mark != nil && f.Height.Mark.At == "" {
		r.faults.add(p.dot("height"), "a range", "nothing here: a glass line has “at” and “holes”")
	}
	if len(f.Holes) > mostHoles {
		r.faults.add(p.dot("holes"), "too many holes", "at most 20")
		return
	}
	for i, h := range f.Holes {
		found.Holes = append(found.Holes, r.length(value{p.dot("holes").at(i).dot("height"), h.Height}, upright()))
	}
}
