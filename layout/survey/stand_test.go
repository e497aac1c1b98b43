package survey_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// stood is a room of three walls, tile 6 by 3 in, joint 1/8 in, with courses of
// its first two walls set.
func stood(a, b *survey.AsSet) survey.Job {
	job := sketch("in", "a", "b", "c")
	job.Walls[0].Set, job.Walls[1].Set = a, b
	return job
}

func asSet(course, left, right, is, at string) *survey.AsSet {
	return &survey.AsSet{Course: course, Left: left, Right: right, Start: survey.SetStart{Is: is, At: at}}
}

func TestAsSetBecomesTheCourseLineAndThePins(t *testing.T) {
	running := survey.Bond{Kind: "running"}
	third := survey.Bond{Kind: "running", Offset: "1/3", Hand: "right"}
	for _, c := range []struct {
		name    string
		bond    survey.Bond
		a, b    *survey.AsSet
		line    length.Length
		rows    [2]int // of the set courses from the course line
		pin, on length.Length
		is      survey.Struck // what stands at pin; pin: of wall a; on: of wall b
	}{
		{"one level course: its bottom edge", survey.Bond{}, asSet("1", "-30", "-30", "joint", "20"), nil, -33 * in, [2]int{}, 20 * in, 0, survey.OnJoint},
		{"out of level: the mean of its ends", survey.Bond{}, asSet("1", "-30", "-29 3/4", "joint", "20"), nil, -33*in + in/8, [2]int{}, 20 * in, 0, survey.OnJoint},
		{"the middle of a tile", survey.Bond{}, asSet("1", "-30", "-30", "tile", "20"), nil, -33 * in, [2]int{}, 20 * in, 0, survey.OnTile},
		{"a tile's left edge", survey.Bond{}, asSet("1", "-30", "-30", "left edge", "20"), nil, -33 * in, [2]int{}, 20 * in, 0, survey.OnEdge},
		{"a tile's right edge: its left one stands 6 in before it", survey.Bond{}, asSet("1", "-30", "-30", "right edge", "20"), nil, -33 * in, [2]int{}, 14 * in, 0, survey.OnEdge},
		{"two walls: the mean of both", survey.Bond{}, asSet("1", "-30", "-30", "joint", "20"), asSet("1", "-29 3/4", "-29 3/4", "joint", "30"),
			-33*in + in/8, [2]int{}, 20 * in, 30 * in, survey.OnJoint},
		{"another course on the other wall: two pitches of 3 1/8 in up", survey.Bond{}, asSet("1", "-30", "-30", "joint", "20"), asSet("3", "-23 3/4", "-23 3/4", "joint", "30"),
			-33 * in, [2]int{0, 2}, 20 * in, 30 * in, survey.OnJoint},
		{"in running bond the next course stands half a pitch of 6 1/8 in off", running, asSet("1", "-30", "-30", "joint", "20"), asSet("2", "-26 7/8", "-26 7/8", "joint", "30"),
			-33 * in, [2]int{0, 1}, 20 * in, 30*in - 49*in/16, survey.OnJoint},
		{"two courses up they stand alike", running, asSet("1", "-30", "-30", "joint", "20"), asSet("3", "-23 3/4", "-23 3/4", "joint", "30"),
			-33 * in, [2]int{0, 2}, 20 * in, 30 * in, survey.OnJoint},
		{"a course down, in thirds to the right", third, asSet("3", "-30", "-30", "joint", "20"), asSet("2", "-33 1/8", "-33 1/8", "joint", "30"),
			-33 * in, [2]int{0, -1}, 20 * in, 30*in - 2*49784, survey.OnJoint}, // a third of 6 1/8 in is 49784 units
		{"a joint that would stand beside the wall is another one", running, asSet("1", "-30", "-30", "joint", "20"), asSet("2", "-26 7/8", "-26 7/8", "joint", "1"),
			-33 * in, [2]int{0, 1}, 20 * in, 1*in + 49*in/16, survey.OnJoint},
	} {
		t.Run(c.name, func(t *testing.T) {
			job := stood(c.a, c.b)
			if c.bond.Kind != "" {
				job.Bond = c.bond
			}
			room, faults := job.Resolve()
			require.Empty(t, faults)
			require.NotNil(t, room.Line)
			assert.Equal(t, c.line, *room.Line)
			assert.Equal(t, &survey.StartPin{X: c.pin, Is: c.is}, room.Walls[0].Pin)
			assert.True(t, room.Walls[0].Stands(c.rows[0]))
			assert.False(t, room.Walls[0].Stands(c.rows[0]+1))
			assert.False(t, room.Walls[2].Stands(-100), "nothing stands on c")
			if c.b != nil {
				assert.Equal(t, c.rows[1], room.Walls[1].Set.Row)
				assert.Equal(t, c.on, room.Walls[1].Pin.X)
			}
		})
	}
}

