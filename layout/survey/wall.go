package survey

import (
	"coursewright/layout/length"
)

// wall reads one wall. What compares its fields with each other waits until
// all of them could be read.
func (r *resolver) wall(p path, w Wall, sealant length.Length, taken map[string]bool) WallFound {
	before := len(r.faults)
	found := WallFound{
		Name:  r.name(value{p.dot("name"), w.Name}, taken),
		Width: r.length(value{p.dot("width"), w.Width}, bounds{1, widestWall}),
	}
	across := bounds{0, found.Width}
	if found.Width == 0 {
		across.high = widestWall
	}
	found.Left = r.end(p.dot("left"), w.Left, across, sealant)
	found.Right = r.end(p.dot("right"), w.Right, across, sealant)
	if found.Right.Outside != nil { // about there; outsideCorners says where
		found.Right.Stops = Span{found.Width, found.Width}
	}
	found.Base = r.base(p.dot("base"), w.Base, across, sealant)
	r.crownless(p.dot("head"), w.Head, w.Top)
	found.Head = r.head(p.dot("head"), w.Head, across, sealant)
	r.top(p.dot("top"), w.Top, &found.Head)
	found.Openings = r.openingList(p.dot("openings"), w.Openings, across)
	if len(r.faults) == before {
		r.downToBase(p.dot("openings"), w.Openings, &found)
	}
	found.Fixtures = r.fixtures(p.dot("fixtures"), w.Fixtures, found, across)
	r.trimEnds(p, &found)
	r.topFits(p.dot("top"), found)
	r.topInCorner(p, &found)
	if len(r.faults) == before {
		r.strips(p.dot("strips"), w.Strips, &found, across)
		r.flush(p.dot("fixtures"), w.Fixtures, &found, across)
	} else {
		r.strips(p.dot("strips"), w.Strips, &WallFound{}, across)
	}
	if len(r.faults) == before {
		r.headOverBase(p, found)
		r.underCeiling(p.dot("openings"), found, r.around.Doubt)
		r.fixturesUnder(p.dot("fixtures"), found, r.around.Doubt)
	}
	return found
}

// upright is how far from the level line anything may be.
func upright() bounds { return bounds{-widestWall, widestWall} }

// gap reads the gap a boundary keeps from what it meets.
func (r *resolver) gap(v value, sealant length.Length) length.Length {
	if v.text != "" {
		return r.length(v, bounds{0, sealant})
	}
	gap := r.usual(length.Inch/8, 3*length.Millimetre)
	if gap > sealant {
		r.faults.add(v.path, "nothing, and the usual "+gap.Format(r.units, 0)+" is more than sealant may fill",
			bounds{0, sealant}.text(r.units))
	}
	return gap
}

// end reads one end: it meets a corner or stops at a mark, whose x runs from
// the wall's left end for either end.
func (r *resolver) end(p path, e End, across bounds, sealant length.Length) EndFound {
	if e.Meets == string(OutsideCorner) && e.Stops == nil {
		return r.outsideEnd(p, e, sealant)
	}
	r.unused("it belongs to an outside corner", value{p.dot("corner"), e.Corner}, value{p.dot("laps"), e.Laps}, value{p.dot("angle"), e.Angle})
	found := EndFound{Beyond: -1, Finish: Kind(e.Finish), Sight: r.sight(value{p.dot("sight"), e.Sight}, Plain)}
	if r.either(p, e.Meets, e.Stops, "corner", againstWall, string(OutsideCorner)) {
		found.Meets, found.Against = true, e.Meets == againstWall
		found.Gap = r.gap(value{p.dot("gap"), e.Gap}, sealant)
		found.Lean = r.lean(p.dot("lean"), e.Lean, across)
		r.unused("a finish belongs to an end that stops", value{p.dot("finish"), e.Finish}, value{p.dot("trim"), e.Trim})
		return found
	}
	r.unused("a gap belongs to an end that meets a corner", value{p.dot("gap"), e.Gap})
	if len(e.Lean) > 0 {
		r.faults.add(p.dot("lean"), "readings", "nothing here: a lean belongs to an end that meets a corner")
	}
	if e.Stops != nil {
		found.Stops = r.span(p.dot("stops"), e.Stops, across)
	}
	found.Finish = r.finish(value{p.dot("finish"), e.Finish})
	found.Trim = r.edged(p.dot("trim"), e.Trim, found.Finish)
	return found
}

