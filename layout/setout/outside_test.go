package setout

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
)

// The smallest cut found is the one that a general solver for linear programs
// with whole numbers (GLPK's glpsol) finds in rooms with plumb ends and level
// bases and ceilings, which are written out for it as equations that share no
// code with this package. Where even that is a sliver, a sliver is found too.
func TestTheSmallestCutIsThatOfALinearProgram(t *testing.T) {
	glpsol := needGlpsol(t)
	slivers := 0
	for seed := range uint64(30) {
		room := plainRoom(rand.New(rand.NewPCG(seed, 7)))
		found := newSolver(&room, survey.Left).best(nil, mostWork)
		least := solveProgram(t, glpsol, program(room))
		require.Zero(t, found.merit.Bare, "seed %d", seed)
		if found.merit.Slivers > 0 {
			slivers++
			limit := min(piece.SliverLimit(room, room.Tile.Width)*1000/room.Tile.Width, piece.SliverLimit(room, room.Tile.Height)*1000/room.Tile.Height)
			require.Less(t, least, float64(limit)/1000, "seed %d", seed)
			continue
		}
		got, _ := new(big.Rat).SetFrac64(found.merit.Smallest.Num, found.merit.Smallest.Den).Float64()
		require.InDelta(t, least, got, 1e-6, "seed %d", seed)
	}
	require.Less(t, slivers, 8, "too few rooms without slivers to say anything")
}

func needGlpsol(t testing.TB) string {
	path, err := exec.LookPath("glpsol")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("glpsol is missing")
		}
		t.Skip("glpsol is missing: the outside check of the search did not run")
	}
	return path
}

// plainRoom is three walls between plumb corners, over level bases and under a
// level ceiling. All is in whole millimetres, and the joint in two, so that the
// classic starts are marks of the tape as well.
func plainRoom(r *rand.Rand) survey.Room {
	mm := func(low, high int) length.Length { return length.Length(low+r.IntN(high-low)) * length.Millimetre }
	room := survey.Room{Units: length.Metric, Tape: length.Millimetre, Joint: 2 * length.Millimetre, Bed: 3 * length.Millimetre, Sealant: 6 * length.Millimetre,
		Tile: survey.TileSize{Width: mm(150, 300), Height: mm(60, 150), Thickness: 8 * length.Millimetre},
		Bond: survey.BondRule{Num: 1, Den: 2, Hand: survey.Left}}
	base, head := mm(0, 100), mm(1900, 2400)
	for i := range 3 {
		w := survey.WallFound{Name: fmt.Sprint(i), Width: 2 * mm(350, 850)}
		w.Left = survey.EndFound{Meets: true, Gap: 3 * length.Millimetre}
		w.Right = w.Left
		level := func(y length.Length) []survey.Reading {
			return []survey.Reading{{At: 0, Value: y}, {At: w.Width, Value: y}}
		}
		w.Base = []survey.SegmentFound{{Meets: "tub", Gap: 3 * length.Millimetre, Readings: level(base + mm(0, 8))}}
		w.Head = survey.HeadFound{Meets: true, Gap: 3 * length.Millimetre, Readings: level(head + mm(0, 8))}
		room.Walls = append(room.Walls, w)
	}
	return room
}

