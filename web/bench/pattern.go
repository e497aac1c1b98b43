package bench

import "coursewright/layout/survey"

// bondKind is the bond as typed.
func (b Bench) bondKind() survey.BondKind { return survey.BondKind(b.Typed.Bond.Kind) }

// rowsRun asks which way the rows of the bond go.
func (b Bench) rowsRun() string {
	if (survey.BondRule{Kind: b.bondKind()}).Coursed() {
		return "Courses run"
	}
	return "Rows run"
}

// twoWays tells whether a pattern looks another with its rows plumb.
func twoWays(kind survey.BondKind) bool {
	return kind == survey.Hexagon || kind == survey.Picket || kind == survey.Chevron || kind == survey.MixedHeights
}

// FurtherTile is what is asked about a tile of a pattern beside the job's; a size
// without a question is not asked.
type FurtherTile struct{ Name, Width, Height string }

// furtherTiles are the tiles that a bond has beside the first, or may have.
func furtherTiles(bond survey.Bond) []FurtherTile {
	switch survey.BondKind(bond.Kind) {
	case survey.BasketWeave:
		return []FurtherTile{{Name: "Dot, where there is one", Width: "Side of the square"}}
	case survey.MixedHeights:
		ask := FurtherTile{Name: "Second course", Height: "Height"}
		if bond.Along == "plumb" {
			ask = FurtherTile{Name: "Second column", Width: "Width"}
		}
		third := ask
		third.Name = "Third, where there is one"
		return []FurtherTile{ask, third}
	case survey.Pinwheel:
		return []FurtherTile{{Name: "The other square", Width: "Side"}}
	case survey.Modular:
		return []FurtherTile{{"Two modules by one", "Width", "Height"}, {"Two modules by two", "Width", "Height"}, {"Three modules by two", "Width", "Height"}}
	}
	return nil
}

// hasTile tells whether a further tile of a bond has a size.
func hasTile(bond survey.Bond, i int) bool {
	return i < len(bond.Tiles) && bond.Tiles[i].Width+bond.Tiles[i].Height != ""
}

// fitOf is the button that takes the first sizes with which a bond closes, or the second.
func fitOf(path string, i int) string {
	if i > 0 {
		return "fit " + path + " second"
	}
	return "fit " + path
}

// bondNote says how the sizes of the tile are meant in a pattern.
func bondNote(kind survey.BondKind) string {
	switch kind {
	case survey.Hexagon:
		return "The tile's size is the distance between two of its sides, typed as both width and height. Level rows have the points up, plumb ones the flat sides."
	case survey.Picket:
		return "Width is across the tile, height from point to point; the points are 45°. In plumb rows it is the other way round."
	case survey.Chevron:
		return "The tile is made with slanted ends: the longer size is along its long edge, the shorter one square to it."
	case survey.Modular:
		return "The tile is the smallest square, one module less a joint; the others are whole modules less a joint."
	case survey.BasketWeave:
		return "Without a dot a tile is as long as several side by side with their joints; with one, as its width, two dots and two joints."
	case survey.DoubleHerringbone:
		return "Any rectangle closes. A tile as long as two side by side with their joint gives a basket weave: its pairs are squares."
	case survey.Herringbone:
		return "Any rectangle closes. Where the tile is as long as several side by side with their joints, all edges stay on one grid, and cuts along base and ceiling are alike."
	}
	return ""
}
