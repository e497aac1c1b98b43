package finding

import (
	"fmt"
	"slices"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
)

// stripRules judge strips of other tile up a wall.
func stripRules() []Rule {
	return []Rule{
		{
			Name: SmallPieceInAStrip, Grade: Warning, judge: smallInStrip,
			Why:    "A strip is put where people look, and its tile is small: a row of scraps along its foot or its head is seen, and such pieces break on the saw and come off.",
			Do:     "Slip the course line until a fuller row ends it, take a strip tile of another height, or end the strip between heights.",
			Source: practice,
		},
		{
			Name: CutBesideAStrip, Grade: Advice, judge: cutBeside,
			Why:    "A strip is set off best by whole tile on both sides; a sliver in the corner, or a cut at an open end, is worse than a cut beside it.",
			Do:     "Move the strip, or give it a column more or fewer, until whole tile fits; or say at the strip that the tile beside it is always whole.",
			Source: practice,
		},
		{
			Name: StripStandsProud, Grade: Advice, judge: stripProud,
			Why:    "Thinner tile sits back beside the field and its edge catches water; thicker tile stands out of the wall from rim to head, beside a valve whose plate should lie flat.",
			Do:     "Bring thin tile out to the face of the field with more mortar, or with a strip of board under the membrane.",
			Source: practice + "; the step between two edges: commonly cited as ANSI A108.02 4.3, look it up",
		},
		{
			Name: PipeAtStripEdge, Grade: Advice, judge: pipeAtStrip,
			Why:    "The plate over the hole bridges two tiles of different thickness and the joint between them, so it does not lie flat and its sealant gaps.",
			Do:     "Make the strip a column wider or narrower, or move it, until the hole with its plate lies in one tile or the other. Where a valve stands is a plumber's matter.",
			Source: practice,
		},
		{
			Name: StripBesideAValve, Grade: Advice, judge: besideValve,
			Why:    "A strip behind a valve is seen against the valve: half an inch beside its middle is seen from the door.",
			Do:     "Measure the middle of the strip as that of the valve, and let the field give way.",
			Source: practice,
		},
	}
}

// eachStrip lists the strips of the room with what each gives.
func eachStrip(in Input, of func(wall int, w plan.Wall, s *plan.Strip, o survey.OpeningFound) []place) []place {
	var all []place
	for i, w := range in.Walls {
		for k := range w.Strips {
			s := &w.Strips[k]
			all = append(all, of(i, w, s, w.Found.Openings[s.Opening])...)
		}
	}
	return all
}

func middleOf(s *plan.Strip) plane.Point {
	return plane.Point{X: (s.Box.Left + s.Box.Right).Half(), Y: (s.Box.Bottom + s.Box.Top).Half()}
}

// cutBeside says of each wall why tile is cut beside its strips.
func cutBeside(in Input) []place {
	said := map[int]bool{}
	return eachStrip(in, func(i int, w plan.Wall, s *plan.Strip, o survey.OpeningFound) []place {
		c := w.Start.Cut
		if c == nil || said[i] || !slices.Contains(c.Beside, o.Name) {
			return nil
		}
		said[i] = true
		strips := "strip"
		if len(c.Beside) > 1 {
			strips = "strips"
		}
		return []place{onPoint(i, middleOf(s), "Tile is cut beside "+strips+" "+list(c.Beside)+": whole tile there would give "+c.Its+" instead of "+c.Than+".").of(o)}
	})
}

// smallInStrip names the smallest piece of each strip that is a sliver or less.
func smallInStrip(in Input) []place {
	return eachStrip(in, func(i int, w plan.Wall, s *plan.Strip, o survey.OpeningFound) []place {
		worst, small := smallest(s.Pieces)
		if worst == nil {
			return nil
		}
		b := worst.Face.Bounds()
		p := onPoint(i, middle(b), fmt.Sprintf("The strip %s has %s; the smallest, %s, is %s.", o.Name, count(small, "small piece"), worst.ID, in.fine(worst.Least)))
		p.piece = worst.ID
		return []place{p}
	})
}

// stripProud finds strips of which the tile is thicker or thinner than that of the
// field by more than the step that is allowed between two edges.
func stripProud(in Input) []place {
	const step = length.Inch / 32 // lippage at a joint under 1/4 in: ANSI A108.02 4.3
	return eachStrip(in, func(i int, w plan.Wall, s *plan.Strip, o survey.OpeningFound) []place {
		by, way := s.Tile.Thickness-in.Room.Tile.Thickness, "thicker"
		if by.Abs() <= step {
			return nil
		}
		if by < 0 {
			way = "thinner"
		}
		return []place{onPoint(i, middleOf(s), fmt.Sprintf("The tile of strip %s is %s %s than the field.", o.Name, in.close(by.Abs()), way))}
	})
}

// pipeAtStrip finds pipes whose hole reaches over an edge of a strip.
func pipeAtStrip(in Input) []place {
	return eachStrip(in, func(i int, w plan.Wall, s *plan.Strip, o survey.OpeningFound) []place {
		var all []place
		for k, pipe := range w.Found.Openings {
			if pipe.Kind != survey.Pipe {
				continue
			}
			t := taken(w, k, in.Room.Units)
			inside := t.Left >= s.Box.Left && t.Right <= s.Box.Right && (t.Bottom >= s.Box.Bottom || o.Strip.Low) && (t.Top <= s.Box.Top || o.Strip.High)
			if t.Overlaps(s.Box) && !inside {
				all = append(all, onPoint(i, plane.Point{X: pipe.At, Y: pipe.Up}, fmt.Sprintf("The hole for %s reaches over the edge of strip %s.", pipe.Name, o.Name)))
			}
		}
		return all
	})
}

// besideValve finds strips whose middle stands a little beside that of a pipe in them.
func besideValve(in Input) []place {
	return eachStrip(in, func(i int, w plan.Wall, s *plan.Strip, o survey.OpeningFound) []place {
		for _, pipe := range w.Found.Openings {
			off := middleOf(s).X - pipe.At
			if pipe.Kind != survey.Pipe || off.Abs() < max(in.Room.Tape, 1) || pipe.At < s.Box.Left || pipe.At > s.Box.Right || pipe.Up < s.Box.Bottom || pipe.Up > s.Box.Top {
				continue
			}
			side := "right"
			if off < 0 {
				side = "left"
			}
			return []place{onPoint(i, plane.Point{X: pipe.At, Y: pipe.Up}, fmt.Sprintf("The middle of strip %s stands %s to the %s of %s.", o.Name, in.close(off.Abs()), side, pipe.Name))}
		}
		return nil
	})
}
