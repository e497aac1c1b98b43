package finding

import (
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/plane"
	"coursewright/layout/survey"
	"coursewright/layout/trim"
)

// trimRules judge trim that is set in pieces.
func trimRules() []Rule {
	return []Rule{
		{
			Name: SmallPieceOfTrim, Grade: Warning, judge: smallTrim,
			Why:    "A stub of trim is hard to cut, holds badly, and is seen where an edge should run through.",
			Do:     "Take another length of piece, let the edge stop elsewhere, or share the cut between both ends of the edge.",
			Source: practice,
		},
		{
			Name: ShallowProfile, Grade: Warning, judge: shallowProfile,
			Why:    "A profile is marked with the depth it takes for tile and bed together; in one that is shallower the tile stands over its edge.",
			Do:     "Take the next size that is no less than tile and bed.",
			Source: "how-to pages: never less than tile and bed (tile of 8 mm on a bed of 2 mm: 10 mm)",
		},
		{
			Name: ProudTrim, Grade: Advice, judge: proudTrim,
			Why:    "Trim and tile of different thickness do not come flush on the same bed.",
			Do:     "Choose the bed of the trim so that its face stands as wanted, and try one piece dry beside a tile.",
			Source: "makers' figures in the EU Ecolabel register: raised profile of 17 mm with tile of 7 mm",
		},
		{
			Name: MitredTrim, Grade: Advice, judge: mitredTrim,
			Why:    "The glaze chips along a mitre, and the sharp edge that is left breaks easily.",
			Do:     "Cut just behind the glaze, ease the edge, and keep a piece to spare; a corner piece needs no mitre.",
			Source: "how-to pages",
		},
		{
			Name: CoveFoot, Grade: Advice, judge: coveFoot,
			Why:    "What the cove stands over moves and sheds water; a foot that stands on it or is grouted to it cracks loose, and water gets behind the cove.",
			Do:     "Hold the cove up on spacers, take them out when it has hardened, and fill the gap with sealant. The waterproofing under it is a matter of the maker's sheet and local code.",
			Source: "sealant where tile meets other things: TCNA EJ171, quoted by CTEF; else " + practice,
		},
	}
}

// coveFoot speaks of every wall along whose base a cove stands.
func coveFoot(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		for _, s := range w.Found.Base {
			if s.Cove == nil {
				continue
			}
			x := w.Found.Width.Half()
			if len(w.Found.Base) > 1 {
				x = (s.Readings[0].At + s.Readings[len(s.Readings)-1].At).Half()
			}
			all = append(all, onPoint(i, plane.Point{X: x, Y: survey.At(s.Readings, x)},
				fmt.Sprintf("The cove of %s keeps %s from the %s: a soft joint.", w.Found.Name, in.fine(s.Foot()), s.Meets)))
		}
	}
	return all
}

// smallTrim speaks once for every wall, at its smallest piece.
func smallTrim(in Input) []place {
	var all []place
	for i, w := range in.Walls {
		var worst *trim.Piece
		more := -1
		for k := range w.Trim {
			if p := &w.Trim[k]; p.Cut() && p.Long < in.Limits.LeastTrim {
				more++
				if worst == nil || p.Long < worst.Long {
					worst = p
				}
			}
		}
		if worst == nil {
			continue
		}
		text := fmt.Sprintf("A piece of trim on %s is %s long (%s); under %s it is hard to cut", w.Found.Name, in.exact(worst.Long, in.Limits.LeastTrim), worst.ID, in.fine(in.Limits.LeastTrim))
		if more > 0 {
			text += fmt.Sprintf(", and so is %s", count(more, "other piece"))
		}
		all = append(all, onPoint(i, middle(worst.Face.Bounds()), text+"."))
	}
	return all
}

func shallowProfile(in Input) []place {
	deep := in.Room.Tile.Thickness + in.Room.Bed
	return in.eachTrim(func(t survey.TrimFound) string {
		if !t.Bar() || t.Thickness == 0 || t.Thickness >= deep {
			return ""
		}
		return fmt.Sprintf("The profile %s is marked %s; tile and bed are %s.", t.Name, in.exact(t.Thickness, deep), in.close(deep))
	})
}

func proudTrim(in Input) []place {
	tile := in.Room.Tile.Thickness
	return in.eachTrim(func(t survey.TrimFound) string {
		if t.Bar() || t.Thickness == 0 || t.Thickness == tile {
			return ""
		}
		how, by := "over", t.Thickness-tile
		if by < 0 {
			how, by = "under", -by
		}
		return fmt.Sprintf("%s is %s thick and the tile %s: on the same bed it stands %s %s the tile.", capital(t.Name), in.exact(t.Thickness, tile), in.close(tile), in.close(by), how)
	})
}

func mitredTrim(in Input) []place {
	mitred := map[string]bool{}
	for _, w := range plan.WithTops(in.Walls) {
		for _, p := range w.Trim {
			mitred[p.Trim.Name] = mitred[p.Trim.Name] || p.Mitres > 0
		}
	}
	return in.eachTrim(func(t survey.TrimFound) string {
		if t.Bar() || !mitred[t.Name] {
			return ""
		}
		return fmt.Sprintf("%s is mitred at its outer corners.", capital(t.Name))
	})
}

// eachTrim asks of every trim that is set in the room what to say of it; empty is
// nothing.
func (in Input) eachTrim(say func(survey.TrimFound) string) []place {
	var all []place
	for _, t := range in.Room.Trims {
		if in.uses(t.Name) {
			if text := say(t); text != "" {
				all = append(all, room(text)...)
			}
		}
	}
	return all
}

func (in Input) uses(name string) bool {
	for _, w := range plan.WithTops(in.Walls) {
		for _, p := range w.Trim {
			if p.Trim.Name == name {
				return true
			}
		}
	}
	return false
}

// leastTrim is the least length of a piece of trim: 1 in (25 mm). Common practice,
// no source.
func leastTrim(s length.System) length.Length {
	if s == length.Metric {
		return 25 * length.Millimetre
	}
	return length.Inch
}
