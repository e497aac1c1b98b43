package finding

import "coursewright/layout/survey"

// cautions warn where work can hurt.
func cautions() []Rule {
	return []Rule{
		{
			Name: CuttingDust, Grade: Caution, judge: ifCut("Cutting tile sets free fine silica dust."),
			Why:    "Breathed in, it scars the lungs for good.",
			Do:     "Use a wet saw with water feed, or a grinder with water or with shroud and vacuum; wear the respirator the table asks for.",
			Source: "OSHA 29 CFR 1926.1153 Table 1",
		},
		{
			Name: WetSawAndPower, Grade: Caution, judge: ifCut("A wet saw brings water and mains power together."),
			Why:    "A fault in the cord or the saw can kill.",
			Do:     "Plug it into a GFCI (residual-current) outlet, with a drip loop in the cord.",
			Source: "OSHA 29 CFR 1926.404(b)(1)",
		},
		{
			Name: OldWalls, Grade: Caution,
			judge:  always("Walls built before about 1980 may hold lead paint or asbestos."),
			Why:    "Tearing them out spreads both through the house.",
			Do:     "Have them tested before any demolition.",
			Source: "EPA",
		},
		{
			Name: BackingAndMembrane, Grade: Caution,
			judge:  always("Behind wet tile stands a board made for it (C1288, C1325, C1178 or C1278) and a membrane, not plain or green gypsum board."),
			Why:    "Tile and grout are not waterproof; the wall behind them rots.",
			Do:     "Check the backing and the membrane before the first tile; waterproofing is a matter for local code.",
			Source: "IRC R702.4.2; look it up",
		},
		{
			Name: TubDeflects, Grade: Caution, judge: overTub,
			Why:    "A tub sinks a little under water and a person, and cracks what stands on it.",
			Do:     "Never let tile stand on the tub: keep the gap, and fill the tub before sealing it.",
			Source: practice,
		},
		{
			Name: FirstCourseMustHarden, Grade: Caution,
			judge:  always("Unless the mortar holds the tile by itself, the first course carries all the others."),
			Why:    "Stacked on soft mortar, the courses slide and the level line is lost.",
			Do:     "Support the first course and let it harden before you go on.",
			Source: practice,
		},
		{
			Name: GrabBars, Grade: Caution,
			judge:  always("A grab bar needs blocking behind the board: 33 to 36 in (838 to 914 mm) over the floor, and on a tub's back wall also 8 to 10 in (203 to 254 mm) over the rim."),
			Why:    "A bar that is screwed to board alone tears out when somebody falls.",
			Do:     "Set the blocking before the board, and mark it on the plan.",
			Source: "ADA 609.4 and 607.4.2",
		},
	}
}

// ifCut speaks in every room with a cut piece.
func ifCut(text string) func(Input) []place {
	return func(in Input) []place {
		for _, w := range in.Walls {
			for _, p := range w.Pieces {
				if !p.Whole {
					return room(text)
				}
			}
		}
		return nil
	}
}

func overTub(in Input) []place {
	if _, found := in.lowest(survey.Tub); !found {
		return nil
	}
	return room("The tub moves; the tile over it does not.")
}
