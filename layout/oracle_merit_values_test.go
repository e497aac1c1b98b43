package layout_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Check values of merit.md: common practice, no source, unless one is named.
// Each room is solved as it stands, and its set-out read back by the oracle.

const inch = 24384.0

// free is a sketch without pins, so that everything is left to the solver.
func (s sketch) free(t *testing.T) *judge {
	job := pinning{}.on(t, s.job())
	return judged(t, job, planned(t, job))
}

// solvedCase solves a file of testdata/cases.
func solvedCase(t *testing.T, name string) *judge {
	job, err := os.ReadFile("../testdata/cases/" + name + ".json")
	require.NoError(t, err)
	return judged(t, job, freePlan(t, name+".json", job))
}

// least is the smallest piece that one end (or base, or head) alone cuts, in
// any class; the full tile where none is cut.
func (j *judge) least(w int, edge string) float64 {
	way, size := wayAcross, j.width
	if edge == "head" || edge[:4] == "base" {
		way, size = wayUp, j.height
	}
	for class := range j.classes(&j.walls[w]) {
		if r := j.walls[w].find([]string{edge}, way, class); r != nil {
			size = min(size, r.least)
		}
	}
	return size
}

// centred tells what stands on the middle of a wall's tile field: a joint, a tile or neither.
func (j *judge) centred(w int) string {
	offsets, pitch := j.offsets(&j.walls[w], wayAcross)
	for _, first := range offsets {
		switch off := modulo(j.walls[w].middle()-first+1, pitch); {
		case off >= j.width/2 && off <= j.width/2+2:
			return "tile"
		case off >= j.width+j.joint/2 && off <= j.width+j.joint/2+2:
			return "joint"
		}
	}
	return "neither"
}

// wantSize holds a size in inches to a 1/32.
func wantSize(t *testing.T, want, got float64, what string) {
	assert.InDelta(t, want, got/inch, 1.0/32, what)
}

const stackBond = `{"kind": "stack"}`

func TestTubOutOfLevel(t *testing.T) {
	tub := sketch{bond: stackBond, base: `[{"meets": "tub", "readings": [{"at": "0", "drop": "38"}, {"at": "62", "drop": "38 3/8"}]}]`,
		head: `{"stops": {"from": "30", "to": "36"}}`}
	j := tub.free(t)
	require.GreaterOrEqual(t, j.least(0, "base 0")/inch, 3-3.0/8, "a full course at the low point, at most 3/8 off at the high one")
	tub.left = `{"stops": {"at": "0"}}`
	tub.base = `[{"meets": "floor", "readings": [{"at": "0", "drop": "53 1/2"}, {"at": "4", "drop": "53 1/2"}]}, {"meets": "tub", "readings": [{"at": "4", "drop": "38"}, {"at": "62", "drop": "38 3/8"}]}]`
	j = tub.free(t)
	require.GreaterOrEqual(t, j.least(0, "base 1")/inch, 3-3.0/8, "a leg's foot does not move that")
}

func TestTileToACeiling(t *testing.T) {
	ceiling := func(rise string) *judge {
		return sketch{bond: stackBond, head: `{"meets": "ceiling", "gap": "1/8", "readings": [{"at": "0", "rise": "` + rise + `"}]}`}.free(t)
	}
	// 30 − 1/8 + rise − 1/8 = 16 pitches and a rest of 2 in, then one of 1 in.
	j := ceiling("22 1/4")
	wantSize(t, 3, j.least(0, "base 0"), "over half: the rest stays at the ceiling, and the tub keeps full tiles")
	wantSize(t, 2, j.least(0, "head"), "over half: the rest stays at the ceiling")
	j = ceiling("21 1/4")
	require.GreaterOrEqual(t, j.least(0, "base 0")/inch, 1.5, "under half: shared between top and bottom")
	require.GreaterOrEqual(t, j.least(0, "head")/inch, 1.5, "under half: shared between top and bottom")
}

func TestBetweenTwoCorners(t *testing.T) {
	for width, want := range map[string]float64{"62": 1 + 23.0/32, "60": 2.25} {
		j := sketch{width: width}.free(t)
		wantSize(t, want, j.least(0, "left"), "left of "+width)
		wantSize(t, want, j.least(0, "right"), "right of "+width)
	}
	j := sketch{bond: stackBond}.free(t)
	require.Equal(t, j.least(0, "left"), j.least(0, "right"), "equal cuts at both ends")
}

func TestEndWall(t *testing.T) {
	for _, bond := range []string{stackBond, `{"kind": "running", "offset": "1/2"}`} {
		j := sketch{width: "36", bond: bond, left: `{"stops": {"at": "0"}}`}.free(t)
		m := j.terms()
		require.Zero(t, m.exposed, "full (and half) tiles at the exposed edge")
		if bond == stackBond {
			require.Equal(t, j.width, j.least(0, "left"))
			// 36 − 1/8 = 5 pitches and 5 1/4 in.
			wantSize(t, 5.25, j.least(0, "right"), "the cut in the corner")
		}
	}
}

func TestKnownRooms(t *testing.T) {
	t.Run("c2-4x16-fixed", func(t *testing.T) {
		j := solvedCase(t, "c2-4x16-fixed")
		require.Equal(t, "joint", j.centred(1))
		wantSize(t, 13.375, j.least(1, "left"), "left of back")
		wantSize(t, 13.375, j.least(1, "right"), "right of back")
		wantSize(t, 9, j.least(1, "niche shelf left"), "beside the niche")
		wantSize(t, 9, j.least(1, "niche shelf right"), "beside the niche")
	})
	t.Run("c-4x16-free", func(t *testing.T) {
		j := solvedCase(t, "c-4x16-free")
		m := j.terms()
		require.Empty(t, m.rim.below(), "full course on the tub")
		require.Equal(t, "joint", j.centred(1))
		require.Zero(t, m.exposed, "full tiles at the outer ends")
		wantSize(t, 3.25, j.least(0, "right"), "corner of left")
		wantSize(t, 3.25, j.least(2, "left"), "corner of right")
	})
	t.Run("g-300x600", func(t *testing.T) {
		j := solvedCase(t, "g-300x600")
		for _, w := range []int{0, 2} {
			for _, end := range []string{"left", "right"} {
				require.GreaterOrEqual(t, j.least(w, end), j.width/2, "%s of %s", end, j.walls[w].found.Name)
			}
		}
		m := j.terms()
		// The holes of the pipes decide the starts of the left wall before its likeness to the right one does.
		require.LessOrEqual(t, m.facing, 3*perMM, "end walls alike in their corners")
		require.Zero(t, m.mirror, "both ends of the back wall alike")
		off := modulo(j.walls[1].middle()-j.walls[1].edge, j.width+j.joint) - j.width/2
		require.InDelta(t, 0, off/perMM, 10, "a tile on the middle of the back wall, but for its lean")
	})
	t.Run("d-4x4-wainscot", func(t *testing.T) {
		j := solvedCase(t, "d-4x4-wainscot")
		for _, r := range j.terms().rim {
			require.False(t, r.under(2), "tub row of %v", r.number())
		}
	})
	t.Run("leg-rules-the-room", func(t *testing.T) {
		j := solvedCase(t, "leg-rules-the-room")
		for _, w := range []int{0, 2} {
			for _, end := range []string{"left", "right"} {
				require.GreaterOrEqual(t, j.least(w, end)/inch, 2.5, "%s of %s", end, j.walls[w].found.Name)
			}
		}
	})
}
