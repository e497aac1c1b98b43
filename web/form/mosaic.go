package form

import "coursewright/layout/survey"

// tidySheets drops sheets of which nothing is typed any more.
func tidySheets(job *survey.Job) {
	drop := func(t *survey.Tile) {
		if t != nil && t.Sheet != nil && *t.Sheet == (survey.Sheet{}) {
			t.Sheet = nil
		}
	}
	drop(&job.Tile)
	for i := range job.Bands {
		drop(&job.Bands[i].Tile)
	}
	for i := range job.Walls {
		if t := job.Walls[i].Top; t != nil {
			drop(t.Face.Tile)
		}
		for k := range job.Walls[i].Strips {
			drop(&job.Walls[i].Strips[k].Tile)
		}
		for k := range job.Walls[i].Openings {
			if in := job.Walls[i].Openings[k].Inside; in != nil {
				for _, f := range faces(in) {
					drop(f.Tile)
				}
			}
		}
	}
}