// againstWall is the word for an end that meets the run of another wall, not its end: a
// bench front or a curb between two walls.
const againstWall = "wall"

// either tells whether a boundary meets something; it must do that or stop.
func (r *resolver) either(p path, meets string, stops *Mark, what ...string) bool {
	want := `"meets": "` + what[0] + `", or "stops" with a mark`
	switch {
	case meets != "" && stops != nil:
		r.faults.add(p, "meets and stops", want)
	case meets == "" && stops == nil:
		r.faults.add(p, "neither meets nor stops", want)
	case meets != "":
		r.choice(value{p.dot("meets"), meets}, what...)
	}
	return meets != ""
}

// finish reads what covers the edge where tile stops; it may be left open.
func (r *resolver) finish(v value) Kind {
	if v.text == "" {
		return ""
	}
	return r.kind(v, Trim, Bullnose, Casing)
}

// lean reads how far a corner stands to the right, from the bottom upwards.
func (r *resolver) lean(p path, leans []Lean, across bounds) []Reading {
	before := len(r.faults)
	r.count(p, &r.readings, len(leans), mostReadings, "readings")
	var found []Reading
	for i, l := range leans {
		found = append(found, Reading{
			At:    r.length(value{p.at(i).dot("height"), l.Height}, upright()),
			Value: r.length(value{p.at(i).dot("off"), l.Off}, bounds{-across.high / 4, across.high / 4}),
		})
	}
	r.ascending(p, "height", found, before)
	return found
}

// ascending checks that each reading stands past the one before it. Where the
// list has other faults already it is left at those.
func (r *resolver) ascending(p path, field string, readings []Reading, before int) {
	if len(r.faults) > before {
		return
	}
	for i := 1; i < len(readings); i++ {
		if last, at := readings[i-1].At, readings[i].At; at <= last {
			r.faults.add(p.at(i).dot(field), at.Plain(r.units, 0),
				"more than the "+last.Plain(r.units, 0)+" of the reading before it")
		}
	}
}

// leftOver checks that the ends leave room for tile wherever they may stop.
func (r *resolver) leftOver(p path, w WallFound) {
	left, right := w.Left.Stops.To, w.Right.Stops.From
	if w.Left.Meets {
		left = w.Left.Gap + w.Left.Behind + most(w.Left.Lean)
	}
	if w.Right.Meets {
		right = w.Width - w.Right.Gap - w.Right.Behind - most(negative(w.Right.Lean))
	}
	switch {
	case left < right:
	case w.narrow():
		r.faults.add(p.dot("width"), quote(w.Width.Plain(r.units, 0))+", on which its corners leave no tile",
			"a width over "+(w.Width+left-right).Format(r.units, r.units.FineStep()))
	default:
		r.faults.add(p.dot("right"), "tile ending at "+right.Plain(r.units, r.units.FineStep())+" where it begins at "+
			left.Plain(r.units, r.units.FineStep()), "ends with room for tile between them, both measured from the wall's left end")
	}
}

// narrow tells whether nothing but its width can be why a wall has no room for tile: where tile stops, it does so at
// the wall's own ends.
func (w WallFound) narrow() bool {
	return (w.Left.Meets || w.Left.Stops == Span{}) && (w.Right.Meets || w.Right.Stops == Span{From: w.Width, To: w.Width})
}

// most gives the greatest value of readings, at least zero.
func most(readings []Reading) length.Length {
	m := length.Length(0)
	for _, r := range readings {
		m = max(m, r.Value)
	}
	return m
}

func negative(readings []Reading) []Reading {
	turned := make([]Reading, len(readings))
	for i, r := range readings {
		turned[i] = Reading{r.At, -r.Value}
	}
	return turned
}

// Off is how far a corner stands to the right at a height.
func (e EndFound) Off(y length.Length) length.Length {
	if len(e.Lean) == 0 {
		return 0
	}
	return At(e.Lean, y)
}
