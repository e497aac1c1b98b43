package shapes

import "coursewright/layout/survey"

// edge lays bullnose of 2 by 6 in (50 by 150 mm) along every edge where tile stops, and
// sets the legs beside the tub in single tiles.
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
				w.Base[k].Leg = "single"
				for n := range w.Base[k].Readings {
					w.Base[k].Readings[n].Drop = m.say("58", "1430")
				}
			}
		}
	}
}
