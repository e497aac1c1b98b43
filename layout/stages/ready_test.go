package stages

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestCutsThatFollowEachOtherAreOneEntry(t *testing.T) {
	s := Stage{Cuts: []Cut{{"C1", 12}, {"C2", 12}, {"C4", 1}, {"C5", 1}, {"C6", 1}, {"C7", 2}, {"C8", 2}, {"M9", 2}}}
	assert.Equal(t, []string{"12 × C1", "12 × C2", "1 each of C4–C6", "2 × C7", "2 × C8", "2 × M9"}, s.Ready())
	assert.Empty(t, Stage{}.Ready())
}
