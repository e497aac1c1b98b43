package cuts

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

func paired(grain bool, set Settings, pieces ...piece.Piece) Offcuts {
	room := survey.Room{Tile: survey.TileSize{Grain: grain}}
	return Of(Input{Room: room, Walls: []plan.Wall{wall("back", 0, pieces...)}}, set).Offcuts
}

// rightEnd is a piece cut straight at the right.
func rightEnd(id string, wide length.Length) piece.Piece {
	return cut(id, piece.Cross, []plane.Side{2}, plane.Ring{
		corner(0, 0, 0), {Point: plane.Point{X: wide}, On: 2}, {Point: plane.Point{X: wide, Y: 4 * inch}}, corner(0, 4, 0)})
}

// quarter is a piece cut at the left and at the base.
func quarter(id string, wide, high length.Length) piece.Piece {
	x, y := 8*inch-wide, 4*inch-high
	return cut(id, piece.Cross|piece.Rip, []plane.Side{1, 4}, plane.Ring{
		{Point: plane.Point{X: x, Y: y}, On: 4}, {Point: plane.Point{X: 8 * inch, Y: y}}, corner(8, 4, 0), {Point: plane.Point{X: x, Y: 4 * inch}, On: 1}})
}

func TestPairs(t *testing.T) {
	saw := Usual(length.Imperial)
	still := saw
	still.Turn = false
	snap := saw
	snap.Kerf = 0
	cases := []struct {
		name   string
		grain  bool
		set    Settings
		pieces []piece.Piece
		saved  int
	}{
		{"two halves and the saw's kerf are one too many", false, saw, []piece.Piece{end("a", 4*inch), rightEnd("b", 4*inch)}, 0},
		{"two halves of a snapped tile", false, snap, []piece.Piece{end("a", 4*inch), rightEnd("b", 4*inch)}, 1},
		{"a left and a right end without turning", false, still, []piece.Piece{end("a", 4*inch), rightEnd("b", 3*inch)}, 1},
		{"two left ends: both need the right edge", false, still, []piece.Piece{end("a", 4*inch), end("b", 3*inch)}, 0},
		{"two left ends, one turned", false, saw, []piece.Piece{end("a", 4*inch), end("b", 3*inch)}, 1},
		{"grain forbids turning", true, saw, []piece.Piece{end("a", 4*inch), end("b", 3*inch)}, 0},
		{"a strip under the least size", false, saw, []piece.Piece{end("a", 4*inch), rightEnd("b", inch-1)}, 0},
		{"a two-way cut from the off-cut of a straight one", false, saw, []piece.Piece{end("a", 4*inch), quarter("b", 3*inch, 2*inch)}, 1},
		{"two-way cuts over each other", false, snap, []piece.Piece{quarter("a", 6*inch, 2*inch), quarter("b", 7*inch, 2*inch)}, 1},
		{"two-way cuts that fit neither way", false, saw, []piece.Piece{quarter("a", 6*inch, 2*inch), quarter("b", 7*inch, 2*inch)}, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			off := paired(c.grain, c.set, c.pieces...)
			assert.Equal(t, c.saved, off.TilesSaved)
			assert.Equal(t, len(c.pieces)-c.saved, off.TilesCut)
			assert.Len(t, off.Pairs, c.saved)
		})
	}
	assert.Equal(t, [][2]string{{"b", "a"}}, paired(false, saw, end("a", 2*inch), rightEnd("b", 5*inch)).Pairs, "the larger is cut first")
}

func TestSquareTilesMayMakeAQuarterTurn(t *testing.T) {
	square := func(id string, wide, high length.Length, keeps [4]bool) *blank {
		return &blank{id: id, wide: wide, high: high, tile: tile{6 * inch, 6 * inch}, keeps: keeps, turn: true}
	}
	lying := square("a", 6*inch, 3*inch, [4]bool{true, true, true, false})
	upright := square("b", 2*inch, 6*inch, [4]bool{true, true, false, true})
	set := Usual(length.Imperial)
	assert.True(t, set.pairs(lying, upright))
	lying.turn, upright.turn = false, false
	assert.False(t, set.pairs(lying, upright))
}

func TestTheBoundHolds(t *testing.T) {
	off := paired(false, Usual(length.Imperial), end("a", 7*inch), end("b", 7*inch), end("c", 7*inch), end("d", inch))
	assert.Equal(t, 3, off.LowerBound, "22 of 24 in of tile")
	assert.Equal(t, 4, off.TilesCut, "no strip of 1 in is left beside 7 in and a kerf")
	assert.Zero(t, paired(false, Usual(length.Imperial)))
}

// most tries every way of pairing.
func most(n int, fits func(i, j int) bool, used int) int {
	i := 0
	for ; i < n && used&(1<<i) != 0; i++ {
	}
	if i == n {
		return 0
	}
	best := most(n, fits, used|1<<i)
	for j := i + 1; j < n; j++ {
		if used&(1<<j) == 0 && fits(i, j) {
			best = max(best, 1+most(n, fits, used|1<<i|1<<j))
		}
	}
	return best
}

