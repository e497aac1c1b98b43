// Package shapes makes new jobs from a few plain rooms, with sizes to type
// over. The sizes are common ones, no source: a tub 60 in long and 30 in wide,
// a shower base 36 in square.
package shapes

import (
	"fmt"

	"coursewright/layout/survey"
)

// Shape is a plain room to start from.
type Shape struct{ Key, Name, About string }

// All lists the shapes in the order they are offered, the plain ones first.
func All() []Shape {
	return []Shape{
		{"tub", "Tub in an alcove", "Three walls round a tub, each end wall running a little past its front."},
		{"corner", "Corner shower", "Two walls that meet over a shower base."},
		{"three", "Three-wall shower", "Three walls round a shower base, tiled to the ceiling."},
		{"one", "One wall", "A single wall between two lines."},
		{"trimmed", "Tub with trim", "Three walls round a tub, edged with bullnose in pieces, with a shelf, a soap dish and grab bars."},
		{"niche", "Shower with a niche", "Three walls round a shower base, with a niche between two studs, tiled within."},
		{"banded", "Shower with a band", "Three walls round a shower base, with a band of mosaic at one height round all of them."},
		{"dotted", "Shower with a dotted band", "Three walls round a shower base in stack bond, with a band of basket weave and its dots between two liners."},
		{"strip", "Shower with a strip", "Three walls round a shower base, with a strip of mosaic up the wall behind the valve."},
		{"two", "Shower with two tiles", "Three walls round a shower base, one tile up to a line and another above it."},
		{"herringbone", "Shower in herringbone", "Three walls round a shower base, in herringbone that stands at 45°."},
		{"half wall", "Shower behind a half wall", "Two walls and a half wall round a shower base, with bullnose round the end of the half wall."},
		{"bench", "Shower with a bench and a curb", "Three walls, a bench across the far end and a curb at the entry, each with its top of tile."},
		{"corner bench", "Shower with a corner bench", "Three walls, a bench in the corner of two of them with a three-cornered seat of tile."},
	}
}

// Plain tells whether a room has nothing but its walls and what they stand on; everything else can be
// added to it later.
func (s Shape) Plain() bool {
	return s.Key == "tub" || s.Key == "corner" || s.Key == "three" || s.Key == "one"
}

// New makes a job of a shape in units "in" or "mm".
func New(key, units, title string) (survey.Job, error) {
	if units != "in" && units != "mm" {
		return survey.Job{}, fmt.Errorf("units are in or mm, not %q", units)
	}
	m := maker{metric: units == "mm"}
	walls, known := m.walls(key)
	if !known {
		return survey.Job{}, fmt.Errorf("there is no shape %q", key)
	}
	job := m.job(units, title)
	job.Walls = walls
	switch key {
	case "trimmed":
		m.edge(&job)
		m.fit(&job)
	case "banded":
		m.band(&job)
	case "dotted":
		m.dotted(&job)
	case "strip":
		m.strip(&job)
	case "two":
		m.twoTiles(&job)
	case "herringbone":
		job.Tile.Width, job.Tile.Height = m.say("7 1/2", "190"), m.say("2 3/8", "60")
		job.Bond = survey.Bond{Kind: string(survey.Herringbone), Turn: "45"}
	}
	return job, nil
}

// maker writes sizes in one system of units.
type maker struct{ metric bool }

// say gives the size in the maker's own units.
func (m maker) say(inches, millimetres string) string {
	if m.metric {
		return millimetres
	}
	return inches
}

func (m maker) job(units, title string) survey.Job {
	return survey.Job{
		Format: survey.Format, Title: title, Units: units,
		Measured: survey.Measured{Tape: m.say("1/16", "1"), Doubt: m.say("1/8", "3")},
		Tile: survey.Tile{
			Width: m.say("7 7/8", "200"), Height: m.say("3 15/16", "100"),
			Thickness: m.say("5/16", "8"), Vary: m.say("1/32", "0.5"),
		},
		Joint: survey.Measure{Plain: m.say("1/8", "3")}, Bed: m.say("3/16", "5"),
		Bond:   survey.Bond{Kind: "running", Offset: "1/2", Along: "level"},
		Limits: survey.Limits{Sealant: m.say("1/4", "6")},
	}
}

