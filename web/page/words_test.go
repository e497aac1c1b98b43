package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNoFigureIsBrokenAtTheEndOfALine(t *testing.T) {
	assert.Equal(t, "5\u00a03/8 in, 10\u00a0% spare", Unbroken("5 3/8 in, 10 % spare"))
}

// A page that stands in no navigation marks the one that one comes from.
func TestEveryPageOfAJobIsMarkedInTheNavigation(t *testing.T) {
	marked := map[string]bool{}
	for _, p := range jobPages {
		marked[p.key] = true
	}
	for here, over := range pageOver {
		assert.False(t, marked[here], here)
		assert.True(t, marked[over], over)
	}
}
