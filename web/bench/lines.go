package bench

import (
	"cmp"
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/page"
)

// The one line that a closed section of the survey shows.

func wallsLine(b Bench) string {
	var out []string
	for _, w := range b.Typed.Walls {
		out = append(out, w.Name+" "+page.Short(b.Job, w.Width))
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
	return page.Count(n, "reading")
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
	return page.Count((corners+1)/2, "corner") + ", " + page.Count(stops, "stop")
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

func limitsLine(b Bench) string {
	sliver := "a quarter of the tile"
	if b.Typed.Limits.Sliver != "" {
		sliver = page.Short(b.Job, b.Typed.Limits.Sliver)
	}
	return "slivers under " + sliver
}
