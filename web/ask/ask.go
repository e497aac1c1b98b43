// Package ask knows what is asked of a room and in which order: that of a
// person who walks through it with a laser and a tape.
//
// Laws, each with a test:
//
//  1. A figure belongs to a place: what two walls share is asked once, and the
//     answer stands in every field of that place.
//  2. A field that nobody has answered stays as guessed, and is said to be.
//  3. Asked and answered again with what is shown, a job stays as it is.
package ask

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Question asks for one figure.
type Question struct {
	Path    string   // the field it fills
	Same    []string // other fields of the same place
	Label   string   // names the box: "Left corner, below the line"
	Ask     string
	Help    string
	Picture string // which picture shows where the tape is held
	Updown  bool   // asked as so far above or below the level line

	width     string // of the wall it may be asked from either end of
	fromRight bool   // asked from the right end, where the job counts from the left
}

// The steps in which one measures.
const (
	Widths   = "walls"
	Down     = "down"
	Fronts   = "fronts"
	Top      = "top"
	Openings = "openings"
	Tile     = "tile"
)

// Steps lists the steps that have figures, in their order.
func Steps() []string { return []string{Widths, Down, Fronts, Top, Openings, Tile} }

// Of gives the questions of one step. Distances on a wall with one corner are
// asked from the corner, or from the front of the wall.
func Of(job survey.Job, step string, fromFront bool) []Question {
	r := room{job: job, taken: map[string]bool{}, fromFront: fromFront}
	switch step {
	case Widths:
		r.widths()
	case Down:
		r.down()
	case Fronts:
		r.fronts()
	case Top:
		r.top()
	case Openings:
		r.openings()
	case Tile:
		r.tile()
	}
	return r.asked
}

// All gives every question in order.
func All(job survey.Job) []Question { return AllFrom(job, false) }

// AllFrom is All with distances from the corner or from the front.
func AllFrom(job survey.Job, fromFront bool) []Question {
	var out []Question
	for _, step := range Steps() {
		out = append(out, Of(job, step, fromFront)...)
	}
	return out
}

// Paths lists every field that is asked for: those a new job has only guessed.
func Paths(job survey.Job) []string {
	var out []string
	for _, q := range All(job) {
		out = append(append(out, q.Path), q.Same...)
	}
	return out
}

// Count tells how many of the figures are measured, and how many there are.
func Count(job survey.Job) (measured, all int) {
	for _, q := range All(job) {
		all++
		if !slices.Contains(job.Guess, q.Path) {
			measured++
		}
	}
	return measured, all
}

// room gathers the questions of a job.
type room struct {
	job       survey.Job
	asked     []Question
	fromFront bool            // distances are asked from the front
	taken     map[string]bool // fields that another question fills
}

func (r *room) add(q Question) {
	if r.taken[q.Path] {
		return
	}
	for _, path := range q.Same {
		r.taken[path] = true
	}
	r.asked = append(r.asked, q)
}

func (r *room) widths() {
	for i, w := range r.job.Walls {
		q := Question{Path: form.At("walls", i) + ".width", Label: "Width of " + WallName(w.Name), Picture: "width",
			Ask: "How wide is " + WallName(w.Name) + "?", Help: "Board to board, along the level line."}
		if r.corner(i, true) != r.corner(i, false) {
			q.Ask = "How far from the corner do the boards of " + WallName(w.Name) + " run?"
			q.Help = "From the inside corner to where the board, the trim, a casing or the wall ends."
			q.Label = capital(WallName(w.Name)) + ", from the corner"
		}
		if form.Between(w) {
			q.Ask, q.Label, q.Help = "How wide is the front of "+w.Name+"?", "Width of "+w.Name, "Board to board, along its front."
		}
		if r.turns(i, true) || r.turns(i, false) {
			q.Ask, q.Label = "How wide is "+WallName(w.Name)+"?", "Width of "+WallName(w.Name)
			q.Help = "Board to board; at an outside corner to the edge of the board itself, without tile."
		}
		r.add(q)
	}
}

// main tells whether a stretch of base is what the wall mainly stands on: a
// floor is only where nothing else is.
func main(w survey.Wall, j int) bool {
	if w.Base[j].Meets != string(survey.Floor) {
		return true
	}
	return !slices.ContainsFunc(w.Base, func(s survey.Segment) bool { return s.Meets != string(survey.Floor) })
}

func (r *room) down() {
	for i, w := range r.job.Walls {
		for j, s := range w.Base {
			if !main(w, j) {
				continue
			}
			for k := range s.Readings {
				r.drop(i, j, k)
			}
		}
	}
}

