package form

import (
	"fmt"
	"slices"
	"strings"

	"coursewright/layout/survey"
)

// placeBand moves a band that was measured, or the height wished of a free one.
func placeBand(job *survey.Job, name, value string) error {
	i := slices.IndexFunc(job.Bands, func(b survey.Band) bool { return b.Name == name })
	if i < 0 {
		return fmt.Errorf("there is no band %q", name)
	}
	if job.Bands[i].Bottom.At != "" {
		job.Bands[i].Bottom.At = value
		return nil
	}
	job.Bands[i].Near = value
	return nil
}

// placeFixture moves a fixture: along the wall where it stands in no corner, and in
// height; of one whose height is a range what is wished.
func placeFixture(w *survey.Wall, name, value string) error {
	i := slices.IndexFunc(w.Fixtures, func(f survey.Fixture) bool { return f.Name == name })
	if i < 0 {
		return fmt.Errorf("wall %q has no fixture %q", w.Name, name)
	}
	f := &w.Fixtures[i]
	x, y, both := strings.Cut(value, ";")
	switch kind := survey.Kind(f.Kind); {
	case kind == survey.GlassLine && !both:
		f.At = x
		return nil
	case (kind == survey.CornerShelf || kind == survey.FootRest) && !both:
		y = x
	case both && f.At != "" && kind != survey.GlassLine:
		f.At = x
	default:
		return fmt.Errorf("%q takes other figures than %q", name, value)
	}
	if m := f.Height.Mark; m != nil && m.At == "" {
		f.Near = y
		return nil
	}
	f.Height = survey.Measure{Plain: y}
	return nil
}

// placeStop moves an end or a head that was measured where it stops.
func placeStop(w *survey.Wall, which, value string) error {
	stop, found := map[string]*survey.Mark{"left": w.Left.Stops, "right": w.Right.Stops, "head": w.Head.Stops}[which]
	if !found || stop == nil || stop.At == "" {
		return fmt.Errorf("wall %q has no measured stop %q", w.Name, which)
	}
	*stop = survey.Mark{At: value}
	return nil
}
