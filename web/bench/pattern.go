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

// FurtherTile is what is asked about a tile of a pattern beside the job's; a size
// without a question is not asked.
type FurtherTile struct{ Name, Width, Height string }

// furtherTiles are the tiles that the bond has beside the job's, or may have.
func (b Bench) furtherTiles() []FurtherTile {
	switch b.bondKind() {
	case survey.BasketWeave:
		return []FurtherTile{{Name: "Dot, where there is one", Width: "Side of the square"}}
	case survey.MixedHeights:
		ask := FurtherTile{Name: "Second course", Height: "Height"}
		if b.Typed.Bond.Along == "plumb" {
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

// hasTile tells whether a further tile has a size.
func (b Bench) hasTile(i int) bool {
	t := b.Typed.Bond.Tiles
	return i < len(t) && t[i].Width+t[i].Height != ""
}

// bondNote says how the sizes of the tile are meant in a pattern.
func (b Bench) bondNote() string {
	switch b.bondKind() {
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
	case survey.Herringbone, survey.DoubleHerringbone:
		return "Any rectangle closes."
	}
	return ""
}
