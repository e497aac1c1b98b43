package sheet

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/finding"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// solved solves a job of testdata.
func solved(t *testing.T, name string, change ...func(*survey.Job)) layout.Plan {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", name+".json"))
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	for _, c := range change {
		c(&job)
	}
	plan, err := layout.Now(job)
	require.NoError(t, err)
	return plan
}

// paged prints a plan and gives the file and the number of its pages.
func paged(t *testing.T, plan layout.Plan, o Options) (file string, pages int) {
	t.Helper()
	o.Date, o.Hash = noon, "0123abcd"
	var b bytes.Buffer
	require.NoError(t, Write(&b, plan, o))
	file = filepath.Join(t.TempDir(), "sheets.pdf")
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o600))
	return file, len(newBook(plan, o).leaves)
}

// stream is everything written on all pages, as it stands in the file.
func stream(t *testing.T, plan layout.Plan, o Options) string {
	t.Helper()
	o.Date = noon
	pdf := printed(plan, o)
	pdf.SetCompression(false)
	var b bytes.Buffer
	require.NoError(t, pdf.Output(&b))
	return b.String()
}

func tool(t *testing.T, command string, args ...string) string {
	t.Helper()
	out, err := exec.Command(command, args...).CombinedOutput()
	require.NoError(t, err, string(out))
	return string(out)
}

// lengths finds every straight line of two points and gives its reach in points.
func lengths(stream string) (across, up map[string]int) {
	across, up = map[string]int{}, map[string]int{}
	line := regexp.MustCompile(`([\d.]+) ([\d.]+) m\s+([\d.]+) ([\d.]+) l\s+S`)
	for _, m := range line.FindAllStringSubmatch(stream, -1) {
		var v [4]float64
		for i := range v {
			v[i], _ = strconv.ParseFloat(m[i+1], 64)
		}
		across[fmt.Sprintf("%.2f", math.Abs(v[2]-v[0]))]++
		up[fmt.Sprintf("%.2f", math.Abs(v[3]-v[1]))]++
	}
	return across, up
}

// 100 mm are 283.46 pt and 4 in are 288 pt (ISO 32000-1, 8.3.2.3: 72 units to the inch).
func TestTheBarsAreTrueInBothAxesOnEverySheetOfEveryPaper(t *testing.T) {
	plan := solved(t, "one-wall")
	for _, paper := range Papers() {
		across, up := lengths(stream(t, plan, Options{Paper: paper}))
		sheets := len(newBook(plan, Options{Paper: paper}).leaves)
		assert.GreaterOrEqual(t, across["283.46"]+across["283.47"], sheets, paper.Name)
		assert.GreaterOrEqual(t, up["283.46"]+up["283.47"], sheets, paper.Name)
		assert.GreaterOrEqual(t, across["288.00"]+across["287.99"]+across["288.01"], sheets, paper.Name)
		assert.GreaterOrEqual(t, up["288.00"]+up["287.99"]+up["288.01"], sheets, paper.Name)
	}
}

func TestNoTextIsUnderTwoAndAHalfMillimetres(t *testing.T) {
	for _, m := range regexp.MustCompile(` ([\d.]+) Tf`).FindAllStringSubmatch(stream(t, solved(t, "alcove"), Options{}), -1) {
		size, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		require.GreaterOrEqual(t, size, 7.08, "2.5 mm are 7.087 pt")
	}
}

func TestNothingStandsWithinTenMillimetresOfTheEdge(t *testing.T) {
	longNames := func(j *survey.Job) {
		j.Title = "\U0001F6C1\U00010000浴室" + strings.Repeat("A bath with a long name, ", 7)
		j.Tile.Name = strings.Repeat("wide", 20)
		j.Walls[0].Name = "behind the basin"
	}
	plan := solved(t, "one-wall", longNames)
	for _, paper := range Papers() {
		marginsAreBare(t, plan, paper)
	}
	marginsAreBare(t, solved(t, "alcove"), Papers()[0])
	marginsAreBare(t, solved(t, "toy"), Papers()[1])
}

