package layout

import "coursewright/layout/mosaic"

// mosaicFile is a wall, a band or a face that is laid by the sheet.
type mosaicFile struct {
	Name   string      `json:"name"` // of the wall, or "back of niche shelf"
	Wall   string      `json:"wall"`
	Across int         `json:"across"` // tiles or groups of a sheet
	Up     int         `json:"up"`
	Each   int         `json:"each,omitempty"` // tiles of a group, where groups are counted
	Sheets []sheetFile `json:"sheets"`
}

// sheetFile is one sheet, or what of it is left when it is cut along its joints.
type sheetFile struct {
	ID     string   `json:"id"`
	Whole  int      `json:"whole"` // tiles
	Cut    int      `json:"cut"`
	Wide   int      `json:"wide"` // tiles or groups that are left, each way
	High   int      `json:"high"`
	Pieces []string `json:"pieces"`
}

func (p Plan) mosaicOf(fields []mosaic.Field) []mosaicFile {
	var out []mosaicFile
	for _, f := range fields {
		m := mosaicFile{Name: f.Name, Wall: p.Walls[f.Wall].Found.Name, Across: f.Size.Across, Up: f.Size.Up, Each: f.Size.Each, Sheets: []sheetFile{}}
		for _, s := range f.Sheets {
			m.Sheets = append(m.Sheets, sheetFile{s.ID, s.Whole, s.Cut, s.Wide, s.High, s.Pieces})
		}
		out = append(out, m)
	}
	return out
}
