package page

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"coursewright/layout/survey"
	"coursewright/web/ask"
	"coursewright/web/drawing"
	"coursewright/web/form"
)

// PlaceIn says where a field of a job is: by the label of the box in which it is asked for, as
// "Corner of left and back, below the line", else by the names the job gives things: "Niche shelf on back, left
// edge". What has no name yet is counted from one, as in placeName.
func PlaceIn(job survey.Job, path string) string {
	for _, q := range ask.All(job) {
		if q.Path == path || slices.Contains(q.Same, path) {
			return q.Label
		}
	}
	parts := form.Parts(path)
	words := wordsOf(job, parts)
	if len(words) == 0 {
		return capital(PlaceName(path))
	}
	return capital(strings.Join(words, ", "))
}

// ValueIn says a figure of a field as it is asked for: PlaceIn may call it “from the corner”, which the
// job counts from the left end.
func ValueIn(job survey.Job, path, figure string) string {
	for _, q := range ask.All(job) {
		if q.Path == path || slices.Contains(q.Same, path) {
			return q.Said(job, figure)
		}
	}
	if strings.HasSuffix(path, ".lean[1].off") && figure != "" {
		return form.LeanWords(figure)
	}
	return figure
}

func wordsOf(job survey.Job, parts []form.Part) []string {
	switch head := parts[0].Name; {
	case head == "walls" && len(parts) > 1 && parts[1].Index >= 0 && parts[1].Index < len(job.Walls):
		w := job.Walls[parts[1].Index]
		return wallWords(w, cmp.Or(w.Name, fmt.Sprintf("wall %d", parts[1].Index+1)), parts[2:])
	case head == "pins" && len(parts) > 2 && parts[1].Name == "course":
		return []string{"course line"}
	case head == "pins" && len(parts) > 4 && parts[3].Name == "marks":
		return []string{markName(parts[4].Name, parts[2].Name)}
	case head == "pins" && len(parts) > 3:
		return []string{"start of " + parts[2].Name}
	case head == "held":
		return heldWords(job, parts)
	case head == "trims" && len(parts) > 1 && parts[1].Index >= 0 && parts[1].Index < len(job.Trims):
		return append([]string{"trim " + cmp.Or(job.Trims[parts[1].Index].Name, fmt.Sprint(parts[1].Index+1))}, fieldWords(parts[2:])...)
	case head == "bands" && len(parts) > 1 && parts[1].Index >= 0 && parts[1].Index < len(job.Bands):
		return append([]string{"band " + cmp.Or(job.Bands[parts[1].Index].Name, fmt.Sprint(parts[1].Index+1))}, fieldWords(parts[2:])...)
	case head == "choices" && len(parts) > 1 && parts[1].Index >= 0:
		return append([]string{fmt.Sprint("choice ", parts[1].Index+1)}, fieldWords(parts[2:])...)
	case head == "setOrder":
		return []string{"setting order"}
	case head == "tile":
		return fieldWords(parts)
	case head == "grout":
		return []string{"colour of the grout"}
	}
	return nil
}

// heldWords say what is held of a set-out, in the words of its pins.
func heldWords(job survey.Job, parts []form.Part) []string {
	switch {
	case len(parts) == 1:
		return []string{"set-out held"}
	case len(parts) == 2:
		return []string{parts[1].Name + " of the set-out held"}
	case parts[1].Name == "bands":
		return append([]string{"band held"}, fieldWords(parts[3:])...)
	}
	as := append([]form.Part{{Name: "pins", Index: -1}}, parts[1:]...)
	return append(wordsOf(job, as), "held")
}

// markName says what a mark of a wall is, which the plan file calls "end left",
// "head" or "niche NAME left".
func markName(mark, wall string) string {
	if side, end := strings.CutPrefix(mark, "end "); end {
		return side + " end of " + wall
	}
	i := strings.LastIndex(mark, " ")
	if i < 0 {
		return mark + " of " + wall
	}
	return mark[i+1:] + " edge of " + calledIn(mark[:i]) + " on " + wall
}

// calledIn is how people call what a mark is of, as "niche 2" of "niche niche 2".
func calledIn(key string) string {
	for _, kind := range []survey.Kind{survey.Niche, survey.Window, survey.PlumbStrip, survey.SoapDish} {
		if name, is := strings.CutPrefix(key, string(kind)+" "); is {
			return drawing.OpeningName(string(kind), name)
		}
	}
	return key
}

