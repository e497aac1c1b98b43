package keep

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plan"
	"coursewright/layout/setout/tell"
	"coursewright/layout/survey"
)

// Difference is what a set-out judged anew would be against the one that is kept.
type Difference struct {
	Term       merit.Term // the first term of the order of merit in which they differ; merit.None where they count the same
	Kept, Anew string     // both figures, in the unit of that term
	Moves      []Move     // what would stand elsewhere
}

// Move is one decision that the two made differently, as a tape shows it.
type Move struct{ What, Kept, Anew string }

// Differ compares the plan of a set-out that is kept with one judged anew.
func Differ(room survey.Room, kept, anew plan.Setout, walls []plan.Wall) Difference {
	d := Difference{}
	_, d.Term = anew.Order.Compare(&anew.Merit, &kept.Merit)
	d.Kept, d.Anew = tell.Figure(room.Units, d.Term, &kept.Merit, &anew.Merit), tell.Figure(room.Units, d.Term, &anew.Merit, &kept.Merit)
	d.add(room.Units, "joint", kept.Joint, anew.Joint)
	if kept.Hand != anew.Hand {
		d.Moves = append(d.Moves, Move{"hand of the bond", hand(kept.Hand), hand(anew.Hand)})
	}
	if kept.Line != anew.Line {
		was, is := apart(room.Units, kept.Line.Abs(), anew.Line.Abs())
		d.Moves = append(d.Moves, Move{"course line", was + side(kept.Line), is + side(anew.Line)})
	}
	for i, w := range walls {
		d.wall(room.Units, w.Found, kept.Walls[i], anew.Walls[i])
	}
	return d
}

// wall adds what differs on one wall.
func (d *Difference) wall(units length.System, w survey.WallFound, kept, anew plan.Start) {
	d.add(units, "tile edge on "+w.Name, kept.Edge, anew.Edge)
	d.add(units, "left end of "+w.Name, kept.Placed.Left, anew.Placed.Left)
	d.add(units, "right end of "+w.Name, kept.Placed.Right, anew.Placed.Right)
	d.add(units, "head of "+w.Name, kept.Placed.Head, anew.Placed.Head)
	for i, o := range w.Openings {
		a, b, of := kept.Placed.Openings[i], anew.Placed.Openings[i], " of "+o.Key()+" on "+w.Name
		d.add(units, "left"+of, a.Left, b.Left)
		d.add(units, "right"+of, a.Right, b.Right)
		d.add(units, "bottom"+of, a.Bottom, b.Bottom)
		d.add(units, "top"+of, a.Top, b.Top)
	}
}

func (d *Difference) add(units length.System, what string, kept, anew length.Length) {
	if kept != anew {
		was, is := apart(units, kept, anew)
		d.Moves = append(d.Moves, Move{what, was, is})
	}
}

// apart writes two lengths as the tape shows them, or more finely where that
// would show no difference.
func apart(units length.System, a, b length.Length) (string, string) {
	if x, y := a.Tape(units), b.Tape(units); x != y {
		return x, y
	}
	if x, y := a.Fine(units), b.Fine(units); x != y {
		return x, y
	}
	return a.Format(units, 0), b.Format(units, 0)
}

func hand(h survey.Hand) string {
	if h == survey.Right {
		return "to the right"
	}
	return "to the left"
}

// side says on which side of the level line a height is.
func side(l length.Length) string {
	switch {
	case l < 0:
		return " below the level line"
	case l > 0:
		return " above the level line"
	}
	return ", on the level line"
}
