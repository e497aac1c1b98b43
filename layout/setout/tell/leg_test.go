package tell

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/survey"
)

// No tile is wider than it is: of a leg that takes more than one of them it is said how wide it is. Found by a walk in which the
// front of the tub was typed 3 in from the corner by mistake: of tile 7 7/8 in wide the leg had “single tiles, each 29 7/8" wide”.
func TestALegOfSeveralTilesIsNotToldAsOne(t *testing.T) {
	assert.Equal(t, `is laid in single tiles, each 2 7/8" wide: the bond would leave smaller cuts in it, or elsewhere for its sake`,
		whyLeg(survey.LegWorse, `2 7/8"`, true))
	assert.Equal(t, `is laid by itself in columns, 29 7/8" wide together: the bond would leave smaller cuts in it, or elsewhere for its sake`,
		whyLeg(survey.LegWorse, `29 7/8"`, false))
}
