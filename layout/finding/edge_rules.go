package finding

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// edgeRules judge the ends, the base and the head of the walls.
func edgeRules() []Rule {
	return []Rule{
		{
			Name: SealantGap, Grade: Warning, judge: gaps,
			Why:    "Corners and rims move: a soft joint that is too narrow tears, one that is too wide sags.",
			Do:     "Keep a gap of 1/8 to 1/4 in (3 to 6 mm) and fill it with flexible sealant (ASTM C920), never with grout.",
			Source: cited("TCNA EJ171", "CTEF"),
		},
		{
			Name: RimOutOfLevel, Grade: Warning, judge: tilted,
			Why:    "The first course becomes a wedge that shows, and water stands at one end of the rim.",
			Do:     "Look at levelling the tub or base before tiling.",
			Source: practice,
		},
		{
			Name: HeightOfTheWetWall, Grade: Warning, judge: wetHeight,
			Why:    "Water runs down walls that are not covered high enough.",
			Do:     "Let the tile go higher, or ask the local building office what it accepts.",
			Source: "IRC R307.2 (over the floor) and IPC 417.4.1 (over the drain), second hand; local code decides, look it up",
		},
		{
			Name: TilePastTheTub, Grade: Warning, judge: pastTub,
			Why:    "Water from the shower lands beyond the end of the tub.",
			Do:     "Let the tile run at least 2 in (51 mm) past the tub with a leg down its front; better one full column.",
			Source: "CTEF and how-to pages; not a standard",
		},
		{
			Name: SoftJoints, Grade: Advice, judge: soft,
			Why:    "Grout in a joint between two planes cracks and lets water in.",
			Do:     "Use flexible sealant at every inside corner and where tile meets tub, floor or ceiling; 1/4 in is preferred for glazed wall tile, never under 1/8 in.",
			Source: cited("TCNA EJ171", "CTEF"),
		},
		{
			Name: RimNearlyLevel, Grade: Advice, judge: nearlyLevel,
			Why:    "A gap that grows along the rim shows when sealant fills it; a tapered first course shows by what share of the course the taper is.",
			Do:     "Start one full tile over the high point and let the joint take up the rest, or one full tile over the low point and cut the rest down.",
			Source: "high point: how-to pages; low point: NAVEDTRA 14044 p. 7-23; what shows: TileLetter 2018-03 p. 86 and " + practice,
		},
		{
			Name: RakeAtTheBase, Grade: Advice, judge: rake,
			Why:    "Only a full tile over the low point leaves no gap that sealant cannot fill.",
			Do:     "Cut the first course down to the rim and carry the level line round all the walls.",
			Source: "NAVEDTRA 14044 p. 7-23; BS 5385-1:2018 7.1.5, second hand, look it up; what shows: TileLetter 2018-03 p. 86",
		},
		{
			Name: MovementJointInTheField, Grade: Advice, judge: field,
			Why:    "A long field of tile moves more than its edges can take.",
			Do:     "Plan a soft joint every 20 to 25 ft indoors, every 8 to 12 ft in sun or moisture.",
			Source: "TCNA EJ171 and the NTCA manual; commonly cited so, look it up",
		},
	}
}

// gaps judges every boundary that meets something; those of one gap are one
// sentence.
func gaps(in Input) []place {
	var sizes []length.Length
	where, walls := map[length.Length][]string{}, map[length.Length][]int{}
	for i, w := range in.Walls {
		for _, b := range w.Shape.Sides {
			if !b.Meets || b.Gap >= in.Limits.SoftJoint && b.Gap <= in.Room.Sealant {
				continue
			}
			if where[b.Gap] == nil {
				sizes = append(sizes, b.Gap)
			}
			if at := "the " + edgeName(b) + " of " + w.Found.Name; !slices.Contains(where[b.Gap], at) {
				where[b.Gap], walls[b.Gap] = append(where[b.Gap], at), append(walls[b.Gap], i)
			}
		}
	}
	var all []place
	for _, gap := range sizes {
		p := place{wall: walls[gap][0]}
		if slices.Max(walls[gap]) != p.wall {
			p.wall = -1
		}
		p.text = fmt.Sprintf("The gap at %s is %s; sealant may fill %s.", list(where[gap]), in.exact(gap, in.Room.Sealant), in.close(in.Room.Sealant))
		if gap < in.Limits.SoftJoint {
			p.text = fmt.Sprintf("The gap at %s is %s; at least %s is asked for.", list(where[gap]), in.exact(gap, in.Limits.SoftJoint), in.close(in.Limits.SoftJoint))
		}
		all = append(all, p)
	}
	return all
}

// edgeName is a boundary that meets something as it is called on the wall.
func edgeName(b survey.Boundary) string {
	switch b.Part.Is {
	case survey.LeftEnd:
		return "left corner"
	case survey.RightEnd:
		return "right corner"
	case survey.HeadEdge:
		return "ceiling"
	}
	return string(b.Kind)
}

func soft(in Input) []place {
	for _, w := range in.Walls {
		for _, b := range w.Shape.Sides {
			if b.Meets {
				return room("Every corner and rim of this room takes sealant, not grout.")
			}
		}
	}
	return nil
}

