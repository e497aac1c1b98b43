package length_test

import (
	"errors"
	"strings"
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

const (
	in = length.Inch
	ft = length.Foot
	mm = length.Millimetre
)

// whole inches and sixteenths.
func i16(whole, sixteenths length.Length) length.Length { return whole*in + sixteenths*in/16 }

func TestParseReadsWhatPeopleWrite(t *testing.T) {
	for _, c := range []struct {
		text string
		s    length.System
		want length.Length
	}{
		// bare numbers
		{"0", length.Imperial, 0},
		{"59", length.Imperial, 59 * in},
		{"59 1/2", length.Imperial, i16(59, 8)},
		{"59-1/2", length.Imperial, i16(59, 8)},
		{"59  1/2", length.Imperial, i16(59, 8)},
		{"  59 1/2  ", length.Imperial, i16(59, 8)},
		{"59\u00a01/2", length.Imperial, i16(59, 8)},
		{"59\u20091/2", length.Imperial, i16(59, 8)},
		{"59.5", length.Imperial, i16(59, 8)},
		{"59,5", length.Imperial, i16(59, 8)},
		{"59.50", length.Imperial, i16(59, 8)},
		{"059.5", length.Imperial, i16(59, 8)},
		{".5", length.Imperial, i16(0, 8)},
		{",5", length.Imperial, i16(0, 8)},
		{"0.375", length.Imperial, i16(0, 6)},
		{"0,375", length.Imperial, i16(0, 6)},
		{"1/2", length.Imperial, i16(0, 8)},
		{"8/16", length.Imperial, i16(0, 8)},
		{"010/16", length.Imperial, i16(0, 10)},
		{"3/2", length.Imperial, i16(1, 8)},
		{"1/64", length.Imperial, 381},
		{"1/3", length.Imperial, 8128},
		{"½", length.Imperial, i16(0, 8)},
		{"7½", length.Imperial, i16(7, 8)},
		{"7 ½", length.Imperial, i16(7, 8)},
		{"7-½", length.Imperial, i16(7, 8)},
		{"7-1/2", length.Imperial, i16(7, 8)},
		{"7–1/2", length.Imperial, i16(7, 8)},
		{"7 1⁄2", length.Imperial, i16(7, 8)},
		{"7 1∕2", length.Imperial, i16(7, 8)},
		{"7 1／2", length.Imperial, i16(7, 8)},
		{"¼", length.Imperial, i16(0, 4)},
		{"¾", length.Imperial, i16(0, 12)},
		{"⅛", length.Imperial, i16(0, 2)},
		{"⅜", length.Imperial, i16(0, 6)},
		{"⅝", length.Imperial, i16(0, 10)},
		{"⅞", length.Imperial, i16(0, 14)},
		{"⅓", length.Imperial, in / 3},
		{"⅔", length.Imperial, 2 * in / 3},
		{"⅙", length.Imperial, in / 6},
		{"⅚", length.Imperial, 5 * in / 6},
		{"1511", length.Metric, 1511 * mm},
		{"1510.5", length.Metric, 3021 * mm / 2},
		{"1510,5", length.Metric, 3021 * mm / 2},
		{"0.05", length.Metric, 48},
		{"1/2", length.Metric, mm / 2},
		{"1/960", length.Metric, 1},
		// signs
		{"-3/8", length.Imperial, -i16(0, 6)},
		{"-38 5/8", length.Imperial, -i16(38, 10)},
		{"- 38 5/8", length.Imperial, -i16(38, 10)},
		{"−38 5/8", length.Imperial, -i16(38, 10)},
		{"–38 5/8", length.Imperial, -i16(38, 10)},
		{"-½", length.Imperial, -i16(0, 8)},
		{"+2", length.Imperial, 2 * in},
		{"+ 2", length.Imperial, 2 * in},
		{"-0", length.Imperial, 0},
		{"-12", length.Metric, -12 * mm},
		{"-4'-7 1/2\"", length.Imperial, -i16(55, 8)},
		// feet and inches
		{"5'", length.Imperial, 5 * ft},
		{"5’", length.Imperial, 5 * ft},
		{"5′", length.Imperial, 5 * ft},
		{"2 ft", length.Imperial, 2 * ft},
		{"2ft", length.Imperial, 2 * ft},
		{"2 ft.", length.Imperial, 2 * ft},
		{"2 feet", length.Imperial, 2 * ft},
		{"1 foot", length.Imperial, ft},
		{"1/2 ft", length.Imperial, 6 * in},
		{"1.5 ft", length.Imperial, 18 * in},
		{"4 1/2'", length.Imperial, 54 * in},
		{`7"`, length.Imperial, 7 * in},
		{`7''`, length.Imperial, 7 * in},
		{`7′′`, length.Imperial, 7 * in},
		{`7”`, length.Imperial, 7 * in},
		{`7“`, length.Imperial, 7 * in},
		{`7″`, length.Imperial, 7 * in},
		{`7 1/2"`, length.Imperial, i16(7, 8)},
		{`7½"`, length.Imperial, i16(7, 8)},
		{"7 in", length.Imperial, 7 * in},
		{"7in.", length.Imperial, 7 * in},
		{"7 IN", length.Imperial, 7 * in},
		{"1 inch", length.Imperial, in},
		{"7 1/2 inches", length.Imperial, i16(7, 8)},
		{`4' 11-1/2"`, length.Imperial, i16(59, 8)},
		{`4'11 1/2"`, length.Imperial, i16(59, 8)},
		{`4'-11 1/2"`, length.Imperial, i16(59, 8)},
		{`4' - 11 1/2"`, length.Imperial, i16(59, 8)},
		{`4’ 11–½”`, length.Imperial, i16(59, 8)},
		{`4′ 11 ½″`, length.Imperial, i16(59, 8)},
		{`4'11½"`, length.Imperial, i16(59, 8)},
		{"4 ft 11 1/2 in", length.Imperial, i16(59, 8)},
		{"4ft 11.5in", length.Imperial, i16(59, 8)},
		{"4 ft, 11 1/2 in", length.Imperial, i16(59, 8)},
		{"4 Feet 11 1/2 Inches", length.Imperial, i16(59, 8)},
		{"5' 6", length.Imperial, 66 * in},
		{"5'6", length.Imperial, 66 * in},
		{"4'-0\"", length.Imperial, 48 * in},
		{`4'-1/2"`, length.Imperial, i16(48, 8)},
		{"4'½", length.Imperial, i16(48, 8)},
		// metric with units
		{"1511 mm", length.Metric, 1511 * mm},
		{"1511mm", length.Imperial, 1511 * mm},
		{"1511 MM", length.Imperial, 1511 * mm},
		{"151.1 cm", length.Imperial, 1511 * mm},
		{"151,1 cm", length.Metric, 1511 * mm},
		{"1.511 m", length.Imperial, 1511 * mm},
		{"0,511 m", length.Metric, 511 * mm},
		{"1 m 20 cm", length.Metric, 1200 * mm},
		{"1m 20cm 5mm", length.Imperial, 1205 * mm},
		{"1 m 5 mm", length.Metric, 1005 * mm},
		{"1 metre", length.Metric, 1000 * mm},
		{"2 meters", length.Metric, 2000 * mm},
		{"20 centimetres", length.Metric, 200 * mm},
		{"3 millimeters", length.Metric, 3 * mm},
		// the other system than the job's
		{`59 1/2"`, length.Metric, i16(59, 8)},
		{"5' 6", length.Metric, 66 * in},
		// the bounds
		{"100 m", length.Metric, length.Longest},
		{"-100 m", length.Metric, -length.Longest},
	} {
		got, err := length.Parse(c.text, c.s)
		if assert.NoError(t, err, "%q", c.text) {
			assert.Equal(t, c.want, got, "%q in %v", c.text, c.s)
		}
	}
}

func TestParseRefusesAndSaysWhere(t *testing.T) {
	for _, c := range []struct {
		text string
		s    length.System
		at   int
		says string // all of the sentence after the text
	}{
		{"", length.Imperial, 0, "is empty"},
		{"   ", length.Imperial, 3, "is empty"},
		{"-", length.Imperial, 1, "is empty"},
		{"--3", length.Imperial, 1, "has “-3” where a number is needed"},
		{"+-3", length.Imperial, 1, "has “-3” where a number is needed"},
		{"abc", length.Imperial, 0, "has “abc” where a number is needed"},
		{"in", length.Imperial, 0, "has “in” where a number is needed"},
		{".", length.Imperial, 0, "has “.” where a number is needed"},
		{"5.", length.Imperial, 1, "has “.” after a number"},
		{"1e3", length.Metric, 1, "has no unit “e”"},
		{"0x10", length.Metric, 1, "holds two lengths"},
		{"20 x 10 cm", length.Metric, 3, "holds two lengths"},
		{"8×4", length.Imperial, 1, "holds two lengths"},
		{"8 by 4 in", length.Imperial, 2, "holds two lengths"},
		{"4 yd", length.Imperial, 2, "has no unit “yd”"},
		{"4 µm", length.Metric, 2, "has no unit “µm”"},
		{"4 11 1/2", length.Imperial, 2, "has “11 1/2” after a number"},
		{"59 1/2 3", length.Imperial, 7, "has “3” after a number"},
		{"59 - 1/2", length.Imperial, 3, "has “- 1/2” after a number"},
		{"4-11", length.Imperial, 1, "has “-11” after a number"},
		{"35 1/ 4", length.Imperial, 3, "has a space inside the fraction “1/ 4”"},
		{"35 1 /4", length.Imperial, 3, "has a space inside the fraction “1 /4”"},
		{"4' 11 1 / 2", length.Imperial, 6, "has a space inside the fraction “1 / 2”"},
		{"1 / 4", length.Imperial, 0, "has a space inside the fraction “1 / 4”"},
		{"1/0", length.Imperial, 2, "has a fraction without a number to divide by"},
		{"1/00", length.Imperial, 2, "has a fraction without a number to divide by"},
		{"7 1/", length.Imperial, 4, "has a fraction without a number to divide by"},
		{"/2", length.Imperial, 0, "has “/2” where a number is needed"},
		{"7 3/2", length.Imperial, 2, "has a fraction of one or more after a whole number"},
		{"7 2/2", length.Imperial, 2, "has a fraction of one or more after a whole number"},
		{"1/2/3", length.Imperial, 3, "has “/3” after a number"},
		{"59.5 1/2", length.Imperial, 5, "has “1/2” after a number"},
		{"½½", length.Imperial, 2, "has “½” after a number"},
		{"1,511", length.Metric, 0, "may mean thousands or a decimal; write 1511, or 1.5 mm or 1.6 mm where the comma is a decimal"},
		{"1,180", length.Metric, 0, "may mean thousands or a decimal; write 1180, or 1.1 mm or 1.2 mm where the comma is a decimal"},
		{"1,180 m", length.Metric, 0, "may mean thousands or a decimal; write 1180 or 1.180"},
		{"59,100", length.Imperial, 0, "may mean thousands or a decimal; write 59100, or 59 3/32 in or 59 7/64 in where the comma is a decimal"},
		{"1,500 mm", length.Metric, 0, "may mean thousands or a decimal; write 1500 or 1.500"},
		{"1.511,5", length.Metric, 5, "has “,5” after a number"},
		{"1.5.5", length.Metric, 3, "has “.5” after a number"},
		{"1 m 20", length.Metric, 4, "has a number without its unit at the end"},
		{"1 cm 2 m", length.Metric, 5, "has m after cm"},
		{"4\" 2'", length.Imperial, 3, "has ft after in"},
		{"1 in 2 in", length.Imperial, 5, "has in after in"},
		{"4 ft 20 cm", length.Imperial, 5, "mixes ft with cm"},
		{"1 m 2\"", length.Metric, 4, "mixes m with in"},
		{"4 1/2 ft 3 in", length.Imperial, 0, "has a fraction before the last number"},
		{"4.5' 3\"", length.Imperial, 0, "has a fraction before the last number"},
		{"4' 12\"", length.Imperial, 3, "has a full ft or more in its in"},
		{"1 m 120 cm", length.Metric, 4, "has a full m or more in its cm"},
		{"4'-", length.Imperial, 3, "ends where a number is needed"},
		{"4' --3", length.Imperial, 4, "has “-3” where a number is needed"},
		{"1 m -20 cm", length.Metric, 4, "has “-20 cm” where a number is needed"},
		{"4'''", length.Imperial, 3, "has “'” where a number is needed"},
		{"7\"\"", length.Imperial, 2, "has “\"” where a number is needed"},
		{"5 (about)", length.Imperial, 2, "has “(about)” after a number"},
		{"≈5", length.Imperial, 0, "has “≈5” where a number is needed"},
		{"٣", length.Metric, 0, "has “٣” where a number is needed"},
		{"5\x00", length.Metric, 1, "after a number"},
		{"\xff", length.Metric, 0, "has “?” where a number is needed"},
		// what cannot be kept names its neighbours
		{"1/7 in", length.Imperial, 0, "cannot be kept exactly; write the nearest reading, 9/64 in or 5/32 in"},
		{"1/7", length.Metric, 0, "cannot be kept exactly; write the nearest reading, 0.1 mm or 0.2 mm"},
		{"1.006", length.Metric, 0, "cannot be kept exactly; write the nearest reading, 1 mm or 1.1 mm, or 1006 where the point sets thousands apart"},
		{"0.006", length.Metric, 0, "cannot be kept exactly; write the nearest reading, 0 mm or 0.1 mm"},
		{"⅐", length.Imperial, 0, "9/64 in or 5/32 in"},
		{"⅕", length.Imperial, 0, "3/16 in or 13/64 in"},
		{"⅒", length.Imperial, 0, "3/32 in or 7/64 in"},
		{"⅑", length.Imperial, 0, "7/64 in or 1/8 in"},
		{"59.1", length.Imperial, 0, "59 3/32 in or 59 7/64 in"},
		{"-59.1", length.Imperial, 0, "-59 7/64 in or -59 3/32 in"},
		{"0.01 mm", length.Imperial, 0, "0 mm or 0.1 mm"},
		{"1/128", length.Imperial, 0, "0 in or 1/64 in"},
		// the bounds
		{"100.0001 m", length.Metric, 0, "is out of bounds"},
		{"330 ft", length.Imperial, 0, "is out of bounds"},
		{"-101 m", length.Metric, 0, "is out of bounds"},
		{"99999999999999999999999999999", length.Metric, 0, "is out of bounds"},
		{"000000000000000000000000000000000000000000000000000000000000000000000000000000000000001", length.Metric, 80, "is too long"},
	} {
		_, err := length.Parse(c.text, c.s)
		var refused *length.ParseError
		if !assert.True(t, errors.As(err, &refused), "%q is read", c.text) {
			continue
		}
		assert.Equal(t, c.text, refused.Text)
		assert.Equal(t, c.at, refused.At, "%q: %v", c.text, err)
		assert.Contains(t, err.Error(), c.says, "%q", c.text)
		assert.NotEmpty(t, refused.Want, "%q", c.text)
	}
}

func TestErrorIsOneSentence(t *testing.T) {
	_, err := length.Parse("4 yd", length.Imperial)
	require.EqualError(t, err, "“4 yd” has no unit “yd”; write ft, in, m, cm or mm")
}

// anyLength draws a length that Parse reads.
func anyLength() *rapid.Generator[length.Length] {
	return rapid.Map(rapid.Int64Range(-int64(length.Longest), int64(length.Longest)),
		func(n int64) length.Length { return length.Length(n) })
}

func anySystem() *rapid.Generator[length.System] {
	return rapid.SampledFrom([]length.System{length.Imperial, length.Metric})
}

// Law 2, and the same for everything a tape shows.
func TestParseGivesBackWhatFormatWrites(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, s, read := anyLength().Draw(t, "l"), anySystem().Draw(t, "s"), anySystem().Draw(t, "read")
		step := rapid.SampledFrom([]length.Length{0, 1, in / 64, in / 32, in / 16, in / 8, mm / 10, mm / 2, mm, 5 * mm}).Draw(t, "step")
		shown := l.RoundTo(step)
		if shown.Abs() > length.Longest {
			t.Skip("rounds past the bounds")
		}
		for _, text := range []string{shown.Format(s, step), l.Format(s, step)} {
			got, err := length.Parse(text, read)
			require.NoError(t, err)
			require.Equal(t, shown, got, text)
		}
		got, err := length.Parse(l.Plain(s, step), s)
		require.NoError(t, err)
		require.Equal(t, shown, got)
	})
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"59 1/2", `4' 11-1/2"`, "1 m 20 cm", "−38⅝", "1,511", "1/7 in", "5' 6", "\xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, s := range []length.System{length.Imperial, length.Metric} {
			l, err := length.Parse(text, s)
			if err != nil {
				var refused *length.ParseError
				require.ErrorAs(t, err, &refused)
				require.True(t, refused.At >= 0 && refused.At <= len(text), "at %d of %q", refused.At, text)
				require.True(t, refused.Problem != "" && refused.Want != "")
				continue
			}
			require.LessOrEqual(t, l.Abs(), length.Longest)
			again, err := length.Parse(l.Format(s, 0), s)
			require.NoError(t, err)
			require.Equal(t, l, again)
		}
	})
}

