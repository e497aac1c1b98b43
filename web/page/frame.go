package page

import (
	"net/http"
	"strconv"

	"coursewright/layout"
	"coursewright/web/drawing"
)

// Frames of drawings. A script notes in the cookie of that name how many pixels wide the frame is,
// which is no matter of the job: each browser has its own.
const (
	BenchFrame  = "frame"  // of the bench, and of the work
	ColumnFrame = "column" // of one of several choices side by side
)

// Bounds of a frame, in pixels.
const (
	leastFrame = 280
	mostFrame  = 2000
)

// EveryWall is the value of wall= in an address for all walls, where one is shown without it.
const EveryWall = "all"

// Wide is how wide drawings are laid out in a frame for whoever asks; 0 where it is not known.
func Wide(r *http.Request, frame string) drawing.Micron {
	c, err := r.Cookie(frame)
	if err != nil {
		return 0
	}
	n, err := strconv.Atoi(c.Value)
	if err != nil || n <= 0 {
		return 0
	}
	return drawing.Pixel * drawing.Micron(min(max(n, leastFrame), mostFrame))
}

// Pixels is a width in pixels, for the script that compares it with the frame.
func Pixels(wide drawing.Micron) string { return strconv.FormatInt(int64(wide/drawing.Pixel), 10) }

// Narrow tells whether a frame has no room for all walls, as on a phone: one is shown at a time.
func Narrow(wide drawing.Micron) bool { return wide > 0 && wide < drawing.Phone }

// Front is the wall that an address brings to the front in a frame, or -1 for all. A narrow
// frame begins with the widest wall.
func Front(r *http.Request, plan layout.Plan, wide drawing.Micron) int {
	asked := r.URL.Query().Get("wall")
	n, err := strconv.Atoi(asked)
	switch {
	case err == nil && n >= 1 && n <= len(plan.Walls):
		return n - 1
	case Narrow(wide) && asked != EveryWall:
		return widest(plan)
	}
	return -1
}

func widest(plan layout.Plan) int {
	at := -1
	for i, w := range plan.Walls {
		if at < 0 || w.Found.Width > plan.Walls[at].Found.Width {
			at = i
		}
	}
	return at
}
