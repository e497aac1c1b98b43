package layout_test

import (
	"encoding/json"
	"testing"

	"pgregory.net/rapid"
)

// houses draws the rooms that showers leaves out: stalls under a roof, wainscots round four walls, tubs
// shorter than their wall, windows at the side, two niches, heads at different heights, very large and very
// small tile, joints in a range and bonds of either hand.
var houses = rapid.Custom(func(t *rapid.T) []byte {
	h := house{shower{t: t, metric: rapid.IntRange(0, 2).Draw(t, "units") == 0}}
	out, err := json.Marshal(h.room())
	if err != nil {
		panic(err)
	}
	return out
})

type house struct{ shower }

func (h house) room() object {
	doc := h.shower.room()
	sizes := [][2]float64{{24, 48}, {48, 24}, {36, 12}, {12, 36}, {2, 2}, {1.5, 1.5}, {6, 3}, {4.25, 4.25}, {12, 4}, {24, 12}, {8, 8}, {16, 16}, {9, 3}}
	size := rapid.SampledFrom(sizes).Draw(h.t, "another tile")
	doc["tile"] = object{"name": "white", "width": h.says(size[0] - h.between("under", 0, 0.25)), "height": h.says(size[1] - h.between("under too", 0, 0.25)), "thickness": h.says(0.375)}
	if h.is("a range of joints", 6) {
		doc["joint"] = h.from(0.0625, 0.1875)
	}
	bond := doc["bond"].(object)
	if h.is("either hand", 3) {
		delete(bond, "hand")
	}
	h.drop = h.between("floor", 44, 52)
	switch rapid.IntRange(0, 5).Draw(h.t, "kind of room") {
	case 0:
		doc["walls"] = h.wainscot()
	case 1:
		doc["walls"] = h.underARoof()
	case 2:
		doc["walls"] = h.shortTub()
	case 3:
		doc["walls"] = h.sideWindow()
	case 4:
		doc["walls"] = h.twoNiches()
	default:
		doc["walls"] = h.stepped()
	}
	return doc
}

// wainscot is tile at one height round a closed room, over the floor.
func (h house) wainscot() []object {
	long, wide := h.between("long", 60, 110), h.between("wide", 48, 84)
	head := object{"stops": object{"at": h.says(h.between("rail", -8, 6))}, "finish": "bullnose"}
	if h.is("free rail", 2) {
		at := h.between("rail from", -8, 2)
		head = object{"stops": h.from(at, at+h.between("rail range", 1, 6)), "finish": "trim"}
	}
	var out []object
	for i, width := range []float64{long, wide, long, wide} {
		width += h.between("out of square", -0.25, 0.25)
		out = append(out, object{"name": []string{"north", "east", "south", "west"}[i], "width": h.says(width), "head": head, "base": []object{h.on("floor", 0, width)},
			"left": h.corner("left"), "right": h.corner("right")})
	}
	return out
}

// on is a base of one kind.
func (h house) on(kind string, from, to float64) object {
	rim := h.rim(from, to)
	rim["meets"] = kind
	return rim
}

// underARoof is a stall whose ceiling falls along the back wall.
func (h house) underARoof() []object {
	width, side := h.between("back", 34, 62), h.between("side", 30, 40)
	low, high := h.between("low ceiling", 12, 24), h.between("high ceiling", 30, 44)
	ceiling := func(a, b, width float64) object {
		return object{"meets": "ceiling", "gap": h.says(0.125), "readings": []object{{"at": "0", "rise": h.says(a)}, {"at": h.says(width), "rise": h.says(b)}}}
	}
	left := object{"name": "left", "width": h.says(side), "base": []object{h.on("shower base", 0, side)}, "head": ceiling(low, low, side), "left": h.stops("left end", 0, 2), "right": h.corner("left corner")}
	back := object{"name": "back", "width": h.says(width), "base": []object{h.on("shower base", 0, width)}, "head": ceiling(low, high, width), "left": h.corner("back left"), "right": h.corner("back right")}
	right := object{"name": "right", "width": h.says(side), "base": []object{h.on("shower base", 0, side)}, "head": ceiling(high, high, side), "left": h.corner("right corner"), "right": h.stops("right end", side-2, side)}
	h.niche(back, "shelf", h.between("shelf at", 6, width-22), h.between("shelf up", -16, -6))
	return []object{left, back, right}
}

