package finding

import (
	"fmt"

	"coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// fixtureRules judge what is fixed to the walls.
func fixtureRules() []Rule {
	return []Rule{
		{
			Name: HoleNearAJoint, Grade: Warning, judge: holesNearJoints,
			Why:    "A hole drilled close to an edge breaks the tile out, and a screw in a joint lets water in.",
			Do:     "Move the fixture a little, or give it a range of heights; drill with a diamond bit and water, never with the hammer on.",
			Source: practice + ": no distance from rim to edge is published",
		},
		{
			Name: FixtureOffTheTile, Grade: Warning, judge: offTheTile,
			Why:    "What is fixed beside the tile is fixed to bare wall, and water gets behind it.",
			Do:     "Measure its place again, move what it runs into, or let the tile run further.",
			Source: "plain geometry",
		},
		{
			Name: BarNearAPipe, Grade: Warning, judge: barsNearPipes,
			Why:    "A hand that grips the bar needs room round it, and the plate over a pipe is wider than its hole.",
			Do:     "Move the bar until the plate of the valve or the handle leaves a hand's breadth free. Where a valve stands is a plumber's matter.",
			Source: "ADA 609.3 (1 1/2 in (38 mm) from a bar to what stands out under it, at its ends, and to shower controls), from memory, look it up",
		},
		{
			Name: FixtureOffTheJointLines, Grade: Advice, judge: offTheLines,
			Why:    "A shelf that stands on a joint line needs no cut tile over it, and looks as if it belonged there.",
			Do:     "Give it a range of heights with a joint line in it, or cut the tile over it.",
			Source: practice,
		},
		{
			Name: HeightOfAGrabBar, Grade: Advice, judge: barHeights,
			Why:    "At another height a bar is no help to somebody who gets up or slips.",
			Do:     "Have the top of the bar 33 to 36 in (838 to 914 mm) over the floor, or, as the lower one on a tub's back wall, 8 to 10 in (203 to 254 mm) over the rim. At home the person who will use it decides.",
			Source: "ADA 609.4 and 607.4.2: binding in public places, not in a house; look it up",
		},
		{
			Name: SoapDishInTheTile, Grade: Advice, judge: dishes,
			Why:    "A dish of 4 by 4 in takes one tile of that size out, one of 4 by 6 in a tile and a half; its flange covers about 1/4 in.",
			Do:     "Leave out or cut the tile under the dish when the wall is set, and set the dish last. The cut pieces are not in the cut schedule.",
			Source: "how-to pages",
		},
		{
			Name: FixtureBlocking, Grade: Caution, judge: blocking,
			Why:    "What is screwed to board alone tears out when somebody falls or leans on it.",
			Do:     "Set blocking between the studs before the board, photograph it, and seal every screw hole. Ask a licensed trade where a stud would have to be cut.",
			Source: "ADA 609.8 asks for 250 lb (1112 N), from memory, look it up; else " + practice,
		},
	}
}

// eachFixture asks of every fixture what to say of it; empty is nothing.
func (in Input) eachFixture(say func(wall int, p fixture.Placed) (string, plane.Point)) []place {
	var all []place
	for i, w := range in.Walls {
		for _, p := range w.Fixtures {
			if text, at := say(i, p); text != "" {
				all = append(all, onPoint(i, at, text))
			}
		}
	}
	return all
}

func holesNearJoints(in Input) []place {
	keep := fixture.Keep(in.Room.Units)
	return in.eachFixture(func(_ int, p fixture.Placed) (string, plane.Point) {
		hole, ok := p.Least()
		if !ok || hole.Clear >= keep {
			return "", hole.At
		}
		if hole.Piece == "" {
			return fmt.Sprintf("A hole for %s is in a joint or at the edge of the tile; %s of tile round it is better.", p.Found.Name, in.fine(keep)), hole.At
		}
		if hole.Clear <= 0 {
			return fmt.Sprintf("A hole for %s reaches the edge of %s; %s of tile round it is better.", p.Found.Name, hole.Piece, in.fine(keep)), hole.At
		}
		return fmt.Sprintf("A hole for %s leaves %s of tile beside it in %s; %s is better.", p.Found.Name, in.exact(hole.Clear, keep), hole.Piece, in.fine(keep)), hole.At
	})
}

// offTheTile judges fixtures that do not stand wholly within the box of the tile.
func offTheTile(in Input) []place {
	return in.eachFixture(func(i int, p fixture.Placed) (string, plane.Point) {
		w := in.Walls[i]
		tile, b := w.Shape.Region.Bounds(), p.Box
		for _, h := range p.Holes {
			b.Bottom, b.Top = min(b.Bottom, h.At.Y), max(b.Top, h.At.Y)
		}
		if p.Found.InCorner() { // the tile of the next wall stands between it and the board
			b.Left, b.Right = max(b.Left, tile.Left), min(b.Right, tile.Right)
		}
		if name := across(in, w, b); name != "" {
			return fmt.Sprintf("%s on %s stands across %s.", capital(p.Found.Name), w.Found.Name, name), p.At
		}
		if len(w.Shape.Region) == 0 || tile.Left <= b.Left && b.Right <= tile.Right && tile.Bottom <= b.Bottom && b.Top <= tile.Top {
			return "", p.At
		}
		return fmt.Sprintf("%s does not stand on the tile of %s.", capital(p.Found.Name), w.Found.Name), p.At
	})
}

// barsNearPipes judges the room between grab bars and the holes of pipes that they do not stand across.
func barsNearPipes(in Input) []place {
	return in.eachFixture(func(i int, p fixture.Placed) (string, plane.Point) {
		if p.Found.Kind != survey.GrabBar {
			return "", p.At
		}
		bar := p.Box
		bar.Bottom, bar.Top = min(bar.Bottom, p.At.Y-in.Limits.HalfBar), max(bar.Top, p.At.Y+in.Limits.HalfBar)
		for _, o := range in.Walls[i].Found.Openings {
			if o.Kind != survey.Pipe {
				continue
			}
			e := o.Takes(in.Room.Units)
			across, up := max(0, e.Left-bar.Right, bar.Left-e.Right), max(0, e.Bottom-bar.Top, bar.Bottom-e.Top)
			if far := max(across, up); far > 0 && far < in.Limits.RoundABar {
				return fmt.Sprintf("%s on %s is %s from the hole for %s; %s is the least for a hand.", capital(p.Found.Name), in.Walls[i].Found.Name, in.exact(far, in.Limits.RoundABar), o.Name, in.fine(in.Limits.RoundABar)), p.At
			}
		}
		return "", p.At
	})
}

// across names the opening that a box runs into: a niche, a window or a pipe; empty where
// it runs into none.
func across(in Input, w plan.Wall, b plane.Rect) string {
	for k, o := range w.Found.Openings {
		var e survey.Edges
		switch o.Kind {
		case survey.Niche, survey.Window:
			e = w.Start.Placed.Openings[k]
		case survey.Pipe:
			e = o.Takes(in.Room.Units)
		default:
			continue
		}
		if e.Left < b.Right && b.Left < e.Right && e.Bottom < b.Top && b.Bottom < e.Top {
			return o.Called()
		}
	}
	return ""
}

func offTheLines(in Input) []place {
	return in.eachFixture(func(i int, p fixture.Placed) (string, plane.Point) {
		if p.Off == 0 {
			return "", p.At
		}
		return fmt.Sprintf("%s on %s stands %s from the nearest joint line.", capital(p.Found.Name), in.Walls[i].Found.Name, in.tape(p.Off)), p.At
	})
}

// barHeights judges the top of a bar of 1 1/4 in against the floor, where one is
// measured, and on a tub's back wall against the rim under it.
func barHeights(in Input) []place {
	floor, known := in.lowest(survey.Floor)
	return in.eachFixture(func(i int, p fixture.Placed) (string, plane.Point) {
		if p.Found.Kind != survey.GrabBar {
			return "", p.At
		}
		top := p.At.Y + in.Limits.HalfBar
		tub, over := rimUnder(in.Walls[i].Found, p.At.X)
		within := func(l, low, high length.Length) bool { return low <= l && l <= high }
		l := in.Limits
		switch {
		case !known && !over, known && within(top-floor, l.BarLow, l.BarHigh), over && within(top-tub, l.BarOverRimLow, l.BarOverRimHigh):
			return "", p.At
		case !known:
			return fmt.Sprintf("The top of %s is %s over the rim.", p.Found.Name, in.tape(top-tub)), p.At
		case !over:
			return fmt.Sprintf("The top of %s is %s over the floor.", p.Found.Name, in.tape(top-floor)), p.At
		}
		return fmt.Sprintf("The top of %s is %s over the floor and %s over the rim.", p.Found.Name, in.tape(top-floor), in.tape(top-tub)), p.At
	})
}

// rimUnder is the height of the tub under a place on a wall.
func rimUnder(w survey.WallFound, x length.Length) (length.Length, bool) {
	for _, s := range w.Base {
		if n := len(s.Readings); s.Meets == survey.Tub && n > 0 && (n == 1 || s.Readings[0].At <= x && x <= s.Readings[n-1].At) {
			return survey.At(s.Readings, x), true
		}
	}
	return 0, false
}

// dishes counts the tiles that a soap dish takes, whole or in part.
func dishes(in Input) []place {
	return in.eachFixture(func(i int, p fixture.Placed) (string, plane.Point) {
		if p.Found.Kind != survey.SoapDish || p.Found.Flush {
			return "", p.At
		}
		n := 0
		for _, x := range in.Walls[i].Pieces {
			if x.Tile.Overlaps(p.Box) {
				n++
			}
		}
		return fmt.Sprintf("%s, %s by %s, stands over %s.", capital(p.Found.Name), in.tape(p.Found.Width), in.tape(p.Found.High), count(n, "tile")), p.At
	})
}

func blocking(in Input) []place {
	return in.eachFixture(func(i int, p fixture.Placed) (string, plane.Point) {
		if !p.Found.Blocked() {
			return "", p.At
		}
		if p.Found.Kind == survey.GlassLine {
			return fmt.Sprintf("%s needs blocking along its line on %s, %s from its left end.", capital(p.Found.Name), in.Walls[i].Found.Name, in.tape(p.At.X)), p.At
		}
		return fmt.Sprintf("%s needs blocking on %s, %s.", capital(p.Found.Name), in.Walls[i].Found.Name, in.fromLevel(p.At.Y)), p.At
	})
}

// fromLevel says where a height is.
func (in Input) fromLevel(y length.Length) string {
	switch {
	case y < 0:
		return in.tape(-y) + " under the level line"
	case y > 0:
		return in.tape(y) + " over the level line"
	}
	return "on the level line"
}