// drop asks how far the base is below the level line at one place.
func (r *room) drop(i, j, k int) {
	w := r.job.Walls[i]
	s := w.Base[j]
	first, last := k == 0 && !r.hasMainBefore(w, j), k == len(s.Readings)-1 && !r.hasMainAfter(w, j)
	where := WallName(w.Name) + ", " + s.Readings[k].At + " from its left end"
	switch {
	case first:
		where = r.place(i, true)
	case last:
		where = r.place(i, false)
	case besideSeat(w, j, k):
		where = "front of the " + seatAt(w, j, k) + " on " + WallName(w.Name)
	case len(s.Readings) == 3 && k == 1:
		where = "middle of " + WallName(w.Name)
	}
	named := capital(where)
	if r.kinds() {
		named = capital(s.Meets) + ", " + where
	}
	q := Question{Path: form.At(form.At(form.At("walls", i)+".base", j)+".readings", k) + ".drop", Picture: "tape",
		Label: named + ", below the line", Ask: "How far is the rim of the " + s.Meets + " below the line at the " + where + "?",
		Help: "Stand the tape on the rim, tight to the wall; read it at the line."}
	switch s.Meets {
	case string(survey.Floor):
		q.Ask, q.Help = "How far is the floor below the line at the "+where+"?", "Down to the finished floor."
	case string(survey.Seat):
		q.Ask, q.Help = "How far is the finished seat below the line at the "+where+"?", "Tight to the wall. Of a seat of bare boards take off its bed and its tile."
	}
	if last && r.corner(i, false) {
		r.share(&q, i, s.Readings[k].Drop)
	}
	if besideSeat(w, j, k) && !isSeat(s) {
		r.shareBench(&q, s, k)
	}
	if n, closes := r.closing(); closes && i == 0 && first {
		r.shareLast(&q, n, s.Readings[k].Drop)
	}
	r.add(q)
}

// share lets the answer in a corner serve the next wall too.
func (r *room) share(q *Question, i int, drop string) {
	if i+1 >= len(r.job.Walls) || !r.corner(i+1, true) {
		return
	}
	next := r.job.Walls[i+1]
	for j, s := range next.Base {
		if !main(next, j) || len(s.Readings) == 0 {
			continue
		}
		if r.same(s.Readings[0].Drop, drop) {
			q.Same = append(q.Same, form.At(form.At("walls", i+1)+".base", j)+".readings[0].drop")
			if q.Picture = "corner"; s.Meets != string(survey.Seat) {
				q.Help = "Stand the tape on the rim, tight in the corner; read it at the line."
			}
			q.Help += " One figure serves both walls."
		}
		return
	}
}

// shareLast lets the answer at the left of the first wall of a closed room serve the last one too.
func (r *room) shareLast(q *Question, wall int, drop string) {
	w := r.job.Walls[wall]
	for j := len(w.Base) - 1; j >= 0; j-- {
		if n := len(w.Base[j].Readings); main(w, j) && n > 0 {
			if r.same(w.Base[j].Readings[n-1].Drop, drop) {
				q.Same = append(q.Same, form.At(form.At(form.At("walls", wall)+".base", j)+".readings", n-1)+".drop")
				q.Help += " One figure serves both walls."
			}
			return
		}
	}
}

// same tells whether two texts are one length, or the same text.
func (r *room) same(a, b string) bool {
	system, _ := form.System(r.job.Units)
	x, err := length.Parse(a, system)
	y, wrong := length.Parse(b, system)
	return a == b || err == nil && wrong == nil && x == y
}

func (r *room) hasMainBefore(w survey.Wall, j int) bool {
	for b := range j {
		if main(w, b) {
			return true
		}
	}
	return false
}

func (r *room) hasMainAfter(w survey.Wall, j int) bool {
	for b := j + 1; b < len(w.Base); b++ {
		if main(w, b) {
			return true
		}
	}
	return false
}

// fronts asks where the base ends on a wall, and how far down the leg goes.
func (r *room) fronts() {
	for i, w := range r.job.Walls {
		for j := 0; j+1 < len(w.Base); j++ {
			r.front(i, j)
		}
	}
	for i, w := range r.job.Walls {
		for j, s := range w.Base {
			if main(w, j) || len(s.Readings) == 0 {
				continue
			}
			path := form.At(form.At("walls", i)+".base", j) + ".readings"
			q := Question{Path: form.At(path, 0) + ".drop", Picture: "front", Label: "Floor at " + WallName(w.Name) + ", below the line",
				Ask: "How far is the floor below the line at the outer edge of " + WallName(w.Name) + "?", Help: "Down to the finished floor."}
			for k := 1; k < len(s.Readings); k++ {
				if r.same(s.Readings[k].Drop, s.Readings[0].Drop) {
					q.Same = append(q.Same, form.At(path, k)+".drop")
				}
			}
			r.add(q)
		}
	}
}

