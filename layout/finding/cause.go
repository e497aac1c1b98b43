package finding

import (
	"slices"
	"strings"

	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// whereCut says where a piece is cut to the size that makes it small, so that
// all pieces of one cause read alike: “of the leg on left”, “along the tub on
// back”, “at the left end of back”.
func whereCut(w plan.Wall, p piece.Piece) string {
	if onLeg(w, p) {
		return "of the leg on " + w.Found.Name
	}
	across := p.Least == p.Wide
	var at []string
	of := "of"
	for _, side := range p.Cuts {
		if int(side) >= len(w.Shape.Sides) {
			continue
		}
		b := w.Shape.Sides[side]
		text, plumb := "", true
		switch b.Part.Is {
		case survey.LeftEnd:
			text = "at the left end"
		case survey.RightEnd:
			text = "at the right end"
		case survey.HeadEdge:
			text, plumb = "at the head", false
		case survey.BaseSegment:
			text, plumb, of = "along the "+string(b.Kind), false, "on"
			if p.AtStep(side, w.Shape.Sides) {
				text, plumb = "at the "+b.Front(), true
			}
		case survey.BandEdge:
			text, plumb, of = "at the edge of the "+strings.TrimPrefix(b.Name, "band "), false, "on"
		case survey.OpeningEdge:
			if o := w.Found.Openings[b.Part.N]; o.Kind != survey.Pipe {
				text, plumb, of = "beside "+o.Called(), across, "on"
			}
		}
		if text != "" && plumb == across && !slices.Contains(at, text) {
			at = append(at, text)
		}
	}
	if at == nil {
		return "on " + w.Found.Name
	}
	return list(at) + " " + of + " " + w.Found.Name
}

// onLeg tells whether a piece stands wholly in front of a tub, shower base or
// curb, between the end of the wall and its front.
func onLeg(w plan.Wall, p piece.Piece) bool { return legUnder(w, p) != nil }

// mayBeSingle tells whether a piece stands on a leg that is laid in the bond of its wall and
// may be laid in single tiles; where the best of both was asked for, it was tried.
func (in Input) mayBeSingle(w plan.Wall, p piece.Piece) bool {
	leg := legUnder(w, p)
	return leg != nil && leg.Leg == survey.InBond && !leg.Best && in.Room.Bond.Coursed() && !in.Room.Bond.Plumb && len(in.Room.Bands) == 0
}

// legUnder is the floor of the leg that a piece stands wholly on, or nil.
func legUnder(w plan.Wall, p piece.Piece) *survey.SegmentFound {
	box := p.Face.Bounds()
	for i, s := range w.Found.Base {
		if s.Meets != survey.Floor {
			continue
		}
		for _, k := range []int{i - 1, i + 1} {
			if k < 0 || k >= len(w.Found.Base) || !w.Found.Base[k].Meets.Rim() {
				continue
			}
			rim := w.Found.Base[k]
			from, to := s.Readings[0].At, s.Readings[len(s.Readings)-1].At
			rimAt := rim.Readings[0].At
			if k < i {
				from = rim.Readings[len(rim.Readings)-1].At
				to, rimAt = max(to, w.Found.Width), from
			} else {
				from, to = min(from, 0), rimAt
			}
			if from <= box.Left && box.Right <= to && box.Bottom < survey.At(rim.Readings, rimAt) {
				return &w.Found.Base[i]
			}
		}
	}
	return nil
}
