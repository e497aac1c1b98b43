package layout

// stripFile is a strip of other tile up a wall, in the coordinates of the wall.
type stripFile struct {
	Name   string      `json:"name"`
	Letter string      `json:"letter"` // how its pieces begin
	Left   mm          `json:"left"`   // of its tile
	Right  mm          `json:"right"`
	Line   mm          `json:"line"`  // the bottom edge of one of its courses
	Width  mm          `json:"width"` // of one tile
	Height mm          `json:"height"`
	Region [][][2]mm   `json:"region"`
	Pieces []pieceFile `json:"pieces"`
}

// anewFile is where the bond begins afresh beyond a strip that parts the wall.
type anewFile struct {
	From mm `json:"from"`
	X    mm `json:"x"`
}

func stripsOf(w Wall) []stripFile {
	var out []stripFile
	for i := range w.Strips {
		s := &w.Strips[i]
		one := stripFile{Name: w.Found.Openings[s.Opening].Name, Letter: s.Found.Letter, Left: s.Box.Left.Millimetres(), Right: s.Box.Right.Millimetres(),
			Line: s.Line.Millimetres(), Width: s.Tile.Width.Millimetres(), Height: s.Tile.Height.Millimetres(),
			Region: ringsOf(s.Shape.Region), Pieces: make([]pieceFile, len(s.Pieces))}
		for k, p := range s.Pieces {
			one.Pieces[k] = pieceOf(s.Wall, p)
		}
		out = append(out, one)
	}
	return out
}

func anewOf(w Wall) []anewFile {
	var out []anewFile
	for _, a := range w.Start.Anew {
		out = append(out, anewFile{a.From.Millimetres(), a.Edge.Millimetres()})
	}
	return out
}
