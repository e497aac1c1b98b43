package survey

import (
	"fmt"
	"strconv"
)

// Sheet says that tile comes glued to sheets, and of how many tiles one is, along its
// rows and from row to row. Within a sheet the joints are those of the job.
type Sheet struct {
	Across int `json:"across"`
	Up     int `json:"up"`
}

// SheetSize is the same once it is read; zero for tile that is set one by one.
type SheetSize struct{ Across, Up int }

// Any tells whether tile comes on sheets.
func (s SheetSize) Any() bool { return s.Across > 0 }

// Tiles is how many tiles a sheet has.
func (s SheetSize) Tiles() int { return s.Across * s.Up }

// mostOnSheet is how many tiles a sheet has at most each way: 12 in of 3/8 in tile
// with its joints are 24 to 32. A practical bound.
const mostOnSheet = 100

// sheet reads how many tiles are on a sheet.
func (r *resolver) sheet(p path, s *Sheet) SheetSize {
	if s == nil {
		return SheetSize{}
	}
	before := len(r.faults)
	count := func(p path, n int) {
		if n < 1 || n > mostOnSheet {
			r.faults.add(p, strconv.Itoa(n), fmt.Sprintf("how many tiles a sheet has that way, a whole number from 1 to %d", mostOnSheet))
		}
	}
	count(p.dot("across"), s.Across)
	count(p.dot("up"), s.Up)
	if len(r.faults) == before && s.Across*s.Up == 1 {
		r.faults.add(p, "a sheet of one tile", "more tiles on a sheet, or no sheet")
	}
	if len(r.faults) > before {
		return SheetSize{}
	}
	return SheetSize(*s)
}

// Sheeted tells whether tile on sheets is laid in the bond: squares and rectangles in
// stack bond, and hexagons.
func (b BondRule) Sheeted() bool { return b.Kind == Stack || b.Kind == Hexagon }

// sheeted refuses tile on sheets in a bond that no sheet is made in.
func (r *resolver) sheeted(p path, b BondRule, s SheetSize) {
	if s.Any() && b.Kind != "" && !b.Sheeted() {
		r.faults.add(p, fmt.Sprintf("%s with tile on sheets", quote(string(b.Kind))), "stack or hexagon: sheets are laid so; or no sheet, to set the tiles one by one")
	}
}

// sheetedLegs refuses legs in single tiles beside tile on sheets.
func (r *resolver) sheetedLegs(room Room) {
	for i, w := range room.Walls {
		for k, s := range w.Base {
			if room.Tile.Sheet.Any() && s.Leg == SingleTiles {
				r.faults.add(path("walls").at(i).dot("base").at(k).dot("leg"), "“single” beside tile on sheets", "bond or none")
			}
		}
	}
}
