package length_test

import (
	"math/big"
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFormatShowsWhatATapeShows(t *testing.T) {
	for _, c := range []struct {
		l    length.Length
		s    length.System
		step length.Length
		want string
	}{
		{0, length.Imperial, in / 16, `0"`},
		{i16(0, 8), length.Imperial, in / 16, `1/2"`},
		{i16(7, 8), length.Imperial, in / 16, `7 1/2"`},
		{-i16(38, 10), length.Imperial, in / 16, `-38 5/8"`},
		{48*in - 1, length.Imperial, in / 16, `4'-0"`},
		{i16(47, 15), length.Imperial, in / 16, `47 15/16"`},
		{i16(55, 8), length.Imperial, in / 16, `4'-7 1/2"`},
		{i16(48, 1), length.Imperial, in / 16, `4'-0 1/16"`},
		{-i16(55, 8), length.Imperial, in / 16, `-4'-7 1/2"`},
		{in / 64, length.Imperial, in / 64, `1/64"`},
		{in / 64, length.Imperial, in / 16, `0"`},
		{in / 32, length.Imperial, in / 16, `1/16"`},
		{-in / 32, length.Imperial, in / 16, `-1/16"`},
		{in / 3, length.Imperial, 0, `1/3"`},
		{1511 * mm, length.Metric, mm, "1511 mm"},
		{3021 * mm / 2, length.Metric, mm / 2, "1510.5 mm"},
		{3021 * mm / 2, length.Metric, mm, "1511 mm"},
		{-3 * mm / 2, length.Metric, mm, "-2 mm"},
		{mm / 3, length.Metric, 0, "1/3 mm"},
		{mm / 20, length.Metric, 0, "0.05 mm"},
	} {
		assert.Equal(t, c.want, c.l.Format(c.s, c.step), "%d", c.l)
	}
}

func TestPlainTapeFineBoth(t *testing.T) {
	l := i16(59, 8)
	assert.Equal(t, "59 1/2", l.Plain(length.Imperial, in/16))
	assert.Equal(t, "1511.5", l.Plain(length.Metric, mm/2))
	assert.Equal(t, `4'-11 1/2"`, l.Tape(length.Imperial))
	for _, c := range []struct {
		l    length.Length
		s    length.System
		want string
	}{
		{l, length.Imperial, `4'-11 1/2" · 1511.3 mm`},
		{l, length.Metric, `1511.3 mm · 4'-11 1/2"`},
		{3 * in / 32, length.Imperial, `3/32" · 2.4 mm`},
		{in / 64, length.Imperial, `1/64" · 0.4 mm`},
		{1511 * mm, length.Imperial, `4'-11 31/64" · 1511 mm`},
		{mm / 4, length.Metric, `0.25 mm · 0"`},
		{in / 3, length.Metric, `8.5 mm · 11/32"`},
		{-15 * mm / 10, length.Metric, `-1.5 mm · -1/16"`},
	} {
		assert.Equal(t, c.want, c.l.Both(c.s))
	}
	for _, c := range []struct {
		l     length.Length
		s     length.System
		want  string
		exact bool
	}{
		{l, length.Imperial, "1511.3 mm", true},
		{in / 8, length.Imperial, "3.2 mm", false},
		{127 * mm, length.Metric, `5"`, true},
		{883 * mm, length.Metric, `34 3/4"`, false},
	} {
		got, exact := c.l.Other(c.s)
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.exact, exact, got)
	}
	assert.Equal(t, `1/32"`, (in / 32).Fine(length.Imperial))
	assert.Equal(t, "0.5 mm", (mm / 2).Fine(length.Metric))
}

func TestMillimetres(t *testing.T) {
	for l, want := range map[length.Length]string{
		0: "0", mm: "1", -mm: "-1", in: "25.4", in / 64: "0.397", 1: "0.001", -1: "-0.001",
		i16(38, 10): "981.075", mm / 3: "0.333", length.Longest: "100000", 1511 * mm: "1511",
	} {
		assert.Equal(t, want, l.MillimetreText())
	}
	assert.Equal(t, 981.075, i16(38, 10).Millimetres())
	assert.Equal(t, -0.397, (-in / 64).Millimetres())
}

func TestRoundingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		m := length.Length(rapid.Int64Range(1, int64(length.Metre)).Draw(t, "m"))
		near, low, high := l.RoundTo(m), l.FloorTo(m), l.CeilTo(m)
		require.Equal(t, length.Length(0), near%m)
		require.LessOrEqual(t, 2*(l-near).Abs(), m)
		require.Equal(t, -near, (-l).RoundTo(m))
		require.True(t, low <= l && l < low+m && high-m < l && l <= high)
		require.True(t, length.Mod(l, m) >= 0 && length.Mod(l, m) < m)
		require.Equal(t, l, length.Length(length.DivFloor(l, m))*m+length.Mod(l, m))
		require.True(t, l == 2*l.Half() || l == 2*l.Half()+1)
	})
}

func TestRoundingWithoutAStep(t *testing.T) {
	for _, step := range []length.Length{0, -1} {
		assert.Equal(t, length.Length(7), length.Length(7).RoundTo(step))
		assert.Equal(t, length.Length(7), length.Length(7).FloorTo(step))
		assert.Equal(t, length.Length(7), length.Length(7).CeilTo(step))
	}
}

// MillimetreText against exact rational arithmetic.
func TestMillimetreTextIsTheNearestThousandth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		shown, ok := new(big.Rat).SetString(l.MillimetreText())
		require.True(t, ok)
		off := shown.Sub(shown, big.NewRat(int64(l), 960))
		require.LessOrEqual(t, off.Abs(off).Cmp(big.NewRat(1, 2000)), 0)
	})
}

func TestParseFraction(t *testing.T) {
	for text, want := range map[string][2]int64{
		"1/2": {1, 2}, "½": {1, 2}, "2/4": {1, 2}, "0.25": {1, 4}, "0,25": {1, 4}, ".5": {1, 2}, "33%": {33, 100},
		"33 %": {33, 100}, "1/3": {1, 3}, " ⅓ ": {1, 3}, "0": {0, 1}, "1": {1, 1}, "50%": {1, 2}, "33 1/3 %": {1, 3},
	} {
		num, den, err := length.ParseFraction(text)
		if assert.NoError(t, err, "%q", text) {
			assert.Equal(t, want, [2]int64{num, den}, "%q", text)
		}
	}
	for text, says := range map[string]string{
		"": "ends where a number is needed", "half": "“half” where a number", "-1/2": "“-1/2” where a number",
		"3/2": "is more than one", "101%": "is more than one", "1/3 in": "“in” after a number", "1/0": "divide by",
		"1/1001": "is too fine", "0.0001": "is too fine", "1/2 1/2": "“1/2” after a number",
	} {
		_, _, err := length.ParseFraction(text)
		var refused *length.ParseError
		if assert.ErrorAs(t, err, &refused, "%q", text) {
			assert.Contains(t, err.Error(), says)
			assert.Contains(t, refused.Want, "part of one", "%q", text)
		}
	}
}
