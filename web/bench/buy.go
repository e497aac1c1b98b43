package bench

import (
	"fmt"
	"strconv"
	"strings"

	"coursewright/layout/takeoff"
	"coursewright/web/page"
)

// whatToBuy says how much to buy of the room's own tile, and of what else there is.
func (b Bench) whatToBuy() Answer {
	a := Answer{ID: "buy", Asked: "What to buy", To: page.JobPath(b.ID, "/work#take-off")}
	if len(b.Buy.Lines) == 0 {
		a.Figures = []page.Figure{{Value: "nothing"}}
		return a
	}
	if kinds := b.kinds(); len(kinds) > 1 {
		return b.withOther(ofKinds(a, kinds))
	}
	tile := b.Buy.Lines[0]
	is := "tile"
	if tile.Unit == "sheet" {
		is = "sheet"
	}
	a.Figures = []page.Figure{{Value: page.Count(tile.Net+tile.Spare, is)}}
	a.Note = fmt.Sprintf("%d and %d spare", tile.Net, tile.Spare)
	if tile.Boxes > 0 {
		a.Figures = []page.Figure{{Value: boxes(tile.Boxes)}}
		a.Note = fmt.Sprintf("%s, %d of them spare", page.Count(tile.Net+tile.Spare, is), tile.Spare)
	}
	return b.withOther(a)
}

// withOther adds how many there are to buy of the tiles beside the room's own, those of
// bands, of strips and of faces, and what all costs that has a price.
func (b Bench) withOther(a Answer) Answer {
	n := map[string]int{}
	for _, l := range b.Buy.Lines {
		if l.Other && l.Unit == "sheet" {
			n["other sheet"] += l.Count
		} else if l.Other {
			n["other tile"] += l.Count
		}
	}
	for _, is := range []string{"other tile", "other sheet"} {
		if n[is] > 0 {
			a.Note += " · and " + page.Count(n[is], is)
		}
	}
	if total, known := takeoff.Total(b.Buy.Lines); known > 0 {
		a.Note += " · " + total.Cost() + " for what has a price"
	}
	return a
}

// kinds are the lines of the tiles of a pattern that is laid of several.
func (b Bench) kinds() (out []takeoff.Line) {
	for _, l := range b.Buy.Lines {
		if l.Item == "tile" || l.Further > 0 {
			out = append(out, l)
		}
	}
	return out
}

// ofKinds says how many tiles of every kind a pattern takes, in the order of the job.
func ofKinds(a Answer, kinds []takeoff.Line) Answer {
	all, spare := 0, 0
	var each []string
	for _, l := range kinds {
		all, spare, each = all+l.Count, spare+l.Spare, append(each, strconv.Itoa(l.Count))
	}
	a.Figures = []page.Figure{{Value: page.Count(all, "tile")}}
	a.Note = fmt.Sprintf("%s of its sizes, %d of them spare", strings.Join(each, " + "), spare)
	return a
}

func boxes(n int) string {
	if n == 1 {
		return "1 box"
	}
	return strconv.Itoa(n) + " boxes"
}
