package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every wall has its letter in the key plan of its own sheet too, for by the letters the corners are named; and no letter stands
// in the bar of a wall. Found in the boxing behind a bath, whose short walls had none.
func TestTheKeyPlanHasEveryLetter(t *testing.T) {
	for _, name := range []string{"boxing", "half-wall", "alcove", "bench", "corner-bench", "old-house"} {
		p := jobPlan(t, name)
		for wall := range p.Walls {
			for _, opt := range []Options{{}, {Sheet: true}} {
				var bars []box
				var letters []Label
				for _, e := range Elevation(p, wall, opt).Elements {
					if l, is := e.(Label); is && l.Kind == KeyWall {
						letters = append(letters, l)
					}
					if path, is := e.(Path); is && (path.Kind == KeyWall || path.Kind == KeyHere) {
						lo, hi := extent(path.Rings)
						bars = append(bars, box{lo, hi})
					}
				}
				assert.Len(t, letters, len(p.Walls), "%s, wall %d", name, wall)
				for _, l := range letters {
					for _, bar := range bars {
						assert.False(t, l.box().meets(bar), "%s, wall %d: %s in a bar", name, wall, l.Text)
					}
				}
			}
		}
	}
}
