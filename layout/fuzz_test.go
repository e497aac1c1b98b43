package layout_test

import (
	"errors"
	"reflect"
	"testing"

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

// FuzzSolve takes any job near one that people could have: it is refused with faults that say where
// and what, or solved with every piece inside its tile and its wall, none lost, none twice.
func FuzzSolve(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(solvesOrSaysWhy))
}

func TestAnyJobSolvesOrSaysWhy(t *testing.T) { rapid.Check(t, solvesOrSaysWhy) }

func solvesOrSaysWhy(t *rapid.T) {
	job := mangled(t)
	plan, err := layout.Now(job)
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
	again, err := layout.Now(job)
	require.NoError(t, err)
	other, err := again.File()
	require.NoError(t, err)
	require.Equal(t, string(file), string(other), "the same job gives the same bytes")
}

// mangled is a random room with some of its texts changed for odd ones, and lists cut short.
func mangled(t *rapid.T) survey.Job {
	job := pinned(t, randomJob(t)) // anywhere: to find a place takes long, and other tests look at that
	for range rapid.IntRange(0, 6).Draw(t, "changes") {
		var fields []reflect.Value
		leaves(reflect.ValueOf(&job).Elem(), &fields)
		field := fields[rapid.IntRange(0, len(fields)-1).Draw(t, "field")]
		switch field.Kind() {
		case reflect.String:
			field.SetString(rapid.SampledFrom(odd).Draw(t, "text"))
		case reflect.Slice:
			field.Set(field.Slice(0, rapid.IntRange(0, field.Len()).Draw(t, "kept")))
		}
	}
	return job
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
