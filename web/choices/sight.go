package choices

import (
	"net/http"
	"net/url"
	"strconv"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// sight is how a person looks at the choices.
type sight struct {
	Finish bool           // drawn in the colours of tile and grout
	Asked  string         // wall= of the address: the number of a wall, all of them, or nothing
	Wide   drawing.Micron // of the drawing of one choice
}

// finishLook is the value of look= in the address for the finish.
const finishLook = "finish"

// sightOf reads how the choices are to be looked at.
func sightOf(r *http.Request, job survey.Job) sight {
	q := r.URL.Query()
	s := sight{Finish: q.Get("look") == finishLook, Wide: page.Wide(r, page.ColumnFrame)}
	if s.Wide == 0 {
		s.Wide = usualColumn(job)
	}
	if n, err := strconv.Atoi(q.Get("wall")); q.Get("wall") == page.EveryWall || err == nil && n >= 1 && n <= len(job.Walls) {
		s.Asked = q.Get("wall")
	}
	return s
}

// usualColumn is how wide the drawing of a choice is on a page of 1440: the only one has most of it, else two
// stand beside each other there, or three and more.
func usualColumn(job survey.Job) drawing.Micron {
	switch n := len(job.Choices); {
	case n > 2:
		return 380 * drawing.Pixel
	case n == 0:
		return 857 * drawing.Pixel
	}
	return 560 * drawing.Pixel
}

// front is the wall that is shown of a plan, or -1 for all. A column that has no room for the
// texts of all walls begins with the widest; a finish has none.
func (s sight) front(r *http.Request, plan layout.Plan) int {
	wide := s.Wide
	if s.Finish {
		wide = 0
	}
	return page.Front(r, plan, wide)
}

// scene draws a plan: one wall of it, or all.
func (s sight) scene(plan layout.Plan, wall int) drawing.Scene {
	o := drawing.Options{Finish: s.Finish, Wide: s.Wide, Within: s.Finish, NoFlags: true}
	if wall >= 0 {
		return drawing.Elevation(plan, wall, o)
	}
	return drawing.Wrap(plan, o)
}

// nearlyFits tells whether a scene that is wider than its column is so by little: then it is drawn
// smaller, all of it in sight, and its texts are no less than 10 pixels.
func (s sight) nearlyFits(scene drawing.Scene) bool {
	return scene.Width > s.Wide && 10*scene.Width <= 11*s.Wide
}

// query is the part of the address that says how the choices are looked at.
func (s sight) query() string {
	q := url.Values{}
	if s.Finish {
		q.Set("look", finishLook)
	}
	if s.Asked != "" {
		q.Set("wall", s.Asked)
	}
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}

// as is the same look with the finish or with the cuts.
func (s sight) as(finish bool) string {
	s.Finish = finish
	return s.query()
}

// at is the same look at one wall by its number, or at all.
func (s sight) at(wall string) string {
	s.Asked = wall
	return s.query()
}
