package keep

import (
	"coursewright/layout/length"
	"coursewright/layout/merit"
	"coursewright/layout/plan"
	"coursewright/layout/setout/tell"
	"coursewright/layout/stages"
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

// Judged is a job worked out.
type Judged struct {
	Room   survey.Room
	Setout plan.Setout
	Walls  []plan.Wall
}

// Differ compares a set-out that is kept with one judged anew. Line and tile
// edges are those that are struck on the wall.
func Differ(kept, anew Judged) Difference {
	d, units := Difference{}, kept.Room.Units
	_, d.Term = anew.Setout.Order.Compare(&anew.Setout.Merit, &kept.Setout.Merit)
	d.Kept = tell.Figure(units, d.Term, &kept.Setout.Merit, &anew.Setout.Merit)
	d.Anew = tell.Figure(units, d.Term, &anew.Setout.Merit, &kept.Setout.Merit)
	d.add(units, "joint", kept.Setout.Joint, anew.Setout.Joint)
	if was, is := kept.Setout.Hand, anew.Setout.Hand; was != is {
		d.Moves = append(d.Moves, Move{"hand of the bond", hand(was), hand(is)})
	}
	was, is := kept.struck(), anew.struck()
	if was.At != is.At {
		a, b := apart(units, was.At.Abs(), is.At.Abs())
		d.Moves = append(d.Moves, Move{"line to strike", a + over(was.At), b + over(is.At)})
	}
	for i := range kept.Walls {
		if a, b := kept.Walls[i].Found, anew.Walls[i].Found; a.Single != b.Single {
			d.Moves = append(d.Moves, Move{"the tile on " + a.Name, laid(a), laid(b)})
		} else if x := kept.Walls[i].Start.Edge - anew.Walls[i].Start.Edge; length.Mod(x, kept.Room.Tile.Width+kept.Setout.Joint) != 0 {
			d.add(units, "tile edge on "+kept.Walls[i].Found.Name, kept.edge(i, was), anew.edge(i, is)) // a tile further on is no move
		}
		d.legs(kept.Walls[i], anew.Walls[i])
		d.returns(kept.Walls[i], anew.Walls[i])
		d.marks(units, kept.Walls[i], anew.Walls[i])
	}
	for i, b := range kept.Setout.Bands {
		c := anew.Setout.Bands[i]
		d.add(units, "bottom of "+b.Name+" over the level line", b.Bottom, c.Bottom)
		for k, w := range b.Walls {
			d.add(units, "tile edge of "+b.Name+" on "+kept.Walls[w].Found.Name, b.Edges[k], c.Edges[k])
		}
	}
	return d
}

func (j Judged) struck() stages.Struck { return stages.ToStrike(j.Room, j.Setout.Line, j.Walls) }

// edge is the tile edge to strike on a wall.
func (j Judged) edge(wall int, s stages.Struck) length.Length {
	w := j.Walls[wall]
	if edge, ok := stages.Strike(w, s.Full); ok {
		return s.From(w, edge)
	}
	return w.Start.Edge
}

// marks adds the marks of one wall that differ.
func (d *Difference) marks(units length.System, kept, anew plan.Wall) {
	name, was, is := kept.Found.Name, kept.Start.Placed, anew.Start.Placed
	d.add(units, "left end of "+name, was.Left, is.Left)
	d.add(units, "right end of "+name, was.Right, is.Right)
	d.add(units, "head of "+name, was.Head, is.Head)
	for i, o := range kept.Found.Openings {
		a, b, of := was.Openings[i], is.Openings[i], " of "+o.Called()+" on "+name
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

// laid is how a narrow wall is laid.
func laid(w survey.WallFound) string {
	if w.Single {
		return "in single tiles"
	}
	return "in the bond"
}

// legs adds the legs of one wall that are laid otherwise.
func (d *Difference) legs(kept, anew plan.Wall) {
	words := map[survey.Leg]string{survey.InBond: "in the bond", survey.SingleTiles: "in single tiles", survey.NoLeg: "left out"}
	for _, l := range kept.Found.LegsBeside() {
		_, was := kept.Found.LegOf(l)
		if _, is := anew.Found.LegOf(l); was != is {
			d.Moves = append(d.Moves, Move{"the leg at the " + l.Side() + " of " + kept.Found.Name, words[was], words[is]})
		}
	}
}

// returns adds the sides, sills and tops of the openings of one wall, where they are laid otherwise.
func (d *Difference) returns(kept, anew plan.Wall) {
	words := map[bool]string{false: "in plain rows", true: "as the wall goes on round the edge"}
	if was, is := goesRound(kept), goesRound(anew); was != is {
		d.Moves = append(d.Moves, Move{"the tile round the inside of the openings of " + kept.Found.Name, words[was], words[is]})
	}
}

func hand(h survey.Hand) string {
	if h == survey.Right {
		return "to the right"
	}
	return "to the left"
}

// over says on which side of the level line a height is.
func over(l length.Length) string {
	switch {
	case l < 0:
		return " below the level line"
	case l > 0:
		return " above the level line"
	}
	return ", on the level line"
}
