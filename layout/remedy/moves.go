package remedy

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// moves are the changes that move what was measured to where it suits, of each the nearest
// first. What is built stays: a window, a pipe, a niche with a tolerance.
func (a *asker) moves(poor []troubled) (out []try) {
	up := a.now.Setout.Merit.Bare > 0 || slices.ContainsFunc(poor, func(t troubled) bool { return !t.run.Across })
	if up {
		out = append(out, a.bands()...)
		out = append(out, a.lower(poor)...)
	}
	for i := range a.now.Walls {
		var beside []troubled
		for _, t := range poor {
			if t.wall == i {
				beside = append(beside, t)
			}
		}
		if len(beside) > 0 {
			out = append(out, a.openings(i, beside)...)
		}
	}
	return out
}

// moving is a try of a move, told as may be by how far it is moved at most where it is not tried.
func moving(kind Kind, about, text string, m move) try {
	return try{kind, about, text, nil, &m}
}

// bands moves the measured bands of courses together, since one course line says where all
// stand: by a quarter of a course, and by up to a whole one.
func (a *asker) bands() (out []try) {
	room := &a.now.Room
	pinned := a.job.Pins.Course.Line != ""
	if !room.Bond.Coursed() || room.Line != nil && !pinned || a.stands() {
		return nil
	}
	pitch := room.Tile.Height + room.Joint
	for _, by := range []length.Length{pitch / 4, pitch} {
		var m move
		var names []string
		for i, b := range room.Bands {
			if typed, read := a.read(a.job.Bands[i].Bottom.At); read && b.Upon == "" && !b.Bottom.Free() {
				m.marks = append(m.marks, a.bandMark(i, typed, by))
				names = append(names, "the band "+b.Name)
			}
		}
		if m.marks == nil {
			return nil
		}
		m.say, m.also = "Move %s.", nil
		if pinned {
			m.say, m.also = "Let go of the course line, and move %s.", []Use{{"pins.course.line", ""}}
		}
		out = append(out, moving(Move, "bands", fmt.Sprintf(m.say, fmt.Sprintf("%s up or down by up to %s", list(names), a.about(by))), m))
	}
	return out
}

// bandMark is the lower edge of a band, no further than its walls leave it.
func (a *asker) bandMark(i int, typed, by length.Length) mark {
	b := a.now.Room.Bands[i]
	path := fmt.Sprintf("bands[%d]", i)
	return mark{typed: typed, down: by, up: by, path: path + ".bottom", near: path + ".near", middle: typed,
		at: func(s Solved) length.Length { return s.Setout.Bands[i].Bottom },
		told: func(by length.Length) string {
			return fmt.Sprintf("the band %s %s, its lower edge %s", b.Name, a.way(by, "down", "up"), a.over(b.Bottom.From+by))
		}}
}

// lower lets heads that stop at one height stop lower, by up to half a tile: with the heads of the
// worst run under them.
func (a *asker) lower(poor []troubled) []try {
	half := a.now.Room.Tile.Height / 2
	for _, t := range poor {
		if t.run.Across {
			continue
		}
		var m move
		var where []string
		for _, heads := range a.bounds(t) {
			for _, b := range heads {
				typed, read := a.headTyped(b.wall)
				h := a.now.Walls[b.wall].Found.Head
				if b.stops.Free() || !read || h.Top != nil || h.Beneath != nil {
					return nil
				}
				where = append(where, b.where)
				m.marks = append(m.marks, mark{typed: typed, down: half, path: b.path,
					at: func(s Solved) length.Length { return s.Walls[b.wall].Start.Placed.Head },
					told: func(by length.Length) string {
						return fmt.Sprintf("%s, %s", a.way(by, "lower", "higher"), a.over(typed+by))
					}})
			}
		}
		if m.marks != nil {
			m.say = "Let " + list(where) + " stop %s."
			return []try{moving(Move, "lower "+m.marks[0].path, fmt.Sprintf("Let %s stop up to %s lower.", list(where), a.about(half)), m)}
		}
	}
	return nil
}

func (a *asker) headTyped(wall int) (length.Length, bool) {
	if s := a.job.Walls[wall].Head.Stops; s != nil {
		return a.read(s.At)
	}
	return 0, false
}