// marginsAreBare renders every sheet at 50 dots to the inch, where 10 mm are
// 19.7 dots, and looks at the outer 19.
func marginsAreBare(t *testing.T, plan layout.Plan, paper Paper) {
	file, pages := paged(t, plan, Options{Paper: paper})
	stem := filepath.Join(t.TempDir(), "page")
	tool(t, "pdftoppm", "-r", "50", "-gray", file, stem)
	pictures, err := filepath.Glob(stem + "*.pgm")
	require.NoError(t, err)
	require.Len(t, pictures, pages)
	for _, name := range pictures {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		var w, h, most int
		_, err = fmt.Sscanf(string(data[:20]), "P5\n%d %d\n%d", &w, &h, &most)
		require.NoError(t, err)
		dots := data[len(data)-w*h:]
		for i, d := range dots {
			x, y := i%w, i/w
			if x < 19 || y < 19 || x >= w-19 || y >= h-19 {
				require.Equal(t, byte(255), d, "%s %s: ink at dot %d, %d", paper.Name, filepath.Base(name), x, y)
			}
		}
	}
}

func TestTheSamePlanGivesTheSameBytes(t *testing.T) {
	var a, b bytes.Buffer
	require.NoError(t, Write(&a, solved(t, "alcove"), Options{Date: noon}))
	require.NoError(t, Write(&b, solved(t, "alcove"), Options{Date: noon}))
	assert.Equal(t, a.Bytes(), b.Bytes())
}

func TestEverySheetBearsItsTitleBlock(t *testing.T) {
	o := Options{Kinds: slices.DeleteFunc(Kinds(), func(k Kind) bool { return k == Measuring })}
	file, pages := paged(t, solved(t, "one-wall"), o)
	assert.Len(t, regexp.MustCompile(`Identity-H +yes`).FindAllString(tool(t, "pdffonts", file), -1), 2, "both fonts embedded")
	for n := 1; n <= pages; n++ {
		text := tool(t, "pdftotext", "-layout", "-f", strconv.Itoa(n), "-l", strconv.Itoa(n), file, "-")
		for _, want := range []string{"Behind the basin", fmt.Sprintf("%d of %d", n, pages), "2026-05-04", "0123abcd", "Letter",
			`11 13/16" × 3 7/8" · 1/8"`, `14 1/2" over the curb`, "print at 100 %, check this bar", "100 mm", "4 in"} {
			assert.Contains(t, text, want, "sheet %d", n)
		}
	}
}

func TestCautionsStandWhereTheyBelong(t *testing.T) {
	plan := solved(t, "alcove")
	local := strings.Fields(finding.LocalCode)[0:5]
	for kind, want := range map[Kind]string{CutSchedule: "silica dust", SetOut: "lead paint", FirstCourse: "let it harden", Stages: "GFCI"} {
		file, _ := paged(t, plan, Options{Kinds: []Kind{kind}})
		text := strings.Join(strings.Fields(tool(t, "pdftotext", file, "-")), " ")
		assert.Contains(t, text, want, kind)
		assert.Contains(t, text, strings.Join(local, " "), kind)
	}
}

// A wall whose whole tiles all lap round an outside corner starts beyond its left corner.
func TestAStartBeyondAnOutsideCornerIsSaidSo(t *testing.T) {
	file, _ := paged(t, solved(t, "boxing"), Options{Kinds: []Kind{SetOut}})
	text := strings.Join(strings.Fields(tool(t, "pdftotext", "-layout", file, "-")), " ")
	assert.Contains(t, text, "F-02-01 11 beyond it 402 from the tile of T")
}

func TestAnElevationTakesTheLargestScaleThatFits(t *testing.T) {
	plan := solved(t, "one-wall")
	for _, c := range []struct{ paper, scale string }{{"Letter", `1/2" = 1'-0"`}, {"Tabloid", `1" = 1'-0"`}} {
		paper, err := PaperNamed(c.paper)
		require.NoError(t, err)
		l := newBook(plan, Options{Paper: paper, Kinds: []Kind{Elevations}}).leaves[0]
		lo, hi := l.area()
		scales := ladder(plan.Room.Units)
		for _, s := range scales {
			scene := drawing.Elevation(plan, 0, drawing.Options{Sheet: true, Scale: s})
			fits := scene.Width <= hi.X-lo.X && scene.Height <= hi.Y-lo.Y
			if s == l.scale {
				assert.True(t, fits)
				break
			}
			assert.False(t, fits, "%v is larger and fits", s)
		}
	}
}

