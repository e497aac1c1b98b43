package shapes

import "coursewright/layout/survey"

// withHalfWall closes a shower of two walls with a half wall 42 in (1070 mm) high over
// its base: its face, and round an outside corner its end, 4 3/4 in (120 mm) wide over
// the floor. Half walls are 36 to 42 in high: how-to pages; the other sizes are
// common ones, no source.
func (m maker) withHalfWall() []survey.Wall {
	side, back, end := m.say("36", "900"), m.say("60", "1500"), m.say("4 3/4", "120")
	turn := survey.End{Meets: string(survey.OutsideCorner)}
	low := m.stop("2", "70")
	walls := []survey.Wall{
		m.wall("left", side, m.end("0"), m.corner(), "shower base", m.ceiling),
		m.wall("back", back, m.corner(), m.corner(), "shower base", m.ceiling),
		m.wall("half wall", m.say("34", "850"), m.corner(), survey.End{Meets: turn.Meets, Corner: string(survey.Bullnose), Laps: "left"}, "shower base", low),
		m.wall("end panel", end, turn, m.end(end), "floor", low),
	}
	for i := range walls[3].Base[0].Readings {
		walls[3].Base[0].Readings[i].Drop = m.say("43", "1080")
	}
	return walls
}