// Law of ParsePrinted: what MillimetreText prints is read back to the unit, in
// either system, near zero and far from it.
func TestParsePrintedReadsBackWhatIsPrinted(t *testing.T) {
	for _, from := range []length.Length{-2000, 797_000, -943_357, 40 * length.Metre} {
		for l := from; l < from+4000; l++ {
			for _, s := range []length.System{length.Imperial, length.Metric} {
				got, err := length.ParsePrinted(l.MillimetreText()+" mm", s)
				if err != nil || got != l {
					t.Fatalf("%d prints as %s mm and reads back as %d: %v", l, l.MillimetreText(), got, err)
				}
			}
		}
	}
}

func TestParsePrintedRoundsNothingElse(t *testing.T) {
	for text, want := range map[string]length.Length{"59 1/2": 59*length.Inch + length.Inch/2, "-0.5 mm": -480, "1511 mm": 1511 * length.Millimetre} {
		got, err := length.ParsePrinted(text, length.Imperial)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"1/7", "830.2631 mm", "83.0263 cm", "0.830263 m", "1 m 3.263 mm", "59.001", "x mm", strings.Repeat("9", 70) + ".123 mm"} {
		_, err := length.ParsePrinted(text, length.Imperial)
		assert.Error(t, err, text)
	}
}

// A space that slipped into a fraction is refused with the fraction as it would be read.
func TestASpaceInAFractionSaysWhatWouldBeRight(t *testing.T) {
	for text, want := range map[string]string{
		"35 1/ 4": "35 1/4, without the space", "1 / 2": "1/2, without the space", " 4' 11-1 /2 in": "4' 11-1/2, without the space",
	} {
		_, err := length.Parse(text, length.Imperial)
		var refused *length.ParseError
		require.ErrorAs(t, err, &refused, text)
		assert.Equal(t, want, refused.Want, text)
	}
}
