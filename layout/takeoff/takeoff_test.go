package takeoff

import (
	"encoding/csv"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// The sides of the wall below.
const (
	left plane.Side = iota + 1
	right
	head
	base
)

// box is a ring with one side per edge: base, right, head, left.
func box(l, b, r, t length.Length, on ...plane.Side) plane.Ring {
	ring := plane.Ring{
		{Point: plane.Point{X: l, Y: b}}, {Point: plane.Point{X: r, Y: b}},
		{Point: plane.Point{X: r, Y: t}}, {Point: plane.Point{X: l, Y: t}}}
	for i := range on {
		ring[i].On = on[i]
	}
	return ring
}

// twoByTwo is a wall of two courses of two tiles, 10 by 10 in, joints 1/4 in,
// 20 1/4 in wide and high, each tile's outer edges on the wall's boundaries.
func twoByTwo() Input {
	const size, pitch = 10 * inch, 10*inch + inch/4
	const all = size + pitch
	w := plan.Wall{Found: survey.WallFound{Name: "back", Right: survey.EndFound{Meets: true, Gap: inch / 8, Beyond: -1}}}
	w.Shape.Region = plane.Region{box(0, 0, all, all, base, right, head, left)}
	w.Shape.Sides = []survey.Boundary{{Name: "factory"}, {Name: "left", Kind: "trim"}, {Name: "right", Kind: "corner", Meets: true, Gap: inch / 8},
		{Name: "head", Kind: "bullnose"}, {Name: "base", Kind: "tub", Meets: true, Gap: inch / 4}}
	for i := range 4 {
		x, y := length.Length(i%2)*pitch, length.Length(i/2)*pitch
		ring := box(x, y, x+size, y+size)
		if i%2 == 1 {
			ring[1].On = right
		}
		if i/2 == 1 {
			ring[2].On = head
		}
		w.Pieces = append(w.Pieces, piece.Piece{Tile: plane.Rect{Left: x, Bottom: y, Right: x + size, Top: y + size}, Face: plane.Region{ring}, Whole: i > 0})
	}
	return Input{
		Room:  survey.Room{Tile: survey.TileSize{Width: size, Height: size, Thickness: inch / 2, BoxCount: 3, BoxCents: 4550}, Joint: inch / 4},
		Walls: []plan.Wall{w},
		Cuts:  cuts.Offcuts{TilesCut: 1},
	}
}

func line(t *testing.T, lines []Line, item string) Line {
	t.Helper()
	for _, l := range lines {
		if l.Item == item {
			return l
		}
	}
	t.Fatalf("no line for %s in %v", item, lines)
	return Line{}
}

func TestLines(t *testing.T) {
	got := Of(twoByTwo(), Usual(length.Imperial))
	assert.Equal(t, []int{3, 1, 1}, []int{got.Whole, got.TilesCut, got.Spare})
	assert.Equal(t, Line{Item: "tile", Count: 5, Unit: "piece", Net: 4, Spare: 1, Boxes: 2, Cents: 9100,
		Because: "3 whole, 1 cut into 1 piece, and 1 spare (5 %)"}, got.Lines[0])
	assert.Equal(t, Line{Item: "trim", Count: 1, Unit: "bar of 8'-0\"", Net: 1,
		Because: `20 1/4" in 1 edge; cut from a bar each: 20 1/4"; 1/8" lost at each cut; a mitre takes more`}, line(t, got.Lines, "trim"))
	assert.Equal(t, 3, line(t, got.Lines, "bullnose").Count, "two pieces of 10 in with a joint between them, and a spare one")
	// 20 1/4² − 4 · 10² = 10.0625 in², 1/2 in deep: 82.45 ml, 130.3 g of sanded grout.
	assert.Equal(t, Line{Item: "sanded grout", Count: 1, Net: 1, Unit: "bag of 10 lb",
		Because: "0.3 lb for 0.1 sq ft of joints, 1/2\" deep, at 1.58 kg per litre; 10 % on top"}, line(t, got.Lines, "sanded grout"))
	// 20 1/4 in of 1/8 and of 1/4 in, 1/2 in deep: 3.80 in³, 62 ml.
	assert.Equal(t, 1, line(t, got.Lines, "sealant").Count)
	assert.Equal(t, "1", line(t, got.Lines, "mortar").Amount())
	assert.Equal(t, "1", line(t, got.Lines, "membrane").Amount())
	assert.Equal(t, 1, line(t, got.Lines, "spacers").Count, "four joint sides, eight spacers")
	assert.Equal(t, Line{Item: "tile by the flat 10 % rule", Count: 5, Unit: "piece", Net: 4, Spare: 1, Boxes: 2, Cents: 9100,
		Because: "2.8 sq ft of wall in tiles with their joints, and 10 % on top"}, got.Flat)
}

// A shop has boards by their sides, and two bags, not two bag.
func TestUnitsAreThoseOfAShop(t *testing.T) {
	board := line(t, Of(twoByTwo(), Usual(length.Imperial)).Lines, "backing board")
	assert.Equal(t, []string{"sheet of 3 × 5 ft", "sheet of 3 × 5 ft"}, []string{board.Unit, board.Of()})
	board.Count = 2
	assert.Equal(t, "sheets of 3 × 5 ft", board.Of())
	assert.Equal(t, "pieces", Line{Count: 5, Unit: "piece"}.Of())
	assert.Equal(t, "piece", Line{Unit: "piece", Open: true}.Of())
	assert.Equal(t, "bags of 20 kg", Line{Least: 1, Count: 2, Unit: "bag of 20 kg"}.Of())
}

func TestMetricLines(t *testing.T) {
	in := twoByTwo()
	in.Room.Units, in.Room.Joint = length.Metric, 2*length.Millimetre
	got := Of(in, Usual(length.Metric))
	assert.Equal(t, "bag of 2.5 kg", line(t, got.Lines, "unsanded grout").Unit)
	assert.Equal(t, "bucket of 5 l", line(t, got.Lines, "membrane").Unit)
	assert.Equal(t, "bag of 20 kg", line(t, got.Lines, "mortar").Unit)
	assert.Equal(t, "bar of 2500 mm", line(t, got.Lines, "trim").Unit)
	assert.Equal(t, "sheet of 800 × 1200 mm", line(t, got.Lines, "backing board").Unit, "as a shop has it, not by area")
}

func TestTheInsideOfANicheIsNamedUntilItsDepthIsGiven(t *testing.T) { // law 3
	in := twoByTwo()
	in.Walls[0].Found.Openings = []survey.OpeningFound{{Kind: "niche", Name: "shelf"}, {Kind: "window", Name: "light"}}
	in.Walls[0].Start.Placed.Openings = []survey.Edges{{Right: 12 * inch, Top: 20 * inch}, {}}
	set := Usual(length.Imperial)
	open := line(t, Of(in, set).Lines, "inside of the niche shelf")
	assert.True(t, open.Open)
	assert.Equal(t, "open", open.Amount())
	assert.True(t, line(t, Of(in, set).Lines, "inside of the window light").Open)
	set.Niche = Niche{Depth: 3 * inch, Back: true, Trim: true, Tile: survey.TileSize{Width: 4 * inch, Height: 4 * inch}}
	got := Of(in, set)
	// 3 tiles over 12 in, 5 over 20 in with joints of 1/4 in: 2·3 + 2·5, and 3·5.
	for _, l := range got.Lines {
		assert.NotEqual(t, "inside of the niche shelf", l.Item)
	}
	assert.Equal(t, 16, line(t, got.Lines, "niche returns").Net)
	assert.Equal(t, 15, line(t, got.Lines, "niche back").Net)
	assert.Equal(t, 1, line(t, got.Lines, "trim").Count, "84 1/4 in with four kerfs in one bar")
}

func TestTheCornerIsSealedOnce(t *testing.T) {
	in := twoByTwo()
	alone := Of(in, Settings{Thickness: inch})
	second := in.Walls[0]
	second.Found.Order, second.Found.Right.Beyond = 1, 0
	in.Walls[0].Found.Right.Beyond = 1
	in.Walls = append(in.Walls, second)
	both := Of(in, Settings{Thickness: inch})
	assert.Contains(t, line(t, alone.Lines, "sealant").Because, (40*inch + inch/2).Tape(length.Imperial))
	assert.Contains(t, line(t, both.Lines, "sealant").Because, (60*inch + 3*inch/4).Tape(length.Imperial))
}

func TestRunsOverTheEndOfARing(t *testing.T) {
	w := plan.Wall{}
	w.Shape.Region = plane.Region{box(0, 0, 10, 20, base, right, base, base)}
	assert.Equal(t, []length.Length{40}, runs(w, base), "head, left and base hang together")
	assert.Equal(t, []length.Length{20}, runs(w, right))
	w.Shape.Region = plane.Region{box(0, 0, 10, 20, base, right, base, right)}
	assert.Equal(t, []length.Length{10, 10}, runs(w, base))
}

func TestRoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(0, 1<<60).Draw(t, "n")
		if r := root(n); r*r > n || (r+1)*(r+1) <= n {
			t.Fatalf("root(%d) = %d", n, r)
		}
	})
}

