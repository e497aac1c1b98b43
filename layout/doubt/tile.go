package doubt

import (
	"cmp"
	"fmt"

	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// tile asks about the tile itself.
func (a *asker) tile() {
	t := a.room.Tile
	if _, typed := a.texts["tile.thickness"]; typed && (t.Thickness < a.either(length.Inch/8, 3*length.Millimetre) || t.Thickness > a.either(5*length.Inch/8, 16*length.Millimetre)) {
		// Wall tile is 1/8 in (glass) to 1/2 in (porcelain) thick: dealers' pages.
		a.ask(Doubt{Rule: Thickness, Path: "tile.thickness", Wall: -1,
			Text: fmt.Sprintf("Tile of %s is rare: glass begins at 1/8 in (3 mm), and porcelain ends at 1/2 in (12 mm).", a.say(t.Thickness))})
	}
	a.proportion()
	a.larger()
	a.box()
}

// proportion asks about a tile more than sixteen times as long as it is broad, a square one in a
// basket weave, and about its joint. Common practice, no source.
func (a *asker) proportion() {
	t := a.room.Tile
	short, long := min(t.Width, t.Height), max(t.Width, t.Height)
	if long > 16*short {
		a.ask(Doubt{Rule: Shape, Path: a.longer(), Wall: -1,
			Text: fmt.Sprintf("A tile of %s by %s is more than sixteen times as long as it is broad.", a.say(t.Width), a.say(t.Height))}, "tile.width", "tile.height")
	}
	if long == short && a.room.Bond.Kind == survey.BasketWeave && len(a.room.Bond.Others) == 0 {
		a.ask(Doubt{Rule: Shape, Path: "tile.width", Wall: -1,
			Text: fmt.Sprintf("A basket weave of square tile is a stack: each basket is one tile of %s. Is the tile longer than it is wide?", a.say(long))}, "tile.height")
	}
	a.joint(short)
}

// joint asks about one that is more than a quarter of the tile's shorter side, and about one that is thinner than any spacer,
// as a fraction of an inch is that was typed among millimetres. Common practice, no source.
func (a *asker) joint(short length.Length) {
	if len(a.room.Joints) > 1 {
		return
	}
	joint, path := a.room.Joints[0], "joint"
	if _, typed := a.texts[path]; !typed {
		path = "joint.at"
	}
	d := Doubt{Rule: Shape, Path: path, Wall: -1}
	switch {
	case 4*joint > short:
		d.Text = fmt.Sprintf("A joint of %s is more than a quarter of the shorter side of the tile, %s. Is the unit right?", a.say(joint), a.say(short))
	case joint > 0 && joint < length.Millimetre/2:
		d.Text = "A joint as thin as that has no spacer: they begin at 1/32 in (1 mm). Is the unit right?"
		inches := a.texts[path] + " in"
		if l, err := length.Parse(inches, length.Imperial); a.room.Units == length.Metric && err == nil && l >= length.Inch/32 && 4*l <= short {
			d.Fits = inches
		}
	default:
		return
	}
	a.ask(d, "tile.width", "tile.height")
}

// trueSizes are sides of tile as they are made, against the round figures they
// are sold by: the EU Ecolabel product register, and dealers' price books for
// the inch sizes (12 × 24 is 300 × 600 or 305 × 610).
var trueSizes = func() []length.Length {
	var all []length.Length
	for _, mm := range []length.Length{50, 75, 98, 100, 108, 148, 150, 152, 198, 200, 297, 298, 300, 305, 398, 400, 448, 450, 457, 597, 598, 600, 610, 748, 750, 798, 800, 898, 900, 1198, 1200, 1219} {
		all = append(all, mm*length.Millimetre)
	}
	return all
}()

// box asks when what a box covers, by its label, and the tile as typed or as
// measured disagree by more than 2 %. A box of sheets covers many times what one
// tile of each would, and is not asked about.
func (a *asker) box() {
	t := a.room.Tile
	if t.BoxArea == 0 || t.BoxCount == 0 {
		return
	}
	n := length.Area(t.BoxCount)
	counted := a.room.TileArea() * n
	off := max(counted-t.BoxArea, t.BoxArea-counted)
	if 50*off <= t.BoxArea || t.BoxArea > 8*counted {
		return
	}
	d := Doubt{Rule: Box, Path: "tile.width", Wall: -1, Read: a.say(t.Width) + " × " + a.say(t.Height),
		Text: fmt.Sprintf("%d tiles of %s by %s cover %s; the box says %s.", t.BoxCount, a.say(t.Width), a.say(t.Height), a.cover(counted), a.texts["tile.box.area"])}
	if t.Real.Used {
		d.Path = "tile.box.area"
	} else if w, h, found := a.sold(t.BoxArea / n); found && a.room.Bond.Coursed() {
		d.Use = []Use{{"tile.width", w.Plain(length.Metric, 0) + " mm"}, {"tile.height", h.Plain(length.Metric, 0) + " mm"}}
		d.Fits = d.Use[0].Text + " × " + d.Use[1].Text
	}
	a.ask(d, "tile.height", "tile.box.area", "tile.box.count")
}

// sold finds the true sizes within 6 % of those typed whose product comes
// nearest to what one tile of the box covers, within 1 %.
func (a *asker) sold(each length.Area) (w, h length.Length, found bool) {
	t := a.room.Tile
	near := func(size, typed length.Length) bool { return 50*(size-typed).Abs() <= 3*typed }
	best := each / 100
	for _, x := range trueSizes {
		for _, y := range trueSizes {
			off := max(x.Times(y)-each, each-x.Times(y))
			if near(x, t.Width) && near(y, t.Height) && cmp.Less(off, best) {
				w, h, found, best = x, y, true, off
			}
		}
	}
	return w, h, found
}

// cover writes an area as boxes have it, to a hundredth of a square foot or metre.
func (a *asker) cover(area length.Area) string {
	unit, name := length.Foot.Times(length.Foot), "sq ft"
	if a.room.Units == length.Metric {
		unit, name = length.Metre.Times(length.Metre), "m²"
	}
	hundredths := (100*(area/unit)*2 + (200*(area%unit)+unit)/unit) / 2
	return fmt.Sprintf("%d.%02d %s", hundredths/100, hundredths%100, name)
}
