package stages_test

import (
	"cmp"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/plane"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
)

func jobOf(t *testing.T, name string) survey.Job {
	t.Helper()
	data, err := os.ReadFile("../../testdata/jobs/" + name + ".json")
	require.NoError(t, err)
	job, err := survey.Read(data)
	require.NoError(t, err)
	return job
}

func input(t *testing.T, name string) stages.Input {
	t.Helper()
	plan, err := layout.Now(jobOf(t, name))
	require.NoError(t, err)
	return stages.Input{Room: plan.Room, Walls: plan.Walls,
		Cuts: cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.Usual(plan.Room.Units))}
}

func TestEveryPieceAndEveryCutIsSetOnce(t *testing.T) { // laws 1 and 2
	for _, name := range []string{"toy", "one-wall", "alcove"} {
		in := input(t, name)
		pieces, whole, want := 0, 0, 0
		cut := map[string]int{}
		for _, s := range stages.Of(in, stages.Usual()) {
			pieces += s.Pieces
			whole += s.Whole
			n := 0
			for _, c := range s.Cuts {
				cut[c.Group] += c.Count
				n += c.Count
			}
			assert.Equal(t, s.Pieces, s.Whole+n, "%s, %s", name, s.Name)
		}
		for _, w := range in.Walls {
			want += len(w.Pieces)
		}
		assert.Equal(t, want, pieces, name)
		for _, g := range in.Cuts.Groups {
			assert.Equal(t, g.Count, cut[g.ID], "%s, %s", name, g.ID)
		}
	}
}

func TestStagesComeInTheOrderOfWork(t *testing.T) { // law 3
	var names []string
	for _, s := range stages.Of(input(t, "alcove"), stages.Usual()) {
		names = append(names, s.Name)
	}
	assert.Equal(t, []string{"Dry lay and marks", "First full course", "Wall B, back", "Wall L, left", "Wall R, right", "Under the batten", "Grout", "Soft joints"}, names)
	names = nil
	for _, s := range stages.Of(input(t, "toy"), stages.Usual()) {
		names = append(names, s.Name)
	}
	assert.Equal(t, []string{"Dry lay and marks", "First full course", "Wall W, wall", "Grout", "Soft joints"}, names)
}

// What is measured and laid dry is what the bond has: a stack and a course, or the pattern from its first tile outwards.
func TestADryLayIsOfTheBond(t *testing.T) {
	in := input(t, "toy")
	assert.Contains(t, stages.Of(in, stages.Usual())[0].Do, "Lay the first full course dry")
	in.Room.Bond = survey.BondRule{Kind: survey.Hexagon}
	assert.NotContains(t, stages.Of(in, stages.Usual())[0].Do, "course")
	assert.NotContains(t, stages.Of(in, stages.Usual())[0].Do, "stack")
}

// Sealant is told of where this room's tile meets something, and never where it stops: the demo's heads stop
// under trim, the shower's meet a ceiling, and one wall over a floor has no tub to fill.
func TestSealantGoesWhereTileMeetsSomething(t *testing.T) {
	for name, want := range map[string]string{
		"alcove":        "Fill the tub and keep it full. Seal the inside corners, along the floor, along the tub and round the pipes.",
		"corner-shower": "Seal the inside corners, along the shower base, along the ceiling and round the pipes.",
		"toy":           "Seal along the floor.",
	} {
		all := stages.Of(input(t, name), stages.Usual())
		assert.Equal(t, want, all[len(all)-1].Do, name)
	}
}

// In the toy job three whole tiles of 100 mm stand over a level floor, and
// three over those.
func TestTheFirstCourseIsWhatNothingFitsUnder(t *testing.T) {
	all := stages.Of(input(t, "toy"), stages.Usual())
	assert.Equal(t, 3, all[1].Pieces)
	assert.Equal(t, 3, all[2].Pieces)
	assert.Contains(t, all[1].Do, "level batten on every wall with its top edge on the level line")
	in := input(t, "alcove")
	for _, w := range in.Walls {
		var boxes []plane.Rect // the first course runs over the whole wall without a gap
		for _, p := range w.Pieces {
			if in.FirstCourse(w, p) {
				boxes = append(boxes, p.Face.Bounds())
			}
		}
		slices.SortFunc(boxes, func(a, b plane.Rect) int { return cmp.Compare(a.Left, b.Left) })
		reach := w.Shape.Region.Bounds().Left
		for _, b := range boxes {
			assert.LessOrEqual(t, b.Left-reach, in.Room.Joint, w.Found.Name)
			reach = max(reach, b.Right)
		}
		assert.GreaterOrEqual(t, reach+in.Room.Joint, w.Shape.Region.Bounds().Right, w.Found.Name)
		assert.Less(t, len(boxes), len(w.Pieces)/3, w.Found.Name)
	}
}

func TestAMortarThatHoldsNeedsNoWaitForTheFirstCourse(t *testing.T) {
	in, set := input(t, "toy"), stages.Usual()
	assert.Equal(t, set.First, stages.Of(in, set)[1].Wait)
	set.Holds = true
	assert.Zero(t, stages.Of(in, set)[1].Wait)
}

func TestWhatIsSetAlreadyIsNoLongerWork(t *testing.T) { // laws 1 and 2 once courses stand
	in := input(t, "toy")
	w := &in.Walls[0]
	w.Found.Set = &survey.Standing{Row: w.Pieces[0].Row}
	in.Cuts = cuts.Of(cuts.Input{Room: in.Room, Walls: in.Walls}, cuts.Usual(in.Room.Units))
	pieces := 0
	for _, s := range stages.Of(in, stages.Usual()) {
		pieces += s.Pieces
	}
	assert.Equal(t, len(w.Pieces)-3, pieces, "three tiles of the first course stand")
}
