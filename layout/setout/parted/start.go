package parted

import (
	"maps"
	"reflect"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/setout/search"
	"coursewright/layout/survey"
)

// start is where a wall of the folded room begins, as it was found with that wall.
type start struct {
	edge length.Length
	wall survey.WallFound // folded
	of   *search.Result
	at   int // the wall's index in it
}

// startsOf are the starts of a result for the folded room.
func startsOf(r *search.Result, folded *survey.Room) []*start {
	out := make([]*start, len(r.Walls))
	for w, c := range r.Walls {
		out[w] = &start{edge: c.Edge, wall: folded.Walls[w], of: r, at: w}
	}
	return out
}

// beside is the start of a wall whose corners are those of another.
func (s start) beside(w survey.WallFound) *start {
	s.wall.Left.Beyond, s.wall.Right.Beyond = w.Left.Beyond, w.Right.Beyond
	return &s
}

// same tells whether a wall is the one that was set out so, on the same line. Then nothing
// is better for it with the start than what was found.
func (s *start) same(w survey.WallFound, at *found) bool {
	return s.of.Line == at.line && s.of.Hand == at.hand && reflect.DeepEqual(s.wall, w)
}

// marks pins every free mark of the wall where it was found.
func (s *start) marks() map[survey.MarkName]length.Length {
	w, placed := s.wall, s.of.Walls[s.at].Placed
	out := maps.Clone(w.MarkPins)
	pin := func(mark survey.MarkName, at length.Length, free bool) {
		if free {
			out = pinned(out, mark, at)
		}
	}
	pin(survey.EndLeft, placed.Left, !w.Left.Meets)
	pin(survey.EndRight, placed.Right, !w.Right.Meets)
	pin(survey.HeadMark, placed.Head, !w.Head.Meets)
	for i, o := range w.Openings {
		if o.Kind == survey.Pipe {
			continue
		}
		e := placed.Openings[i]
		pin(o.Mark(survey.LeftEdge), e.Left, o.Left.Free())
		pin(o.Mark(survey.RightEdge), e.Right, o.Width.Free())
		pin(o.Mark(survey.BottomEdge), e.Bottom, o.Bottom.Free())
		pin(o.Mark(survey.TopEdge), e.Top, o.Height.Free())
	}
	return out
}

// field sets the folded room out, on the line given and with the starts that are. What was
// found for a wall before is not sought again. It is nil where it is sure to be worse than the rival.
func (p *parter) field(at *found, folded survey.Room, starts []*start, rival *merit.Merit) (*search.Result, error) {
	folded.Walls = slices.Clone(folded.Walls)
	if at != nil {
		folded.Line, folded.Bond.Hand = &at.line, at.hand
	}
	stand := map[int]search.Taken{}
	for i, s := range starts {
		if s == nil {
			continue
		}
		w := &folded.Walls[i]
		if s.same(*w, at) {
			w.MarkPins = s.marks()
			stand[i] = search.Taken{From: s.of, Wall: s.at}
		}
		if w.Pin == nil {
			w.Pin = &survey.StartPin{X: s.edge, Is: survey.OnEdge}
		}
	}
	if len(stand) > 0 {
		rival = nil // its marks are pinned only while the others are sought
	}
	r, err := search.Against(p.ctx, &folded, search.Work, nil, rival)
	if err != nil || r == nil || len(stand) == 0 {
		return r, err
	}
	return r.With(&folded, stand), nil
}
