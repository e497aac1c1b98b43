package view

import (
	"cmp"
	"fmt"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// The one line that a closed section of the survey shows.

func parse(b Bench, path string) (length.Length, error) {
	return length.Parse(b.Value(path), b.System())
}

// short gives a length as the tape shows it, or what was typed.
func short(b Bench, typed string) string {
	l, err := length.Parse(typed, b.System())
	if err != nil {
		return cmp.Or(typed, "?")
	}
	return l.Tape(b.System())
}

func wallsLine(b Bench) string {
	var out []string
	for _, w := range b.Typed.Walls {
		out = append(out, w.Name+" "+short(b, w.Width))
	}
	return strings.Join(out, ", ")
}

func readingsLine(b Bench) string {
	n := 0
	for _, w := range b.Typed.Walls {
		for _, s := range w.Base {
			n += len(s.Readings)
		}
		n += len(w.Head.Readings)
	}
	return count(n, "reading")
}

func endsLine(b Bench) string {
	corners, stops := 0, 0
	for _, w := range b.Typed.Walls {
		for _, e := range []survey.End{w.Left, w.Right} {
			if e.Meets != "" {
				corners++
			} else {
				stops++
			}
		}
	}
	return count((corners+1)/2, "corner") + ", " + count(stops, "stop")
}

func openingsLine(b Bench) string {
	var out []string
	for _, w := range b.Typed.Walls {
		for _, o := range w.Openings {
			out = append(out, drawing.OpeningName(o.Kind, o.Name)+" on "+w.Name)
		}
	}
	return cmp.Or(strings.Join(out, ", "), "none")
}

func tileLine(b Bench) string {
	t := b.Typed.Tile
	size := short(b, t.Width) + " × " + short(b, t.Height)
	if r := b.sampled(); r.Used && known(r) {
		size = b.realSize(r)
	}
	return strings.TrimSpace(size + " " + t.Name)
}

func jointLine(b Bench) string {
	if m := b.Typed.Joint.Mark; m != nil && m.At == "" {
		return short(b, m.From) + " to " + short(b, m.To)
	}
	return short(b, b.Typed.Joint.Plain)
}

func bondLine(b Bench) string {
	bond := b.Typed.Bond
	if bond.Kind == "stack" {
		return "stack bond"
	}
	return strings.TrimSpace(fmt.Sprintf("running bond %s %s", bond.Offset, bond.Hand))
}

func limitsLine(b Bench) string {
	sliver := "a third of the tile"
	if b.Typed.Limits.Sliver != "" {
		sliver = short(b, b.Typed.Limits.Sliver)
	}
	return "slivers under " + sliver
}

func pinsLine(b Bench) string {
	if n := len(b.pinned()); n > 0 {
		return count(n, "pin")
	}
	return "none"
}

// titled gives a job's title, or what to call a job that has none.
func titled(title string) string {
	if strings.TrimSpace(title) == "" {
		return "A job without a name"
	}
	return title
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// placeName says where a field is in words: "wall 2, base 1, reading 3, drop".
func placeName(path string) string {
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
