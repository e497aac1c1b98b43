package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// topRules judge the horizontal faces on walls: seats, ledges, curbs, caps.
func topRules() []Rule {
	return []Rule{
		{
			Name: LevelTop, Grade: Warning, judge: levelTops,
			Why:    "Water stands on a top that is nearly level and finds its way behind the tile; a metal edge that stands over the tile dams it.",
			Do:     "Slope the top to the room when it is framed or packed, before the waterproofing, and set its front edge flush.",
			Source: cited("ANSI A108.01-3.6.4 (seats, sills and curbs fall to the drain) and 1/4 in per ft (NTCA)", "a trade paper and TileLetter"),
		},
		{
			Name: SmallPieceOnATop, Grade: Warning, judge: smallOnTop,
			Why:    "A top is looked down on and leaned on: a strip is hard to cut, and the first piece to come loose.",
			Do:     "Change the depth by what stands behind its boards, take the bond from another start, or lay a slab.",
			Source: practice,
		},
		{
			Name: StripBetweenTrim, Grade: Advice, judge: betweenTrim,
			Why:    "Between two rows of trim a strip of tile looks like a mistake, and each of its pieces is ripped.",
			Do:     "Take narrower trim, frame the top so that half a tile or more is left between, or make its edges another way: a mitre, a profile, or the tile of the front lapping over.",
			Source: cited("ANSI A108.02 4.3 (usually nothing under half a tile)", "CTEF") + "; between trim: " + practice,
		},
		{
			Name: SoftJointsOfATop, Grade: Warning, judge: narrowOnTop,
			Why:    "A top and the walls round it move against each other; grout between them cracks, and that is where a bench leaks.",
			Do:     "Give it a wider gap where it meets walls, and fill it with sealant, not with grout.",
			Source: cited("TCNA EJ171 (inside corners; never under 1/8 in)", "CTEF"),
		},
		{
			Name: SizeOfASeat, Grade: Advice, judge: seats,
			Why:    "A seat that is too high, too low or too shallow is not sat on.",
			Do:     "Frame it 17 to 19 in (430 to 480 mm) high and at least 15 in (380 mm) deep, finished; a seat that somebody depends on follows the accessibility rules of the place.",
			Source: cited("NKBA guidelines (17 to 19 in high, 15 in deep)", "a how-to page"),
		},
		{
			Name: WaterproofingOfATop, Grade: Caution, judge: waterOverTops,
			Why:    "Benches and curbs are where showers leak: water stands on them, they are framed in wood as often as not, and one screw through the top lets it in.",
			Do:     "Carry the membrane over the front, the top and up the walls behind in one piece, with the corners folded or formed, and fill the shower to the curb for a day before the first tile. No nail or screw goes through the top or the inner face of a curb; glass on it is clamped or set in sealant. Waterproofing is a matter for local code and a licensed trade.",
			Source: "IRC P2709 (liner over the curb; look it up, from memory); how-to pages; the flood test: " + practice,
		},
	}
}

// eachTop calls f for every top of the room.
func (in Input) eachTop(f func(wall int, t *plan.Top)) {
	for i := range in.Walls {
		if t := in.Walls[i].Top; t != nil {
			f(i, t)
		}
	}
}

// atTop is the place of a top: the middle of the head of its wall.
func (in Input) atTop(wall int, t *plan.Top, text string) place {
	w := in.Walls[wall]
	return onPoint(wall, plane.Point{X: w.Found.Width.Half(), Y: w.Start.Placed.Head}, text)
}

// levelTops judges the fall of every top.
func levelTops(in Input) []place {
	var all []place
	usual, per := survey.UsualFall(in.Room.Units), "ft"
	if in.Room.Units == length.Metric {
		per = "m"
	}
	in.eachTop(func(wall int, t *plan.Top) {
		if t.Found.Fall < usual {
			all = append(all, in.atTop(wall, t, fmt.Sprintf("The %s falls %s per %s to the room, less than %s.", t.Name(), in.exact(t.Found.Fall, usual), per, in.exact(usual, usual))))
		}
	})
	return all
}

// smallOnTop names the smallest piece of each top that is a sliver or less.
func smallOnTop(in Input) []place {
	var all []place
	in.eachTop(func(wall int, t *plan.Top) {
		worst, small := smallest(t.Pieces)
		if worst == nil {
			return
		}
		p := in.atTop(wall, t, fmt.Sprintf("The %s has %s; the smallest, %s, is %s.", t.Name(), count(small, "small piece"), worst.ID, in.fine(worst.Least)))
		p.piece = worst.ID
		all = append(all, p)
	})
	return all
}

