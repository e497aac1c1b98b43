package finding

import "coursewright/layout/length"

// Limits are the measures the rules judge by. They are settings because
// countries differ; the source of each usual value stands beside it.
type Limits struct {
	LongSide                      length.Length // a tile with a longer side counts as long: ANSI A108.02 4.3, offset patterns
	LeastJoint                    length.Length // ANSI A108.02 4.3, joint widths
	LongJoint                     length.Length // offset bond, long and rectified tile: ANSI A108.02 4.3, offset patterns
	LongJoint2                    length.Length // the same, calibrated tile
	WideJoint                     length.Length // from here the wider lippage holds: ANSI A108.02 4.3, lippage
	SoftJoint                     length.Length // least width of a soft joint: TCNA EJ171
	HoleToEdge                    length.Length // least tile left beside a hole: common practice, no source
	LargeHole                     length.Area   // a hole that takes more out of one tile: a maker of porcelain says 10 to 12 sq in
	StudBay                       length.Length // clear width between studs at 16 in: how-to pages
	Lining                        length.Length // what lines a niche, a side: how-to pages
	PastTub                       length.Length // tile beyond the wet area: CTEF
	NearlyLevel                   length.Length // a rim within this may start over its high point: how-to pages
	WallHeight                    length.Length // wet wall over the floor: IRC R307.2
	OverDrain                     length.Length // wet wall over the drain: IPC 417.4.1
	GlassHeight                   length.Length // glass under this over the standing surface: IRC R308.4.5
	GlassNear                     length.Length // and no further from the wet place than this
	PlainTaper                    int           // a taper of more per cent of a course is plain to see: common practice, no source
	FaintTaper                    int           // and one of less is hard to see: TileLetter 2018-03 p. 86
	BarLow, BarHigh               length.Length // top of a grab bar over the floor: ADA 609.4
	BarOverRimLow, BarOverRimHigh length.Length // of the lower one over a tub: ADA 607.4.2
	RoundABar                     length.Length // from a grab bar to what stands beside it: ADA 609.3, from memory
	HalfBar                       length.Length // half of a bar of 1 1/4 in, the least of ADA 609.2, from memory
	LeastTrim                     length.Length // a shorter piece of trim is hard to cut: common practice, no source
	HalfWall                      length.Length // a wall that turns outside and is no higher has a top: how-to pages
	SeatLow, SeatHigh             length.Length // of a seat over what its front stands on: NKBA
	SeatDeep                      length.Length // at least so deep: NKBA
	Field                         length.Length // a longer field needs a movement joint: TCNA EJ171
}

// Usual gives the limits of trade.md in the rounding usual in a system.
func Usual(s length.System) Limits {
	l := Limits{
		LongSide:    15 * length.Inch,
		LeastJoint:  length.Inch / 16,
		LongJoint:   length.Inch / 8,
		LongJoint2:  3 * length.Inch / 16,
		WideJoint:   length.Inch / 4,
		SoftJoint:   length.Inch / 8,
		HoleToEdge:  length.Inch / 2,
		LargeHole:   12 * length.Inch.Times(length.Inch),
		StudBay:     29 * length.Inch / 2,
		Lining:      length.Inch / 2,
		PastTub:     2 * length.Inch,
		NearlyLevel: length.Inch / 8,
		WallHeight:  6 * length.Foot,
		OverDrain:   70 * length.Inch,
		GlassHeight: 60 * length.Inch,
		GlassNear:   60 * length.Inch,
		PlainTaper:  15,
		FaintTaper:  2,
		BarLow:      33 * length.Inch, BarHigh: 36 * length.Inch,
		BarOverRimLow: 8 * length.Inch, BarOverRimHigh: 10 * length.Inch,
		RoundABar: 3 * length.Inch / 2,
		HalfBar:   5 * length.Inch / 8,
		LeastTrim: leastTrim(s),
		HalfWall:  60 * length.Inch,
		SeatLow:   17 * length.Inch, SeatHigh: 19 * length.Inch, SeatDeep: 15 * length.Inch,
		Field: 20 * length.Foot,
	}
	if s == length.Metric {
		l.LeastJoint = 16 * length.Millimetre / 10
		l.LongJoint, l.LongJoint2 = 3*length.Millimetre, 48*length.Millimetre/10
		l.WideJoint, l.SoftJoint = 6*length.Millimetre, 3*length.Millimetre
		l.HoleToEdge, l.NearlyLevel = 12*length.Millimetre, 3*length.Millimetre
		l.LargeHole, l.Lining = 77*length.Centimetre.Times(length.Centimetre), 13*length.Millimetre
		l.StudBay, l.PastTub = 368*length.Millimetre, 51*length.Millimetre
		l.WallHeight, l.OverDrain = 1829*length.Millimetre, 1778*length.Millimetre
		l.GlassHeight, l.GlassNear, l.Field = 1524*length.Millimetre, 1524*length.Millimetre, 6*length.Metre
		l.HalfWall = 1524 * length.Millimetre
		l.SeatLow, l.SeatHigh, l.SeatDeep = 430*length.Millimetre, 480*length.Millimetre, 380*length.Millimetre
	}
	return l
}

// The words every source that is not a source is given.
const practice = "common practice, no source"

// cited names a clause that was seen only as somebody's quotation. Of ANSI
// A108.02 the subject stands beside "4.3", because the numbers within it differ
// from edition to edition.
func cited(clause, through string) string {
	return clause + ", as quoted by " + through + "; commonly cited so, look it up"
}
