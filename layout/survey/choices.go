package survey

import (
	"cmp"
	"fmt"
	"slices"
)

// Choice is one of several ways to tile the room. The chosen one stands at the
// top of the job and keeps only its name here, so that nothing is said twice.
// A choice that names no colour of grout has that of the job.
type Choice struct {
	Name  string  `json:"name"`
	Tile  Tile    `json:"tile,omitzero"`
	Joint Measure `json:"joint,omitzero"`
	Bond  Bond    `json:"bond,omitzero"`
	Grout string  `json:"grout,omitempty"` // its colour, "#rrggbb"
	Pins  Pins    `json:"pins,omitzero"`   // starts, course line, and the marks of niches and ends
	Held  *Held   `json:"held,omitempty"`
}

// mostChoices bounds how many plans one page has to compare.
const mostChoices = 12

// As gives the job as one of its choices has it, without the others. It is
// false where there is no such choice.
func (j Job) As(name string) (Job, bool) {
	i := j.choice(name)
	if i < 0 {
		return Job{}, false
	}
	if name != j.Chosen {
		j.use(j.Choices[i])
	}
	j.Choices, j.Chosen = nil, ""
	return j, true
}

// Choose brings a choice to the top of the job.
func (j Job) Choose(name string) (Job, error) {
	to, from := j.choice(name), j.choice(j.Chosen)
	if to < 0 || from < 0 {
		return j, noChoice(name)
	}
	j.Choices = slices.Clone(j.Choices)
	j.Choices[from] = j.held(j.Chosen)
	before := j.Grout
	j.use(j.Choices[to])
	j.Choices[to], j.Chosen = Choice{Name: name}, name
	return j.NameGrouts(before), nil
}

// Colour gives a choice its colours of tile and grout; the others keep theirs.
func (j Job) Colour(name, tile, grout string) (Job, error) {
	i := j.choice(name)
	switch {
	case len(j.Choices) == 0 || i >= 0 && name == j.Chosen:
		before := j.Grout
		j.Tile.Colour, j.Grout = tile, grout
		return j.NameGrouts(before), nil
	case i < 0:
		return j, noChoice(name)
	}
	j.Choices = slices.Clone(j.Choices)
	j.Choices[i].Tile.Colour, j.Choices[i].Grout = tile, grout
	return j, nil
}

// NameGrouts writes to the choices that name no grout the colour that the job had,
// where the job has another now, so that they keep it.
func (j Job) NameGrouts(before string) Job {
	if j.Grout == before {
		return j
	}
	j.Choices = slices.Clone(j.Choices)
	for i, c := range j.Choices {
		if c.Grout == "" && c.Name != j.Chosen {
			j.Choices[i].Grout = cmp.Or(before, UsualGrout.String())
		}
	}
	return j
}

// Duplicate adds a choice that is like another one, but holds no marks that somebody holds: those on the wall are of the
// other, and a copy is made to be set out otherwise. What an earlier version gave stays as it is in both until it is
// answered. A job without choices first becomes a choice itself, called name.
func (j Job) Duplicate(name, copied string) (Job, error) {
	if len(j.Choices) == 0 {
		j.Choices, j.Chosen = []Choice{{Name: name}}, name
	}
	i := j.choice(name)
	switch {
	case i < 0:
		return j, noChoice(name)
	case len(j.Choices) == mostChoices:
		return j, fmt.Errorf("a job has at most %d choices", mostChoices)
	}
	twin := j.Choices[i]
	if name == j.Chosen {
		twin = j.held(name)
	}
	if twin.Name = copied; twin.Held != nil && twin.Held.Engine == "" {
		twin.Held = nil
	}
	j.Choices = slices.Insert(slices.Clone(j.Choices), i+1, twin)
	return j, nil
}

// Rename gives a choice another name.
func (j Job) Rename(name, to string) (Job, error) {
	i := j.choice(name)
	if i < 0 {
		return j, noChoice(name)
	}
	j.Choices = slices.Clone(j.Choices)
	j.Choices[i].Name = to
	if j.Chosen == name {
		j.Chosen = to
	}
	return j, nil
}

// Drop deletes a choice that is not the chosen one. Where only the chosen one
// is left, the job is a plain job again.
func (j Job) Drop(name string) (Job, error) {
	i := j.choice(name)
	switch {
	case i < 0:
		return j, noChoice(name)
	case name == j.Chosen:
		return j, fmt.Errorf("%s is the chosen one: choose another before deleting it", quote(name))
	}
	j.Choices = slices.Delete(slices.Clone(j.Choices), i, i+1)
	if len(j.Choices) == 1 {
		j.Choices, j.Chosen = nil, ""
	}
	return j, nil
}

