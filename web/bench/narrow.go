package bench

import (
	"strings"

	"coursewright/web/page"
)

var laidChoices = page.Choices("", "as is best", "bond", "in the bond", "single", "single tiles of its own width")

// narrowWalls lists the walls that may be laid in single tiles, which are no wider than a tile,
// and those of which the job says how they are laid.
func (b Bench) narrowWalls() []int {
	var out []int
	for i, w := range b.Typed.Walls {
		if w.Laid != "" || i < len(b.Plan.Room.Walls) && b.Plan.Room.MayBeSingle(b.Plan.Room.Walls[i]) {
			out = append(out, i)
		}
	}
	return out
}

// narrowLine is the one line of the closed section.
func narrowLine(b Bench) string {
	var out []string
	for _, i := range b.narrowWalls() {
		if i >= len(b.Plan.Room.Walls) {
			continue
		}
		how := "in the bond"
		if b.Plan.Room.Walls[i].Single {
			how = "single tiles"
		}
		out = append(out, b.Typed.Walls[i].Name+": "+how)
	}
	return strings.Join(out, ", ")
}
