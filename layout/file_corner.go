package layout

import (
	"coursewright/layout/cuts"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// cornerFile is an outside corner between two walls.
type cornerFile struct {
	Before string `json:"before"` // the wall left of it
	After  string `json:"after"`
	Is     string `json:"is"`              // "lap", "mitre", "profile", "bullnose"
	Laps   string `json:"laps,omitempty"`  // the wall whose tile laps, or that carries the profile
	Angle  int    `json:"angle,omitempty"` // of a mitre, between the walls
	Past   mm     `json:"past"`            // how far the finished edge stands past the corner of the boards

	// Of a running bond: courses with a piece on both walls, those that seem to run
	// round, and the tile edge on the wall after it that lets all of them.
	Courses int `json:"courses,omitempty"`
	Round   int `json:"round,omitempty"`
	Edge    *mm `json:"edge,omitempty"`
}

// mitreFile is one mitred edge.
type mitreFile struct {
	Wall   string   `json:"wall"`
	End    string   `json:"end"`   // "left", "right"
	Bevel  string   `json:"bevel"` // "45°"
	Back   mm       `json:"back"`  // how much shorter than the face
	Pieces []string `json:"pieces"`
}

// corners lists the outside corners; nil where there are none.
func (p Plan) corners() []cornerFile {
	var out []cornerFile
	for _, c := range plan.Corners(p.Room, p.Walls) {
		f := cornerFile{Before: p.Walls[c.Before].Found.Name, After: p.Walls[c.After].Found.Name, Is: string(c.How), Past: c.Past.Millimetres(), Courses: c.Courses, Round: c.Round}
		switch {
		case c.How == survey.Mitre:
			f.Angle = c.Angle
		case c.Laps:
			f.Laps = f.Before
		default:
			f.Laps = f.After
		}
		if c.Courses > 0 {
			edge := c.Edge.Millimetres()
			f.Edge = &edge
		}
		out = append(out, f)
	}
	return out
}

// mitresOf lists the mitred edges of a schedule; nil where there are none.
func mitresOf(s cuts.Schedule, walls []Wall) []mitreFile {
	var out []mitreFile
	for _, m := range s.Mitres {
		f := mitreFile{End: m.End, Bevel: m.Bevel, Back: m.Back.Millimetres(), Pieces: m.Pieces}
		for _, w := range plan.WithTops(walls) {
			if w.Found.Letter == m.Wall {
				f.Wall = w.Found.Name
			}
		}
		out = append(out, f)
	}
	return out
}