// front asks for the place where one stretch of base ends and the next begins.
func (r *room) front(i, j int) {
	w := r.job.Walls[i]
	left, right := w.Base[j], w.Base[j+1]
	if len(left.Readings) == 0 || len(right.Readings) == 0 || !r.same(left.Readings[len(left.Readings)-1].At, right.Readings[0].At) {
		return
	}
	what, help := left.Meets, "Measure along the wall at the rim. Where the rim ends, the leg begins."
	if what == string(survey.Floor) || right.Meets == string(survey.Seat) {
		what = right.Meets
	}
	if what == string(survey.Seat) {
		what = seatAt(w, j, len(left.Readings)-1)
		help = "Measure along the wall to where the face of its tile is, or will be."
	}
	base := form.At("walls", i) + ".base"
	q := Question{Path: form.At(form.At(base, j)+".readings", len(left.Readings)-1) + ".at", Same: []string{form.At(base, j+1) + ".readings[0].at"},
		Picture: "front", Label: "Front of the " + what + " on " + WallName(w.Name) + ", from the " + endWord,
		Ask:  "How far from the " + endWord + " is the front of the " + what + ", on " + WallName(w.Name) + "?",
		Help: help}
	r.add(r.along(q, i))
}

// top asks where the tile stops, or how high the ceiling is.
func (r *room) top() {
	for i, w := range r.job.Walls {
		path := form.At("walls", i) + ".head"
		if w.Head.Meets == "" {
			r.stop(i, path)
			r.topDepth(i)
			continue
		}
		for k, one := range w.Head.Readings {
			where := "bend over " + WallName(w.Name)
			switch k {
			case 0:
				where = r.place(i, true)
			case len(w.Head.Readings) - 1:
				where = r.place(i, false)
			default:
				if len(w.Head.Readings) > 3 {
					where += ", " + one.At + " from its left end"
				}
				at := Question{Path: form.At(path+".readings", k) + ".at", Picture: "top", Label: capital(where) + ", from the " + endWord,
					Ask: "How far from the " + endWord + " is the " + where + "?", Help: "Where the ceiling begins to slope, or slopes otherwise: measured along the wall."}
				r.add(r.along(at, i))
			}
			q := Question{Path: form.At(path+".readings", k) + ".rise", Picture: "top", Label: capital(where) + ", ceiling above the line",
				Ask: "How far is the ceiling above the line at the " + where + "?", Help: "Stand the tape on the line and read it at the ceiling."}
			if k == len(w.Head.Readings)-1 && r.corner(i, false) && i+1 < len(r.job.Walls) && r.corner(i+1, true) {
				if n := r.job.Walls[i+1].Head.Readings; len(n) > 0 && r.same(n[0].Rise, one.Rise) {
					q.Same = []string{form.At("walls", i+1) + ".head.readings[0].rise"}
					q.Help += " One figure serves both walls."
				}
			}
			if last, closes := r.closing(); closes && i == 0 && k == 0 {
				if n := r.job.Walls[last].Head.Readings; len(n) > 0 && r.same(n[len(n)-1].Rise, one.Rise) {
					q.Same = append(q.Same, form.At(form.At("walls", last)+".head.readings", len(n)-1)+".rise")
					q.Help += " One figure serves both walls."
				}
			}
			r.add(q)
		}
	}
}

// openings asks where pipes come through the wall.
func (r *room) openings() {
	for i, w := range r.job.Walls {
		for j, o := range w.Openings {
			switch survey.Kind(o.Kind) {
			case survey.Pipe:
			case survey.Doorway:
				r.doorway(i, j)
				continue
			default:
				r.inside(i, j)
				continue
			}
			path := form.At(form.At("walls", i)+".openings", j)
			at := Question{Path: path + ".at", Picture: "below", Label: capital(o.Name) + ", from the " + endWord, Ask: "How far from the " + endWord + " is the middle of the " + o.Name + "?", Help: "To the middle of the pipe."}
			r.add(r.along(at, i))
			r.add(Question{Path: path + ".height", Picture: "below", Updown: true, Label: capital(o.Name) + ", from the line",
				Ask: "How far above or below the line is the middle of the " + o.Name + "?", Help: "To the middle of the pipe. Never a minus: say above or below."})
		}
	}
}

func (r *room) tile() {
	const help = "The true size as it stands on the wall, not that of the box. A row of ten tells best: see below."
	r.add(Question{Path: "tile.width", Picture: "ten", Label: "Width of a tile", Ask: "How wide is one tile?", Help: help})
	r.add(Question{Path: "tile.height", Picture: "ten", Label: "Height of a tile", Ask: "How high is one tile?", Help: help})
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
