package shapes

import "coursewright/layout/survey"

// edge lays bullnose of 2 by 6 in (50 by 150 mm) along every edge where tile stops.
func (m maker) edge(job *survey.Job) {
	job.Trims = []survey.TrimTile{{Name: "bullnose", Kind: string(survey.Bullnose), Width: m.say("2", "50"), Length: m.say("6", "150")}}
	for i := range job.Walls {
		w := &job.Walls[i]
		for _, e := range []*survey.End{&w.Left, &w.Right} {
			if e.Stops != nil {
				e.Finish, e.Trim = "", "bullnose"
			}
		}
		if w.Head.Stops != nil {
			w.Head.Finish, w.Head.Trim = "", "bullnose"
		}
		for k := range w.Base {
			if w.Base[k].Meets == string(survey.Floor) {
				for n := range w.Base[k].Readings {
					w.Base[k].Readings[n].Drop = m.say("58", "1430")
				}
			}
		}
	}
}

// fit fixes a shelf into a corner of the back wall, a soap dish and two grab bars: one
// 33 to 36 in over the floor, one 8 to 10 in over the rim (ADA 609.4 and 607.4.2).
func (m maker) fit(job *survey.Job) {
	between := func(from, to string) survey.Measure { return survey.Measure{Mark: &survey.Mark{From: from, To: to}} }
	back := &job.Walls[1]
	back.Fixtures = []survey.Fixture{
		{Kind: "corner shelf", Name: "shelf", Corner: "right", Width: m.say("8", "200"), Height: between(m.say("6", "150"), m.say("16", "400"))},
		{Kind: "soap dish", Name: "soap dish", At: m.say("44", "1120"), Width: m.say("6", "150"), High: m.say("4", "100"), Height: between(m.say("-8", "-200"), m.say("2", "50"))},
		{Kind: "grab bar", Name: "upper bar", At: m.say("30", "762"), Width: m.say("24", "600"), Height: between(m.say("-25 1/2", "-625"), m.say("-22 3/4", "-535"))},
		{Kind: "grab bar", Name: "lower bar", At: m.say("30", "762"), Width: m.say("24", "600"), Height: between(m.say("-32 1/2", "-810"), m.say("-30 3/4", "-765"))},
	}
}
