package form

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// wallWithNiche is the demo with a niche more on its first wall, at a path.
func wallWithNiche(t *testing.T) (survey.Job, string) {
	t.Helper()
	job := demo(t)
	require.NoError(t, Apply(&job, "add walls[0].openings niche"))
	return job, At("walls[0].openings", len(job.Walls[0].Openings)-1)
}

func TestANicheIsPutBetweenItsStuds(t *testing.T) {
	job, path := wallWithNiche(t)
	o := func() *survey.Opening { return &job.Walls[0].Openings[len(job.Walls[0].Openings)-1] }
	require.NoError(t, Apply(&job, "add "+path+".inside studs"))
	assert.Nil(t, o().Left, "it stands free in its bay")
	assert.NotNil(t, o().Inside.Studs)
	assert.Subset(t, job.Guess, []string{path + ".inside.studs.left", path + ".inside.studs.right", path + ".inside.depth"}, "nobody has measured them")
	_, faults := job.Resolve()
	assert.Empty(t, faults, "what it holds at first solves")

	require.NoError(t, Apply(&job, "add "+path+".inside built"))
	assert.Nil(t, o().Inside.Studs)
	assert.Equal(t, "lined", o().Inside.Sizes)
	assert.NotEmpty(t, o().Left.At)
	assert.Contains(t, job.Guess, path+".width.at")
	_, faults = job.Resolve()
	assert.Empty(t, faults)

	require.NoError(t, Apply(&job, "add "+path+".inside.back.tile"))
	assert.NotNil(t, o().Inside.Back.Tile)
	require.NoError(t, Apply(&job, "forget "+path+".inside.back.tile"))
	assert.Equal(t, survey.InsideFace{}, o().Inside.Back)
	require.NoError(t, Apply(&job, "set "+path+".inside.sill.slab=3/4"))
	assert.Equal(t, "3/4", o().Inside.Sill.Slab)

	require.NoError(t, Apply(&job, "add "+path+".inside studs"))
	require.NoError(t, Apply(&job, "forget "+path+".inside"))
	assert.Nil(t, o().Inside)
	_, faults = job.Resolve()
	assert.Empty(t, faults, "it has a place and a width again")
	for _, do := range []string{"add " + path + ".inside wild", "add " + path + ".outside", "add walls[0].openings[99].inside", "add " + path + ".inside.back.tile",
		"forget " + path + ".inside", "forget walls[0].openings[99].inside", "forget " + path + ".inside.back"} {
		assert.Error(t, Apply(&job, do), do)
	}
	require.NoError(t, Apply(&job, "add walls[0].openings pipe"))
	assert.Error(t, Apply(&job, "add "+At("walls[0].openings", len(job.Walls[0].Openings)-1)+".inside"), "a pipe has none")
}

func TestAnInsideIsTidied(t *testing.T) {
	job, path := wallWithNiche(t)
	require.NoError(t, Apply(&job, "add "+path+".inside"))
	posted := url.Values{path + ".inside.studs.left": {""}, path + ".inside.back.tile.width": {""}, path + ".inside.back.bond.kind": {""}, path + ".inside.top.cased": {""}}
	require.NoError(t, Decode(&job, posted))
	in := job.Walls[0].Openings[len(job.Walls[0].Openings)-1].Inside
	assert.Nil(t, in.Studs)
	assert.Equal(t, survey.InsideFace{}, in.Back, "boxes as they come say nothing")
	require.NoError(t, Decode(&job, url.Values{path + ".inside.back.bond.kind": {"running"}}))
	assert.Equal(t, "1/2", in.Back.Bond.Offset)
}

// A back of small tile was laid in the shift of the wall's running bond, and ended in scraps at both sides in every
// other row.
func TestATileOfItsOwnStandsInStackBond(t *testing.T) {
	for _, bond := range []survey.Bond{{Kind: "stack"}, {Kind: "running", Offset: "1/3"}, {Kind: "running", Offset: "1/2", Along: "plumb"}, {Kind: "herringbone"}} {
		for _, face := range []string{"back", "left", "sill", "top"} {
			job, path := wallWithNiche(t)
			job.Bond = bond
			require.NoError(t, Apply(&job, "add "+path+".inside studs"))
			require.NoError(t, Apply(&job, "add "+path+".inside."+face+".tile"))
			laid := faceOf(job.Walls[0].Openings[len(job.Walls[0].Openings)-1].Inside, face).Bond
			if bond.Kind == "stack" {
				assert.Nil(t, laid, "that is the wall's")
				continue
			}
			require.NotNil(t, laid, "%s in %s", face, bond.Kind)
			assert.Equal(t, "stack", laid.Kind)
			_, faults := job.Resolve()
			assert.Empty(t, faults, "%s in %s", face, bond.Kind)
		}
	}
}
