package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Beside long places and many courses the words of a cut list keep room for a whole word and a whole figure.
func TestWordsOfACutListAreNotBroken(t *testing.T) {
	said := []string{`to 1 7/16" high, first-course sheet`, `beside the tile, 5 9/16" at the outer side`}
	list := table{text: body, columns: make([]column, 7)}
	list.columns[4].share, list.columns[6].share = 13, 8
	for _, words := range said {
		list.rows = append(list.rows, row{cells: []string{"2, 4 … 14, 18, 20, 24, 26 … 32", "strip mosaic, at the head", `5 15/16" × 2 15/16"`, words, "14", "C59", ""}})
	}
	list.shareOut()
	wide := 176 * mmPaper * list.columns[3].share / list.shares()
	for _, words := range said {
		lines := body.wrap(words, wide-2*padding)
		assert.LessOrEqual(t, len(lines), 3, "%q", lines)
		assert.Equal(t, words, strings.ReplaceAll(strings.Join(lines, " "), hold, " "), "broken between words only")
	}
	assert.Equal(t, []string{"tile,", "5" + hold + `9/16"`}, body.wrap(`tile, 5 9/16"`, body.width(`tile, 5 9/1`)))
}
