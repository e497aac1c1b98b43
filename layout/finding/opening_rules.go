package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// openingRules judge niches, windows and pipes.
func openingRules() []Rule {
	return []Rule{
		{
			Name: OpeningsRunIntoEachOther, Grade: Fault, judge: runInto,
			Why:    "Two openings cannot be in one place, and the tile round them would be cut for neither.",
			Do:     "Measure the places again, or give the free one a range in which it stands clear.",
			Source: "plain geometry",
		},
		{
			Name: OpeningAtTheTilesEdge, Grade: Warning, judge: atTheEdge,
			Why:    "A niche is framed by tile on all four sides; without it there its edge has nothing to end at, and its corner opens to the wall beyond, or to the next one.",
			Do:     "Let its range end a course or a column of tile before that edge, or measure the place.",
			Source: practice,
		},
		{
			Name: NicheAtTheTilesEdge, Grade: Advice, judge: measuredAtTheEdge,
			Why:    "Its edge there is the edge of the tile itself: no tile of the wall laps over its return, and trim that runs along there has its edge to cover too.",
			Do:     "Say how that edge is made before the board goes up: a return with a finished edge, trim that turns into the niche, or tile that stops a course or a column further.",
			Source: practice,
		},
		{
			Name: LargeHoleInOneTile, Grade: Warning, judge: largeHoles,
			Why:    "Porcelain with much taken out of it cracks, at once or under the first knock, the more so where the hole is off the middle.",
			Do:     "Let a joint cross the hole, so that two tiles share it, or ask the maker of the tile.",
			Source: "a maker of porcelain: no more than 10 to 12 sq in (65 to 77 cm²) out of a tile",
		},
		{
			Name: NicheWiderThanAStudBay, Grade: Warning, judge: wideNiche,
			Why:    "A stud would have to be cut, and in a bearing wall it carries the house.",
			Do:     "Make the niche narrower, or have a header framed: a licensed matter in a bearing wall.",
			Built:  "If it is built, have somebody licensed look whether a header carries the stud that was cut. If it is not, make it narrower.",
			Source: "bay and lining: how-to pages; studs: IRC R602.6, look it up",
		},
		{
			Name: WindowGlass, Grade: Warning, judge: glass,
			Why:    "Somebody who slips falls into the glass.",
			Do:     "Have safety glazing there, and ask a glazier if you cannot tell what is in.",
			Source: "IRC R308.4.5, second hand (2018: glass that faces the wet place; 2021 and later: beside it too), and 16 CFR 1201; look it up",
		},
		{
			Name: NicheSill, Grade: Advice,
			judge:  eachNiche("The sill of %s slopes at least 1/4 in per ft (21 mm per m) to the room.", "The sills of %s slope at least 1/4 in per ft (21 mm per m) to the room."),
			Why:    "Water that stands on the sill finds its way behind the tile.",
			Do:     "Slope the sill, seal its corners, and keep a niche out of an exterior wall if it can be helped.",
			Source: cited("TCNA details", "TileLetter"),
		},
		{
			Name: GapRoundAPipe, Grade: Advice, judge: pipes,
			Why:    "A pipe that touches the tile cracks it, and water follows the pipe.",
			Do:     "Keep at least 1/8 in (3 mm) round the pipe, seal it, and cover it with an escutcheon.",
			Source: cited("ANSI A108.02 4.3 (penetrations)", "the trade bodies"),
		},
		{
			Name: CutStuds, Grade: Caution,
			judge:  eachNiche("%s is cut into the framing.", "%s are cut into the framing."),
			Why:    "A bearing or exterior stud may be notched by a quarter of its depth only (7/8 in of a 2×4), any other by 40 %; holes stay 5/8 in from the edge.",
			Do:     "Look for pipes and cables before you open the wall, and leave bearing walls to a licensed trade.",
			Source: "IRC R602.6; look it up",
		},
	}
}

