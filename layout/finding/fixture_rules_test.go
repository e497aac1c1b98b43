package finding

import (
	"coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// fixtureCases are those of TestRules for fixtures.
func fixtureCases() []ruleCase {
	on := func(p fixture.Placed) func(*Input) {
		return func(in *Input) {
			p := p
			p.Found.Name = "bar"
			in.Walls[0].Fixtures = []fixture.Placed{p}
		}
	}
	bar := survey.FixtureFound{Kind: survey.GrabBar}
	hole := func(clear length.Length, piece string) fixture.Placed {
		return fixture.Placed{Found: bar, Holes: []fixture.Hole{{Clear: 2 * inch, Piece: "B-01-01"}, {Clear: clear, Piece: piece}}}
	}
	// The top of a bar of 1 1/4 in is 5/8 in over its middle. The rim is 15 in over the floor.
	overTub := func(y length.Length) func(*Input) {
		return func(in *Input) {
			on(fixture.Placed{Found: bar, At: plane.Point{X: 20 * inch, Y: y - 5*inch/8}})(in)
			in.Walls[0].Found.Base = []survey.SegmentFound{{Meets: survey.Tub, Readings: readings(0, 15, 54, 15)}, {Meets: survey.Floor, Readings: readings(54, 0, 60, 0)}}
		}
	}
	dish := func(wide, high length.Length) func(*Input) {
		f := survey.FixtureFound{Kind: survey.SoapDish, Width: wide, High: high}
		return func(in *Input) {
			in.Walls[0].Pieces = nil // tiles of 4 1/4 in, joints left out
			for i := range length.Length(4) {
				p := tile("B-01-01", 1, 0, 0, 0, 0)
				p.Tile = plane.Rect{Left: i * 17 * inch / 4, Right: (i + 1) * 17 * inch / 4, Top: 17 * inch / 4}
				in.Walls[0].Pieces = append(in.Walls[0].Pieces, p)
			}
			on(fixture.Placed{Found: f, Box: plane.Rect{Left: inch / 8, Right: inch/8 + wide, Bottom: inch / 8, Top: inch/8 + high}})(in)
		}
	}
	offTile := func(y length.Length) func(*Input) {
		return func(in *Input) {
			on(fixture.Placed{Found: survey.FixtureFound{Kind: survey.SoapDish}, Box: plane.Rect{Left: inch, Right: 7 * inch, Bottom: y, Top: y + 4*inch}})(in)
			in.Walls[0].Shape.Region = plane.Region{plane.Rect{Right: 60 * inch, Bottom: -40 * inch, Top: 40 * inch}.Ring(0)}
		}
	}
	// A niche 5 to 17 in from the left end and 0 to 12 in over the level line, and a glass line.
	glass := func(x length.Length) func(*Input) {
		return func(in *Input) {
			on(fixture.Placed{Found: survey.FixtureFound{Kind: survey.GlassLine}, Box: plane.Rect{Left: x, Right: x, Bottom: -30 * inch, Top: 30 * inch}})(in)
			in.Walls[0].Shape.Region = plane.Region{plane.Rect{Right: 60 * inch, Bottom: -40 * inch, Top: 40 * inch}.Ring(0)}
			in.Walls[0].Found.Openings = []survey.OpeningFound{{Kind: survey.Niche, Name: "shelf"}, {Kind: survey.Pipe, Name: "valve", At: 30 * inch, Diameter: 2 * inch}}
			in.Walls[0].Start.Placed.Openings = []survey.Edges{{Left: 5 * inch, Right: 17 * inch, Top: 12 * inch}, {}}
		}
	}
	// A valve of 4 in, and a bar of 16 in between its plates over it: from the top of its hole, 2 1/8 in over its middle, to the
	// lower side of a bar of 1 1/4 in whose middle is 4 in over it are 1 1/4.
	overValve := func(y length.Length) func(*Input) {
		return func(in *Input) {
			on(fixture.Placed{Found: bar, At: plane.Point{X: 30 * inch, Y: y}, Box: plane.Rect{Left: 22 * inch, Right: 38 * inch, Bottom: y, Top: y}})(in)
			in.Walls[0].Found.Openings = []survey.OpeningFound{{Kind: survey.Pipe, Name: "valve", At: 30 * inch, Diameter: 4 * inch}}
		}
	}
	return []ruleCase{
		{"a bar near a valve", BarNearAPipe, overValve(4 * inch), []string{`Bar on back is 1 1/4" from the hole for valve; 1 1/2" is the least for a hand.`}},
		{"a bar clear of it", BarNearAPipe, overValve(5 * inch), nil},
		{"a bar across it, of which another speaks", BarNearAPipe, overValve(2 * inch), nil},
		{"holes clear of the joints", HoleNearAJoint, on(hole(inch/2, "B-01-01")), nil},
		{"a hole near a joint", HoleNearAJoint, on(hole(3*inch/8, "B-02-01")), []string{`A hole for bar leaves 3/8" of tile beside it in B-02-01; 1/2" is better.`}},
		{"a hole at the edge of a tile", HoleNearAJoint, on(hole(0, "B-02-01")), []string{`A hole for bar reaches the edge of B-02-01; 1/2" of tile round it is better.`}},
		{"a hole in a joint", HoleNearAJoint, on(hole(-inch/8, "")), []string{`A hole for bar is in a joint or at the edge of the tile; 1/2" of tile round it is better.`}},
		{"a dish on the tile", FixtureOffTheTile, offTile(0), nil},
		{"a dish that reaches over the head", FixtureOffTheTile, offTile(38 * inch), []string{"Bar does not stand on the tile of back."}},
		{"glass beside a niche", FixtureOffTheTile, glass(17 * inch), nil},
		{"glass across a niche", FixtureOffTheTile, glass(16 * inch), []string{"Bar on back stands across niche shelf."}},
		{"glass across a pipe, 1/16 in from its edge", FixtureOffTheTile, glass(31*inch + inch/16), []string{"Bar on back stands across pipe valve."}},
		{"a shelf on a joint line", FixtureOffTheJointLines, on(fixture.Placed{}), nil},
		{"a shelf off the joint lines", FixtureOffTheJointLines, on(fixture.Placed{Off: inch}), []string{`Bar on back stands 1" from the nearest joint line.`}},
		// ADA 609.4: 33 to 36 in; 607.4.2: 8 to 10 in over the rim. With a rim at 15 in the lower bar is at 23 to 25 in.
		{"a low bar over a tub", HeightOfAGrabBar, overTub(23 * inch), nil},
		{"a low bar at its highest", HeightOfAGrabBar, overTub(25 * inch), nil},
		{"a bar between", HeightOfAGrabBar, overTub(27 * inch), []string{`The top of bar is 27" over the floor and 12" over the rim.`}},
		{"a bar at 34 in", HeightOfAGrabBar, overTub(34 * inch), nil},
		{"a bar over 36 in", HeightOfAGrabBar, overTub(37 * inch), []string{`The top of bar is 37" over the floor and 22" over the rim.`}},
		{"a bar without a tub", HeightOfAGrabBar, func(in *Input) { on(fixture.Placed{Found: bar, At: plane.Point{Y: -inch}})(in) }, []string{`The top of bar is 39 5/8" over the floor.`}},
		// 4 by 4 in takes one tile of 4 1/4 in, 4 by 6 in one and a half (how-to pages).
		{"a dish in one tile", SoapDishInTheTile, dish(4*inch, 4*inch), []string{`Bar, 4" by 4", stands over 1 tile.`}},
		{"a dish in a tile and a half", SoapDishInTheTile, dish(6*inch, 4*inch), []string{`Bar, 6" by 4", stands over 2 tiles.`}},
		{"blocking for a bar", FixtureBlocking, on(fixture.Placed{Found: bar, At: plane.Point{Y: -5 * inch}}), []string{`Bar needs blocking on back, 5" under the level line.`}},
		{"blocking at the level line", FixtureBlocking, on(fixture.Placed{Found: bar, At: plane.Point{}}), []string{`Bar needs blocking on back, on the level line.`}},
		{"blocking for glass", FixtureBlocking, on(fixture.Placed{Found: survey.FixtureFound{Kind: survey.GlassLine}, At: plane.Point{X: 30 * inch}}),
			[]string{`Bar needs blocking along its line on back, 30" from its left end.`}},
		{"a shelf needs none", FixtureBlocking, on(fixture.Placed{Found: survey.FixtureFound{Kind: survey.CornerShelf}}), nil},
	}
}