// Every length is cut from a bar that is long enough for all its cuts. The bars are no fewer than
// by brute force, and at most 11/9 of those and one more: a known theorem of first fit, longest first (six ninths rounded up).
func TestPack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock, kerf := length.Length(100), length.Length(rapid.IntRange(0, 5).Draw(t, "kerf"))
		var lengths []length.Length
		for range rapid.IntRange(0, 7).Draw(t, "n") {
			lengths = append(lengths, length.Length(rapid.IntRange(1, 100).Draw(t, "length")))
		}
		bars := pack(lengths, stock, kerf)
		if best := fewest(lengths, nil, stock, kerf); len(bars) < best || 9*len(bars) > 11*best+6 {
			t.Fatalf("%v: %v, %d would do", lengths, bars, best)
		}
		for _, bar := range bars {
			if sum(bar)+kerf*length.Length(len(bar)-1) > stock {
				t.Fatalf("%v: %v is too much for one bar", lengths, bar)
			}
		}
		cut := slices.Concat(bars...)
		slices.Sort(cut)
		if slices.Sort(lengths); !slices.Equal(lengths, cut) {
			t.Fatalf("%v: cut are %v", lengths, cut)
		}
	})
}

// fewest tries every bar for every length.
func fewest(lengths, room []length.Length, stock, kerf length.Length) int {
	if len(lengths) == 0 {
		return len(room)
	}
	best := 1 << 30
	for i, left := range room {
		if left >= lengths[0] {
			room[i] -= lengths[0] + kerf
			best = min(best, fewest(lengths[1:], room, stock, kerf))
			room[i] = left
		}
	}
	return min(best, fewest(lengths[1:], append(room[:len(room):len(room)], stock-lengths[0]-kerf), stock, kerf))
}

