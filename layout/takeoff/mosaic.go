package takeoff

import (
	"fmt"
	"slices"

	"coursewright/layout/mosaic"
	"coursewright/layout/survey"
)

// sheets is the line of a tile that is bought by the sheet, for the fields that are laid in
// it, of a band only its own: whole sheets, and those that parts are cut from along their
// joints. The spare is whole sheets; a box holds sheets.
func (in Input) sheets(t survey.TileSize, band string, set Settings) Line {
	var fields []mosaic.Field
	for _, f := range in.mosaics {
		of := f.Band
		if !slices.ContainsFunc(in.Room.Bands, func(b survey.BandFound) bool { return b.Name == of }) {
			of = ""
		}
		if f.Tile == t && of == band {
			fields = append(fields, f)
		}
	}
	b := mosaic.Buy(fields)
	l := boxed(bought(sheeted, "sheet", b.Full+b.From, set.Breakage, ""), t)
	size := t.Sheet
	if len(fields) > 0 {
		size = fields[0].Size
	}
	l.Because = fmt.Sprintf("sheets of %s: %d whole", size.Counted(size.Across, size.Up), b.Full)
	if b.Parts > 0 {
		l.Because += fmt.Sprintf(", %d cut along their joints into %s", b.From, counted(b.Parts, "part"))
	}
	l.Because += fmt.Sprintf(", and %d spare (%d %%%s)", l.Spare, set.Breakage, spareSource(in.Room.Bond))
	return l
}

// sheeted is what the room's tile is called where it comes on sheets.
const sheeted = "mosaic, by the sheet"

// bySheets turns a count of the room's tiles into one of sheets.
func bySheets(tiles int, room survey.Room) int {
	return int(ceil(int64(tiles), int64(room.Bond.Sheet(room.Tile, room.Joint).Tiles())))
}
