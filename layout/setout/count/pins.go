package count

import (
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// WithPins is the wall with the low ends of pinned marks fixed where they are
// pinned. A pinned high edge of an opening is looked up by pin.
func WithPins(w survey.WallFound) survey.WallFound {
	if len(w.MarkPins) == 0 {
		return w
	}
	fix := func(s *survey.Span, key survey.MarkName) {
		if x, there := w.MarkPins[key]; there {
			*s = survey.Span{From: x, To: x}
		}
	}
	fix(&w.Left.Stops, survey.EndLeft)
	fix(&w.Right.Stops, survey.EndRight)
	fix(&w.Head.Stops, survey.HeadMark)
	w.Openings = slices.Clone(w.Openings)
	for i := range w.Openings {
		o := &w.Openings[i]
		fix(&o.Left, o.Mark(survey.LeftEdge))
		fix(&o.Bottom, o.Mark(survey.BottomEdge))
		o.Left, o.Width = within(o.Left, o.Width, w.MarkPins, o.Mark(survey.RightEdge))
		o.Bottom, o.Height = within(o.Bottom, o.Height, w.MarkPins, o.Mark(survey.TopEdge))
	}
	return w
}

// within is where a low edge may stand, and how big the opening may be, with the
// high edge pinned.
func within(low, size survey.Span, pins map[survey.MarkName]length.Length, key survey.MarkName) (survey.Span, survey.Span) {
	high, there := pins[key]
	if !there {
		return low, size
	}
	low = survey.Span{From: max(low.From, high-size.To), To: min(low.To, high-size.From)}
	return low, survey.Span{From: high - low.To, To: high - low.From}
}

// pinned is where an edge of an opening is pinned, or nil.
func (w *facts) pinned(o survey.OpeningFound, edge survey.EdgeName) *length.Length {
	if x, there := w.found.MarkPins[o.Mark(edge)]; there {
		return &x
	}
	return nil
}
