package count

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// By hand: tile of 300 by 100 and joints of 2 from the lower left corner of a wall of 1000 by
// 600. Three tiles and joints take 906, and every course ends in a piece of 94; five courses and
// joints take 510, and the sixth is cut to 90. The corner piece is in both runs.
func TestWhatAWallAddsUpTo(t *testing.T) {
	w := drawWall("1000x600 300x100+2")
	tallied := w.cutter.all(Setting{Placed: w.Outer()})
	m, runs := tallied.merit()
	require.Len(t, runs, 2)
	for _, r := range runs {
		if r.Across() {
			require.Equal(t, []piece.Edge{piece.EdgeOf(survey.SideRight, piece.OnRight)}, r.Edges)
			require.Equal(t, 94*mm, r.Least)
			continue
		}
		require.Equal(t, []piece.Edge{piece.EdgeOf(survey.SideHead, piece.Over)}, r.Edges)
		require.Equal(t, 90*mm, r.Least)
	}
	require.Equal(t, []piece.Share{{Num: int64(94 * mm), Den: int64(300 * mm)}}, m.Sight.Runs, "nine tenths of a tile is no small run")
	require.Equal(t, 1, m.Thirds)
	require.Zero(t, m.Fifths)
	require.Zero(t, m.Bare)
	require.Zero(t, m.Slivers+m.Unworkable)
	// Six cuts across the tile at the right, one each, and four along it under the head, two each.
	require.Equal(t, 14, tallied.work)
	require.Equal(t, 14, w.cutter.all(Setting{Edge: -206 * mm, Placed: w.Outer()}).work, "as much with the cuts at the left")
	require.Equal(t, 20, w.cutter.all(Setting{Edge: -150 * mm, Placed: w.Outer()}).work, "six more with cuts at both")
}

// What is copied goes its own way.
func TestACopiedTallyGoesItsOwnWay(t *testing.T) {
	w := drawWall("1000x600 300x100+2")
	whole := w.cutter.all(Setting{Placed: w.Outer()})
	before := whole.runs()
	other := whole.copy()
	other.run(before[0].Edges, before[0].Class, 1*mm)
	other.sights[0].Slivers += 3
	require.Equal(t, before, whole.runs())
	require.Zero(t, whole.sights[0].Slivers)
	require.Equal(t, 1*mm, other.runs()[0].Least)
}

// A run keeps the least of what is noted in it, whatever the order.
func TestARunKeepsTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tallied := drawWall("1000x600 300x100+2").cutter.tally()
		sizes := rapid.SliceOfN(rapid.Int64Range(0, 1000), 1, 20).Draw(t, "sizes")
		edges := []piece.Edge{piece.EdgeOf(survey.SideHead, piece.Over)}
		least := sizes[0]
		for _, size := range sizes {
			tallied.run(edges, 0, length.Length(size))
			least = min(least, size)
		}
		tallied.run(nil, 0, 0) // what no edge cuts is in no run
		require.Len(t, tallied.runs(), 1)
		require.Equal(t, length.Length(least), tallied.runs()[0].Least)
	})
}

// What one row gives, noted and added again, is what it gave: with runs, sizes and work.
func TestWhatARowGivesIsAddedAsItWas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		f := w.cutter.fit(s.Placed)
		for _, row := range w.facts.rows(s, f.box) {
			once, noted := w.cutter.tally(), f.row(row)
			once.count(noted)
			var again rowCount
			once.into(&again)
			require.Equal(t, noted.sights, again.sights)
			require.Equal(t, noted.work, again.work)
			require.ElementsMatch(t, noted.runs, again.runs)
			require.Same(t, noted, f.row(row), "a row is cut once")
		}
	})
}

// Rows that follow one another by a period, between the same plumb ends, are cut once for all:
// they have one key. A row that an opening takes something from has its own.
func TestRowsThatAreCutAlikeHaveOneKey(t *testing.T) {
	w := drawWall("1000x620 300x100+2 1/2 niche=300..400,100,250..300,80")
	p := placedAt(w, 350, 260, 450, 340)
	f := w.cutter.fit(p)
	keys := map[rowKey][]int{}
	for _, row := range w.facts.rows(Setting{Placed: p}, f.box) {
		key := f.key(row, f.taken(row))
		keys[key] = append(keys[key], row.Course)
	}
	var alike, taken int
	for key, courses := range keys {
		if key.taken != "" {
			taken++
			require.Len(t, courses, 1)
			continue
		}
		alike = max(alike, len(courses))
		for _, c := range courses {
			require.Equal(t, key.class, w.facts.class(c))
		}
	}
	require.Equal(t, 2, taken, "the niche from 260 to 340 is in the courses from 204 and from 306")
	require.GreaterOrEqual(t, alike, 2)
}

// What an opening makes of the whole tiles round it is cut once for every way it lies among
// them: moved by a pitch it is the same.
func TestAPatchIsCutOnceForEveryWayItLies(t *testing.T) {
	w := drawWall("3000x1600 300x100+2 niche=500..1500,250,300..900,150")
	at := func(x, y length.Length) *rowCount {
		box := w.facts.placed(0, placedAt(w, x, y, x+250, y+150))
		for _, row := range w.facts.rows(Setting{}, w.facts.frame.rect(box)) {
			if row.Low < box.Top && row.High > box.Bottom {
				return w.cutter.patch(0, box, row)
			}
		}
		return nil
	}
	require.Same(t, at(620, 330), at(620+302, 330))
	require.Same(t, at(620, 330), at(620, 330+102))
	require.NotSame(t, at(620, 330), at(640, 330))
	require.NotSame(t, at(620, 330), at(620, 340))
}

// Where every free opening stands clear, a set-out adds up to what it gives without them and
// their patches: to what it gives when all is cut.
func TestWhatIsClearedAddsUpToAll(t *testing.T) {
	cleared := 0
	rapid.Check(t, func(t *rapid.T) {
		w, s := drawn(t)
		if !w.Places.Clear(s.Placed) || w.Places.Overlap(s.Placed) {
			return
		}
		cleared++
		a, runs := w.cutter.cleared(s).merit()
		b, all := w.cutter.all(s).merit()
		same(t, w, a, b)
		require.ElementsMatch(t, runs, all)
	})
	require.Positive(t, cleared, "no room had its openings clear")
}

// By hand: 12, 20 and 30 against 10, 25 and 30 differ by 7.
func TestDifferencesAddUp(t *testing.T) {
	a, b := []length.Length{12, 20, 30}, []length.Length{10, 25, 30}
	require.Equal(t, length.Length(7), differences(a, b))
	require.Equal(t, length.Length(7), differences(b, a))
	require.Equal(t, length.Length(2), differences(a, b[:1]), "as far as both go")
	room, _ := sketch("1000x600 300x100+2")
	require.Equal(t, length.Length(0), Differ(&room, a, b), "less than a mark is none")
	require.Equal(t, 3*room.Tape, Differ(&room, []length.Length{4*room.Tape - 1}, []length.Length{0}))
}
