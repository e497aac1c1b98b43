package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// cornerRules judge outside corners and the low walls that have them.
func cornerRules() []Rule {
	return []Rule{
		{
			Name: MitredEdges, Grade: Warning, judge: both(cornersThat(isMitred), topsThat(topMitred)),
			Why:    "A mitred edge is the thinnest place of a tile: the glaze chips when it is cut, and the edge breaks when something knocks against it.",
			Do:     "Tilt the saw and stay just behind the glaze; ease the edge with a diamond pad, fill the corner with matching grout or epoxy, and keep tiles to spare. A profile or bullnose takes knocks better.",
			Source: "how-to pages: behind the glaze, and fragile",
		},
		{
			Name: EdgeInPlainSight, Grade: Advice, judge: both(cornersThat(isLapped), topsThat(topLapped)),
			Why:    "At a lap the side of a tile is seen: of glazed tile it is often bare clay, and its edge is sharp to a hand or hip, at the end of a half wall above all.",
			Do:     "Lap with glazed or bullnose edges, or ease the edge with a diamond pad; the factory edge faces out, never a cut one.",
			Source: practice,
		},
		{
			Name: ProfileAtACorner, Grade: Advice, judge: both(cornersThat(isProfiled), topsThat(topProfiled)),
			Why:    "A profile at an outside corner is seen from both sides, and it is set before the tile: its depth and colour cannot be changed afterwards.",
			Do:     "Choose its colour beside tile and grout, metal that stands water and cleaners, and a depth for tile and bed together; bed it in mortar plumb and straight.",
			Source: practice,
		},
		{
			Name: BondRoundACorner, Grade: Advice, judge: roundCorners,
			Why:    "Round an outside corner both walls are seen at once. Where the two pieces beside it make up one tile the bond seems to be folded round it.",
			Do:     "Pin that tile edge to see what it costs; the order of merit does not weigh it.",
			Source: "how-to pages: 2 in of a 6 in tile before the corner, 4 in after it; an ordinary wish, no rule",
		},
		{
			Name: WaterRoundACorner, Grade: Caution, judge: cornersThat(anyCorner),
			Why:    "Boards meet edge to edge at an outside corner, water finds the joint, and a half wall that gives breaks the tile at its corners first.",
			Do:     "Frame both edges, tape the joint, and run the membrane round in one piece. A licensed trade fastens a free-standing half wall.",
			Source: practice,
		},
		{
			Name: FallOfATop, Grade: Advice, judge: tops,
			Why:    "Water stands on a level top and runs behind the tile; a metal edge that stands over the tile dams it.",
			Do:     "Let the top of a half wall, a curb or a bench fall to the drain by at least 1/4 in per ft (2 %), with its edge flush; a top 5 in wide falls 1/8 in.",
			Source: "ANSI A108.01 3.6.4 (ledges fall to the drain), as quoted by CTEF; 1/4 in per ft: NTCA in TileLetter; look them up",
		},
	}
}

// cornersThat speaks of every outside corner of which say has something to say:
// what comes after its name; empty is nothing.
func cornersThat(say func(plan.Corner, Input) string) func(Input) []place {
	return func(in Input) []place {
		var all []place
		for _, c := range plan.Corners(in.Room, in.Walls) {
			if text := say(c, in); text != "" {
				all = append(all, in.atCorner(c, "The outside corner of "+in.between(c)+text+"."))
			}
		}
		return all
	}
}

func anyCorner(plan.Corner, Input) string { return " has two edges of board in it" }

func isMitred(c plan.Corner, in Input) string {
	if c.How != survey.Mitre {
		return ""
	}
	return fmt.Sprintf(" is mitred: both edges are cut at %s", survey.HalfDegrees(c.Bevel()))
}

func isLapped(c plan.Corner, in Input) string {
	if c.How != survey.Lap {
		return ""
	}
	return fmt.Sprintf(" is lapped: the side of the tile on %s is seen, %s of it", in.Walls[c.Lapping()].Found.Name, in.fine(in.Room.Tile.Thickness))
}

func isProfiled(c plan.Corner, in Input) string {
	if c.How != survey.Profile || c.Strip == nil {
		return ""
	}
	return fmt.Sprintf(" has the %s %s; tile and bed are %s deep", c.Strip.Kind, c.Strip.Name, in.close(in.Room.Tile.Thickness+in.Room.Bed))
}