// niche adds a niche that is free in all its marks.
func (h house) niche(wall object, name string, at, up float64) {
	wide, high := h.between(name+" wide", 10, 13), h.between(name+" high", 10, 14)
	all, _ := wall["openings"].([]object)
	wall["openings"] = append(all, object{"kind": "niche", "name": name, "left": h.from(at, at+h.between(name+" range", 1, 5)), "width": h.from(wide, wide+2),
		"bottom": h.from(up, up+h.between(name+" rise", 1, 4)), "height": h.from(high, high+2)})
}

// shortTub is a tub that ends before its wall does: the leg beside it is wide.
func (h house) shortTub() []object {
	h.drop = h.between("rim of the tub", 36, 42)
	width, tub := h.between("wall", 72, 90), h.between("tub", 54, 66)
	head := h.head()
	left := h.side("left", true, head)
	back := object{"name": "back", "width": h.says(width), "base": []object{h.rim(0, tub), h.foot(tub, width)}, "head": head, "left": h.corner("back left"), "right": h.stops("back end", width-3, width)}
	h.openings(back, tub)
	return []object{left, back}
}

// sideWindow has a window on a side wall and one niche that stands on the back.
func (h house) sideWindow() []object {
	walls := []object{h.side("left", true, h.head()), {}, h.side("right", false, h.head())}
	width := h.between("back", 56, 64)
	walls[1] = object{"name": "back", "width": h.says(width), "base": []object{h.rim(0, width)}, "head": h.head(), "left": h.corner("back left"), "right": h.corner("back right")}
	walls[0]["openings"] = []object{{"kind": "window", "name": "window", "left": object{"at": h.says(h.between("window at", 4, 10))}, "width": object{"at": h.says(h.between("window wide", 12, 16))},
		"bottom": object{"at": h.says(h.between("window up", -10, 2))}, "height": object{"at": h.says(h.between("window high", 12, 16))}}}
	h.openings(walls[1], width)
	return walls
}

// twoNiches has one over the other, or side by side.
func (h house) twoNiches() []object {
	width := h.between("back", 54, 66)
	back := object{"name": "back", "width": h.says(width), "base": []object{h.rim(0, width)}, "head": h.head(), "left": h.corner("back left"), "right": h.corner("back right")}
	at, up := h.between("niches at", 6, 14), h.between("niches up", -20, -14)
	h.niche(back, "one", at, up)
	if h.is("stacked", 2) {
		h.niche(back, "two", at, up+20)
	} else {
		h.niche(back, "two", at+22, up)
	}
	if h.is("alone", 2) {
		back["left"], back["right"] = h.stops("left end", 0, 3), h.stops("right end", width-3, width)
		return []object{back}
	}
	return []object{h.side("left", true, h.head()), back, h.side("right", false, h.head())}
}

// stepped is a wall beside a tub, over a curb and over a floor.
func (h house) stepped() []object {
	h.drop = h.between("rim of the tub", 36, 42)
	width, tub := h.between("wall", 80, 120), h.between("tub", 30, 34)
	foot := h.foot(0, tub+6)
	foot["readings"] = []object{{"at": h.says(tub + 5), "drop": h.says(h.drop + 15)}, {"at": h.says(width), "drop": h.says(h.drop + 15.25)}}
	curb := object{"meets": "curb", "gap": h.says(0.125), "readings": []object{{"at": h.says(tub), "drop": h.says(h.drop + 9)}, {"at": h.says(tub + 5), "drop": h.says(h.drop + 9)}}}
	wall := object{"name": "long", "width": h.says(width), "base": []object{h.rim(0, tub), curb, foot}, "head": h.head(), "left": h.corner("left"), "right": h.stops("end", width-4, width)}
	h.openings(wall, width-10)
	return []object{wall}
}

// Under a roof plans state runs and merit of their pieces too, wherever the line and the starts are.
func TestPlansUnderARoofStateTheirMerit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := house{shower{t: t, metric: rapid.Bool().Draw(t, "metric"), drop: 48}}
		doc := h.room()
		doc["walls"] = h.underARoof()
		job := anywhere(t, jobFile(doc))
		if accepted(job) {
			statesItsMerit(t, job, planned(t, job))
		}
	})
}

// No pins beat the set-out of such a room that is proven best.
func TestNoPinsBeatAHousesSetOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if !rare(t, 8) {
			return
		}
		job := houses.Draw(t, "house")
		if !accepted(job) {
			return
		}
		free := judged(t, job, planned(t, job))
		if !free.plan.Proven {
			return
		}
		for range 3 {
			free.noWorse(t, job, free.pins(t))
		}
	})
}