// program states the room as a linear program in millimetres: the greatest
// share of a tile that every cut piece may keep. Each boundary is a distance
// from a tile's far edge to it, known up to whole pitches; the tile is either
// whole, with what lies beyond it left to sealant, or cut.
func program(room survey.Room) string {
	var rows, free, whole, binary []string
	in := func(x length.Length) float64 { return float64(x) / float64(length.Millimetre) }
	n := 0
	// boundary: sign·phase + pitch·k + reach = size of the tile's remainder.
	boundary := func(phase string, sign, reach, tile, pitch, seal float64) {
		n++
		size := fmt.Sprintf("s%d", n)
		rows = append(rows,
			fmt.Sprintf("e%d: %s %+g %s %+g k%d = %g", n, size, -sign, phase, -pitch, n, reach),
			fmt.Sprintf("a%d: %s %+g w%d >= 0", n, size, -tile, n),                 // whole: nothing missing,
			fmt.Sprintf("b%d: %s %+g w%d <= %g", n, size, -seal, n, tile),          // and no more beyond than sealant fills
			fmt.Sprintf("c%d: %s %+g w%d %+g least >= 0", n, size, tile, n, -tile)) // cut: at least the share
		free = append(free, fmt.Sprintf("-60 <= k%d <= 60", n))
		whole = append(whole, fmt.Sprintf("k%d", n))
		binary = append(binary, fmt.Sprintf("w%d", n))
	}
	t, j := room.Tile, room.Joint
	for i, w := range room.Walls {
		gap := in(w.Left.Gap)
		seal := in(room.Sealant) - gap
		top, bottom := in(w.Head.Readings[0].Value)-gap, in(w.Base[0].Readings[0].Value)+gap
		boundary("line", 1, in(t.Height)-bottom, in(t.Height), in(t.Height+j), seal)
		boundary("line", -1, top, in(t.Height), in(t.Height+j), seal)
		start := fmt.Sprintf("start%d", i)
		for _, shift := range []float64{0, in(t.Width+j) / 2} {
			boundary(start, 1, in(t.Width)+shift-gap, in(t.Width), in(t.Width+j), seal)
			boundary(start, -1, in(w.Width)-gap-shift, in(t.Width), in(t.Width+j), seal)
		}
		whole = append(whole, fmt.Sprintf("m%d", i))
		free = append(free, fmt.Sprintf("0 <= %s <= %g", start, in(t.Width+j)))
		// A start is marked by a joint's middle or a tile's, a whole number of
		// millimetres from the wall's middle or from its left end.
		rows = append(rows, fmt.Sprintf("d%d: %s -1 m%d %+g j%d %+g i%d = 0", i, start, i, -in(j.Half()), i, in(t.Width.Half()), i), fmt.Sprintf("o%d: j%d + i%d = 1", i, i, i))
		binary = append(binary, fmt.Sprintf("j%d", i), fmt.Sprintf("i%d", i))
		free = append(free, fmt.Sprintf("-1000 <= m%d <= 1000", i))
	}
	whole, free = append(whole, "line"), append(free, fmt.Sprintf("0 <= line <= %g", in(t.Height+j)))
	return "Maximize\n least\nSubject To\n " + strings.Join(rows, "\n ") + "\nBounds\n least <= 0.5\n " +
		strings.Join(free, "\n ") + "\nGenerals\n " + strings.Join(whole, "\n ") + "\nBinaries\n " + strings.Join(binary, "\n ") + "\nEnd\n"
}

var objective = regexp.MustCompile(`(?m)^Objective:\s+\S+ = (\S+)`)

// solveProgram has glpsol find the greatest objective.
func solveProgram(t testing.TB, glpsol, text string) float64 {
	t.Helper()
	file, out := filepath.Join(t.TempDir(), "room.lp"), filepath.Join(t.TempDir(), "answer")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	log, err := exec.Command(glpsol, "--lp", file, "-o", out).CombinedOutput()
	require.NoError(t, err, "%s", log)
	answer, err := os.ReadFile(out)
	require.NoError(t, err)
	require.Contains(t, string(answer), "INTEGER OPTIMAL", "%s", log)
	m := objective.FindSubmatch(answer)
	require.NotNil(t, m, "%s", answer)
	var least float64
	_, err = fmt.Sscan(string(m[1]), &least)
	require.NoError(t, err)
	return least
}

// BenchmarkOutside asks both for the same rooms. Each answers more than is
// compared: glpsol proves the smallest cut alone, the search all seven terms.
func BenchmarkOutside(b *testing.B) {
	glpsol := needGlpsol(b)
	var rooms []survey.Room
	for seed := range uint64(6) {
		rooms = append(rooms, plainRoom(rand.New(rand.NewPCG(seed, 7))))
	}
	b.Run("search", func(b *testing.B) {
		for b.Loop() {
			for i := range rooms {
				newSolver(&rooms[i], survey.Left).best(nil, mostWork)
			}
		}
	})
	b.Run("glpsol", func(b *testing.B) {
		for b.Loop() {
			for _, r := range rooms {
				solveProgram(b, glpsol, program(r))
			}
		}
	})
}