// holes judges the tile left between a hole and the edges of its piece, one
// sentence to a pipe. A hole that reaches an edge is a notch and is not judged.
func holes(in Input) []place {
	var all []place
	for _, o := range in.openings(survey.Pipe) {
		var worst *piece.Piece
		least, more := in.Limits.HoleToEdge, -1
		pieces := toSet(in.Walls[o.wall])
		for k, p := range pieces {
			rim := rimToEdge(o.found, p, in.Room.Units)
			if rim <= 0 || rim >= in.Limits.HoleToEdge {
				continue
			}
			more++
			if rim < least {
				least, worst = rim, &pieces[k]
			}
		}
		if worst == nil {
			continue
		}
		text := fmt.Sprintf("The hole for %s leaves %s of tile beside it in %s", o.found.Name, in.fine(least), worst.ID)
		if more > 0 {
			text += fmt.Sprintf(", and hardly more in %s", count(more, "other piece"))
		}
		all = append(all, onPiece(o.wall, *worst, text+"."))
	}
	return all
}

// largeHoles judges how much of one tile a hole takes out.
func largeHoles(in Input) []place {
	var all []place
	for _, o := range in.openings(survey.Pipe) {
		ring := plane.Circle(plane.Point{X: o.found.At, Y: o.found.Up}, o.found.Diameter+2*survey.PipeClear(in.Room.Units), 0)
		for _, p := range toSet(in.Walls[o.wall]) {
			t := p.Tile
			part := plane.Region{ring}.KeepAll(plane.RightOf(t.Left), plane.LeftOf(t.Right), plane.Above(t.Bottom), plane.Below(t.Top)).Area2() / 2
			if part > in.Limits.LargeHole {
				all = append(all, onPiece(o.wall, p, fmt.Sprintf("The hole for %s takes %s out of %s; more than %s may be more than porcelain stands.",
					o.found.Name, in.square(part), p.ID, in.square(in.Limits.LargeHole))))
				break
			}
		}
	}
	return all
}

// square writes an area as a whole number of square inches or centimetres.
func (in Input) square(a length.Area) string {
	unit, name := length.Inch.Times(length.Inch), "sq in"
	if in.Room.Units == length.Metric {
		unit, name = length.Centimetre.Times(length.Centimetre), "cm²"
	}
	return fmt.Sprintf("%d %s", (2*a+unit)/(2*unit), name)
}

// rimToEdge is the least distance from the rim of a pipe's hole to the upright
// box of the piece; zero or less where the hole reaches out of it.
func rimToEdge(o survey.OpeningFound, p piece.Piece, s length.System) length.Length {
	b := p.Face.Bounds()
	r := o.Diameter/2 + survey.PipeClear(s)
	return min(o.At-b.Left, b.Right-o.At, o.Up-b.Bottom, b.Top-o.Up) - r
}

// runInto judges openings where they are placed: those with a range may have
// been left no room.
func runInto(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		for k, o := range w.Found.Openings {
			for j, other := range w.Found.Openings[:k] {
				if o.Strip != nil || other.Strip != nil {
					continue // pipes come through a strip, and nothing else may
				}
				if taken(w, k, in.Room.Units).Overlaps(taken(w, j, in.Room.Units)) {
					all = append(all, onPoint(i, middle(taken(w, k, in.Room.Units)), fmt.Sprintf("%s runs into %s.", capital(o.Called()), other.Called())))
				}
			}
		}
	}
	return all
}

// taken is the box that an opening takes of its wall, a pipe with what stays
// clear round it.
func taken(w plan.Wall, k int, s length.System) plane.Rect {
	o := w.Found.Openings[k]
	if o.Kind == survey.Pipe {
		r := o.Diameter.Half() + survey.PipeClear(s)
		return plane.Rect{Left: o.At - r, Bottom: o.Up - r, Right: o.At + r, Top: o.Up + r}
	}
	e := edges(w, k)
	return plane.Rect{Left: e.Left, Bottom: e.Bottom, Right: e.Right, Top: e.Top}
}

