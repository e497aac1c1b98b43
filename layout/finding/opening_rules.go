package finding

import (
	"fmt"
	"strings"

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
			Name: "openings run into each other", Grade: Fault, judge: runInto,
			Why:    "Two openings cannot be in one place, and the tile round them would be cut for neither.",
			Do:     "Measure the places again, or give the free one a range in which it stands clear.",
			Source: "plain geometry",
		},
		{
			Name: "niche wider than a stud bay", Grade: Warning, judge: wideNiche,
			Why:    "A stud would have to be cut, and in a bearing wall it carries the house.",
			Do:     "Make the niche narrower, or have a header framed: a licensed matter in a bearing wall.",
			Source: "bay: how-to pages; studs: IRC R602.6, look it up",
		},
		{
			Name: "window glass", Grade: Warning, judge: glass,
			Why:    "Somebody who slips falls into the glass.",
			Do:     "Have safety glazing there, and ask a glazier if you cannot tell what is in.",
			Source: "IRC R308.4.5, second hand, and 16 CFR 1201; look it up",
		},
		{
			Name: "niche sill", Grade: Advice,
			judge:  eachNiche("The sill of %s slopes at least 1/4 in per ft (21 mm per m) to the room."),
			Why:    "Water that stands on the sill finds its way behind the tile.",
			Do:     "Slope the sill, seal its corners, and keep a niche out of an exterior wall if it can be helped.",
			Source: cited("TCNA details", "TileLetter"),
		},
		{
			Name: "gap round a pipe", Grade: Advice, judge: pipes,
			Why:    "A pipe that touches the tile cracks it, and water follows the pipe.",
			Do:     "Keep at least 1/8 in (3 mm) round the pipe, seal it, and cover it with an escutcheon.",
			Source: cited("ANSI A108.02 4.3.3", "the trade bodies"),
		},
		{
			Name: "cut studs", Grade: Caution,
			judge:  eachNiche("%s is cut into the framing."),
			Why:    "A bearing or exterior stud may be notched by a quarter of its depth only (7/8 in of a 2×4), any other by 40 %; holes stay 5/8 in from the edge.",
			Do:     "Look for pipes and cables before you open the wall, and leave bearing walls to a licensed trade.",
			Source: "IRC R602.6; look it up",
		},
	}
}

// holes judges the tile left between a hole and the edges of its piece. A hole
// that reaches an edge is a notch and is not judged.
func holes(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		for _, o := range in.openings(survey.Pipe) {
			for _, p := range toSet(w) {
				if rim := rimToEdge(o.found, p, in.Room.Units); o.wall == i && rim > 0 && rim < in.Limits.HoleToEdge {
					all = append(all, onPiece(i, p, fmt.Sprintf("The hole for %s leaves %s of tile beside it in %s.", o.found.Name, in.fine(rim), p.ID)))
				}
			}
		}
	}
	return all
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
				if taken(w, k, in.Room.Units).Overlaps(taken(w, j, in.Room.Units)) {
					all = append(all, onPoint(i, middle(taken(w, k, in.Room.Units)), fmt.Sprintf("%s runs into %s.", capital(called(o)), called(other))))
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

// called is an opening by kind and name, once where they are the same.
func called(o survey.OpeningFound) string {
	if o.Name == string(o.Kind) {
		return o.Name
	}
	return o.Key()
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func wideNiche(in Input) []place {
	var all []place
	for _, o := range in.openings(survey.Niche) {
		if wide := o.edges.Right - o.edges.Left; wide > in.Limits.StudBay {
			all = append(all, onPoint(o.wall, o.middle(), fmt.Sprintf("%s is %s wide between the tiles; a bay between studs at 16 in is %s clear.",
				capital(called(o.found)), in.tape(wide), in.tape(in.Limits.StudBay))))
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
		if h := o.edges.Bottom - stand; known && h < in.Limits.GlassHeight {
			all = append(all, onPoint(o.wall, plane.Point{X: o.middle().X, Y: o.edges.Bottom},
				fmt.Sprintf("%s begins %s over the rim, under %s.", capital(called(o.found)), in.tape(h), in.tape(in.Limits.GlassHeight))))
		}
	}
	return all
}

// eachNiche says the same of every niche; the text takes what it is called.
func eachNiche(text string) func(Input) []place {
	return func(in Input) []place {
		var all []place
		for _, o := range in.openings(survey.Niche) {
			all = append(all, onPoint(o.wall, o.middle(), capital(fmt.Sprintf(text, called(o.found)))))
		}
		return all
	}
}

func pipes(in Input) []place {
	if len(in.openings(survey.Pipe)) == 0 {
		return nil
	}
	return room("Tile keeps clear of every pipe, under its escutcheon.")
}
