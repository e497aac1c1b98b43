package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
)

// bandRules judge bands of other tile.
func bandRules() []Rule {
	return []Rule{
		{
			Name: BandHalvesTheWall, Grade: Advice, judge: halves,
			Why:    "A band at mid-height cuts the wall into two equal parts, and it looks lower than it is.",
			Do:     "Move it up, or well down; about 60 in (1.5 m) over the floor is usual.",
			Source: "how-to pages and the trade press (a flooring trade body's magazine); no standard",
		},
		{
			Name: BandStandsProud, Grade: Advice, judge: proud,
			Why:    "Thinner tile sits back and its edge catches water; thicker tile stands out of the wall, which a moulded strip is meant to do and a flat one is not.",
			Do:     "Bring thin tile out with more mortar or a strip of board under the membrane; of thick tile ask the maker whether it is meant to stand proud.",
			Source: practice + "; that strips may be more than twice as thick as their field: makers' figures in the EU Ecolabel register",
		},
		{
			Name: BandEndsInAnOpening, Grade: Advice, judge: runsInto,
			Why:    "The eye follows the band, and then sees the step where the opening's edge does not.",
			Do:     "Let the opening's edge stand on an edge of the band, or the band run clear of it or right across it.",
			Source: practice,
		},
	}
}

// halves finds bands whose middle lies within a twentieth of the height of the
// middle of a wall.
func halves(in Input) []place {
	var all []place
	for _, b := range in.Setout.Bands {
		for _, w := range b.Walls {
			if w >= len(in.Walls) || b.ToHead {
				continue
			}
			box := in.Walls[w].Shape.Region.Bounds()
			off := (b.Bottom + b.Top - box.Bottom - box.Top).Half().Abs()
			if 20*off < box.Top-box.Bottom {
				all = append(all, onPoint(w, inBand(in.Walls[w], b), fmt.Sprintf("The %s stands at half the height of %s.", b.Name, in.Walls[w].Found.Name)))
				break
			}
		}
	}
	return all
}

// inBand is a point of a band on a wall.
func inBand(w plan.Wall, b plan.Band) plane.Point {
	return plane.Point{X: w.Found.Width.Half(), Y: (b.Bottom + b.Top).Half()}
}

// proud finds bands of which the tile is thicker or thinner than that of the field
// by more than the step that is allowed between two edges.
func proud(in Input) []place {
	const step = length.Inch / 32 // lippage at a joint under 1/4 in: ANSI A108.02 4.3
	var all []place
	for i, b := range in.Room.Bands {
		by := b.Tile.Thickness - in.Room.Tile.Thickness
		if by.Abs() <= step || i >= len(in.Setout.Bands) {
			continue
		}
		way := "thicker"
		if by < 0 {
			way = "thinner"
		}
		w := b.Walls[0]
		all = append(all, onPoint(w, inBand(in.Walls[w], in.Setout.Bands[i]), fmt.Sprintf("The tile of the %s is %s %s than the field.", b.Name, in.close(by.Abs()), way)))
	}
	return all
}

// runsInto finds bands of which an opening's level edge lies inside.
func runsInto(in Input) []place {
	var all []place
	for _, b := range in.Setout.Bands {
		for _, w := range b.Walls {
			for k, o := range in.Walls[w].Found.Openings {
				e := edges(in.Walls[w], k)
				inside := func(y length.Length) bool { return b.Bottom < y && y < b.Top }
				if !b.ToHead && e.Left < e.Right && (inside(e.Bottom) || inside(e.Top)) {
					all = append(all, onPoint(w, plane.Point{X: e.Left, Y: (b.Bottom + b.Top).Half()},
						fmt.Sprintf("The %s runs into the side of %s, whose edge lies inside it.", b.Name, o.Called())))
				}
			}
		}
	}
	return all
}

// eachTile judges the room's own tile, then that of every band, said by name.
func eachTile(judge func(Input) []place) func(Input) []place {
	return func(in Input) []place {
		all := judge(in)
		for i, b := range in.Room.Bands {
			its := in
			its.Room = in.Room.Laid(i + 1)
			for _, p := range judge(its) {
				p.text = "In the " + b.Name + ": " + p.text
				all = append(all, p)
			}
		}
		return all
	}
}