// wideNiche adds what stands beside the clear hole: its own tile and bed, and
// the board that lines it. Where its studs are known it is held against them.
func wideNiche(in Input) []place {
	var all []place
	beside := 2 * (in.Room.Tile.Thickness + in.Room.Bed + in.Limits.Lining)
	for _, o := range in.openings(survey.Niche) {
		wide := o.edges.Right - o.edges.Left
		needs, bay, between := wide+beside, in.Limits.StudBay, "a bay between studs at 16 in is %s clear"
		if inside := o.found.Inside; inside != nil {
			needs = inside.Needs(wide)
			if inside.Bay != nil {
				bay, between = inside.Bay.To-inside.Bay.From, "its studs are %s apart"
			}
		}
		if needs > bay {
			all = append(all, onPoint(o.wall, o.middle(), fmt.Sprintf("%s is %s wide between the tiles, about %s with its tile and lining; "+between+".",
				capital(o.found.Called()), in.tape(wide), in.tape(needs), in.tape(bay))).of(o.found))
		}
	}
	return all
}

// glass judges windows over the lowest tub or shower base, which errs on the
// safe side: one stands lower than the rim.
func glass(in Input) []place {
	stand, known := in.lowest(survey.Tub, survey.ShowerBase)
	var all []place
	for _, o := range in.openings(survey.Window) {
		if h := o.edges.Bottom - stand; known && h < in.Limits.GlassHeight && !o.found.Doorway && in.nearWet(o) {
			all = append(all, onPoint(o.wall, plane.Point{X: o.middle().X, Y: o.edges.Bottom},
				fmt.Sprintf("%s begins %s over the rim, under %s, and is no further than %s from it; a window beside it counts like one that faces it.",
					capital(o.found.Called()), in.tape(h), in.tape(in.Limits.GlassHeight), in.tape(in.Limits.GlassNear))))
		}
	}
	return all
}

// nearWet tells whether a window is near a tub or shower base, along its own
// wall or round one corner. Farther round it counts as near: what is not known
// must not be passed over.
func (in Input) nearWet(o opening) bool {
	w := in.Walls[o.wall].Found
	if left, right, found := wetSpan(w); found {
		return o.edges.Left-right <= in.Limits.GlassNear && left-o.edges.Right <= in.Limits.GlassNear
	}
	if k := w.Left.Beyond; k >= 0 {
		if _, right, found := wetSpan(in.Walls[k].Found); found {
			return o.edges.Left <= in.Limits.GlassNear && in.Walls[k].Found.Width-right <= in.Limits.GlassNear
		}
	}
	if k := w.Right.Beyond; k >= 0 {
		if left, _, found := wetSpan(in.Walls[k].Found); found {
			return w.Width-o.edges.Right <= in.Limits.GlassNear && left <= in.Limits.GlassNear
		}
	}
	return true
}

// wetSpan is where the tubs and shower bases along a wall begin and end; those
// at its ends go on to there.
func wetSpan(w survey.WallFound) (left, right length.Length, found bool) {
	for i, s := range w.Base {
		if s.Meets != survey.Tub && s.Meets != survey.ShowerBase || len(s.Readings) == 0 {
			continue
		}
		if !found && i > 0 {
			left = s.Readings[0].At
		}
		if right, found = s.Readings[len(s.Readings)-1].At, true; i == len(w.Base)-1 {
			right = w.Width
		}
	}
	return left, right, found
}

// eachNiche says the same of all niches in one sentence, with the verb for one
// and for several; the mark stands at the first.
func eachNiche(one, several string) func(Input) []place {
	return func(in Input) []place {
		niches := in.openings(survey.Niche)
		var names []string
		for _, o := range niches {
			names = append(names, o.found.Called())
		}
		switch len(niches) {
		case 0:
			return nil
		case 1:
			return []place{onPoint(niches[0].wall, niches[0].middle(), capital(fmt.Sprintf(one, names[0])))}
		}
		p := onPoint(niches[0].wall, niches[0].middle(), capital(fmt.Sprintf(several, list(names))))
		if niches[len(niches)-1].wall != p.wall {
			p.wall, p.at = -1, nil
		}
		return []place{p}
	}
}

func pipes(in Input) []place {
	if len(in.openings(survey.Pipe)) == 0 {
		return nil
	}
	return room("Tile keeps clear of every pipe, under its escutcheon.")
}