func (m maker) walls(key string) ([]survey.Wall, bool) {
	side, back := m.say("35", "880"), m.say("60", "1524")
	switch key {
	case "tub", "trimmed":
		return m.withLegs(m.alcove("tub", side, back, m.stop("33", "840"))), true
	case "three", "banded", "dotted", "strip", "two", "herringbone":
		return m.alcove("shower base", m.say("36", "900"), m.say("48", "1200"), m.ceiling), true
	case "niche":
		return m.withNiche(m.alcove("shower base", m.say("36", "900"), m.say("48", "1200"), m.ceiling)), true
	case "half wall":
		return m.withHalfWall(), true
	case "bench":
		return m.withBench(), true
	case "corner bench":
		return m.withCornerBench(), true
	case "corner":
		size := m.say("36", "900")
		return []survey.Wall{
			m.wall("left", size, m.end("0"), m.corner(), "shower base", m.ceiling),
			m.wall("right", size, m.corner(), m.end(size), "shower base", m.ceiling),
		}, true
	case "one":
		return []survey.Wall{m.wall("back", back, m.end("0"), m.end(back), "floor", m.stop("33", "840"))}, true
	}
	return nil, false
}

// alcove is an end wall, a back wall and an end wall, all over one base.
func (m maker) alcove(base, side, back string, head func(width string) survey.Head) []survey.Wall {
	return []survey.Wall{
		m.wall("left", side, m.end("0"), m.corner(), base, head),
		m.wall("back", back, m.corner(), m.corner(), base, head),
		m.wall("right", side, m.corner(), m.end(side), base, head),
	}
}

// withLegs lets both end walls of an alcove run 5 in (120 mm) past the front of
// the tub, down to a floor 18 in (450 mm) under its rim.
func (m maker) withLegs(walls []survey.Wall) []survey.Wall {
	first, last := &walls[0], &walls[len(walls)-1]
	first.Base[0].Readings[0].At = m.say("5", "120")
	first.Base = []survey.Segment{m.leg("0", m.say("5", "120")), first.Base[0]}
	last.Base[0].Readings[1].At = m.say("30", "760")
	last.Base = append(last.Base, m.leg(m.say("30", "760"), last.Width))
	return walls
}

func (m maker) leg(from, to string) survey.Segment {
	drop := m.say("58", "1450")
	return survey.Segment{Meets: "floor", Gap: m.gap(), Leg: survey.BestLeg, Readings: []survey.Drop{{At: from, Drop: drop}, {At: to, Drop: drop}}}
}

// wall is a plumb wall with the level line 40 in (1000 mm) over a level base.
func (m maker) wall(name, width string, left, right survey.End, base string, head func(width string) survey.Head) survey.Wall {
	drop := m.say("40", "1000")
	return survey.Wall{
		Name: name, Width: width, Left: left, Right: right,
		Base: []survey.Segment{{Meets: base, Gap: m.gap(), Readings: []survey.Drop{{At: "0", Drop: drop}, {At: width, Drop: drop}}}},
		Head: head(width),
	}
}

func (m maker) gap() string { return m.say("1/8", "3") }

func (m maker) corner() survey.End { return survey.End{Meets: "corner", Gap: m.gap()} }

func (m maker) end(at string) survey.End {
	return survey.End{Stops: &survey.Mark{At: at}, Finish: "trim"}
}

// stop ends the tile at a line so high over the level line.
func (m maker) stop(inches, millimetres string) func(string) survey.Head {
	return func(string) survey.Head {
		return survey.Head{Stops: &survey.Mark{At: m.say(inches, millimetres)}, Finish: "trim"}
	}
}

// ceiling is 56 in (1400 mm) over the level line: 8 ft (2400 mm) over the base.
func (m maker) ceiling(width string) survey.Head {
	rise := m.say("56", "1400")
	return survey.Head{Meets: "ceiling", Gap: m.gap(), Readings: []survey.Rise{{At: "0", Rise: rise}, {At: width, Rise: rise}}}
}
