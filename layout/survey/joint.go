package survey

import (
	"strings"

	"coursewright/layout/length"
)

// Spacers are the sizes of spacers that the trade sells, ascending: 1/16, 3/32,
// 1/8, 3/16 and 1/4 in, or whole and half millimetres up to 10 mm. Common
// practice, no source; 3/32 in is rare.
func Spacers(units length.System) []length.Length {
	var sizes []length.Length
	if units == length.Imperial {
		for _, n := range []length.Length{2, 3, 4, 6, 8} {
			sizes = append(sizes, n*length.Inch/32)
		}
		return sizes
	}
	const step = length.Millimetre / 2
	for s := step; s <= length.Centimetre; s += step {
		sizes = append(sizes, s)
	}
	return sizes
}

// joints reads the joint: one length, or the spacers that lie in a range. The
// list is empty only where there is a fault.
func (r *resolver) joints(p path, m Measure) []length.Length {
	if m.Mark == nil {
		return []length.Length{r.length(value{p, m.Plain}, bounds{0, widestJoint})}
	}
	before := len(r.faults)
	span := r.span(p, m.Mark, bounds{0, widestJoint})
	if len(r.faults) > before {
		return nil
	}
	if !span.Free() {
		return []length.Length{span.From}
	}
	var found []length.Length
	sizes := Spacers(r.units)
	for _, s := range sizes {
		if span.holds(s) {
			found = append(found, s)
		}
	}
	if found == nil {
		r.faults.add(p, "a range from "+span.From.Format(r.units, 0)+" to "+span.To.Format(r.units, 0)+" with no spacer in it",
			"a range that holds one of "+r.sizes(sizes)+", or one joint in quotes")
	}
	return found
}

// sizes lists spacers in words; the many of the metric system by their steps.
func (r *resolver) sizes(sizes []length.Length) string {
	if r.units == length.Metric {
		return "the whole and half millimetres from " + sizes[0].Format(r.units, 0) + " to " + sizes[len(sizes)-1].Format(r.units, 0)
	}
	texts := make([]string, len(sizes))
	for i, s := range sizes {
		texts[i] = s.Plain(r.units, 0)
	}
	return strings.Join(texts, ", ") + " in"
}

// typed is the joint as one text, or empty where it is a range.
func (m Measure) typed() string {
	if m.Mark != nil {
		return m.Mark.At
	}
	return m.Plain
}
