package survey

import (
	"strings"

	"coursewright/layout/length"
)

// MarkName is what a mark of a wall is called in a job's pins and in a plan.
type MarkName string

// The marks at which tile stops. Those of an opening are OpeningFound.Mark.
const (
	EndLeft  MarkName = "end left"
	EndRight MarkName = "end right"
	HeadMark MarkName = "head"
)

// EdgeName is one of the four edges of a niche or window.
type EdgeName string

// The edges of an opening.
const (
	LeftEdge   EdgeName = "left"
	RightEdge  EdgeName = "right"
	BottomEdge EdgeName = "bottom"
	TopEdge    EdgeName = "top"
)

// Mark is what an edge of the opening is called: “niche NAME left”.
func (o OpeningFound) Mark(e EdgeName) MarkName { return MarkName(o.Key() + " " + string(e)) }

// facing is the mark of the edge that faces an edge of an opening: of “niche
// NAME left” the right one. A mark that is no such edge faces none.
func (m MarkName) facing() MarkName {
	for _, pair := range [][2]EdgeName{{LeftEdge, RightEdge}, {BottomEdge, TopEdge}} {
		for i, edge := range pair {
			if opening, found := strings.CutSuffix(string(m), " "+string(edge)); found && m != EndLeft && m != EndRight {
				return MarkName(opening + " " + string(pair[1-i]))
			}
		}
	}
	return ""
}

// Open lists the marks of a wall that are for the solver to place, each with
// where it stands: free ends and heads, and of an opening the low edge where its
// place is free and the high edge where its size is.
func (w Wall) Open(p Placed) map[MarkName]length.Length {
	out := map[MarkName]length.Length{}
	add := func(typed *Mark, mark MarkName, at length.Length) {
		if typed != nil && typed.At == "" {
			out[mark] = at
		}
	}
	add(w.Left.Stops, EndLeft, p.Left)
	add(w.Right.Stops, EndRight, p.Right)
	add(w.Head.Stops, HeadMark, p.Head)
	for i, o := range w.Openings {
		if Kind(o.Kind) == Pipe || i >= len(p.Openings) {
			continue
		}
		is, at := OpeningFound{Kind: Kind(o.Kind), Name: o.Name}, p.Openings[i]
		add(o.Left, is.Mark(LeftEdge), at.Left)
		add(o.Width, is.Mark(RightEdge), at.Right)
		add(o.Bottom, is.Mark(BottomEdge), at.Bottom)
		if o.Height != nil {
			add(o.Height.Mark, is.Mark(TopEdge), at.Top)
		}
	}
	for i, s := range w.Strips {
		if len(w.Openings)+i >= len(p.Openings) {
			break
		}
		at := p.Openings[len(w.Openings)+i]
		is := OpeningFound{Kind: PlumbStrip, Name: s.Name}
		add(&s.Middle, is.Mark(LeftEdge), at.Left)
		if s.MostColumns > max(1, s.Columns) {
			out[is.Mark(RightEdge)] = at.Right
		}
		add(s.Bottom, is.Mark(BottomEdge), at.Bottom)
		add(s.Top, is.Mark(TopEdge), at.Top)
	}
	next := len(w.Openings) + len(w.Strips)
	for _, f := range w.Fixtures {
		if !f.Flush || next >= len(p.Openings) {
			continue
		}
		is, at := OpeningFound{Kind: SoapDish, Name: f.Name}, p.Openings[next]
		add(f.Along, is.Mark(LeftEdge), at.Left)
		add(f.Height.Mark, is.Mark(BottomEdge), at.Bottom)
		next++
	}
	return out
}
