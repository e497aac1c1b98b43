package bathroom

import (
	"slices"
	"strconv"
)

// count tells how many pieces of a step are set.
func (b bathroom) count(s step) int {
	n := 0
	for _, p := range s.Pieces {
		if b.set[b.marks[p.ID]] {
			n++
		}
	}
	return n
}

// total is how much of the job is set, with what stands already.
func (b bathroom) total() Part {
	all := Part{Set: len(b.stands), Total: len(b.stands)}
	for _, s := range b.steps {
		all.Set += b.count(s)
		all.Total += len(s.Pieces)
	}
	return all
}

// parts lists the walls, and the courses of the wall of the page.
func (b bathroom) parts(out *Bathroom, at int) {
	for _, wall := range b.walls {
		w := b.plan.Walls[wall]
		part := Part{Name: w.Found.Name, Letter: w.Found.Letter, Wall: wall, Here: wall == out.Wall}
		for _, s := range b.steps {
			if s.Wall != wall {
				continue
			}
			b.goOn(&part, s)
			if part.Here {
				out.Courses = b.course(out.Courses, s)
			}
		}
		for _, p := range w.Pieces {
			if b.stands[p.ID] {
				part.Set++
				part.Total++
			}
		}
		if part.Here {
			out.Here, out.Open = part, b.open(part)
		}
		out.Parts = append(out.Parts, part)
	}
	for i := range out.Courses {
		out.Courses[i].Here = at >= 0 && at < len(b.steps) && b.steps[at].Wall == out.Wall && out.Courses[i].Name == b.steps[at].row()
	}
}

// goOn adds a step to a part and keeps where one goes on in it: at the first
// step with something to set, else at its beginning.
func (b bathroom) goOn(p *Part, s step) {
	set := b.count(s)
	if p.Piece == "" || p.Set == p.Total && set < len(s.Pieces) {
		p.Piece = s.Pieces[0].ID
	}
	p.Set += set
	p.Total += len(s.Pieces)
}

// course adds a step to its course, or a new one to the list.
func (b bathroom) course(list []Part, s step) []Part {
	name := s.row()
	i := slices.IndexFunc(list, func(p Part) bool { return p.Name == name })
	if i < 0 {
		i, list = len(list), append(list, Part{Name: name, Wall: s.Wall})
	}
	b.goOn(&list[i], s)
	return list
}

// open is where one goes on in a part, or nothing where all of it is set.
func (b bathroom) open(p Part) string {
	if p.Set == p.Total {
		return ""
	}
	return p.Piece
}

// astray lists the ticks that no piece of the plan fits. One for a piece that
// stands by now, where it really is, has come true.
func (b bathroom) astray() []Strayed {
	fits := map[string]bool{}
	for _, mark := range b.marks {
		fits[mark] = true
	}
	var out []Strayed
	for _, t := range b.ticks {
		if !fits[t.Mark] && !b.stands[t.Piece] {
			out = append(out, Strayed{Piece: t.Piece, Mark: t.Mark})
		}
	}
	return out
}

// number reads a count from an address; 0 where there is none.
func number(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 {
		return 0
	}
	return n
}

// cleanID keeps of a piece's name what such a name may hold.
func cleanID(id string) string {
	var out []byte
	for i := 0; i < len(id) && len(out) < 32; i++ {
		if c := id[i]; c == '-' || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' {
			out = append(out, c)
		}
	}
	return string(out)
}