func (j Job) choice(name string) int {
	return slices.IndexFunc(j.Choices, func(c Choice) bool { return c.Name == name })
}

// held is what stands at the top of the job, as a choice.
func (j Job) held(name string) Choice {
	return Choice{Name: name, Tile: j.Tile, Joint: j.Joint, Bond: j.Bond, Grout: j.Grout, Pins: j.Pins, Held: j.Held}
}

func (j *Job) use(c Choice) {
	j.Tile, j.Joint, j.Bond, j.Pins, j.Held = c.Tile, c.Joint, c.Bond, c.Pins, c.Held
	j.Grout = cmp.Or(c.Grout, j.Grout)
}

func noChoice(name string) error { return fmt.Errorf("there is no choice %s", quote(name)) }

// choices checks every choice by itself. Whether its pins still fit the walls
// shows when it is solved: a wall measured again must not be refused because
// of a choice that nobody looks at.
func (r *resolver) choices(j Job) {
	if len(j.Choices) > mostChoices {
		r.faults.add("choices", fmt.Sprintf("%d choices", len(j.Choices)), fmt.Sprintf("at most %d", mostChoices))
		return
	}
	switch {
	case len(j.Choices) == 0 && j.Chosen != "":
		r.faults.add("chosen", quote(j.Chosen), "nothing here: the job has no choices")
	case len(j.Choices) > 0 && j.choice(j.Chosen) < 0:
		r.faults.add("chosen", quote(j.Chosen), "the name of one of the choices")
		return // which of them stands at the top is not known
	}
	taken, chosen := map[string]bool{}, 0
	for _, c := range j.Choices {
		if c.Name == j.Chosen {
			chosen++
		}
	}
	for i, c := range j.Choices {
		p := path("choices").at(i)
		name := r.name(value{p.dot("name"), c.Name}, taken)
		switch {
		case name != j.Chosen:
			r.other(p, c)
		case !c.empty() && chosen == 1: // of two of its name the other is another
			r.faults.add(p, "a tile, joint, bond, grout or pins of the chosen one", "only its name: the rest stands at the top of the job")
		}
	}
}

// empty tells whether a choice holds nothing but its name.
func (c Choice) empty() bool {
	return c.Tile == Tile{} && c.Joint == Measure{} && c.Bond.empty() && c.Grout == "" && c.Pins.Course == CoursePin{} && len(c.Pins.Walls) == 0 && c.Held == nil
}

// pinned reads a pin that may be left out.
func (r *resolver) pinned(v value) {
	if v.text != "" {
		r.printed(v, upright())
	}
}

// other reads a choice that is not the chosen one.
func (r *resolver) other(p path, c Choice) {
	tile := r.tile(p.dot("tile"), c.Tile, c.Joint)
	joints := r.joints(p.dot("joint"), c.Joint)
	r.bond(p.dot("bond"), c.Bond, tile, joints)
	r.colour(value{p.dot("grout"), c.Grout}, UsualGrout)
	r.otherPins(p.dot("pins"), c.Pins)
	if h := c.Held; h != nil {
		r.label(value{p.dot("held.engine"), h.Engine}, longestName)
		r.pinned(value{p.dot("held.joint"), h.Joint})
		if h.Hand != "" {
			r.choice(value{p.dot("held.hand"), h.Hand}, "left", "right")
		}
		r.otherPins(p.dot("held"), Pins{Course: h.Course, Walls: h.Walls})
		for i, b := range h.Bands {
			here := p.dot("held.bands").at(i)
			r.pinned(value{here.dot("bottom"), b.Bottom})
			r.otherPins(here, Pins{Walls: b.Walls})
		}
	}
}

// otherPins reads the pins of a choice that is not the chosen one.
func (r *resolver) otherPins(p path, pins Pins) {
	r.pinned(value{p.dot("course.line"), pins.Course.Line})
	for _, name := range sortedKeys(pins.Walls) {
		here, pin := p.dot("walls").dot(name), pins.Walls[name]
		r.pinned(value{here.dot("edge"), pin.Edge})
		r.pinned(value{here.dot("joint"), pin.Joint})
		r.pinned(value{here.dot("tile"), pin.Tile})
		for _, mark := range sortedKeys(pin.Marks) {
			r.printed(value{here.dot("marks").dot(mark), pin.Marks[mark]}, upright())
		}
	}
}
