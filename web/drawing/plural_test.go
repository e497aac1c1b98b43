package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Words that end as a room's own do. Found on a wall with an upper and a lower shelf.
func TestSeveralHaveTheirOwnWord(t *testing.T) {
	for one, many := range map[string]string{"shelf": "2 shelves", "soap dish": "2 soap dishes", "niche": "2 niches", "glass": "2 glasses", "pipe": "2 pipes"} {
		assert.Equal(t, many, counted(2, one))
		assert.Equal(t, "1 "+one, counted(1, one))
	}
}