// Any graph, so that odd circuits come up: no pairing beats match.
func TestMatchAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 10).Draw(t, "n")
		edge := map[[2]int]bool{}
		for i := range n {
			for j := range i {
				edge[[2]int{i, j}] = rapid.IntRange(0, 3).Draw(t, "edge") == 0
			}
		}
		fits := func(i, j int) bool { return edge[[2]int{max(i, j), min(i, j)}] }
		mate := match(n, fits)
		pairs := 0
		for i, j := range mate {
			if j >= 0 && (mate[j] != i || !fits(i, j)) {
				t.Fatalf("%d and %d are no pair", i, j)
			}
			if j > i {
				pairs++
			}
		}
		if best := most(n, fits, 0); pairs != best {
			t.Fatalf("%d pairs, %d are possible: %v", pairs, best, edge)
		}
	})
}

// straight is a one-way cut as the oracles see it.
type straight struct {
	wide length.Length
	hand int // 0 cut at the left, 1 at the right
}

func (s straight) piece(i int) piece.Piece {
	if s.hand == 0 {
		return end(strconv.Itoa(i), s.wide)
	}
	return rightEnd(strconv.Itoa(i), s.wide)
}

// together is the rule for straight cuts, written apart from the package.
func together(a, b straight, turn bool) bool {
	return 8*(a.wide+b.wide)+inch <= 64*inch && (turn || a.hand != b.hand) && a.wide >= inch && b.wide >= inch
}

func cutList(r *rand.Rand, n int) (list []straight, pieces []piece.Piece) {
	for i := range n {
		s := straight{length.Length(r.Int64N(int64(8*inch))) + 1, r.IntN(2)}
		list, pieces = append(list, s), append(pieces, s.piece(i))
	}
	return list, pieces
}

func TestStraightCutsAgainstBruteForce(t *testing.T) {
	for seed := range uint64(200) {
		list, pieces := cutList(rand.New(rand.NewPCG(seed, 1)), int(seed%10))
		set := Usual(length.Imperial)
		set.Turn = seed%2 == 0
		fits := func(i, j int) bool { return together(list[i], list[j], set.Turn) }
		off := paired(false, set, pieces...)
		require.Equal(t, most(len(list), fits, 0), off.TilesSaved, "seed %d", seed)
		require.GreaterOrEqual(t, off.TilesCut, off.LowerBound, "seed %d", seed)
	}
}

// The optimum of an integer programme in an outside solver is the same.
func TestStraightCutsAgainstMIP(t *testing.T) {
	solver := glpsol(t)
	for seed := range uint64(6) {
		list, pieces := cutList(rand.New(rand.NewPCG(seed, 2)), 40)
		set := Usual(length.Imperial)
		set.Turn = seed%2 == 0
		best := milp(t, solver, len(list), func(i, j int) bool { return together(list[i], list[j], set.Turn) })
		assert.Equal(t, best, paired(false, set, pieces...).TilesSaved, "seed %d", seed)
	}
}

// glpsol finds the MIP solver.
func glpsol(t *testing.T) string {
	solver, err := exec.LookPath("glpsol")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("glpsol is missing")
		}
		t.Skip("glpsol is missing: the outside check of the pairs did not run")
	}
	return solver
}

// milp asks for the most pairs such that each piece is in one at most.
func milp(t *testing.T, solver string, n int, fits func(i, j int) bool) int {
	var names []string
	rows := make([][]string, n)
	for i := range n {
		for j := range i {
			if fits(i, j) {
				name := fmt.Sprintf("x%d_%d", i, j)
				names = append(names, name)
				rows[i], rows[j] = append(rows[i], name), append(rows[j], name)
			}
		}
	}
	require.NotEmpty(t, names)
	model := "maximize\n pairs: " + strings.Join(names, " +\n ") + "\nsubject to\n"
	for i, row := range rows {
		if len(row) > 0 {
			model += fmt.Sprintf(" once%d: %s <= 1\n", i, strings.Join(row, " +\n "))
		}
	}
	model += "binary\n " + strings.Join(names, "\n ") + "\nend\n"
	dir := t.TempDir()
	in, out := filepath.Join(dir, "pairs.lp"), filepath.Join(dir, "pairs.txt")
	require.NoError(t, os.WriteFile(in, []byte(model), 0o600))
	text, err := exec.Command(solver, "--lp", in, "-o", out).CombinedOutput()
	require.NoError(t, err, string(text))
	report, err := os.ReadFile(out)
	require.NoError(t, err)
	require.Contains(t, string(report), "INTEGER OPTIMAL")
	found := regexp.MustCompile(`pairs = (\d+)`).FindSubmatch(report)
	require.NotNil(t, found, string(report))
	best, err := strconv.Atoi(string(found[1]))
	require.NoError(t, err)
	return best
}

func BenchmarkPairs(b *testing.B) {
	for _, n := range []int{100, 1000} {
		b.Run(strconv.Itoa(n), func(b *testing.B) {
			_, pieces := cutList(rand.New(rand.NewPCG(1, 3)), n)
			for b.Loop() {
				paired(true, Usual(length.Imperial), pieces...)
			}
		})
	}
}
