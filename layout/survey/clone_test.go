package survey

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// fill draws a value of any type of the job file, empty lists and texts that are none included.
func fill(t *rapid.T, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if rapid.Bool().Draw(t, "there") {
			v.Set(reflect.New(v.Type().Elem()))
			fill(t, v.Elem())
		}
	case reflect.Struct:
		if v.Type() == reflect.TypeFor[Measure]() && rapid.Bool().Draw(t, "plain") {
			fill(t, v.FieldByName("Plain"))
			return
		}
		for i := range v.NumField() {
			if v.Type() != reflect.TypeFor[Measure]() || v.Type().Field(i).Name == "Mark" {
				fill(t, v.Field(i))
			}
		}
	case reflect.Slice:
		n := rapid.IntRange(0, 2).Draw(t, "items")
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			fill(t, v.Index(i))
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		if rapid.Bool().Draw(t, "entry") {
			key, value := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
			fill(t, key)
			fill(t, value)
			v.SetMapIndex(key, value)
		}
	case reflect.String:
		v.SetString(rapid.SampledFrom([]string{"", "a", "59 1/2", "\xff\xfe", "é\xffé", "\x00", "<&>"}).Draw(t, "text"))
	case reflect.Bool:
		v.SetBool(rapid.Bool().Draw(t, "yes"))
	case reflect.Int:
		v.SetInt(int64(rapid.IntRange(0, 2).Draw(t, "number")))
	}
}

// The law of Clone.
func TestACloneIsTheJobAsItIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var job Job
		fill(t, reflect.ValueOf(&job).Elem())
		job.Format = Format
		document, err := Write(job)
		require.NoError(t, err)
		read, err := Read(document)
		require.NoError(t, err)
		require.Equal(t, read, job.Clone())
	})
}

// Whatever is done to a clone, the job stays as it was.
func TestACloneSharesNothing(t *testing.T) {
	job := Job{Walls: []Wall{{Name: "a", Base: []Segment{{Readings: []Drop{{At: "0", Drop: "1"}}}}, Head: Head{Stops: &Mark{At: "9"}}}},
		Pins: Pins{Walls: map[string]WallPin{"a": {Marks: map[string]string{"head": "9"}}}}}
	clone := job.Clone()
	clone.Walls[0].Name, clone.Walls[0].Base[0].Readings[0].Drop, clone.Walls[0].Head.Stops.At = "b", "2", "8"
	clone.Pins.Walls["a"].Marks["head"] = "7"
	require.Equal(t, "a", job.Walls[0].Name)
	require.Equal(t, "1", job.Walls[0].Base[0].Readings[0].Drop)
	require.Equal(t, "9", job.Walls[0].Head.Stops.At)
	require.Equal(t, "9", job.Pins.Walls["a"].Marks["head"])
}
