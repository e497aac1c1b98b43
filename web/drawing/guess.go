package drawing

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout"
)

// What nobody has measured yet is drawn apart: figures that are guesses are grey, a wall with one has
// a dashed outline, and as long as there are any all that is decided hangs on them and is grey too.

// guessed tells whether a field of the job that begins so is a guess.
func (b *board) guessed(path string) bool {
	return slices.ContainsFunc(b.plan.Room.Guesses, func(p string) bool { return strings.HasPrefix(p, path) })
}

// measured is the colour of a figure that was measured, or is a guess where a field begins so.
func (b *board) measured(path string) Colour {
	if b.guessed(path) {
		return Grey
	}
	return Black
}

// heightsOf is the colour of the heights of a stretch of base of a wall.
func (b *board) heightsOf(wall, segment int) Colour {
	list := fmt.Sprintf("walls[%d].base[%d].readings[", wall, segment)
	if slices.ContainsFunc(b.plan.Room.Guesses, func(p string) bool { return strings.HasPrefix(p, list) && strings.HasSuffix(p, ".drop") }) {
		return Grey
	}
	return Black
}

// wallPath is the path of a wall in the job.
func (b *board) wallPath(w layout.Wall) string {
	return fmt.Sprintf("walls[%d].", slices.IndexFunc(b.plan.Walls, func(o layout.Wall) bool { return o.Found.Name == w.Found.Name }))
}

// sure is the colour that a figure or line is drawn in: blue is decided, and nothing is by guesses.
func (b *board) sure(c Colour) Colour {
	if c == Blue && b.plan.Room.Guess() {
		return Grey
	}
	return c
}

func (b *board) sureInk(ink Ink) Ink {
	ink.Fill, ink.Line = b.sure(ink.Fill), b.sure(ink.Line)
	return ink
}
