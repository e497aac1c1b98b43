package bench

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/stages"
	"coursewright/web/form"
	"coursewright/web/page"
)

func bareOr(slivers int, bare length.Length) string {
	if bare > 0 {
		return "bare wall"
	}
	return strconv.Itoa(slivers)
}

func (b Bench) faultTitle() string {
	if b.RestSaved {
		return page.Count(len(b.Faults), "thing") + " to put right; all else is saved and drawn."
	}
	return "Not saved: " + page.Count(len(b.Faults), "thing") + " to put right. The drawing shows the last good plan."
}

func (b Bench) drawingName() string {
	if b.Wall < 0 {
		return "The wrap: all walls on one level line"
	}
	return "Wall " + b.Plan.Walls[b.Wall].Found.Name
}

func (b Bench) startText(i int) string {
	if b.Plan.Walls[i].Found.Single {
		return "single tiles, each cut to the width of the wall"
	}
	return "START " + b.Tape(b.struckAt(i)) + " from its left end"
}

// leanText says how the start is counted where the left corner of its wall leans.
func (b Bench) leanText(i int) string {
	w, struck := b.Plan.Walls[i], stages.ToStrike(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls)
	edge, ok := stages.Strike(w, struck.Full)
	if !ok {
		return ""
	}
	return struck.LeanText(w, edge, b.Tape)
}

func (b Bench) lineText() string {
	struck := stages.ToStrike(b.Plan.Room, b.Plan.Setout.Line, b.Plan.Walls)
	text := "bottom edge of a course "
	if struck.Level == stages.Corner {
		text = "lowest corners of a course "
	}
	if text += b.FromLevel(b.Plan.Setout.Line); struck.Joint {
		text += "; to strike: the joint " + b.FromLevel(struck.At)
	}
	return text
}

// lines are the course lines people know, and that of the plan where it is none
// of them.
func (b Bench) lines() []plan.ClassicLine {
	s := b.Plan.Setout
	if slices.ContainsFunc(s.Lines, func(c plan.ClassicLine) bool { return c.Line == s.Line }) {
		return s.Lines
	}
	own := plan.ClassicLine{Name: "best", Line: s.Line,
		Figures: plan.Figures{Least: s.Least.Size, Share: s.Least.Share, Slivers: s.Merit.Slivers, Bare: s.Merit.Bare, Term: merit.None}}
	if s.Pinned {
		own.Name = "as " + heldBy(false, b.ownLine())
	}
	if b.Plan.Room.Stands() {
		own.Name = "as set"
	}
	return append(slices.Clone(s.Lines), own)
}

func (b Bench) doubtText(d plan.Hold) string {
	was := "measured"
	if slices.ContainsFunc(b.Typed.Guess, func(path string) bool { return path == d.Path || strings.HasPrefix(path, d.Path+".") }) {
		was = "guess"
	}
	return fmt.Sprintf("%s is between %s and %s (%s %s)", d.What, b.Tape(d.From), b.Tape(d.To), was, b.Tape(d.Measured))
}

// chosen tells whether a classic start is the one the wall has.
func (b Bench) chosen(i int, c plan.Classic) bool {
	s := b.Plan.Walls[i].Start
	return c.X == s.X && c.OnTile == s.OnTile
}

// pinStart is the button that pins a classic start.
func (b Bench) pinStart(i int, c plan.Classic) string {
	is := "joint"
	if c.OnTile {
		is = "tile"
	}
	return fmt.Sprintf("pin %s %s=%s", b.Plan.Walls[i].Found.Name, is, b.Exact(c.X))
}

// startPin is the path of a wall's pinned start.
func (b Bench) startPin(i int) string {
	name := b.Plan.Walls[i].Found.Name
	path, pin := form.Key("pins.walls", name), b.Typed.Pins.Walls[name]
	switch {
	case pin.Edge != "":
		return path + ".edge"
	case pin.Tile != "":
		return path + ".tile"
	}
	return path + ".joint"
}

// shownRows bounds the table of pieces, so that a mosaic wall stays quick.
const shownRows = 2000

// Row is one piece in the table.
type Row struct {
	ID, Wall, Cut, Wide, High, Share string
	Course                           int
}

// shown lists the pieces of the wall in front, or the cut pieces of all.
func (b Bench) shown() []Row {
	var out []Row
	add := func(on string, pieces []piece.Piece) {
		for _, p := range pieces {
			if (p.Whole && b.Wall < 0) || len(out) == shownRows {
				continue
			}
			out = append(out, b.row(on, p))
		}
	}
	for _, i := range b.Walls() {
		w := &b.Plan.Walls[i]
		add(w.Found.Name, w.All())
		for _, f := range w.Folded() {
			add(f.Name(), f.Pieces)
		}
	}
	return out
}

func (b Bench) row(on string, p piece.Piece) Row {
	cut := "whole"
	if !p.Whole {
		cut = p.Kind.String()
	}
	if p.Sliver {
		cut += ", sliver"
	}
	s := b.Plan.Room.Units
	return Row{p.ID, on, cut, p.Wide.Fine(s), p.High.Fine(s), page.Percent(p.Share), p.Course}
}

func (b Bench) piecesLine() string {
	var out []string
	add := func(on string, pieces []piece.Piece) {
		cut := 0
		for _, p := range pieces {
			if !p.Whole {
				cut++
			}
		}
		out = append(out, fmt.Sprintf("%s %d, %d cut", on, len(pieces), cut))
	}
	for _, i := range b.Walls() {
		w := &b.Plan.Walls[i]
		add(w.Found.Name, w.All())
		for _, f := range w.Folded() {
			add(f.Name(), f.Pieces)
		}
	}
	return strings.Join(out, "; ")
}
