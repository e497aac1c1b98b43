package elevation_test

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/finding"
	"coursewright/layout/plane"
	"coursewright/web/drawing"
	"coursewright/web/drawing/sample"
	"coursewright/web/elevation"
)

var part = regexp.MustCompile(`<g class="wall" id="([^"]+)" data-wall="(\d)" data-origin="-?\d+ -?\d+" data-hash="([0-9a-f]+)"`)

// hashes are those of the walls of a drawing, by their ids.
func hashes(doc []byte) map[string]string {
	out := map[string]string{}
	for _, m := range part.FindAllSubmatch(doc, -1) {
		out[string(m[1])] = string(m[3])
	}
	return out
}

// A wall keeps its hash for as long as nothing in it changes, whatever happens to
// the others.
func TestOnlyTheWallThatChangesHasAnotherHash(t *testing.T) {
	o := elevation.Options{Inline: true, ID: "drawing"}
	p := sample.Plan()
	before := hashes(write(t, drawing.Wrap(p, drawing.Options{Handles: true}), o))
	require.Len(t, before, 3)
	assert.Equal(t, before, hashes(write(t, drawing.Wrap(sample.Plan(), drawing.Options{Handles: true}), o)))
	p.Findings = append(p.Findings, finding.Finding{Rule: "r", Grade: finding.Fault, Wall: 2, At: &plane.Point{}})
	after := hashes(write(t, drawing.Wrap(p, drawing.Options{Handles: true}), o))
	for wall := range 3 {
		id := elevation.PartID("drawing", wall)
		require.NotEmpty(t, before[id])
		assert.Equal(t, wall != 2, before[id] == after[id], "wall %d", wall)
	}
}

// A reader may pick every piece: each list of a wall holds options, and each
// option and handle has words.
func TestWhatCanBePickedHasWords(t *testing.T) {
	doc := string(write(t, drawing.Wrap(sample.Plan(), drawing.Options{Handles: true}), elevation.Options{Inline: true}))
	for _, el := range regexp.MustCompile(`<[a-z]+ [^>]*role="(option|slider|listbox|group)"[^>]*>`).FindAllString(doc, -1) {
		assert.Regexp(t, `aria-label(ledby)?="[^"]+"`, el)
	}
	for _, list := range regexp.MustCompile(`(?s)role="listbox".*?</g>\n</g>`).FindAllString(doc, -1) {
		assert.Contains(t, list, `role="option"`)
	}
	assert.Len(t, regexp.MustCompile(`role="listbox"`).FindAllString(doc, -1), 3)
}

// The finish tells no cut from a whole tile, and bears nothing to pick or drag.
func TestTheFinishShowsNoCut(t *testing.T) {
	p := sample.Plan()
	for _, s := range []drawing.Scene{drawing.Wrap(p, drawing.Options{Handles: true, Finish: true}), drawing.Elevation(p, 1, drawing.Options{Handles: true, Finish: true})} {
		doc := string(write(t, s, elevation.Options{Inline: true}))
		for _, mark := range []string{"cut-", "#fee391", "#fe9929", "#d95f0e", "#993404", `class="size`, `class="finding"`, "level-line", "handle", "option"} {
			assert.NotContains(t, regexp.MustCompile(`(?s)<defs>.*?</defs>`).ReplaceAllString(doc, ""), mark)
		}
		assert.Contains(t, doc, p.Room.Tile.Colour.String())
		assert.Contains(t, doc, p.Room.Grout.String())
	}
}
