package shapes

import "coursewright/layout/survey"

// withBench makes a shower of three walls with a bench across its far end and a curb at its
// entry, each a front with its top. The seat is 18 in (450 mm) high and 16 in (400 mm) deep
// (17 to 19 in high and at least 15 deep: NKBA, as quoted by a how-to page); the curb,
// 4 in (100 mm) high and as deep as one tile, is common practice, no source.
func (m maker) withBench() []survey.Wall {
	side, end := m.say("60", "1500"), m.say("36", "900")
	walls := []survey.Wall{
		m.wall("left", side, m.end("0"), m.corner(), "shower base", m.ceiling),
		m.wall("far end", end, m.corner(), m.corner(), "seat", m.ceiling),
		m.wall("right", side, m.corner(), m.end(side), "shower base", m.ceiling),
		m.between("bench", end, m.say("-22", "-550"), survey.Top{Kind: string(survey.SeatTop), Depth: m.say("16", "400")}),
		m.between("curb", end, m.say("-36", "-900"), survey.Top{Kind: string(survey.CurbTop), Depth: m.say("3 15/16", "100")}),
	}
	front, back := m.say("22", "550"), m.say("21 11/16", "542") // the seat falls 1/4 in to the foot
	from, to := m.say("44", "1100"), m.say("16", "400")
	seat := func(a, b survey.Drop) survey.Segment {
		return survey.Segment{Meets: string(survey.Seat), Gap: m.gap(), Readings: []survey.Drop{a, b}}
	}
	walls[0].Base[0].Readings[1].At = from
	walls[0].Base = append(walls[0].Base, seat(survey.Drop{At: from, Drop: front}, survey.Drop{At: side, Drop: back}))
	walls[1].Base[0] = seat(survey.Drop{At: "0", Drop: back}, survey.Drop{At: end, Drop: back})
	walls[2].Base[0].Readings[0].At = to
	walls[2].Base = append([]survey.Segment{seat(survey.Drop{At: "0", Drop: back}, survey.Drop{At: to, Drop: front})}, walls[2].Base[0])
	return walls
}

// withCornerBench makes a shower of three walls with a bench in the corner of the left and
// the back wall: a triangle 21 3/4 in (600 mm) along both walls, which is 15 1/8 in (418 mm) deep when it is tiled,
// 18 in (450 mm) high (NKBA, as quoted by a how-to page). Its front is that times √2; the tile on
// it comes a little further out along both walls, and the seat falls 1/4 in to the foot.
func (m maker) withCornerBench() []survey.Wall {
	side, back := m.say("36", "900"), m.say("60", "1500")
	walls := m.alcove("shower base", side, back, m.ceiling)
	along := m.say("21 3/4", "600")
	walls = append(walls, m.between("bench", m.say("30 3/4", "849"), m.say("-22", "-550"),
		survey.Top{Kind: string(survey.SeatTop), Behind: "corner", Depth: along, Right: along}))
	front, corner := m.say("22", "550"), m.say("21 11/16", "541")
	from, to := m.say("14 1/16", "295"), m.say("21 15/16", "605")
	seat := func(a, b survey.Drop) survey.Segment {
		return survey.Segment{Meets: string(survey.Seat), Gap: m.gap(), Readings: []survey.Drop{a, b}}
	}
	walls[0].Base[0].Readings[1].At = from
	walls[0].Base = append(walls[0].Base, seat(survey.Drop{At: from, Drop: front}, survey.Drop{At: side, Drop: corner}))
	walls[1].Base[0].Readings[0].At = to
	walls[1].Base = append([]survey.Segment{seat(survey.Drop{At: "0", Drop: corner}, survey.Drop{At: to, Drop: front})}, walls[1].Base[0])
	return walls
}

// between is the front of something low between two walls, with its top: bullnose.
func (m maker) between(name, width, finished string, top survey.Top) survey.Wall {
	meets := survey.End{Meets: "wall", Gap: m.gap()}
	w := m.wall(name, width, meets, meets, "shower base", func(string) survey.Head { return survey.Head{Stops: &survey.Mark{At: finished}} })
	top.Corner, top.Gap = string(survey.Bullnose), m.gap()
	w.Top = &top
	return w
}
