package takeoff

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

const inch = length.Inch

// A published coverage chart of a grout maker, as trade.md has it: square feet
// per 10 lb unsanded at 1/16, 3/32, 1/8 in, and per 25 lb sanded at 1/8, 1/4,
// 3/8, 1/2 in. Sizes in eighths of an inch. The figures are printed as whole
// square feet, so a small one may be off by half a foot besides the 1.5 %.
func TestGroutAgainstAPublishedChart(t *testing.T) {
	thin := []length.Length{inch / 16, 3 * inch / 32, inch / 8}
	wide := []length.Length{inch / 8, inch / 4, 3 * inch / 8, inch / 2}
	for _, c := range []struct {
		name             string
		wide, high, deep length.Length
		bag, density     int64 // grams, grams per litre
		joints           []length.Length
		feet             []int64
	}{
		{"unsanded 1×1×1/4", 8, 8, 2, 4536, unsanded, thin, []int64{42, 29, 23}},
		{"unsanded 2×2×1/4", 16, 16, 2, 4536, unsanded, thin, []int64{81, 55, 42}},
		{"unsanded 4×4×3/8", 32, 32, 3, 4536, unsanded, thin, []int64{105, 71, 54}},
		{"unsanded 6×6×3/8", 48, 48, 3, 4536, unsanded, thin, []int64{156, 105, 79}},
		{"unsanded 12×12×3/8", 96, 96, 3, 4536, unsanded, thin, []int64{310, 207, 156}},
		{"unsanded 6×24×3/8", 48, 192, 3, 4536, unsanded, thin, []int64{249, 167, 126}},
		{"unsanded 12×24×3/8", 96, 192, 3, 4536, unsanded, thin, []int64{413, 276, 208}},
		{"sanded 1×1×1/4", 8, 8, 2, 11340, sanded, wide, []int64{58, 34, 26, 22}},
		{"sanded 4×4×3/8", 32, 32, 3, 11340, sanded, wide, []int64{136, 71, 49, 39}},
		{"sanded 12×12×3/8", 96, 96, 3, 11340, sanded, wide, []int64{395, 201, 136, 103}},
	} {
		for i, joint := range c.joints {
			// 1,000 tiles with their joints.
			w, h := c.wide*inch/8, c.high*inch/8
			module := 1000 * (w + joint).Times(h+joint)
			grams := groutGrams(module-1000*w.Times(h), c.deep*inch/8, c.density)
			got := float64(module) / float64(squareFoot) * float64(c.bag) / float64(grams)
			want := float64(c.feet[i])
			assert.InDelta(t, want, got, 0.015*want+0.5, "%s at joint %d", c.name, i)
			if want >= 100 {
				assert.InEpsilon(t, want, got, 0.015, "%s at joint %d", c.name, i)
			}
		}
	}
}

// Metres per 300 ml: 300/(w·d). Published table, as trade.md has it.
func TestSealantAgainstAPublishedTable(t *testing.T) {
	for _, c := range []struct{ wide, deep, metresTimes2 length.Length }{{5, 5, 24}, {10, 10, 6}, {20, 10, 3}} {
		joint := c.wide * length.Millimetre
		run := c.metresTimes2 * length.Metre / 2
		assert.EqualValues(t, cartridge, millilitres(run.Times(joint), c.deep*length.Millimetre))
	}
}

// Square feet per 50 lb by notch: how-to pages, as trade.md has them; 22.5 over
// the notch's depth in inches lies within each range.
func TestMortarAgainstHowToPages(t *testing.T) {
	for _, c := range []struct {
		notch        Notch
		low, high    int64
		sixtyFourths int64
	}{{Quarter, 80, 100, 16}, {ThreeEighths, 60, 80, 24}, {Half, 40, 50, 32}} {
		s := c.notch.spread()
		assert.Equal(t, []int64{c.low, c.high}, []int64{s.low, s.high})
		fit := 225 * 64 / c.sixtyFourths / 10
		assert.True(t, s.low <= fit && fit <= s.high, "%d is not within %d to %d", fit, s.low, s.high)
	}
}

// Published counts, as trade.md has them: C unless said.
func TestTilesByArea(t *testing.T) {
	size := func(w, h length.Length) survey.TileSize { return survey.TileSize{Width: w, Height: h} }
	walls := (12 * length.Foot).Times(10 * length.Foot) // walls of 3, 6 and 3 ft, 10 ft high
	assert.Equal(t, 540, byArea(walls, size(4*inch, 8*inch), 0))
	// 60 by 60 in in modules of 4 5/8 in: 13 by 13, each row counted up.
	assert.Equal(t, 13, along(60*inch, 4*inch+inch/2, inch/8))
	// Pieces per square foot without joints (geometry).
	for _, c := range []struct{ w, h, feet, want length.Length }{{3, 6, 1, 8}, {4, 4, 1, 9}, {6, 6, 1, 4}, {4, 12, 1, 3}, {12, 24, 2, 1}} {
		assert.EqualValues(t, c.want, byArea(length.Area(c.feet)*squareFoot, size(c.w*inch, c.h*inch), 0))
	}
}
