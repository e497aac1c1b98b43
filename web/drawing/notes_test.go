package drawing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// However narrow a heading is, no line ends between a whole number and its fraction, and no word is lost: on sheets of
// the old house stood "level line 37" and under it "13/16".
func TestAFractionStaysWithItsNumber(t *testing.T) {
	text := "level line 37 13/16\" over the tub, 4'-6 1/4\" and 38 over 1/2 of it"
	for wide := Micron(0); wide < TextWidth(text, 2600)+Millimetre; wide += Millimetre {
		lines := linesOf(text, 2600, wide)
		assert.Equal(t, text, strings.Join(lines, " "))
		for _, line := range lines[1:] {
			assert.False(t, strings.HasPrefix(line, "13/16") || strings.HasPrefix(line, "1/4"), "%q", lines)
		}
	}
}
