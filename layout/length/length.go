// Package length measures with whole numbers. A Length counts 1/960 of a
// millimetre: 1/64 in is 381 of them and 0.1 mm is 96, so every reading of a
// tape, in either system, is exact and can be added without error.
package length

// Length is a distance in units of 1/960 mm. Up and right are positive.
type Length int64

// The units a person writes, as lengths.
const (
	Millimetre Length = 960
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch       Length = 24384 // 25.4 mm exactly
	Foot              = 12 * Inch
)

// Area is a product of two lengths, in square units (1/960 mm)². Two lengths
// under 100 m multiply without overflow.
type Area int64

// Times gives the area of a rectangle a by b.
func (a Length) Times(b Length) Area { return Area(a) * Area(b) }

// System is the family of units a job is measured in.
type System uint8

// The two systems. The zero value is inches.
const (
	Imperial System = iota
	Metric
)
