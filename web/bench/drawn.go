package bench

import (
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
	"coursewright/store"
	"coursewright/web/form"
)

// measureAsDrawn lets the button “One value” of free marks write where they stand in the set-out that is
// drawn, to what the person's tape shows.
func (s pages) measureAsDrawn(r *http.Request, stored store.Job) error {
	paths, is := strings.CutPrefix(r.PostForm.Get(form.Do), "measure ")
	if !is {
		return nil
	}
	standing, err := s.Standing(r.Context(), stored)
	var faults survey.Faults
	if errors.As(err, &faults) {
		return nil // nothing is drawn
	}
	if err != nil {
		return err
	}
	room := standing.Plan.Room
	marks := strings.Fields(paths)
	for i, path := range marks {
		if at, drawn := drawnAt(standing.Plan, standing.Job, path); drawn {
			marks[i] += "=" + url.QueryEscape(at.Plain(room.Units, room.Tape))
		}
	}
	r.PostForm.Set(form.Do, "measure "+strings.Join(marks, " "))
	return nil
}

// drawnAt is where a free mark stands in a plan, as its box counts: as far over the lower end of its range as there.
func drawnAt(p layout.Plan, job survey.Job, path string) (length.Length, bool) {
	from, err := length.Parse(form.Get(job, path+".from"), p.Room.Units)
	parts := form.Parts(path)
	if err != nil || len(parts) < 3 {
		return 0, false
	}
	list, at := parts[0].Name, parts[1].Index
	switch {
	case list == "bands" && at < len(p.Setout.Bands):
		return from + p.Setout.Bands[at].Bottom - p.Room.Bands[at].Bottom.From, true
	case list == "walls" && at < len(p.Walls):
		over, found := overLower(&p.Walls[at], job.Walls[at], parts[2:])
		return from + over, found
	}
	return 0, false
}

// overLower is how far over the lower end of its range a mark of a wall stands.
func overLower(w *plan.Wall, typed survey.Wall, parts []form.Part) (length.Length, bool) {
	at := w.Start.Placed
	switch parts[0].Name {
	case "left":
		return at.Left - w.Found.Left.Stops.From, true
	case "right":
		return at.Right - w.Found.Right.Stops.From, true
	case "head":
		return at.Head - w.Found.Head.Stops.From, true
	}
	if len(parts) < 3 {
		return 0, false
	}
	switch k, mark := parts[1].Index, parts[2].Name; parts[0].Name {
	case "openings":
		return overEdge(w, k, mark)
	case "strips":
		return overEdge(w, len(typed.Openings)+k, mark)
	case "fixtures":
		return overFixture(w, k, mark)
	}
	return 0, false
}

// overEdge is that of a niche, a window or a strip.
func overEdge(w *plan.Wall, k int, mark string) (length.Length, bool) {
	if k < 0 || k >= len(w.Found.Openings) || k >= len(w.Start.Placed.Openings) {
		return 0, false
	}
	o, e := w.Found.Openings[k], w.Start.Placed.Openings[k]
	switch mark {
	case "left", "middle":
		return e.Left - o.Left.From, true
	case "width":
		return e.Right - e.Left - o.Width.From, true
	case "bottom":
		return e.Bottom - o.Bottom.From, true
	case "height":
		return e.Top - e.Bottom - o.Height.From, true
	case "top":
		return e.Top - o.Bottom.From - o.Height.From, true
	}
	return 0, false
}

// overFixture is that of what is fixed to a wall: of a dish that slides along it as far as the hole for it does.
func overFixture(w *plan.Wall, k int, mark string) (length.Length, bool) {
	if k >= len(w.Fixtures) {
		return 0, false
	}
	f := w.Fixtures[k]
	if mark == "height" {
		return f.At.Y - f.Found.Height.From, true
	}
	hole := slices.IndexFunc(w.Found.Openings, func(o survey.OpeningFound) bool { return o.Kind == survey.SoapDish && o.Name == f.Found.Name })
	return overEdge(w, hole, "left")
}
