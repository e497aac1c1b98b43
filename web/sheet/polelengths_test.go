package sheet

import (
	"cmp"
	"fmt"
	"html"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/length"
)

// printedWord is one word as poppler finds it: its box in points from the upper left corner of the page.
type printedWord struct {
	left, top, right, bottom float64
	text                     string
}

var bbox = regexp.MustCompile(`<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*)</word>`)

func coordinates(all []string) (out [4]float64) {
	for i := range out {
		out[i], _ = strconv.ParseFloat(all[i], 64)
	}
	return out
}

func wordsOf(page string) (out []printedWord) {
	for _, m := range bbox.FindAllStringSubmatch(page, -1) {
		v := coordinates(m[1:5])
		out = append(out, printedWord{v[0], v[1], v[2], v[3], html.UnescapeString(m[5])})
	}
	return out
}

// joinedWords are the words of a box, line after line.
func joinedWords(all []printedWord, in func(printedWord) bool, order func(a, b printedWord) int) string {
	var text []string
	for _, w := range slices.SortedFunc(slices.Values(all), order) {
		if in(w) {
			text = append(text, w.text)
		}
	}
	return strings.Join(text, " ")
}

// drawn are the lines of some width on a page, and the boxes, as left, top, right, bottom in points from the upper left corner.
func drawn(page, pen string, high float64) (lines, boxes [][4]float64) {
	const point = `([\d.]+) ([\d.]+) `
	pick := func(reg string) (out [][4]float64) {
		for _, m := range regexp.MustCompile(reg).FindAllStringSubmatch(page, -1) {
			v := coordinates(m[1:5])
			out = append(out, [4]float64{v[0], high - v[1], v[2], high - v[3]})
		}
		return out
	}
	return pick(pen + ` w\s+\[\] 0.00 d\s+` + point + `m\s+` + point + `l\s+S`), pick(point + `m\s+[\d.]+ [\d.]+ l\s+` + point + `l\s+[\d.]+ [\d.]+ l\s+[hsSbB]`)
}

// measuredPole is a pole as it lies on the sheets: heights in points over the foot, once all strips are joined, and what
// is written there.
type measuredPole struct {
	marks map[string]float64 // by what stands beside them
	feet  map[string]float64 // of courses, by number and figure
	long  float64
}

// measurePole reads the pole on its sheets, strip after strip, each laid on the one before it match mark on match mark.
func measurePole(t *testing.T, plan layout.Plan, o Options) measuredPole {
	t.Helper()
	file, leaves := paged(t, plan, o)
	require.Greater(t, leaves, 1)
	streams := slices.DeleteFunc(strings.Split(stream(t, plan, o), "endstream"), func(s string) bool { return !strings.Contains(s, " Tf ") && !strings.Contains(s, " Td ") })
	require.GreaterOrEqual(t, len(streams), leaves)
	out, foot, joint := measuredPole{map[string]float64{}, map[string]float64{}, 0}, 0.0, "FOOT"
	for n := range leaves {
		at := number(n + 1)
		words := wordsOf(tool(t, "pdftotext", "-bbox", "-f", at, "-l", at, file, "-"))
		high := 72 / 25.4 * mm(o.Paper.Height)
		matches, boxes := drawn(streams[n], "0.99", high)
		marks, _ := drawn(streams[n], "1.42", high)
		leaders, _ := drawn(streams[n], "0.51", high)
		matches = slices.DeleteFunc(matches, func(l [4]float64) bool { return math.Abs(l[2]-l[0]-19.84) > 0.03 })
		slices.SortFunc(matches, func(a, b [4]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(b[1], a[1])) })
		from := 0.0
		for k := 0; k+1 < len(matches); k += 2 {
			low, top := matches[k], matches[k+1]
			named := func(m [4]float64) string { // the word beside a match mark
				near := slices.MinFunc(words, func(a, b printedWord) int {
					off := func(w printedWord) float64 { return math.Hypot(w.right-m[2]-8, (w.top+w.bottom)/2-m[1]) }
					return cmp.Compare(off(a), off(b))
				})
				return near.text
			}
			require.Equal(t, joint, named(low))
			joint = named(top)
			over := func(y float64) float64 { return foot + low[1] - y }
			in := func(x float64) bool { return x > from && x < low[0] }
			for i, l := range leaders {
				if !in(l[0]) || !slices.ContainsFunc(marks, func(m [4]float64) bool { return m[2] == l[0] && m[1] == l[1] }) {
					continue
				}
				end := math.Inf(1)
				for j, other := range leaders {
					if j != i && in(other[0]) && other[3] > l[3] {
						end = min(end, other[3])
					}
				}
				text := joinedWords(words, func(w printedWord) bool {
					return w.left > l[2] && w.right < low[0] && (w.top+w.bottom)/2 > l[3]-3 && (w.top+w.bottom)/2 < min(end-3, low[1])
				}, func(a, b printedWord) int {
					return cmp.Or(cmp.Compare(math.Round(a.bottom), math.Round(b.bottom)), cmp.Compare(a.left, b.left))
				})
				out.marks[text] = over(l[1])
			}
			for _, box := range boxes {
				upward := func(from, to float64) string {
					return joinedWords(words, func(w printedWord) bool {
						return w.left > box[0]+from && w.right < box[0]+to && w.bottom < box[3] && w.top > box[1]
					}, func(a, b printedWord) int { return cmp.Compare(b.bottom, a.bottom) })
				}
				if course, figure := upward(-3, 18), upward(16, 30); in(box[0]) && math.Abs(box[2]-box[0]-28.35) < 0.03 && course != "" && figure != "" {
					out.feet[course+": "+figure] = over(box[3])
				}
			}
			foot, from = over(top[1]), low[2]
		}
	}
	require.Equal(t, "TOP", joint)
	out.long = foot
	return out
}