// betweenTrim names tops on which trim along both edges leaves less than half a tile between, and no small piece, which
// are named for themselves.
func betweenTrim(in Input) []place {
	var all []place
	in.eachTop(func(wall int, t *plan.Top) {
		if t.Found.How != survey.Bullnose || !t.Found.Laps || t.Found.Strip == nil || !t.Found.Open() {
			return
		}
		left := t.Found.Shallowest() - 2*t.Found.Behind(in.Room)
		if _, small := smallest(t.Pieces); small > 0 || 2*left >= min(t.Tile.Width, t.Tile.Height) {
			return
		}
		all = append(all, in.atTop(wall, t, fmt.Sprintf("The %s keeps a strip of tile %s wide between two rows of %s.", t.Name(), in.fine(left), t.Found.Strip.Name)))
	})
	return all
}

// smallest is the smallest of some pieces that are slivers or less, and how many there
// are; nil where there is none.
func smallest(pieces []piece.Piece) (worst *piece.Piece, small int) {
	for n := range pieces {
		if p := &pieces[n]; p.Sliver || p.Unworkable {
			small++
			if worst == nil || p.Least < worst.Least {
				worst = p
			}
		}
	}
	return worst, small
}

// narrowOnTop judges the gaps where tops meet walls.
func narrowOnTop(in Input) []place {
	var all []place
	in.eachTop(func(wall int, t *plan.Top) {
		gap := in.Room.Joint
		if t.Found.Gap != nil {
			gap = *t.Found.Gap
		}
		w := in.Walls[wall].Found
		if meets := !t.Found.Open() || w.Left.Meets || w.Right.Meets; meets && gap < in.Limits.SoftJoint {
			all = append(all, in.atTop(wall, t, fmt.Sprintf("The soft joints of the %s are %s wide, less than %s.",
				t.Name(), in.exact(gap, in.Limits.SoftJoint), in.exact(in.Limits.SoftJoint, in.Limits.SoftJoint))))
		}
	})
	return all
}

// seats judges the height of seats over what their front stands on, and their depth.
func seats(in Input) []place {
	var all []place
	in.eachTop(func(wall int, t *plan.Top) {
		w := in.Walls[wall].Found
		if t.Found.Kind != survey.SeatTop || len(w.Base) == 0 {
			return
		}
		high, deep := t.Front-lowestBase(w), t.Found.Shallowest()
		if high < in.Limits.SeatLow || high > in.Limits.SeatHigh {
			all = append(all, in.atTop(wall, t, fmt.Sprintf("The %s is %s over the %s; %s to %s is usual.",
				t.Name(), in.tape(high), w.Base[0].Meets, in.tape(in.Limits.SeatLow), in.tape(in.Limits.SeatHigh))))
		}
		if deep < in.Limits.SeatDeep {
			all = append(all, in.atTop(wall, t, fmt.Sprintf("The %s is %s deep; at least %s is usual.", t.Name(), in.tape(deep), in.tape(in.Limits.SeatDeep))))
		}
	})
	return all
}

// waterOverTops speaks once of all tops.
func waterOverTops(in Input) []place {
	var names []string
	in.eachTop(func(_ int, t *plan.Top) { names = append(names, "the "+t.Name()) })
	if len(names) == 0 {
		return nil
	}
	return room("Waterproofing runs over " + list(names) + ".")
}

// topsThat speaks of every top of which say has something to say after “The edge of
// the seat of bench”; empty is nothing.
func topsThat(say func(*plan.Top, Input) string) func(Input) []place {
	return func(in Input) []place {
		var all []place
		in.eachTop(func(wall int, t *plan.Top) {
			if text := say(t, in); text != "" {
				all = append(all, in.atTop(wall, t, "The edge of the "+t.Name()+text+"."))
			}
		})
		return all
	}
}

func topMitred(t *plan.Top, in Input) string {
	if t.Found.How != survey.Mitre {
		return ""
	}
	return " is mitred: both edges are cut at 45°"
}

func topLapped(t *plan.Top, in Input) string {
	if t.Found.How != survey.Lap {
		return ""
	}
	side, thick := "top", t.Found.Thick(in.Room)
	if !t.Found.Laps {
		side, thick = "front", in.Room.Tile.Thickness
	}
	return fmt.Sprintf(" is lapped: the side of the %s is seen, %s of it", side, in.fine(thick))
}

func topProfiled(t *plan.Top, in Input) string {
	if t.Found.How != survey.Profile || t.Found.Strip == nil {
		return ""
	}
	return fmt.Sprintf(" has the %s %s; tile and bed are %s deep", t.Found.Strip.Kind, t.Found.Strip.Name, in.close(in.Room.Tile.Thickness+in.Room.Bed))
}

// both speaks of outside corners, then of tops.
func both(corners, tops func(Input) []place) func(Input) []place {
	return func(in Input) []place { return append(corners(in), tops(in)...) }
}