// tilted finds rims that rise or fall by more than one degree from their first
// reading to their last: tan 1° = 0.017455…, compared in whole numbers.
func tilted(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		for _, s := range w.Found.Base {
			if !s.Meets.Rim() || len(s.Readings) < 2 {
				continue
			}
			a, b := s.Readings[0], s.Readings[len(s.Readings)-1]
			rise, run := (b.Value - a.Value).Abs(), b.At-a.At
			if rise*1_000_000 > run*17_455 {
				all = append(all, onPoint(i, plane.Point{X: a.At + run/2, Y: min(a.Value, b.Value)},
					fmt.Sprintf("The %s along %s is out of level by %s in %s, more than one degree.", s.Meets, w.Found.Name, in.tape(rise), in.tape(run))))
			}
		}
	}
	return all
}

// rim is how far the rims of one kind lie apart, between low and high point of all walls.
type rim struct {
	kind   survey.Kind
	spread length.Length
}

// rims are the spreads of tubs, shower bases and curbs, each judged by itself: a curb
// stands over the base that it holds. One kind alone, as in most rooms, is “the rim”.
func (in Input) rims() (out []rim) {
	for _, kind := range []survey.Kind{survey.Tub, survey.ShowerBase, survey.Curb} {
		low, found := in.lowest(kind)
		if !found {
			continue
		}
		high := low
		for _, w := range in.Walls {
			for _, s := range w.Found.Base {
				for _, r := range s.Readings {
					if s.Meets == kind {
						high = max(high, r.Value)
					}
				}
			}
		}
		out = append(out, rim{kind, high - low})
	}
	if len(out) == 1 {
		out[0].kind = "rim"
	}
	return out
}

// nearlyLevel says nothing of what is less than the least measure that is told: nobody sees that a rim is not level then.
func nearlyLevel(in Input) (all []place) {
	for _, r := range in.rims() {
		if r.spread >= in.Room.Units.FineStep() && r.spread <= in.Limits.NearlyLevel {
			all = append(all, room(fmt.Sprintf("The %s is level within %s.", r.kind, in.fine(r.spread)))...)
		}
	}
	return all
}

func rake(in Input) (all []place) {
	for _, r := range in.rims() {
		if r.spread > in.Limits.NearlyLevel {
			all = append(all, room(fmt.Sprintf("The %s lies %s lower at its low point than at its high point; the first course takes that up.", r.kind, in.fine(r.spread))+in.taper(r.spread))...)
		}
	}
	return all
}

// taper says how much of a course a wedge takes, because that decides whether
// it shows: 3/8 in is hard to see on a tile of 24 in, and plain on one of 5/8.
func (in Input) taper(by length.Length) string {
	high := in.Room.Tile.Height
	if high == 0 {
		return ""
	}
	percent := int((200*by + high) / (2 * high))
	switch {
	case percent < in.Limits.FaintTaper || percent == in.Limits.FaintTaper && 100*by <= length.Length(in.Limits.FaintTaper)*high:
		return fmt.Sprintf(" That is %d %% of a course, hard to see.", percent)
	case percent > in.Limits.PlainTaper:
		return fmt.Sprintf(" That is %d %% of a course, plain to see.", percent)
	}
	return fmt.Sprintf(" That is %d %% of a course.", percent)
}

// pastTub judges ends that stop beyond, or short of, the end of a tub: with their trim, if
// that is tile too.
func pastTub(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		left, right, found := tubSpan(w.Found)
		if !found {
			continue
		}
		p, joint := w.Start.Placed, in.Room.Joint
		if past := left - p.Left + tiledTrim(w.Found.Left, joint); !w.Found.Left.Meets && w.Found.Left.Outside == nil && past < in.Limits.PastTub {
			all = append(all, in.short(i, "left", past))
		}
		if past := p.Right - right + tiledTrim(w.Found.Right, joint); !w.Found.Right.Meets && w.Found.Right.Outside == nil && past < in.Limits.PastTub {
			all = append(all, in.short(i, "right", past))
		}
	}
	return all
}

// tiledTrim is what trim in pieces adds to the tile at an end; a bar adds nothing.
func tiledTrim(e survey.EndFound, joint length.Length) length.Length {
	if e.Trim == nil || e.Trim.Bar() {
		return 0
	}
	return joint + e.Trim.Width
}

func (in Input) short(wall int, end string, past length.Length) place {
	return place{wall: wall, text: fmt.Sprintf("At the %s end of %s the tile runs %s past the tub; at least %s is better.",
		end, in.Walls[wall].Found.Name, in.tape(max(past, 0)), in.tape(in.Limits.PastTub))}
}

// tubSpan is where the tubs along a wall begin and end.
func tubSpan(w survey.WallFound) (left, right length.Length, found bool) {
	for _, s := range w.Base {
		if n := len(s.Readings); s.Meets == survey.Tub && n > 0 {
			if !found {
				left, found = s.Readings[0].At, true
			}
			right = s.Readings[n-1].At
		}
	}
	return left, right, found
}

func field(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		if w.Found.Width > in.Limits.Field {
			all = append(all, place{wall: i, text: fmt.Sprintf("%s is %s wide.", w.Found.Name, in.tape(w.Found.Width))})
		}
	}
	return all
}
