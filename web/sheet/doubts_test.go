package sheet

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/doubt"
)

// doubted is the demo with open doubts: one of its back wall, and one of the room.
func doubted(t *testing.T) layout.Plan {
	t.Helper()
	plan := roomOf(t, "../static/demo")
	plan.Doubts = []doubt.Doubt{{Rule: doubt.Off, Path: "walls[1].base[0].readings[1].drop", Wall: 1, Text: "At 30\" along back the tub is read odd."},
		{Rule: doubt.Thickness, Path: "tile.thickness", Wall: -1, Text: "Tile of 1\" is rare."}}
	return plan
}

// A doubt that nobody has answered stands on the first sheet and on that of its wall, whatever is printed; sheets printed with one
// once said nothing of it.
func TestOpenDoubtsStandOnTheFirstSheetAndOnTheirWalls(t *testing.T) {
	plan := doubted(t)
	for _, paper := range Papers()[:2] {
		for _, kinds := range [][]Kind{nil, {CutSchedule, TakeOff}, {Elevations}} {
			o := Options{Paper: paper, Kinds: kinds}
			file, pages := paged(t, plan, o)
			b := newBook(plan, o)
			require.Equal(t, pages, len(b.leaves))
			for n, l := range b.leaves {
				at := strconv.Itoa(n + 1)
				text := words(tool(t, "pdftotext", "-layout", "-f", at, "-l", at, file, "-"))
				list, back := n == 0 && l.kind != Elevations, strings.HasPrefix(l.wall, "B")
				for said, here := range map[string]bool{doubtsAsked: list, plan.Doubts[0].Text: list || back, plan.Doubts[1].Text: list || n == 0} {
					if here {
						says(t, text, said)
					} else {
						assert.NotContains(t, text, said, "%s %v, sheet %s", paper.Name, kinds, at)
					}
				}
			}
		}
	}
}

// Nothing of doubts stands on what is for a client or for another room, nor where there are none.
func TestSheetsForOthersTellOfNoDoubts(t *testing.T) {
	plan := doubted(t)
	assert.NotContains(t, words(printedText(t, plan, Measuring)), doubtsAsked)
	plan.Doubts = nil
	assert.NotContains(t, words(printedText(t, plan, SetOut)), doubtsAsked)
}
