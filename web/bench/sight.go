package bench

import (
	"net/http"
	"net/url"
	"strconv"

	"coursewright/layout"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// sight is how a person looks at the drawing. All but the width stands in the
// address.
type sight struct {
	Wall   int            // the wall brought to the front, or -1 for the wrap
	Finish bool           // tile and grout in their colours, without the cuts
	Front  bool           // distances on end walls are asked from the front, not from the corner
	All    bool           // every field of the survey by itself, and not step by step
	Wide   drawing.Micron // of the drawing's frame; 0 where it is not known
}

// fromFront is the value of from= in the address for distances from the front.
const fromFront = "front"

// finishLook is the value of look= in the address for the finish.
const finishLook = "finish"

// phoneFrame is how many pixels wide a frame is that has room for all walls.
const phoneFrame = 480

// everyWall is the value of wall= for all walls, where one is shown without it.
const everyWall = "all"

// sightOf reads how the drawing is to be looked at.
func sightOf(r *http.Request, plan layout.Plan) sight {
	s := sight{Wall: front(r, plan), Finish: r.URL.Query().Get("look") == finishLook, All: r.URL.Query().Get("all") == "1",
		Front: r.URL.Query().Get("from") == fromFront, Wide: page.Wide(r)}
	if s.narrow() && s.Wall < 0 && r.URL.Query().Get("wall") != everyWall {
		s.Wall = widest(plan)
	}
	return s
}

// narrow tells whether the frame is that of a phone.
func (s sight) narrow() bool { return s.Wide > 0 && s.Wide < phoneFrame*drawing.Pixel }

// widest is the wall that a phone shows at first.
func widest(plan layout.Plan) int {
	at := -1
	for i, w := range plan.Walls {
		if at < 0 || w.Found.Width > plan.Walls[at].Found.Width {
			at = i
		}
	}
	return at
}

// front is the wall brought to the front, or -1.
func front(r *http.Request, plan layout.Plan) int {
	n, err := strconv.Atoi(r.URL.Query().Get("wall"))
	if err != nil || n < 1 || n > len(plan.Walls) {
		return -1
	}
	return n - 1
}

// query is the part of the address that says how the drawing is looked at.
func (s sight) query() string {
	q := url.Values{}
	switch {
	case s.Wall >= 0:
		q.Set("wall", strconv.Itoa(s.Wall+1))
	case s.narrow():
		q.Set("wall", everyWall)
	}
	if s.Finish {
		q.Set("look", finishLook)
	}
	if s.All {
		q.Set("all", "1")
	}
	if s.Front {
		q.Set("from", fromFront)
	}
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}

// at is the same look at another wall.
func (s sight) at(wall int) string {
	s.Wall = wall
	return s.query()
}

// as is the same sight with the finish or with the cuts.
func (s sight) as(finish bool) string {
	s.Finish = finish
	return s.query()
}

// asked is the same sight with the survey step by step, or with every field.
func (s sight) asked(all bool) string {
	s.All = all
	return s.query()
}

// from is the same sight with distances from the front, or from the corner.
func (s sight) from(front bool) string {
	s.Front = front
	return s.query()
}