func TestNothingToBuy(t *testing.T) {
	assert.Empty(t, Of(Input{}, Usual(length.Imperial)).Lines)
	assert.NotPanics(t, func() { Of(Input{}, Settings{}) })
}

func TestCSV(t *testing.T) {
	var b strings.Builder
	require.NoError(t, Of(twoByTwo(), Usual(length.Imperial)).CSV(&b))
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(b.String(), "\ufeff"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, columns, rows[0])
	assert.Equal(t, []string{"tile", "5", "piece", "4", "1", "2", "91.00", "3 whole, 1 cut into 1 piece, and 1 spare (5 %)"}, rows[1])
	assert.Equal(t, "tile by the flat 10 % rule", rows[len(rows)-1][0])
	assert.Equal(t, "3 to 4", Line{Least: 3, Count: 4}.Amount())
}

// A published bug of ours: 1.33 kg became 2 kg, and with 10 % of that 3 kg.
func TestTheAllowanceIsAddedBeforeRounding(t *testing.T) { // laws 1 and 2
	rapid.Check(t, func(t *rapid.T) {
		need, pack := rapid.Int64Range(0, 1e9).Draw(t, "need"), rapid.Int64Range(1, 1e6).Draw(t, "pack")
		percent := rapid.IntRange(0, 100).Draw(t, "percent")
		n := int64(packed("", "", need, pack, percent, "").Count)
		with := need * int64(100+percent)
		if n*pack*100 < with || n > 0 && (n-1)*pack*100 >= with {
			t.Fatalf("%d packs of %d for %d and %d %%", n, pack, need, percent)
		}
	})
	assert.Equal(t, 1, packed("grout", "bag", int64(1330), 1500, 10, "").Count, "1.46 kg in a bag of 1.5")
}

func TestSpareGoesByTheTilesSize(t *testing.T) {
	set := Usual(length.Imperial)
	assert.Equal(t, 5, set.of(survey.TileSize{Width: 6 * inch, Height: 15*inch - 1}, survey.BondRule{}).Breakage)
	assert.Equal(t, 10, set.of(survey.TileSize{Width: 6 * inch, Height: 15 * inch}, survey.BondRule{}).Breakage)
	set.Breakage = 0
	assert.Zero(t, set.of(survey.TileSize{Width: 30 * inch}, survey.BondRule{}).Breakage, "chosen by a person")
}

func TestBothFiguresAreSaidWhenTheRangeDecides(t *testing.T) {
	in := twoByTwo()
	in.Walls[0].Shape.Region = plane.Region{box(0, 0, 60*inch, 216*inch, base, right, head, left)} // 90 sq ft
	set := Usual(length.Imperial)
	set.Notch = Quarter // 50 lb cover 80 to 100 sq ft
	assert.Equal(t, "1 to 2", line(t, Of(in, set).Lines, "mortar").Amount())
}

func TestTheTileLineSaysWhatPairingSavesAndWhatTheBoxesLeave(t *testing.T) {
	in := twoByTwo()
	in.Cuts = cuts.Offcuts{TilesCut: 1, TilesSaved: 4, Nearly: 12}
	set := Usual(length.Imperial)
	because := Of(in, set).Lines[0].Because
	assert.Contains(t, because, "cutting two from one tile saves 4")
	assert.Contains(t, because, `1/16" less at the cuts would save 12 more`)
	set.Breakage, in.Room.Tile.BoxCount = 0, 4
	assert.Contains(t, Of(in, set).Lines[0].Because, "the boxes leave only 0 to spare: take one more")
	in.Room.Tile.BoxCount = 6
	assert.NotContains(t, Of(in, set).Lines[0].Because, "leave only")
}

