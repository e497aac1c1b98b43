package layout_test

import (
	"testing"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/static"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The demo is set out as a setter would: full tiles at the open ends, a course
// over the tub that is nearly full, equal cuts in the corners of the back wall, the
// niche on joint lines, courses that run on round both corners, and no question.
func TestTheDemoIsSetOutAsASetterWould(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	p, err := layout.Now(job)
	require.NoError(t, err)
	m := p.Setout.Merit
	assert.True(t, p.Setout.Proven)
	assert.Empty(t, p.Doubts)
	assert.Zero(t, m.Bare+m.OutOfSight.Bare)
	assert.Zero(t, m.Unworkable+m.Slivers+m.Fifths+m.Thirds+m.OutOfSight.Unworkable)
	assert.Zero(t, m.Exposed)
	assert.Zero(t, m.Openings)
	assert.Zero(t, m.Mirror)
	assert.Zero(t, m.Alike)
	for _, share := range m.Rim {
		assert.Greater(t, 10*share.Num, 9*share.Den)
	}
}