// openings moves the strips, the niches and the flush dishes beside which a wall has poor cuts.
func (a *asker) openings(wall int, beside []troubled) (out []try) {
	for k, o := range a.now.Walls[wall].Found.Openings {
		across, up := false, false
		for _, t := range beside {
			if o.Parts() || slices.ContainsFunc(t.run.Edges, func(e string) bool { return strings.HasPrefix(e, o.Key()+" ") }) {
				across, up = across || t.run.Across, up || !t.run.Across
			}
		}
		if !across && !up {
			continue
		}
		if m := a.openingMarks(wall, k, across, up); m.marks != nil {
			what := strings.ToUpper(m.say[:1]) + m.say[1:]
			out = append(out, moving(Move, fmt.Sprintf("opening %d %d", wall, k), fmt.Sprintf(what, "by up to half a tile"), m))
		}
	}
	return out
}

// openingMarks are the places of an opening that is nowhere yet.
func (a *asker) openingMarks(wall, k int, across, up bool) (m move) {
	w := a.job.Walls[wall]
	found := a.now.Walls[wall].Found
	o := found.Openings[k]
	path := fmt.Sprintf("walls[%d]", wall)
	switch n := k - len(w.Openings); {
	case o.Kind == survey.Niche && k < len(w.Openings) && (o.Inside == nil || o.Inside.Tolerance == 0):
		m.say = "If " + o.Called() + " is not framed yet, move it %s."
		path = fmt.Sprintf("%s.openings[%d]", path, k)
		typed := w.Openings[k]
		m.add(a, across && typed.Left != nil, typed.Left, a.mark(wall, k, true, path+".left", path+".near.x"))
		m.add(a, up, typed.Bottom, a.mark(wall, k, false, path+".bottom", path+".near.y"))
	case o.Kind == survey.PlumbStrip && n >= 0 && n < len(w.Strips):
		m.say = "Move " + o.Called() + " %s."
		path = fmt.Sprintf("%s.strips[%d]", path, n)
		m.add(a, across, &w.Strips[n].Middle, a.mark(wall, k, true, path+".middle", path+".near"))
	case o.Kind == survey.SoapDish && dish(w, n-len(w.Strips)) >= 0:
		i := dish(w, n-len(w.Strips))
		m.say = "Move " + o.Called() + " %s."
		path = fmt.Sprintf("%s.fixtures[%d]", path, i)
		f := w.Fixtures[i]
		along, height := a.mark(wall, k, true, path+".at", ""), a.mark(wall, k, false, path+".height", path+".near")
		along.plain, along.along, height.plain = true, path+".along", true
		m.add(a, across, &survey.Mark{At: f.At}, along)
		m.add(a, up, &survey.Mark{At: f.Height.Plain}, height)
	}
	return m
}

// dish is the fixture that is the nth flush dish of a wall.
func dish(w survey.Wall, n int) int {
	for i, f := range w.Fixtures {
		if f.Flush {
			if n == 0 {
				return i
			}
			n--
		}
	}
	return -1
}

// add adds a mark where it is to be moved and was measured.
func (m *move) add(a *asker, there bool, typed *survey.Mark, k mark) {
	if !there || typed == nil {
		return
	}
	if l, read := a.read(typed.At); read {
		k.typed = l
		m.marks = append(m.marks, k)
	}
}

// mark is the left or the lower edge of an opening, free by half a tile with its joint to either side.
func (a *asker) mark(wall, k int, across bool, path, near string) mark {
	tile, joint := a.now.Room.Tile, a.now.Room.Joint
	e := a.now.Walls[wall].Start.Placed.Openings[k]
	out := mark{path: path, near: near}
	if across {
		out.down, out.middle = (tile.Width+joint)/2, e.Left+(e.Right-e.Left).Half()
		out.at = func(s Solved) length.Length { return s.Walls[wall].Start.Placed.Openings[k].Left }
		out.told = func(by length.Length) string { return a.way(by, "to the left", "to the right") }
	} else {
		out.down, out.middle = (tile.Height+joint)/2, e.Bottom+(e.Top-e.Bottom).Half()
		out.at = func(s Solved) length.Length { return s.Walls[wall].Start.Placed.Openings[k].Bottom }
		out.told = func(by length.Length) string { return a.way(by, "down", "up") }
	}
	out.up = out.down
	return out
}
