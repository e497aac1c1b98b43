package page

import (
	"net/http"
	"strconv"

	"coursewright/web/drawing"
)

// frameCookie is where the bench's script notes how many pixels wide the frame of its
// drawing is. It is no matter of the job: each browser has its own.
const frameCookie = "frame"

// Bounds of a frame, in pixels.
const (
	leastFrame = 280
	mostFrame  = 2000
)

// Wide is how wide drawings are laid out for whoever asks; 0 where it is not known.
func Wide(r *http.Request) drawing.Micron {
	c, err := r.Cookie(frameCookie)
	if err != nil {
		return 0
	}
	n, err := strconv.Atoi(c.Value)
	if err != nil || n <= 0 {
		return 0
	}
	return drawing.Pixel * drawing.Micron(min(max(n, leastFrame), mostFrame))
}
