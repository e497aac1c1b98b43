package page

import (
	"cmp"
	"fmt"
	"regexp"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// Parse reads the length typed in a field.
func Parse(j Job, path string) (length.Length, error) {
	return length.Parse(j.Value(path), j.System())
}

// Short gives a length as the tape shows it, or what was typed.
func Short(j Job, typed string) string {
	l, err := length.ParsePrinted(typed, j.System())
	if err != nil {
		return cmp.Or(typed, "?")
	}
	return l.Tape(j.System())
}

// fraction is a whole number before a fraction: one figure, written with a space.
var fraction = regexp.MustCompile(`(\d) (\d+/\d)`)

// Unbroken keeps the figures of a text each on one line, and a per cent sign with its figure.
func Unbroken(text string) string {
	return strings.ReplaceAll(fraction.ReplaceAllString(text, "$1\u00a0$2"), " %", "\u00a0%")
}

// TileLine says in one line which tile it is.
func TileLine(j Job) string {
	t := j.Typed.Tile
	size := Short(j, t.Width) + " × " + Short(j, t.Height)
	if r := j.Sampled(); r.Used && Known(r) {
		size = j.RealSize(r)
	}
	return strings.TrimSpace(size + " " + t.Name)
}

// JointLine says how wide the joint is.
func JointLine(j Job) string {
	if m := j.Typed.Joint.Mark; m != nil && m.At == "" {
		return Short(j, m.From) + " to " + Short(j, m.To)
	}
	return Short(j, j.Typed.Joint.Plain)
}

// BondLine says which bond it is.
func BondLine(j Job) string {
	bond := j.Typed.Bond
	if bond.Kind == "stack" {
		return "stack bond"
	}
	if bond.Kind != "running" {
		return patternLine(bond)
	}
	return strings.TrimSpace(fmt.Sprintf("running bond %s %s", bond.Offset, bond.Hand))
}

// patternLine says which pattern it is, and how it stands.
func patternLine(bond survey.Bond) string {
	line := bond.Kind
	if bond.Angle != "" {
		line += " " + bond.Angle + "°"
	}
	if bond.Turn != "" {
		line += " at " + bond.Turn + "°"
	}
	if bond.Along == "plumb" && bond.Turn == "" {
		line += ", rows plumb"
	}
	return line
}

// PinsLine says how much is pinned.
func PinsLine(j Job) string {
	if n := len(j.Pinned()); n > 0 {
		return Count(n, "pin")
	}
	return "none"
}

// Titled gives a job's title, or what to call a job that has none.
func Titled(title string) string {
	if strings.TrimSpace(title) == "" {
		return "A job without a name"
	}
	return title
}

// Count says how many there are of a thing, by its noun.
func Count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// PlaceName says where a field is in words: "wall 2, base 1, reading 3, drop".
func PlaceName(path string) string {
	out := strings.NewReplacer("walls[", "wall [", "readings[", "reading [", "openings[", "opening [",
		"pins.course.line", "course line", "pins.walls.", "start of ", "setOrder[", "setting order [").Replace(path)
	return strings.TrimSpace(counted(strings.ReplaceAll(out, ".", ", ")))
}

// counted writes [2] as 3, because people count from one.
func counted(s string) string {
	var out strings.Builder
	for s != "" {
		open := strings.IndexByte(s, '[')
		shut := strings.IndexByte(s, ']')
		var n int
		if open < 0 || shut < open {
			break
		}
		if _, err := fmt.Sscanf(s[open:shut+1], "[%d]", &n); err != nil {
			break
		}
		out.WriteString(strings.TrimSuffix(s[:open], " ") + fmt.Sprintf(" %d", n+1))
		s = s[shut+1:]
	}
	return out.String() + s
}

// Pin is one pinned unknown: its field and what it is called.
type Pin struct{ Path, Label string }

// Pinned lists what is pinned.
func (j Job) Pinned() []Pin {
	var out []Pin
	for _, f := range form.Fields(j.Typed) {
		if strings.HasPrefix(f.Path, "pins.") {
			out = append(out, Pin{f.Path, PlaceIn(j.Typed, f.Path)})
		}
	}
	return out
}

// Choice is one word of a select, as the job file and as people write it.
type Choice struct{ Value, Text string }

// Choices makes choices of words in pairs: as the job file has it, as people do.
func Choices(pairs ...string) []Choice {
	var out []Choice
	for i := 0; i+1 < len(pairs); i += 2 {
		out = append(out, Choice{pairs[i], pairs[i+1]})
	}
	return out
}

// Sampled is the sample of the tile as typed.
func (j Job) Sampled() survey.Real { return j.Typed.Real() }

// Known tells whether a sample says anything.
func Known(r survey.Real) bool { return r.Width > 0 || r.Height > 0 }

// Near gives a length to 1/64 in or to 0.1 mm, in the job's system alone.
func (j Job) Near(l length.Length) string {
	if j.System() == length.Metric {
		return l.Format(length.Metric, length.Millimetre/10)
	}
	return l.Format(length.Imperial, length.Inch/64)
}

// RealSize is the measured size, with the size typed where one side was not measured.
func (j Job) RealSize(r survey.Real) string {
	side := func(l length.Length, typed string) string {
		if l == 0 {
			return Short(j, typed)
		}
		return j.Near(l)
	}
	return side(r.Width, j.Typed.Tile.Width) + " × " + side(r.Height, j.Typed.Tile.Height)
}

// Joined lists ids as an attribute holds them.
func Joined(ids []string) string { return strings.Join(ids, " ") }

// Minus writes a true minus sign where a figure begins with a hyphen.
func Minus(text string) string {
	if rest, found := strings.CutPrefix(text, "-"); found {
		return "−" + rest
	}
	return text
}

// Moment is how a page writes when something was saved, for time.Format.
const Moment = "2 Jan 2006, 15:04:05"
