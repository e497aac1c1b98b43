package layout_test

import (
	"context"
	"encoding/json"
	"errors"
	"reflect"
	"testing"
	"time"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// odd are texts for any field of a job: lengths no room has, and what is no length.
var odd = []string{
	"", "0", "-0", "1", "-1", "1/64", "1/960 mm", "0.1 mm", "1/3", "1/2", "1e9", "99999", "-99999", "1 km", "100 m", "99999999999999999999",
	"0.0000001", "12 3/4", "1'", "3'-11 63/64\"", "1 mm", "30 cm", "true", "left", "right", "corner", "tub", "floor", "curb", "ceiling",
	"niche", "window", "pipe", "running", "stack", "level", "plumb", "in", "mm", "wall 1", "a b", "½", "٣", "\x00", "60", "80",
}

// FuzzSolve takes any bytes as a job near one that people could have: it is refused with faults that say
// where and what, or solved with every piece inside its tile and its wall, none lost, none twice. FuzzSearch
// beside it looks at what is found among all that is free, and so at rooms that are true and small;
// here a room may have every part and be damaged, and most of it is pinned.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, data []byte) {
		by := &byBytes{data}
		job, ok := damagedRoom(by)
		if !ok {
			t.Skip("no room")
		}
		ctx, cancel := context.WithTimeout(t.Context(), fuzzedFor)
		defer cancel()
		solvesOrSaysWhy(ctx, t, job, by.number("solved again", 1, 8) == 8)
	})
}

// fuzzedFor is how long a fuzzed room may take. Of a room that takes longer nothing is said: half of them
// take a fifteenth of that, and the tenth that takes longer took three quarters of the time.
const fuzzedFor = 300 * time.Millisecond

func TestAnyJobSolvesOrSaysWhy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if job, ok := damagedRoom(byRapid{t}); ok {
			solvesOrSaysWhy(t.Context(), t, job, true)
		}
	})
}

// solvesOrSaysWhy solves a job, and a second time if that is wanted, for the same bytes.
func solvesOrSaysWhy(ctx context.Context, t require.TestingT, job survey.Job, twice bool) {
	plan, err := layout.Solve(ctx, job)
	if err != nil && ctx.Err() != nil {
		return
	}
	var faults survey.Faults
	if errors.As(err, &faults) {
		require.NotEmpty(t, faults)
		require.LessOrEqual(t, len(faults), 200)
		for _, fault := range faults {
			require.NotEmpty(t, fault.Path)
			require.NotEmpty(t, fault.Want)
		}
		return
	}
	require.NoError(t, err)
	ids := map[string]bool{}
	for _, w := range plan.Walls {
		holdsTogether(t, w, ids)
	}
	require.LessOrEqual(t, len(ids), 200_000)
	file, err := plan.File()
	require.NoError(t, err)
	if !twice {
		return
	}
	again, err := layout.Now(job)
	require.NoError(t, err)
	other, err := again.File()
	require.NoError(t, err)
	require.Equal(t, string(file), string(other), "the same job gives the same bytes")
}

// damagedRoom is a room with parts of real showers in it, and then with some of its texts changed for
// others and lists cut short or grown. What makes it one that is refused is mostly taken back. Most rooms are
// pinned: other tests look at how places are found, which takes long.
func damagedRoom(by chooser) (survey.Job, bool) {
	changes := by.number("changes", 0, 6)
	job, ok := fuzzedRoom(by)
	if !ok {
		return job, false
	}
	units := job.Units
	try := func(change func(*survey.Job)) {
		tried := copied(job)
		if change(&tried); by.number("kept if refused", 1, 8) == 8 || accepted(mustWrite(tried)) {
			job = tried
		}
	}
	try(mixer{seldom{by}, units == "in"}.mix)
	if by.number("left free", 1, 8) < 8 {
		try(func(job *survey.Job) { pin(by, units, job) })
	}
	for range changes {
		try(func(job *survey.Job) { change(by, job) })
	}
	return job, true
}

// copied is a job that shares nothing with the one it was.
func copied(job survey.Job) (out survey.Job) {
	if err := json.Unmarshal(mustWrite(job), &out); err != nil {
		return job
	}
	return out
}

// seldom says yes one time of four.
type seldom struct{ chooser }

func (s seldom) yes(what string) bool { return s.number(what, 1, 4) == 4 }

// pin fixes the course line and the start of every wall.
func pin(by chooser, units string, job *survey.Job) {
	r := roomDraw{by: by, metric: units == "mm"}
	job.Pins = survey.Pins{Course: survey.CoursePin{Line: r.of(r.draw("line", -300, 0))}, Walls: map[string]survey.WallPin{}}
	for _, w := range job.Walls {
		job.Pins.Walls[w.Name] = survey.WallPin{Joint: r.of(r.draw("start", 0, 400))}
	}
}

// change damages one field: a text becomes an odd one or that of another field, a list loses its end
// or has its last element twice.
func change(by chooser, job *survey.Job) {
	var fields []reflect.Value
	leaves(reflect.ValueOf(job).Elem(), &fields)
	any := func() reflect.Value { return fields[by.which("field", len(fields))] }
	switch field := any(); field.Kind() {
	case reflect.String:
		if other := any(); other.Kind() == reflect.String && by.yes("another's") {
			field.SetString(other.String())
			return
		}
		field.SetString(oneOf(by, "text", odd...))
	case reflect.Slice:
		if kept := by.number("kept", 0, field.Len()); kept < field.Len() {
			field.Set(field.Slice(0, kept))
		} else if kept > 0 {
			field.Set(reflect.Append(field.Slice(0, kept), field.Index(kept-1)))
		}
	}
}

// leaves lists the texts and lists of a job.
func leaves(v reflect.Value, out *[]reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			leaves(v.Elem(), out)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			leaves(v.Field(i), out)
		}
	case reflect.Slice:
		*out = append(*out, v)
		for i := range v.Len() {
			leaves(v.Index(i), out)
		}
	case reflect.String:
		*out = append(*out, v)
	}
}

// holdsTogether wants every piece inside its tile, each once, and no more faces than there is wall.
func holdsTogether(t require.TestingT, w layout.Wall, ids map[string]bool) {
	var faces length.Area
	for _, p := range w.Pieces {
		require.False(t, ids[p.ID], "piece %s twice", p.ID)
		ids[p.ID] = true
		require.Positive(t, area(p.Face), p.ID)
		faces += area(p.Face)
		for _, ring := range p.Face {
			for _, c := range ring {
				require.True(t, p.Tile.Left <= c.X && c.X <= p.Tile.Right && p.Tile.Bottom <= c.Y && c.Y <= p.Tile.Top, "%s leaves its tile", p.ID)
			}
		}
	}
	require.LessOrEqual(t, faces, area(w.Shape.Region)+2*around(w.Shape.Region), "more tile than wall")
}

// around is the area of a strip of one unit round a region: what corners on raked edges, each on the
// nearest whole unit, may add.
func around(r plane.Region) (sum length.Area) {
	for _, ring := range r {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			sum += length.Area((a.X - b.X).Abs() + (a.Y - b.Y).Abs())
		}
	}
	return sum
}

func area(r plane.Region) (sum length.Area) {
	for _, ring := range r {
		sum += ring.Area2()
	}
	return sum
}