func TestTheTileLineSaysWhenOneBoxFewerWouldNearlyDo(t *testing.T) {
	in, set := twoByTwo(), Usual(length.Imperial)
	in.Cuts = cuts.Offcuts{TilesCut: 96}
	set.Breakage = 10
	for count, want := range map[int]string{ // 99 tiles and 10 to spare
		50: "", 51: "", 52: "one box fewer leaves 5 to spare", 54: "one box fewer leaves 9 to spare", 108: "one box fewer leaves 9 to spare", 109: "",
	} {
		in.Room.Tile.BoxCount = count
		line := Of(in, set).Lines[0]
		if want == "" {
			assert.NotContains(t, line.Because, "one box fewer", count)
			continue
		}
		assert.Contains(t, line.Because, want, count)
	}
}

func TestPricesKeepTheirMoney(t *testing.T) {
	dollars, euros := survey.Money{Sign: "$"}, survey.Money{Sign: "€", Behind: true}
	for want, lines := range map[string][]Line{
		"":       {{}},
		"$4.00":  {{Cents: 150, Money: dollars}, {}, {Cents: 250, Money: dollars}},
		"4.00 €": {{Cents: 400, Money: euros}},
		"6.50":   {{Cents: 150, Money: dollars}, {Cents: 250, Money: euros}, {Cents: 250, Money: dollars}},
		"3.00":   {{Cents: 150}, {Cents: 150, Money: dollars}},
	} {
		total, _ := Total(lines)
		assert.Equal(t, want, total.Cost())
	}
	assert.Equal(t, "1.50", Line{Cents: 150, Money: dollars}.Price(), "a spreadsheet gets a number")
}

// A published rule, as facts.md has it: a leg of 84 in in pieces of 6 in with
// joints of 1/8 takes 14. Geometry.
func TestBullnoseIsBoughtByThePiece(t *testing.T) {
	assert.Equal(t, 14, along(84*inch, 6*inch, inch/8))
	in := twoByTwo()
	in.Walls[0].Shape.Sides[left].Kind = "bullnose"
	set := Usual(length.Imperial)
	assert.Equal(t, 4, line(t, Of(in, set).Lines, "bullnose").Net, "two edges of 20 1/4 in")
	assert.Equal(t, 1, line(t, Of(in, set).Lines, "bullnose corner").Count, "head and left end")
}

// The flat rule buys too few only where what is laid is more than that: the spare of a pattern is often more than its tenth.
func TestTheFlatRuleIsComparedByItsSpare(t *testing.T) {
	for want, c := range map[string]Takeoff{
		"The flat 10 % rule would buy 499 tiles: the 492 that the plan takes and 7 spare, not 74.":          {Net: 492, Spare: 74, Flat: Line{Count: 499}},
		"The flat 10 % rule would buy 30 tiles, 2 fewer than the 32 that the plan takes without any spare.": {Net: 32, Spare: 4, Flat: Line{Count: 30}},
		"The flat 10 % rule would buy 52 sheets, as many as are counted here.":                              {Net: 49, Spare: 3, Flat: Line{Count: 52, Unit: "sheet"}},
		"The flat 10 % rule would buy 1 tile: the 1 that the plan takes and 0 spare, not 1.":                {Net: 1, Spare: 1, Flat: Line{Count: 1}},
	} {
		assert.Equal(t, want, c.Compared())
	}
}

func TestWhatATotalLeavesOut(t *testing.T) {
	of := func(items ...string) (lines []Line) {
		for _, item := range items {
			lines = append(lines, Line{Item: item})
		}
		return append(lines, Line{Item: "tile", Cents: 4200})
	}
	for want, items := range map[string][]string{
		"":                              nil,
		"trim":                          {"trim", "trim"},
		"trim and grout":                {"trim", "grout"},
		"liner, trim, board and grout":  {"liner", "trim", "board", "grout"},
		"liner, trim, board and 2 more": {"liner", "trim", "board", "membrane", "grout"},
	} {
		assert.Equal(t, want, Unpriced(of(items...)))
	}
}

// The room's own sheets count among the tiles to buy.
func TestTilesToBuyHoldTheSheetsOfTheRoom(t *testing.T) {
	assert.Equal(t, "56 sheets", Tiles([]Line{{Item: sheeted, Unit: "sheet", Count: 52}, {Item: "shell", Unit: "sheet", Count: 4, Other: true}, {Item: "membrane", Count: 1}}))
}
