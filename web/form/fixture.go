package form

import (
	"cmp"
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// addFixture adds a fixture of a kind with sizes that are common, over the level
// line as if that were 40 in (1000 mm) over a rim: a shelf 8 to 20 in over it, a foot
// rest 15 in over the rim, a bar 33 to 36 in over the floor, a dish at the level line. Facts of
// how-to pages and ADA 609; to be typed over.
func addFixture(job *survey.Job, w *survey.Wall, kind string) error {
	f := survey.Fixture{Kind: kind, At: middle(job, "0", w.Width)}
	between := func(from, to string) survey.Measure { return survey.Measure{Mark: &survey.Mark{From: from, To: to}} }
	switch survey.Kind(kind) {
	case survey.CornerShelf:
		f.Height, f.Width = between(pick(job, "8", "200"), pick(job, "20", "500")), pick(job, "8", "200")
	case survey.FootRest:
		f.Height, f.Width = between(pick(job, "-28", "-700"), pick(job, "-22", "-550")), pick(job, "6", "150")
	case survey.SoapDish:
		f.Height, f.Width, f.High = between(pick(job, "-6", "-150"), pick(job, "6", "150")), pick(job, "6", "150"), pick(job, "4", "100")
	case survey.GrabBar:
		f.Height, f.Width = barHeight(job), narrower(job, pick(job, "24", "600"), middle(job, "0", w.Width))
	case survey.GlassLine:
		f.Holes = []survey.Drilled{{Height: pick(job, "-30", "-750")}, {Height: pick(job, "20", "500")}}
	default:
		return fmt.Errorf("%q is no kind of fixture", kind)
	}
	if survey.Kind(kind) == survey.CornerShelf || survey.Kind(kind) == survey.FootRest {
		f.At, f.Corner = "", "left"
		if w.Left.Meets != "corner" {
			f.Corner = "right"
		}
		if w.Left.Meets != "corner" && w.Right.Meets != "corner" {
			return fmt.Errorf("wall %q meets no corner", w.Name)
		}
	}
	var taken []string
	for _, x := range w.Fixtures {
		taken = append(taken, x.Name)
	}
	f.Name = freeName(kind, taken)
	if f.Width != "" {
		f.Width = narrower(job, f.Width, middle(job, "0", w.Width)) // on the end panel of a half wall
	}
	underHead(job, w, &f)
	w.Fixtures = append(w.Fixtures, f)
	return nil
}

// underHead lowers a fixture that would stand over the head of a low wall, to 2 in (50 mm) under
// where that stops at the lowest.
func underHead(job *survey.Job, w *survey.Wall, f *survey.Fixture) {
	if w.Head.Stops == nil {
		return
	}
	most := less(job, cmp.Or(w.Head.Stops.At, w.Head.Stops.From), pick(job, "2", "50"))
	if m := f.Height.Mark; m != nil {
		room := less(job, m.To, m.From)
		m.To = narrower(job, m.To, most)
		m.From = narrower(job, m.From, less(job, m.To, room))
	}
	for i := range f.Holes {
		f.Holes[i].Height = narrower(job, f.Holes[i].Height, most)
	}
}

// barHeight is 33 to 36 in (840 to 915 mm) over the floor (ADA 609.4), or over a shower base where
// no floor is measured; beside a tub alone as if that stood 15 in high on the floor, with its rim
// 40 in under the level line.
func barHeight(job *survey.Job) survey.Measure {
	for _, base := range []survey.Kind{survey.Floor, survey.ShowerBase} {
		for i := range job.Walls {
			for _, s := range job.Walls[i].Base {
				if s.Meets == string(base) && len(s.Readings) > 0 {
					drop := s.Readings[0].Drop
					return survey.Measure{Mark: &survey.Mark{From: less(job, pick(job, "33", "840"), drop), To: less(job, pick(job, "36", "915"), drop)}}
				}
			}
		}
	}
	return survey.Measure{Mark: &survey.Mark{From: pick(job, "-26", "-660"), To: pick(job, "-20", "-510")}}
}

// addDrilled adds a hole to a glass line, halfway to the level line from the last.
func addDrilled(job *survey.Job, w *survey.Wall, way []step) error {
	if len(way) < 2 || way[1].index < 0 || way[1].index >= len(w.Fixtures) {
		return fmt.Errorf("there is no such fixture")
	}
	f := &w.Fixtures[way[1].index]
	at := "0"
	if n := len(f.Holes); n > 0 {
		at = compute(job, f.Holes[n-1].Height, "0", func(x, y length.Length) length.Length { return (x + y).Half() })
	}
	f.Holes = append(f.Holes, survey.Drilled{Height: at})
	return nil
}

// tidyFixtures drops a wish where the height is measured.
func tidyFixtures(w *survey.Wall) {
	for i := range w.Fixtures {
		f := &w.Fixtures[i]
		if m := f.Height.Mark; m == nil || m.At != "" {
			f.Near = ""
		}
		f.Flush = f.Flush && f.Kind == string(survey.SoapDish)
		switch {
		case !f.Flush && f.Along != nil:
			f.At, f.Along = cmp.Or(f.At, f.Along.At, f.Along.From), nil
		case f.Along != nil:
			f.At = ""
		}
		if len(f.Holes) == 0 {
			f.Holes = nil
		}
	}
	if len(w.Fixtures) == 0 {
		w.Fixtures = nil
	}
}

// along lets the middle of a flush dish stand anywhere within a tile of where it is, or
// measures it where it does: "PATH".
func along(job *survey.Job, path string) error {
	way, err := steps(path)
	if err != nil || len(way) != 4 || way[0].name != "walls" || way[2].name != "fixtures" || way[1].index < 0 || way[1].index >= len(job.Walls) ||
		way[3].index < 0 || way[3].index >= len(job.Walls[way[1].index].Fixtures) {
		return fmt.Errorf("there is no fixture at %q", path)
	}
	f := &job.Walls[way[1].index].Fixtures[way[3].index]
	switch {
	case !f.Flush:
		return fmt.Errorf("%q is not flush", f.Name)
	case f.Along != nil:
		f.At, f.Along = cmp.Or(f.Along.At, middle(job, f.Along.From, f.Along.To)), nil
	default:
		off := pick(job, "4", "100")
		f.Along = &survey.Mark{From: less(job, f.At, off), To: compute(job, f.At, off, func(x, y length.Length) length.Length { return x + y })}
	}
	return nil
}
