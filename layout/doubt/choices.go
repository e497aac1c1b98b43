package doubt

import (
	"fmt"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// copied asks where two choices have tiles of different sizes, but one box at one price, or one name that holds
// a figure: who copies a choice and writes the size of another tile easily leaves the rest of the old one, and what is
// bought is then counted and paid by its box. Tiles of one line may well share a name without a size in it.
func (a *asker) copied() {
	for _, c := range a.job.Choices {
		if c.Name == a.job.Chosen || !a.otherSize(c.Tile) {
			continue
		}
		path, what := shared(a.job.Tile, c.Tile)
		if path == "" {
			continue
		}
		a.ask(Doubt{Rule: Copied, Path: path, Wall: -1,
			Text: fmt.Sprintf("The tile is %s × %s here and %s × %s in the choice “%s”, and both have the same %s. Write what is true of this tile.",
				a.job.Tile.Width, a.job.Tile.Height, c.Tile.Width, c.Tile.Height, c.Name, what)})
		return
	}
}

// otherSize tells whether the tile of a choice has another size than that of the job, either way up.
func (a *asker) otherSize(t survey.Tile) bool {
	width, err := length.Parse(t.Width, a.room.Units)
	height, bad := length.Parse(t.Height, a.room.Units)
	if err != nil || bad != nil {
		return false
	}
	here := a.room.Tile
	return (width != here.Width || height != here.Height) && (width != here.Height || height != here.Width)
}

// shared is what two tiles have alike that tiles of two sizes hardly have: the field and its words.
func shared(t, other survey.Tile) (path, what string) {
	box := t.Box != nil && other.Box != nil && t.Box.Count == other.Box.Count
	named := t.Name != "" && t.Name == other.Name
	switch {
	case box && t.Box.Price != "" && t.Box.Price == other.Box.Price && named:
		return "tile.box.price", "name, box and price"
	case box && t.Box.Price != "" && t.Box.Price == other.Box.Price:
		return "tile.box.price", "box and price"
	case box && t.Box.Count > 1 && named:
		return "tile.box.count", "name and box"
	case named && strings.ContainsAny(t.Name, "0123456789"):
		return "tile.name", "name"
	}
	return "", ""
}
