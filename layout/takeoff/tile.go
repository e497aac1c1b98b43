package takeoff

import (
	"fmt"

	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// whole counts the tiles that are set whole.
func (in Input) whole() int {
	n := 0
	for _, w := range in.Walls {
		for _, p := range w.Pieces {
			if p.Whole {
				n++
			}
		}
	}
	return n
}

// cutPieces counts the pieces that are not whole.
func (in Input) cutPieces() int {
	n := -in.whole()
	for _, w := range in.Walls {
		n += len(w.Pieces)
	}
	return n
}

// tiles is the line of the field tile.
func (in Input) tiles(set Settings) Line {
	whole, cut := in.whole(), in.Cuts.TilesCut
	l := boxed(bought("tile", "piece", whole+cut, set.Breakage, ""), in.Room.Tile)
	l.Because = fmt.Sprintf("%d whole, %d cut into %s, and %d spare (%d %%%s)",
		whole, cut, counted(in.cutPieces(), "piece"), l.Spare, set.Breakage, spareSource(in.Room.Bond))
	if n := in.Cuts.TilesSaved; n > 0 {
		l.Because += fmt.Sprintf("; cutting two from one tile saves %d", n)
	}
	if n := in.Cuts.Nearly; n > 0 {
		l.Because += fmt.Sprintf("; %s less at the cuts would save %d more", cuts.Near(in.Room.Units).Fine(in.Room.Units), n)
	}
	if left := l.Boxes*in.Room.Tile.BoxCount - l.Net; l.Boxes > 0 && left < 2 {
		l.Because += fmt.Sprintf("; the boxes leave only %d to spare: take one more", left)
	}
	if fewer := (l.Boxes-1)*in.Room.Tile.BoxCount - l.Net; l.Boxes > 1 && fewer >= max(2, (l.Spare+1)/2) {
		l.Because += fmt.Sprintf("; one box fewer leaves %d to spare", fewer)
	}
	return l
}

// boxed fills boxes and price where the job tells how the tile is sold.
func boxed(l Line, t survey.TileSize) Line {
	if t.BoxCount > 0 {
		l.Boxes = int(ceil(int64(l.Count), int64(t.BoxCount)))
		l.Cents, l.Money = int64(l.Boxes)*t.BoxCents, t.Money
	}
	return l
}

// flat is what the flat 10 % rule would buy: the area in tiles with their
// joints, without what is laid in other tile, and a tenth on top. No standard sets a percentage; 5–15 % by shape
// and pattern: NTCA trainers (TileLetter).
func (in Input) flat(other length.Area) Line {
	area := in.covered() - other
	count := byArea(area, in.Room.Tile, in.Room.Joint)
	if !in.Room.Bond.Coursed() {
		count = byCells(area, in.Room)
	}
	unit := "piece"
	if in.Room.Tile.Sheet.Any() {
		count, unit = bySheets(count, in.Room), "sheet"
	}
	l := bought("tile by the flat 10 % rule", unit, count, 10,
		fmt.Sprintf("%s of wall in tiles with their joints, and 10 %% on top", areaText(area, in.Room.Units)))
	return boxed(l, in.Room.Tile)
}

// Compared says what the flat 10 % rule would buy: what the plan takes, and how much spare. A pattern needs more spare than the
// rule gives, which the difference of the two counts alone does not show.
func (t Takeoff) Compared() string {
	noun := "tile"
	if t.Flat.Unit == "sheet" {
		noun = "sheet"
	}
	said := "The flat 10 % rule would buy " + counted(t.Flat.Count, noun)
	switch spare := t.Flat.Count - t.Net; {
	case spare < 0:
		return fmt.Sprintf("%s, %d fewer than the %d that the plan takes without any spare.", said, -spare, t.Net)
	case spare == t.Spare:
		return said + ", as many as are counted here."
	default:
		return fmt.Sprintf("%s: the %d that the plan takes and %d spare, not %d.", said, t.Net, spare, t.Spare)
	}
}

// byArea is how many tiles with their joints make up an area, rounded up.
func byArea(a length.Area, t survey.TileSize, joint length.Length) int {
	module := (t.Width + joint).Times(t.Height + joint)
	if module <= 0 || a <= 0 {
		return 0
	}
	return int(ceil(a, module))
}

// inside is the tile for the inside of niches and windows. What has no depth is
// named and not counted.
func (in Input) inside(set Settings) []Line {
	var all []Line
	for _, w := range in.Walls {
		for _, o := range w.Found.Openings {
			if o.Inside != nil || o.Doorway {
				continue // its pieces are counted, or there are none
			}
			if o.Kind == survey.Window || o.Kind == survey.Niche && set.Niche.Depth <= 0 {
				all = append(all, Line{Item: "inside of the " + o.Called(), Open: true,
					Because: "its depth is not given, so its sides are not counted: measure it"})
			}
		}
	}
	if set.Niche.Depth > 0 {
		all = append(all, in.niches(set)...)
	}
	return all
}

// niches is the tile for the returns and backs of niches, each counted in whole
// tiles of its own grid; off-cuts are not reckoned with.
func (in Input) niches(set Settings) []Line {
	n := set.Niche
	grid := func(a, b length.Length) int {
		return along(a, n.Tile.Width, in.Room.Joint) * along(b, n.Tile.Height, in.Room.Joint)
	}
	returns, back := 0, 0
	for _, e := range in.nicheEdges(func(o survey.OpeningFound) bool { return o.Inside == nil }) {
		wide, high := e.Right-e.Left, e.Top-e.Bottom
		returns += 2*grid(wide, n.Depth) + 2*grid(n.Depth, high)
		if n.Back {
			back += grid(wide, high)
		}
	}
	return []Line{
		boxed(bought("niche returns", "piece", returns, set.Breakage, "four sides of each niche, "+n.Depth.Tape(in.Room.Units)+" deep, in whole tiles"), n.Tile),
		boxed(bought("niche back", "piece", back, set.Breakage, "the back of each niche, in whole tiles"), n.Tile),
	}
}

// along is how many tiles reach over a length, joints between them.
func along(l, tile, joint length.Length) int {
	if tile+joint <= 0 {
		return 0
	}
	return int(ceil(l+joint, tile+joint))
}

// nicheEdges lists where the niches stand that are taken.
func (in Input) nicheEdges(take func(survey.OpeningFound) bool) []survey.Edges {
	var all []survey.Edges
	for _, w := range in.Walls {
		for i, o := range w.Found.Openings {
			if o.Kind == survey.Niche && take(o) && i < len(w.Start.Placed.Openings) {
				all = append(all, w.Start.Placed.Openings[i])
			}
		}
	}
	return all
}