// between names the two walls of a corner.
func (in Input) between(c plan.Corner) string {
	return in.Walls[c.Before].Found.Name + " and " + in.Walls[c.After].Found.Name
}

// atCorner is the place of an outside corner: at half the height of the tile, on the
// wall before it.
func (in Input) atCorner(c plan.Corner, text string) place {
	w := in.Walls[c.Before]
	box := w.Shape.Region.Bounds()
	return onPoint(c.Before, plane.Point{X: w.Found.Width, Y: (box.Bottom + box.Top).Half()}, text)
}

// roundCorners says of a running bond how it goes round, where not every course does.
func roundCorners(in Input) []place {
	var all []place
	for _, c := range plan.Corners(in.Room, in.Walls) {
		if c.Round == c.Courses || in.jointless(c.Before) || in.jointless(c.After) {
			continue
		}
		all = append(all, in.atCorner(c, fmt.Sprintf("In %d of %d courses the bond does not seem to run round the outside corner of %s; with a tile edge at %s on %s it would.",
			c.Courses-c.Round, c.Courses, in.between(c), in.fine(c.Edge), in.Walls[c.After].Found.Name)))
	}
	return all
}

// jointless tells whether every course of a wall is one piece, as on the end of a
// half wall: there no bond is seen that could run on.
func (in Input) jointless(wall int) bool {
	w, courses := in.Walls[wall], map[int]bool{}
	if len(w.Pieces) < 2 || w.Found.Width > in.Room.Tile.Width {
		return false
	}
	for _, p := range w.Pieces {
		if courses[p.Course] {
			return false
		}
		courses[p.Course] = true
	}
	return true
}

// tops speaks of walls that are low enough to have a top that is tiled, but for those
// whose top is surveyed, or lies over the end of the wall round their corner.
func tops(in Input) []place {
	first := -1
	var names []string
	for i, w := range in.Walls {
		if in.low(i) && !in.crowned(i) {
			names = append(names, w.Found.Name)
			if first < 0 {
				first = i
			}
		}
	}
	if first < 0 {
		return nil
	}
	w := in.Walls[first]
	return []place{{wall: first, text: fmt.Sprintf("There is a top over %s, %s over what %s stands on.", list(names), in.tape(headHeight(w)-lowestBase(w.Found)), w.Found.Name)}}
}

// crowned tells whether a wall has a top, or whether the cap of a half wall goes on over it: that of
// a wall round outside corners from it whose head is less than a course from its own.
func (in Input) crowned(wall int) bool {
	w := in.Walls[wall]
	if w.Top != nil || w.Found.Head.Beneath != nil {
		return true
	}
	for _, end := range []func(survey.WallFound) survey.EndFound{
		func(w survey.WallFound) survey.EndFound { return w.Left }, func(w survey.WallFound) survey.EndFound { return w.Right }} {
		e := end(w.Found)
		for range in.Walls {
			if e.Outside == nil || e.Outside.Next < 0 {
				break
			}
			next := in.Walls[e.Outside.Next]
			if (headHeight(next) - headHeight(w)).Abs() >= in.Room.Tile.Height {
				break
			}
			if next.Top != nil {
				return true
			}
			e = end(next.Found)
		}
	}
	return false
}

// low tells whether a wall is a half wall, a curb or the front of a bench: it has a top,
// or it turns an outside corner and its head stops no more than 60 in over what it stands on
// (how-to pages: half walls are 36 to 42 in high, some to 60).
func (in Input) low(wall int) bool {
	w := in.Walls[wall]
	if w.Top != nil {
		return true
	}
	if w.Found.Head.Meets || w.Found.Left.Outside == nil && w.Found.Right.Outside == nil {
		return false
	}
	return headHeight(w)-lowestBase(w.Found) <= in.Limits.HalfWall
}

func lowestBase(w survey.WallFound) length.Length {
	low, found := length.Length(0), false
	for _, s := range w.Base {
		for _, r := range s.Readings {
			if !found || r.Value < low {
				low, found = r.Value, true
			}
		}
	}
	return low
}