func TestTileThatStandsComesBeforeAPin(t *testing.T) {
	job := stood(asSet("1", "-30", "-30", "joint", "20"), nil)
	job.Pins = survey.Pins{Course: survey.CoursePin{Line: "-34"}, Walls: map[string]survey.WallPin{"a": {Tile: "9"}, "b": {Joint: "31"}}}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	assert.Equal(t, -33*in, *room.Line)
	assert.Equal(t, -34*in, *room.Passed)
	assert.Equal(t, &survey.StartPin{X: 9 * in, Is: survey.OnTile}, room.Walls[0].Set.Passed)
	assert.Equal(t, 20*in, room.Walls[0].Pin.X)
	assert.Equal(t, 31*in, room.Walls[1].Pin.X, "a wall without set tile keeps its pin")
}

func TestAsSetRefuses(t *testing.T) {
	good := func() *survey.AsSet { return asSet("1", "-30", "-30", "joint", "20") }
	for _, c := range []struct {
		a, b  *survey.AsSet
		bond  survey.Bond
		fault string
	}{
		{a: asSet("", "-30", "-30", "joint", "20"), fault: "walls[0].set.course: found nothing; write the number of the highest course that stands, such as 1"},
		{a: asSet("0", "-30", "-30", "joint", "20"), fault: "walls[0].set.course: found “0”; write a whole number of courses, 1 for the lowest of the room, from 1 to 10000"},
		{a: asSet("first", "-30", "-30", "joint", "20"), fault: "walls[0].set.course: found “first”; write a whole number of courses"},
		{a: asSet("1", "", "-30", "joint", "20"), fault: "walls[0].set.left: found nothing; write a length, with a minus"},
		{a: asSet("1", "-30", "low", "joint", "20"), fault: "walls[0].set.right: found “low”, which has"},
		{a: asSet("1", "-30", "-28", "joint", "20"), fault: `walls[0].set.right: found “-28”, which is 2" off the left end; write the height of the top edge of the same course as at the left, a length from -31 1/2" to -28 1/2"`},
		{a: asSet("1", "30", "-30", "joint", "20"), fault: `walls[0].set.right: found “-30”, which is 5'-0" off the left end; write the height of the top edge of the same course as at the left, a length from 28 1/2" to 31 1/2"; if it is under the level line, both ends have a minus`},
		{a: asSet("1", "-30", "-30", "", "20"), fault: "walls[0].set.start.is: found nothing; write one of joint, tile, left edge, right edge"},
		{a: asSet("1", "-30", "-30", "joint", ""), fault: `walls[0].set.start.at: found nothing; write a length from 0" to 5'-0"`},
		{a: asSet("1", "-30", "-30", "joint", "61"), fault: `walls[0].set.start.at: found “61”; write a length from 0" to 5'-0"`},
		{a: good(), b: asSet("2", "-30", "-30", "joint", "20"),
			fault: `walls[1].set.course: found “2”, which by its heights is 3 1/8" under the same course of a; write the number of a course of which this is the top edge, such as 1; or measure both walls from the level line again`},
		{a: good(), b: asSet("1", "-23", "-23", "joint", "20"),
			fault: `walls[1].set.course: found “1”, which by its heights is 7" over the same course of a; write the number of a course of which this is the top edge, such as 3`},
		{a: good(), bond: survey.Bond{Kind: "running", Offset: "1/3"}, fault: "bond.hand: found nothing; write left or right: the way the courses that stand step"},
		{a: good(), bond: survey.Bond{Kind: "stack", Along: "plumb"}, fault: "walls[0].set: found a course that stands; write nothing here: the tile stands in columns"},
	} {
		t.Run(c.fault, func(t *testing.T) {
			job := stood(c.a, c.b)
			if c.bond.Kind != "" {
				job.Bond = c.bond
			}
			_, faults := job.Resolve()
			require.Len(t, faults, 1, "%v", faults)
			assert.Contains(t, faults[0].String(), c.fault)
		})
	}
}

func TestSampleAndAsSetAreReadBackAsWritten(t *testing.T) {
	job := stood(asSet("1", "-30", "-29 3/4", "left edge", "20"), nil)
	job.Tile.Sample = &survey.Sample{Use: true, Across: survey.Run{Tiles: "8", Joints: "each", Spacer: "1/8", Length: "49"},
		Singles: []survey.Single{{Width: "6"}, {}, {Height: "3"}}}
	data, err := survey.Write(job)
	require.NoError(t, err)
	again, err := survey.Read(data)
	require.NoError(t, err)
	assert.Equal(t, job, again)
	_, faults := again.Resolve()
	assert.Empty(t, faults)
}

func TestAJobWithoutSampleAndAsSetIsWrittenAsBefore(t *testing.T) {
	for name, data := range jobFiles(t) {
		job, err := survey.Read(data)
		require.NoError(t, err)
		out, err := survey.Write(job)
		require.NoError(t, err)
		assert.NotContains(t, string(out), `"sample"`, name)
		assert.NotContains(t, string(out), `"set"`, name)
	}
}
