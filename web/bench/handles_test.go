package bench

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"coursewright/layout"
	"coursewright/layout/keep"
	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/web/drawing"
	"coursewright/web/form"
	"coursewright/web/shapes"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Course line and start hang on tile, or beside it. Found on the walls beside a bench, where the
// line runs under the seat: their handles hung in the air.
func TestCourseLineAndStartHangOnTile(t *testing.T) {
	for _, key := range []string{"bench", "corner bench", "half wall", "tub"} {
		job, err := shapes.New(key, "mm", key)
		require.NoError(t, err)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		for i, w := range plan.Walls {
			for _, h := range drawing.Elevation(plan, i, drawing.Options{Handles: true, Wide: 1000 * drawing.Pixel}).Handles {
				if h.ID != "course" && h.ID != "start" {
					continue
				}
				near := slices.ContainsFunc(w.Pieces, func(p piece.Piece) bool {
					b, joint := p.Face.Bounds(), plan.Room.Joint
					return b.Left-joint <= h.X && h.X <= b.Right+joint && b.Bottom-joint <= h.Y && h.Y <= b.Top+joint
				})
				under := h.Y < plan.Walls[i].Shape.Region.Bounds().Bottom && h.Y > w.Shape.Region.Bounds().Bottom-plan.Room.Tile.Height-plan.Room.Joint
				assert.True(t, near || under, "%s: %s of %s", key, h.ID, w.Found.Name)
			}
		}
	}
}

// A handle that is let go where it stands is one that the form knows, and moves no tile:
// bands, strips, fixtures, stops and all that was measured.
func TestAHandleThatStaysMovesNothing(t *testing.T) {
	seen := map[string]bool{}
	for _, key := range []string{"trimmed", "banded", "strip", "niche"} {
		job, err := shapes.New(key, "mm", key)
		require.NoError(t, err)
		plan, err := layout.Now(job)
		require.NoError(t, err)
		for i := range plan.Walls {
			for _, h := range drawing.Elevation(plan, i, drawing.Options{Handles: true, Wide: 1000 * drawing.Pixel}).Handles {
				kind, _, _ := strings.Cut(h.ID, " ")
				if h.ID == "course" || h.ID == "start" {
					continue
				}
				seen[kind] = true
				say := func(l length.Length) string { return l.MillimetreText() + " mm" }
				value := map[string]string{"x": say(h.X), "y": say(h.Y), "xy": say(h.X) + ";" + say(h.Y)}[h.Axis]
				moved, err := shapes.New(key, "mm", key)
				require.NoError(t, err)
				require.NoError(t, form.Apply(&moved, "place "+strconv.Itoa(i+1)+" "+h.ID+"="+value), h.ID)
				again, err := layout.Now(moved)
				if err != nil {
					continue // measured to a thousandth where a tape's marks are asked for
				}
				assert.True(t, keep.Same(plan.Walls, again.Walls) || kind == "band", "%s: %s", key, h.ID)
			}
		}
	}
	for _, kind := range []string{"band", "fixture", "stop", "move", "base", "head", "pipe"} {
		assert.True(t, seen[kind], kind)
	}
}