// The pole in the file, measured as it would be on paper, has every mark and every course where its figure says, counted
// from the level line: to the pen's hundredth of a point for what the plan has there, and to half a step of the tape for
// the figure, which is rounded to it. Its strips, joined, are as long as the sheet says.
func TestThePoleIsAsLongOnPaperAsItSays(t *testing.T) {
	const pen = 0.06 // mm: two halves of a hundredth of a point on each of up to 16 strips
	for name, c := range map[string]struct {
		plan  layout.Plan
		paper Paper
	}{"inches": {roomOf(t, "jobs/old-house"), Papers()[1]}, "millimetres": {roomOf(t, "cases/g-300x600"), Papers()[0]}, "the demo on A3": {solved(t, "alcove"), Papers()[2]}} {
		o := Options{Kinds: []Kind{FullPole}, Paper: c.paper}
		b, read := newBook(c.plan, o), measurePole(t, c.plan, o)
		p, units := b.pole(), c.plan.Room.Units
		zero := -1.0
		for text, at := range read.marks {
			if strings.Contains(text, "LEVEL LINE") {
				zero = at
			}
		}
		require.GreaterOrEqual(t, zero, 0.0, name)
		stands := func(text string, at float64, real length.Length) {
			over := (at - zero) * 25.4 / 72
			assert.InDelta(t, real.Millimetres(), over, pen, "%s: %s", name, text)
			figure := regexp.MustCompile(`[+−]?[\d'][\d/'" -]*$`).FindString(text)
			said, err := length.Parse(strings.TrimLeft(figure, "+−"), units)
			require.NoError(t, err, text)
			if strings.HasPrefix(figure, "−") {
				said = -said
			}
			assert.InDelta(t, said.Millimetres(), over, units.Step().Millimetres()/2+pen, "%s: %s", name, text)
		}
		seen := 0
		for _, m := range p.marks {
			if text := m.name + " " + b.signed(m.at); m.at >= p.low && m.at <= p.top {
				at, found := read.marks[strings.ReplaceAll(text, hold, " ")]
				if assert.True(t, found, "%s: %s is not among %v", name, text, read.marks) {
					stands(strings.ReplaceAll(text, hold, " "), at, m.at)
				}
				seen++
			}
		}
		assert.GreaterOrEqual(t, len(read.marks), seen, name)
		feet := 0
		for _, u := range p.tiles {
			text := strings.ReplaceAll(fmt.Sprint(u.course, ": ", b.signed(u.bottom)), hold, " ")
			if at, found := read.feet[text]; found {
				stands(text, at, u.bottom)
				feet++
			}
		}
		assert.Equal(t, len(read.feet), feet, "%s: %v", name, read.feet)
		assert.Greater(t, feet, 3, name)
		assert.Greater(t, seen, 4, name)
		assert.InDelta(t, (p.top - p.low).Millimetres(), read.long*25.4/72, pen, name)
	}
}
