package layout

// bandFile is where a band stands, and where its tile starts on each of its walls.
type bandFile struct {
	Name   string          `json:"name"`
	Bottom mm              `json:"bottom"`
	Top    mm              `json:"top"`
	Width  mm              `json:"width"` // of its tile
	Height mm              `json:"height"`
	Line   *mm             `json:"line,omitempty"` // of one laid in a pattern: its line
	Walls  []bandStartFile `json:"walls"`
}

type bandStartFile struct {
	Wall string `json:"wall"`
	Edge mm     `json:"edge"` // the left edge of a tile of its lowest course
}

// addBands adds the bands, and says of each piece and run of their tile whose it is.
func (p Plan) addBands(d *planFile) {
	for i, b := range p.Setout.Bands {
		t := p.Room.Bands[i].Tile
		out := bandFile{Name: b.Name, Bottom: b.Bottom.Millimetres(), Top: b.Top.Millimetres(), Width: t.Width.Millimetres(), Height: t.Height.Millimetres()}
		if !p.Room.Bands[i].Bond.Coursed() {
			line := mm(b.Line.Millimetres())
			out.Line = &line
		}
		for k, w := range b.Walls {
			out.Walls = append(out.Walls, bandStartFile{p.Walls[w].Found.Name, b.Edges[k].Millimetres()})
			for n, piece := range p.Walls[w].Pieces {
				if piece.Laid == i+1 {
					d.Walls[w].Pieces[n].Band = b.Name
				}
			}
			p.bandWithin(d, w, i)
			for n, run := range p.Walls[w].Runs {
				if run.Laid == i+1 {
					d.Walls[w].Runs[n].Band = b.Name
				}
			}
		}
		d.Bands = append(d.Bands, out)
	}
}

// bandWithin says of the pieces inside the openings of a wall which are of a band's tile.
func (p Plan) bandWithin(d *planFile, wall, band int) {
	for k, in := range p.Walls[wall].Insides {
		for n, f := range in.Faces {
			for m, piece := range f.Pieces {
				if piece.Laid == band+1 {
					d.Walls[wall].Insides[k].Faces[n].Pieces[m].Band = p.Room.Bands[band].Name
				}
			}
		}
	}
}
