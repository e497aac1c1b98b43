package finding

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// nicheRules judge what is inside niches and windows.
func nicheRules() []Rule {
	return []Rule{
		{
			Name: SmallPieceInAnOpening, Grade: Warning, judge: smallInside,
			Why:    "Inside a niche or a window every piece is looked at from near, and a strip is hard to cut and to hold in place.",
			Do:     "Change the depth by a thicker or thinner lining, move the opening along the joints, or take a slab or a smaller tile for that face.",
			Built:  "Take a slab or a smaller tile for that face, or let the course line and the start go to the opening; where it is not lined yet, a thicker or thinner lining changes its depth.",
			Source: practice,
		},
		{
			Name: FallOfASill, Grade: Warning, judge: flatSills,
			Why:    "Water that stands on the sill finds its way behind the tile.",
			Do:     "Slope the sill to the room when it is lined, before the waterproofing.",
			Source: cited("ANSI A108.01-3.6.4 (ledges fall to the drain) and 1/4 in per ft (NTCA)", "a trade paper and TileLetter"),
		},
		{
			Name: SoftJointsInANiche, Grade: Warning, judge: narrowSoft,
			Why:    "The faces of a niche move against each other; grout in their corners cracks.",
			Do:     "Give the corners a wider gap, and fill it with sealant, not with grout.",
			Source: cited("TCNA EJ171 (inside corners; never under 1/8 in)", "CTEF"),
		},
		{
			Name: NicheInAnOutsideWall, Grade: Warning, judge: outsideWalls(true),
			Why:    "The niche takes the insulation out of the wall: it grows cold, and the damp of the room condenses in it.",
			Do:     "Put it into an inside wall if you can. If not, insulate behind it and keep the vapour barrier whole: local code decides.",
			Built:  "Before it is tiled, see that there is insulation behind it and that the vapour barrier is whole: local code decides. If it is not built yet, an inside wall is the better place.",
			Source: "how-to pages; TCNA (TileLetter) on keeping niches out of exterior walls if it can be helped",
		},
		{
			Name: WallBehindANiche, Grade: Advice, judge: outsideWalls(false),
			Why:    "In an outside wall a niche takes the place of the insulation, and the vapour barrier is cut.",
			Do:     "Find out what is behind the wall, and say so in the survey.",
			Source: "how-to pages; TCNA (TileLetter) on keeping niches out of exterior walls if it can be helped",
		},
		{
			Name: LinedOverTheTile, Grade: Advice, judge: linedOver,
			Why:    "Over the head the tile of the returns comes out beside bare wall: its edges are seen, and the line of the head does not end at the window.",
			Do:     "Let the tile of the wall go up to the top of the window, case its sides over the head, or finish those edges with trim of their own.",
			Source: practice,
		},
		{
			Name: WaterproofingInAnOpening, Grade: Caution, judge: waterproofed,
			Why:    "Tile and grout are not waterproof, and a niche or a sill holds water where the framing is open.",
			Do:     "Carry the membrane over every face and through every corner, and test it before the first tile; waterproofing is a matter for local code.",
			Source: "IRC R702.4.2, look it up; how-to pages",
		},
	}
}

// eachInside calls f for every niche and window of which the inside is known.
func (in Input) eachInside(f func(wall int, o survey.OpeningFound, inside plan.Inside)) {
	for i, w := range in.Walls {
		for _, inside := range w.Insides {
			f(i, w.Found.Openings[inside.Opening], inside)
		}
	}
}

// at is the place of an opening on its wall.
func (in Input) atOpening(wall, opening int, text string) place {
	return onPoint(wall, middle(taken(in.Walls[wall], opening, in.Room.Units)), text)
}

// smallInside names the smallest piece of each face that is a sliver or less.
func smallInside(in Input) []place {
	var all []place
	in.eachInside(func(wall int, o survey.OpeningFound, inside plan.Inside) {
		for k := range inside.Faces {
			f := &inside.Faces[k]
			worst, small := smallest(f.Pieces)
			if worst == nil {
				continue
			}
			text := fmt.Sprintf("The %s has %s; the smallest, %s, is %s.", f.Name(), count(small, "small piece"), worst.ID, in.fine(worst.Least))
			p := in.atOpening(wall, inside.Opening, text).of(o)
			p.piece = worst.ID
			all = append(all, p)
		}
	})
	return all
}

// flatSills judges the fall of every sill that is tiled.
func flatSills(in Input) []place {
	var all []place
	usual := survey.UsualFall(in.Room.Units)
	per := "ft"
	if in.Room.Units == length.Metric {
		per = "m"
	}
	in.eachInside(func(wall int, o survey.OpeningFound, inside plan.Inside) {
		if o.Inside.Faces[survey.SillFace].Tiled && o.Inside.Fall < usual {
			all = append(all, in.atOpening(wall, inside.Opening, fmt.Sprintf("The sill of %s falls %s per %s to the room, less than %s.",
				o.Called(), in.exact(o.Inside.Fall, usual), per, in.exact(usual, usual))))
		}
	})
	return all
}

// narrowSoft judges the gaps in the corners.
func narrowSoft(in Input) []place {
	var all []place
	in.eachInside(func(wall int, o survey.OpeningFound, inside plan.Inside) {
		gap := in.Room.Joint
		if o.Inside.Gap != nil {
			gap = *o.Inside.Gap
		}
		if gap < in.Limits.SoftJoint {
			all = append(all, in.atOpening(wall, inside.Opening, fmt.Sprintf("The soft joints in %s are %s wide, less than %s.",
				o.Called(), in.exact(gap, in.Limits.SoftJoint), in.exact(in.Limits.SoftJoint, in.Limits.SoftJoint))))
		}
	})
	return all
}

// outsideWalls speaks of niches in an outside wall, or of those of which nobody
// has said what is behind them.
func outsideWalls(known bool) func(Input) []place {
	return func(in Input) []place {
		var all []place
		in.eachInside(func(wall int, o survey.OpeningFound, inside plan.Inside) {
			switch {
			case o.Kind != survey.Niche:
			case known && o.Inside.Behind == "outside":
				all = append(all, in.atOpening(wall, inside.Opening, capital(o.Called())+" is in an outside wall.").of(o))
			case !known && o.Inside.Behind == "":
				all = append(all, in.atOpening(wall, inside.Opening, "Is the wall of "+o.Called()+" an outside wall? Nobody has said."))
			}
		})
		return all
	}
}

// linedOver judges windows that go up past the tile of their wall and are lined with tile up there.
func linedOver(in Input) []place {
	var all []place
	in.eachInside(func(wall int, o survey.OpeningFound, inside plan.Inside) {
		w := in.Walls[wall]
		over := edges(w, inside.Opening).Top - w.Start.Placed.Head
		lined := slices.ContainsFunc(inside.Faces, func(f plan.Face) bool { return f.Is != survey.SillFace })
		if o.Kind == survey.Window && !w.Found.Head.Meets && over > 0 && lined {
			all = append(all, in.atOpening(wall, inside.Opening, fmt.Sprintf("%s is lined with tile for %s over where the tile of %s stops.", capital(o.Called()), in.tape(over), w.Found.Name)))
		}
	})
	return all
}

// waterproofed speaks once of all of them.
func waterproofed(in Input) []place {
	var names []string
	in.eachInside(func(_ int, o survey.OpeningFound, _ plan.Inside) { names = append(names, o.Called()) })
	switch len(names) {
	case 0:
		return nil
	case 1:
		return room("Waterproofing runs through the inside of " + names[0] + ".")
	}
	return room("Waterproofing runs through the insides of " + list(names) + ".")
}