// wallWords say where a field of a wall is.
func wallWords(w survey.Wall, name string, rest []form.Part) []string {
	wall := name
	if !strings.Contains(name, "wall") {
		wall += " wall"
	}
	switch {
	case len(rest) > 1 && rest[0].Name == "base" && rest[1].Index < len(w.Base):
		return append([]string{wall, w.Base[rest[1].Index].Meets}, fieldWords(rest[2:])...)
	case len(rest) > 1 && rest[0].Name == "openings" && rest[1].Index < len(w.Openings):
		o := w.Openings[rest[1].Index]
		return append([]string{drawing.OpeningName(o.Kind, o.Name) + " on " + name}, openingWords(rest[2:])...)
	case len(rest) > 1 && rest[0].Name == "strips" && rest[1].Index < len(w.Strips):
		return append([]string{"strip " + w.Strips[rest[1].Index].Name + " on " + name}, fieldWords(rest[2:])...)
	case len(rest) > 1 && rest[0].Name == "fixtures" && rest[1].Index < len(w.Fixtures):
		return append([]string{w.Fixtures[rest[1].Index].Name + " on " + name}, fieldWords(rest[2:])...)
	case len(rest) == 4 && rest[1].Name == "lean" && rest[2].Index == 1 && rest[3].Name == "off" && len(leanOf(w, rest[0].Name)) == 2:
		return []string{wall, rest[0].Name + " end", "how far the corner leans"}
	case len(rest) > 0 && (rest[0].Name == "left" || rest[0].Name == "right"):
		return append([]string{wall, rest[0].Name + " end"}, fieldWords(rest[1:])...)
	}
	return append([]string{wall}, fieldWords(rest)...)
}

func leanOf(w survey.Wall, end string) []survey.Lean {
	if end == "left" {
		return w.Left.Lean
	}
	return w.Right.Lean
}

// edgeNames are the marks of a niche or window, as its fields name them.
var edgeNames = map[string]string{"left": "left edge", "bottom": "bottom edge"}

// openingWords are those of a niche, a window or a pipe. That a mark is one figure is not said.
func openingWords(parts []form.Part) []string {
	words := fieldWords(parts)
	if n := len(words) - 1; n > 0 && words[n] == "at" {
		words = words[:n]
	}
	if len(words) > 0 {
		words[0] = cmp.Or(edgeNames[words[0]], words[0])
	}
	return words
}

// fieldNames are fields whose name in the job file is not what people say.
var fieldNames = map[string]string{"readings": "reading", "drop": "down", "rise": "up", "stops": "stops at", "off": "to the right"}

// tileNames are the fields of a tile by the labels of their boxes, from the tile's own name on.
var tileNames = map[string]string{
	"name": "name of the tile", "colour": "colour of the tile", "thickness": "thickness of the tile", "grain": "whether the tile's face has a direction",
	"vary": "how far single tiles differ", "box": "tiles in a box", "box count": "tiles in a box", "box price": "price of a box",
	"sheet across": "tiles along a sheet", "sheet up": "tiles up a sheet",
}

// tileWords say a field of a tile, from its last two names; nothing where its own name will do.
func tileWords(parts []form.Part) string {
	n := len(parts)
	if n > 2 && parts[n-3].Name == "tile" {
		return tileNames[parts[n-2].Name+" "+parts[n-1].Name]
	}
	if n > 1 && parts[n-2].Name == "tile" {
		return tileNames[parts[n-1].Name]
	}
	return ""
}

// fieldWords read the rest of a path: a list's place stands with its name.
func fieldWords(parts []form.Part) []string {
	if said := tileWords(parts); said != "" {
		i := slices.IndexFunc(parts, func(p form.Part) bool { return p.Name == "tile" })
		return append(fieldWords(parts[:i]), said)
	}
	var out []string
	for _, p := range parts {
		switch {
		case p.Index < 0:
			out = append(out, cmp.Or(fieldNames[p.Name], form.Spaced(p.Name)))
		case len(out) > 0:
			out[len(out)-1] += fmt.Sprintf(" %d", p.Index+1)
		}
	}
	return out
}

func capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}