func TestWhatIsChosenWronglyIsNamed(t *testing.T) {
	_, err := PaperNamed("B5")
	assert.EqualError(t, err, `there is no paper "B5"; choose a4, letter, a3 or tabloid`)
	_, err = ParseKinds("set-out,map")
	assert.EqualError(t, err, `there is no kind of sheet "map"; the kinds are set-out, elevations, first-course, cuts, story-pole, full-size-pole, take-off, stages, choices, measuring`)
	kinds, err := ParseKinds(" Stages, cuts,")
	require.NoError(t, err)
	assert.Equal(t, []Kind{Stages, CutSchedule}, kinds)
}

func TestAPlanWithoutWallsGivesOneSheetThatSaysSo(t *testing.T) {
	file, pages := paged(t, layout.Plan{}, Options{})
	assert.Equal(t, 1, pages)
	assert.Contains(t, tool(t, "pdftotext", file, "-"), "This job has no walls yet.")
}

func TestColumnsAndVeryLargeWallsArePrintedToo(t *testing.T) {
	columns := solved(t, "one-wall", func(j *survey.Job) { j.Bond.Along = "plumb" })
	file, pages := paged(t, columns, Options{})
	assert.Equal(t, 5, pages)
	assert.Contains(t, tool(t, "pdftotext", file, "-"), "column")
	hall := solved(t, "toy", func(j *survey.Job) {
		j.Tile.Width, j.Tile.Height = "1200", "600"
		j.Walls[0].Width, j.Walls[0].Right.Stops.At, j.Walls[0].Head.Stops.At = "40000", "40000", "20000"
	})
	_, pages = paged(t, hall, Options{Kinds: Kinds()})
	assert.Greater(t, pages, 20, "most of them the pole of 20 m")
	assert.Greater(t, newBook(hall, Options{Kinds: []Kind{Elevations}}).leaves[0].scale.Real, int64(100), "no larger scale takes 40 m")
}

// The measuring sheet serves the next room, so nothing of this one stands on it.
func TestNothingMeasuredStandsOnTheMeasuringSheet(t *testing.T) {
	for _, name := range five {
		file, pages := paged(t, roomOf(t, name), Options{Kinds: []Kind{Measuring}})
		assert.Equal(t, 1, pages, name)
		text := tool(t, "pdftotext", "-layout", file, "-")
		assert.Contains(t, text, "measured by", name)
		assert.NotRegexp(t, `\d+'-\d|\d/\d+"|\d{3,} mm`, strings.NewReplacer("100 mm", "", "1/16 in", "").Replace(text), name)
		assert.NotContains(t, text, "2026-05-04", name)
	}
}

// A room has the same boxes on every paper: who measured on one types by the numbers of another. Found on the
// demo, which had a box in the middle of its back wall on Letter and none on A4.
func TestTheMeasuringSheetHasTheSameBoxesOnEveryPaper(t *testing.T) {
	numbers := regexp.MustCompile(`\d+ to \d+`)
	for _, name := range append([]string{"../static/demo", "jobs/half-wall"}, five...) {
		var first []string
		for _, paper := range Papers() {
			file, _ := paged(t, roomOf(t, name), Options{Paper: paper, Kinds: []Kind{Measuring}})
			found := numbers.FindAllString(tool(t, "pdftotext", "-layout", file, "-"), -1)
			if first == nil {
				first = found
			}
			assert.Equal(t, first, found, "%s on %s", name, paper.Name)
		}
	}
}

// The boxes are numbered in the order in which the bench asks, so that one types down
// the page.
func TestTheMeasuringSheetAsksInTheOrderOfTheBench(t *testing.T) {
	file, _ := paged(t, roomOf(t, "jobs/alcove"), Options{Kinds: []Kind{Measuring}})
	text, last := strings.Join(strings.Fields(tool(t, "pdftotext", "-layout", file, "-")), " "), -1
	for _, said := range []string{"Width of each wall", "down to the rim", "to the front of the tub", "down to the floor", "up to the ceiling", "leans by the top", "lying in a row", "standing"} {
		at := strings.Index(text, said)
		assert.Greater(t, at, last, said)
		last = at
	}
}
