package drawing

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Where there is no room for both heights of a base they are a range that no sign of a height can be read into.
func TestTwoHeightsOfABaseThatIsShort(t *testing.T) {
	texts := func(to Micron) (out []string) {
		b := &board{Scene: Scene{Width: 90000, Height: 90000}}
		b.pair(Label{Size: 2500}, `−22"`, `−21 11/16"`, foot{x0: 30000, x1: to}, 40000)
		for _, e := range b.Elements {
			if l, ok := e.(Label); ok {
				out = append(out, l.Text)
			}
		}
		return out
	}
	require.Equal(t, []string{`−22" to −21 11/16"`}, texts(50000))
	require.Equal(t, []string{`−22"`, `−21 11/16"`}, texts(80000))
}
