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

// sightOf reads how the drawing is to be looked at.
func sightOf(r *http.Request, plan layout.Plan) sight {
	wide := page.Wide(r, page.BenchFrame)
	return sight{Wall: page.Front(r, plan, wide), Finish: r.URL.Query().Get("look") == finishLook, All: r.URL.Query().Get("all") == "1",
		Front: r.URL.Query().Get("from") == fromFront, Wide: wide}
}

// narrow tells whether the frame is that of a phone.
func (s sight) narrow() bool { return page.Narrow(s.Wide) }

// query is the part of the address that says how the drawing is looked at.
func (s sight) query() string {
	q := url.Values{}
	switch {
	case s.Wall >= 0:
		q.Set("wall", strconv.Itoa(s.Wall+1))
	case s.narrow():
		q.Set("wall", page.EveryWall)
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
