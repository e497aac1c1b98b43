package plan

import (
	"cmp"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/piece"
	"coursewright/layout/survey"
)

// FindRuns reads the runs of a wall off its numbered pieces.
func FindRuns(room survey.Room, w Wall) []Run {
	if w.Found.Single {
		room, _ = room.Singly(w.Found)
	}
	found := map[string]*Run{}
	add := func(p *piece.Piece, edges []piece.Edge, across bool, class int, size length.Length, share piece.Share) {
		if len(edges) == 0 {
			return
		}
		r := Run{Laid: p.Laid, Across: across, Class: class, Least: size, Share: share, Piece: p.ID}
		for _, e := range edges {
			r.Edges = append(r.Edges, e.Name(w.Shape.Sides))
			r.Low = r.Low || e.Low(w.Shape.Sides)
		}
		key := strings.Join(r.Edges, ",") + string(rune('0'+class))
		if p.Laid > 0 {
			key += " band" + string(rune('0'+p.Laid))
		}
		if across {
			key += "across"
		}
		if have := found[key]; have == nil || r.Share.Less(have.Share) {
			found[key] = &r
		}
	}
	for i := range w.Pieces {
		p := &w.Pieces[i]
		if p.Outline != nil {
			add(p, p.Across, true, 0, p.Least, p.Share)
			add(p, p.Up, false, 0, p.Least, p.Share)
			continue
		}
		laid := room.Laid(p.Laid)
		class := int(length.Mod(length.Length(p.Row), length.Length(max(1, laid.Bond.Den))))
		across, up := class, 0
		if laid.Bond.Plumb {
			across, up = 0, class
		}
		add(p, p.Across, true, across, p.Wide, piece.Part(p.Wide, laid.Tile.Width))
		add(p, p.Up, false, up, p.High, piece.Part(p.High, laid.Tile.Height))
	}
	out := make([]Run, 0, len(found))
	for _, r := range found {
		out = append(out, *r)
	}
	slices.SortFunc(out, func(a, b Run) int {
		return cmp.Or(slices.Compare(a.Edges, b.Edges), cmp.Compare(a.Laid, b.Laid), cmp.Compare(a.Class, b.Class), boolean(b.Across)-boolean(a.Across))
	})
	return out
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}
