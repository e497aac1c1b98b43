package doubt_test

import (
	"fmt"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"coursewright/layout/doubt"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var measured = regexp.MustCompile(`\.(drop|rise|off|height|at|width|bottom\.at|left\.at)$`)

// spoiled is a room that was true until somebody mistyped up to three of its
// readings. It is false where the job is refused then.
func spoiled(t *testing.T, r *rapid.T, rooms []survey.Job) (survey.Room, survey.Job, bool) {
	job := rapid.SampledFrom(rooms).Draw(r, "room")
	for range rapid.IntRange(1, 3).Draw(r, "slips") {
		texts := job.Texts()
		paths := slices.DeleteFunc(slices.Sorted(maps.Keys(texts)), func(p string) bool { return !measured.MatchString(p) })
		path := rapid.SampledFrom(paths).Draw(r, "path")
		text := texts[path]
		switch rapid.IntRange(0, 3).Draw(r, "slip") {
		case 0:
			text = "-" + text
		case 1:
			text = fmt.Sprintf("%d/16", rapid.IntRange(-800, 1600).Draw(r, "sixteenths"))
		case 2:
			text += "0"
		case 3:
			if len(text) > 1 {
				text = text[1:2] + text[:1] + text[2:]
			}
		}
		job = put(t, job, path, text)
	}
	room, faults := job.Resolve()
	return room, job, len(faults) == 0
}

// Laws 1 to 4 on rooms with random slips.
func TestLawsOnRoomsWithSlips(t *testing.T) {
	var rooms []survey.Job
	for _, pattern := range []string{"../../testdata/doubts/true/*.json", "../../testdata/jobs/*.json"} {
		for _, file := range names(t, pattern) {
			if filepath.Base(file) != "not-measured-yet.json" {
				rooms = append(rooms, read(t, file))
			}
		}
	}
	raised := 0
	rapid.Check(t, func(r *rapid.T) {
		room, job, ok := spoiled(t, r, rooms)
		if !ok {
			return
		}
		found := doubt.Raise(room, job)
		assert.Equal(r, found, doubt.Raise(room, job))
		paths := map[string]bool{}
		for _, d := range found {
			raised++
			require.False(r, paths[d.Path], d.Path)
			paths[d.Path] = true
			require.NotEmpty(r, d.Text)
			require.NotEmpty(r, job.Texts()[d.Path], d.Path)
			require.NotContains(r, d.Text, "%!")

			sure := job
			sure.Confirmed = append(slices.Clone(job.Confirmed), d.Path)
			require.NotContains(r, pathsOf(doubt.Raise(room, sure)), d.Path, "confirmed")

			mended := job
			for _, u := range d.Use {
				mended = put(t, mended, u.Path, u.Text)
			}
			// Where several readings are wrong, one that is mended may not fit the rest.
			if again, faults := mended.Resolve(); d.Use != nil && faults == nil {
				for _, o := range doubt.Raise(again, mended) {
					require.False(r, o.Path == d.Path && o.Rule == d.Rule, "%s with %s: %s", o.Path, d.Fits, o.Text)
				}
			}
		}
	})
	assert.Positive(t, raised)
}

func pathsOf(found []doubt.Doubt) (all []string) {
	for _, d := range found {
		all = append(all, d.Path)
	}
	return all
}

// Readings that begin over 4 in from one corner say nothing of how far from the other the wall ends: the width that
// would fit leaves 4 in there, and raises no doubt again.
func TestAWidthThatFitsIsNotDoubtedAgain(t *testing.T) {
	job := read(t, "../../testdata/doubts/true/closed-wet-room.json")
	job = put(t, put(t, job, "walls[1].width", "360"), "walls[1].base[0].readings[0].at", "65/16")
	found := raise(t, job)
	at := slices.IndexFunc(found, func(d doubt.Doubt) bool { return d.Path == "walls[1].width" })
	require.GreaterOrEqual(t, at, 0)
	assert.Equal(t, "40", found[at].Fits)
	assert.NotContains(t, pathsOf(raise(t, put(t, job, "walls[1].width", found[at].Fits))), "walls[1].width")
}
