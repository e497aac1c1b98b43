package chance

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// Raised is a wall found from a level line that is lower by so much: all stands higher over it.
func Raised(w survey.WallFound, by length.Length) survey.WallFound {
	out := w
	up := func(r survey.Reading) survey.Reading { return survey.Reading{At: r.At, Value: r.Value + by} }
	lean := func(r survey.Reading) survey.Reading { return survey.Reading{At: r.At + by, Value: r.Value} }
	span := func(s survey.Span) survey.Span { return survey.Span{From: s.From + by, To: s.To + by} }
	out.Left.Lean, out.Right.Lean = readings(w.Left.Lean, lean), readings(w.Right.Lean, lean)
	out.Head.Readings = readings(w.Head.Readings, up)
	if !w.Head.Meets {
		out.Head.Stops = span(w.Head.Stops)
	}
	out.Base = slices.Clone(w.Base)
	for i := range out.Base {
		out.Base[i].Readings = readings(w.Base[i].Readings, up)
	}
	out.Openings = slices.Clone(w.Openings)
	for i, o := range w.Openings {
		out.Openings[i].Bottom, out.Openings[i].Up = span(o.Bottom), o.Up+by
	}
	return out
}

func readings(list []survey.Reading, of func(survey.Reading) survey.Reading) []survey.Reading {
	out := slices.Clone(list)
	for i := range out {
		out[i] = of(out[i])
	}
	return out
}
