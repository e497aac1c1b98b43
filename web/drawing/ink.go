package drawing

// Colour is 0xRRGGBB, or None.
type Colour int32

// The colours of a drawing. The four cut colours are ColorBrewer's YlOrBr
// ramp (screens.md); the level line is the one red thing.
const (
	None   Colour = -1
	Black  Colour = 0x000000
	White  Colour = 0xffffff
	Grey   Colour = 0x595959
	Pale   Colour = 0xeef1f4
	Red    Colour = 0xc8102e
	Blue   Colour = 0x0b4a8f
	Ramp1  Colour = 0xfee391
	Ramp2  Colour = 0xfe9929
	Ramp3  Colour = 0xd95f0e
	Ramp4  Colour = 0x993404
	Stone  Colour = 0xd3d9e0
	Grout  Colour = 0x6b6b6b
	Ground Colour = 0x767676
)

// Hatch is a filling of thin lines, so that nothing hangs on colour alone.
type Hatch uint8

// Hatches.
const (
	Plain  Hatch = iota
	Wide         // 45°, far apart
	Narrow       // 45°, close
	Cross        // 45° both ways
	Earth        // 45° the other way: what the tile stands on
)

// HatchWidth is the width of a hatch line (ISO 128 series, screens.md).
const HatchWidth = 180

// Step is the distance between a hatch's lines, and whether it has lines both ways.
func (h Hatch) Step() (step Micron, both bool) {
	switch h {
	case Wide:
		return 2400, false
	case Narrow:
		return 1100, false
	case Cross:
		return 1500, true
	case Earth:
		return 1300, false
	}
	return 0, false
}

// Dash is how a line is broken.
type Dash uint8

// Dashes.
const (
	Solid   Dash = iota
	Hidden       // dashed: an edge that is covered
	DashDot      // long-dash-dot: a centre line
)

// Lengths gives the strokes and gaps of the dash, nil for a solid line.
func (d Dash) Lengths() []Micron {
	switch d {
	case Hidden:
		return []Micron{1800, 900}
	case DashDot:
		return []Micron{7000, 1000, 500, 1000}
	}
	return nil
}

// Ink is how a shape is filled and lined.
type Ink struct {
	Fill  Colour
	Hatch Hatch
	Line  Colour
	Width Micron
	Dash  Dash
}

// CutInk is the ink of pieces by kind: the smaller, the darker and the denser.
func CutInk(k Kind) Ink { return cutInk(k) }

func cutInk(k Kind) Ink {
	ink := Ink{Fill: White, Line: Black, Width: 250}
	switch k {
	case Whole:
		ink.Line = Grout
	case Set:
		ink.Fill, ink.Line = Stone, Grout
	case CutHalf:
		ink.Fill = Ramp1
	case CutThird:
		ink.Fill, ink.Hatch = Ramp2, Wide
	case CutFifth:
		ink.Fill, ink.Hatch = Ramp3, Narrow
	case CutLeast:
		ink.Fill, ink.Hatch = Ramp4, Cross
	}
	return ink
}

// HatchColour is the colour of hatch lines over a fill.
func HatchColour(fill Colour) Colour {
	switch fill {
	case Ramp4:
		return Ramp1
	case None:
		return Ground
	}
	return Black
}

// textOn is the colour of text that can be read on a fill (WCAG 4.5:1).
func textOn(fill Colour) Colour {
	if fill == Ramp4 {
		return White
	}
	return Black
}

// on is the kind of a text that stands on a ground: on the colour of a cut it is as dark on dark screens as on light ones,
// because that colour stays.
func (k Kind) on(ground Colour) Kind {
	switch ground {
	case Ramp1, Ramp2, Ramp3, Ramp4:
		return k + " on-cut"
	}
	return k
}

func line(c Colour, w Micron) Ink { return Ink{Fill: None, Line: c, Width: w} }

func fill(c Colour) Ink { return Ink{Fill: c, Line: None} }

func broken(c Colour, w Micron, d Dash) Ink { return Ink{Fill: None, Line: c, Width: w, Dash: d} }
