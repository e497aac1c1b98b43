package shapes

import "coursewright/layout/survey"

// band lays two courses of 2 in (50 mm) mosaic round all walls, its bottom edge about
// 60 in (1500 mm) over the base, 20 in (500 mm) over the level line.
func (m maker) band(job *survey.Job) {
	job.Bands = []survey.Band{{Name: "mosaic", Courses: 2, Near: m.say("20", "500"),
		Tile:   survey.Tile{Width: m.say("1 7/8", "48"), Height: m.say("1 7/8", "48"), Thickness: m.say("5/16", "8"), Colour: "#4f6b6e"},
		Bottom: survey.Mark{From: m.say("17", "430"), To: m.say("23", "580")}}}
}

// dotted lays basket weave with dots round all walls, between two liners, in a room in stack bond. The weave
// is as high as three of its tiles crosswise need: those that stand are cut alike at both edges.
func (m maker) dotted(job *survey.Job) {
	thick := m.say("5/16", "8")
	job.Bond = survey.Bond{Kind: string(survey.Stack)}
	liner := survey.Band{Name: "lower liner", Near: m.say("16", "400"), Bottom: survey.Mark{From: m.say("13", "330"), To: m.say("19", "480")},
		Tile: survey.Tile{Width: m.say("7 7/8", "200"), Height: m.say("5/8", "15"), Thickness: thick, Colour: "#2f3e46"}}
	weave := survey.Band{Name: "dotted weave", Upon: liner.Name, Height: m.say("5 1/8", "128"),
		Tile: survey.Tile{Width: m.say("4", "100"), Height: m.say("2", "50"), Thickness: thick, Colour: "#e9e4da"},
		Bond: survey.Bond{Kind: string(survey.BasketWeave), Tiles: []survey.Tile{{Width: m.say("7/8", "22"), Colour: "#2f3e46"}}}}
	upper := liner
	upper.Name, upper.Upon, upper.Near, upper.Bottom = "upper liner", weave.Name, "", survey.Mark{}
	job.Bands = []survey.Band{liner, weave, upper}
}

// twoTiles lays large tile over a line about 48 in (1200 mm) over the base.
func (m maker) twoTiles(job *survey.Job) {
	job.Bands = []survey.Band{{Name: "tile above", ToHead: true, Near: m.say("8", "200"),
		Tile:   survey.Tile{Width: m.say("7 7/8", "198"), Height: m.say("7 7/8", "198"), Thickness: m.say("5/16", "8"), Colour: "#d9dfd6"},
		Bottom: survey.Mark{From: m.say("4", "100"), To: m.say("12", "300")}}}
}

// strip stands three columns of 2 in (50 mm) mosaic up the left wall, behind a valve
// and a shower arm in the middle of it.
func (m maker) strip(job *survey.Job) {
	w, at := &job.Walls[0], m.say("18", "450")
	w.Openings = append(w.Openings,
		survey.Opening{Kind: string(survey.Pipe), Name: "valve", At: at, Height: &survey.Measure{Plain: m.say("-2", "-50")}, Diameter: m.say("4", "100")},
		survey.Opening{Kind: string(survey.Pipe), Name: "shower arm", At: at, Height: &survey.Measure{Plain: m.say("36", "900")}, Diameter: m.say("7/8", "22")})
	w.Strips = []survey.Strip{{Name: "mosaic", Columns: 3, Middle: survey.Mark{At: at},
		Tile: survey.Tile{Width: m.say("1 7/8", "48"), Height: m.say("1 7/8", "48"), Thickness: m.say("5/16", "8"), Colour: "#4f6b6e"}}}
}
