package ask

import (
	"slices"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// stop asks for the line at which the tile stops; one answer serves all walls
// that stop at the same.
func (r *room) stop(i int, path string) {
	stops := r.job.Walls[i].Head.Stops
	if stops == nil || stops.At == "" {
		return // a range is a choice, not a reading
	}
	q := Question{Path: path + ".stops.at", Picture: "top", Label: "Tile stops, above the line", Ask: "How far above the line does the tile stop?",
		Help: "To the finished edge. A range lets the plan put a full course there."}
	for n := i + 1; n < len(r.job.Walls); n++ {
		if s := r.job.Walls[n].Head.Stops; r.job.Walls[n].Head.Meets == "" && s != nil && s.At != "" && r.same(s.At, stops.At) {
			q.Same = append(q.Same, form.At("walls", n)+".head.stops.at")
		}
	}
	r.ofTop(&q)
	r.add(q)
}

// ofTop words the question for the height of a bench, a curb or a half wall, which stands below
// the level line more often than over it.
func (r *room) ofTop(q *Question) {
	for _, path := range append([]string{q.Path}, q.Same...) {
		w := r.job.Walls[form.Parts(path)[1].Index]
		q.Updown = q.Updown || strings.HasPrefix(w.Head.Stops.At, "-") || r.higher(w)
		if w.Top == nil {
			continue
		}
		what := topName(w)
		q.Updown, q.Label = true, capital(what)+", from the line"
		q.Ask, q.Help = "How far above or below the line is the front edge of the "+what+"?", "The finished edge, on its tile."
		if w.Top.Sizes == string(survey.Lined) {
			q.Help = "The boards, at the front edge."
		}
		q.Help += " A range lets the plan put a full course there."
		return
	}
	if q.Updown {
		q.Label, q.Ask = "Tile stops, from the line", "How far above or below the line does the tile stop?"
	}
}

// higher tells whether another wall of the room goes up to a ceiling, or ends at another line.
func (r *room) higher(w survey.Wall) bool {
	return slices.ContainsFunc(r.job.Walls, func(o survey.Wall) bool {
		return o.Head.Meets != "" || o.Head.Stops != nil && !form.Between(o) && *o.Head.Stops != *w.Head.Stops
	})
}

// topName is the top of a wall: the seat of bench, the top of curb.
func topName(w survey.Wall) string {
	kind := w.Top.Kind
	if kind == string(survey.CurbTop) {
		kind = "top"
	}
	return kind + " of " + w.Name
}

// topDepth asks how deep a top is; of one in a corner, how far its front is from that along both
// walls.
func (r *room) topDepth(i int) {
	t := r.job.Walls[i].Top
	if t == nil {
		return
	}
	path, what := form.At("walls", i)+".top", topName(r.job.Walls[i])
	if t.Behind == "corner" {
		for _, side := range []struct{ path, wall, typed string }{{path + ".depth", "left", t.Depth}, {path + ".right", "right", t.Right}} {
			if side.typed != "" || side.wall == "left" {
				r.add(Question{Path: side.path, Picture: "cornertop", Label: capital(what) + ", along the " + side.wall + " wall",
					Ask: "How far does the " + what + " reach along the " + side.wall + " wall?", Help: "On the boards, from its front to the corner."})
			}
		}
		return
	}
	back := map[string]string{"seat": "the tile of the wall behind", "ledge": "the tile of the wall behind", "curb": "the far edge", "cap": "the far edge"}[t.Kind]
	q := Question{Path: path + ".depth", Picture: "walltop", Label: capital(what) + ", depth", Ask: "How deep is the " + what + "?",
		Help: "Level, from the finished front to " + back + "."}
	if t.Sizes == string(survey.Lined) {
		q.Help = "Level, from board to board."
	}
	if t.Right == "" {
		r.add(q)
		return
	}
	q.Label += ", left end"
	q.Ask = "How deep is the " + what + " at its left end?"
	r.add(q)
	q.Path, q.Label, q.Ask = path+".right", capital(what)+", depth, right end", "How deep is the "+what+" at its right end?"
	r.add(q)
}

// shareBench lets the answer where a seat begins or ends serve the front of the bench that carries it, where the room has
// one: it meets the wall there.
func (r *room) shareBench(q *Question, s survey.Segment, k int) {
	bench := -1
	for i, w := range r.job.Walls {
		switch {
		case !form.Between(w) || w.Top == nil || w.Top.Kind != string(survey.SeatTop):
		case bench >= 0:
			return // nobody says which of two
		default:
			bench = i
		}
	}
	if bench < 0 || len(r.job.Walls[bench].Base) != 1 {
		return
	}
	front, at := r.job.Walls[bench].Base[0], 0
	if k == 0 {
		at = len(front.Readings) - 1
	}
	if front.Meets != s.Meets || at < 0 || len(front.Readings) == 0 || !r.same(front.Readings[at].Drop, s.Readings[k].Drop) {
		return
	}
	q.Same = append(q.Same, form.At(form.At("walls", bench)+".base[0].readings", at)+".drop")
	q.Help += " One figure serves the front of the bench too."
}
