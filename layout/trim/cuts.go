package trim

import (
	"slices"
	"strconv"

	"coursewright/layout/length"
)

// Group is all pieces of a room that are cut alike from the same trim.
type Group struct {
	ID     string        // "T1", "T2", …
	Name   string        // of the trim
	Size   string        // what to cut to, in words
	Long   length.Length // of the first piece, to its longest point
	Pieces []string
}

// Cuts groups the pieces that are cut, in the order in which they come; sizes are
// rounded down to the fine step, so that no piece is larger than its place.
func Cuts(pieces []Piece, units length.System) []Group {
	var all []Group
	for _, p := range pieces {
		if !p.Cut() {
			continue
		}
		size := p.Size(units)
		i := slices.IndexFunc(all, func(g Group) bool { return g.Name == p.Trim.Name && g.Size == size })
		if i < 0 {
			i = len(all)
			all = append(all, Group{ID: "T" + strconv.Itoa(i+1), Name: p.Trim.Name, Size: size, Long: p.Long})
		}
		all[i].Pieces = append(all[i].Pieces, p.ID)
	}
	return all
}

// Size is what to cut the piece to, in words: its length, that of both sides where
// they differ, and its mitres.
func (p Piece) Size(units length.System) string {
	fine := func(l length.Length) string { return l.FloorTo(units.FineStep()).Fine(units) }
	switch {
	case p.Corner:
		return "corner piece"
	case p.Whole:
		return "whole"
	case p.Mitres == 2:
		return fine(p.Long) + " to the long points, mitred at both ends"
	case p.Mitres == 1:
		return fine(p.Long) + " to the long point, mitred at one end"
	case len(p.Face) != 1 || len(p.Face[0]) > 4:
		return fine(p.Long) + " long, notched: held to its place and marked"
	case p.Wide < p.Trim.Width:
		return fine(p.Long) + " long, ripped to " + fine(p.Wide) + " with the finished edge kept"
	case fine(p.Inner) != fine(p.Outer) && p.Inner > 0 && p.Outer > 0:
		return fine(p.Inner) + " beside the tile, " + fine(p.Outer) + " at the outer side"
	}
	return fine(p.Long)
}

// Uncut groups the pieces that are set as they are bought, and the corner pieces,
// by trim. They have no ID of a cut.
func Uncut(pieces []Piece) []Group {
	var all []Group
	for _, p := range pieces {
		if p.Cut() {
			continue
		}
		size := "whole"
		if p.Corner {
			size = "corner piece"
		}
		i := slices.IndexFunc(all, func(g Group) bool { return g.Name == p.Trim.Name && g.Size == size })
		if i < 0 {
			i = len(all)
			all = append(all, Group{Name: p.Trim.Name, Size: size, Long: p.Long})
		}
		all[i].Pieces = append(all[i].Pieces, p.ID)
	}
	return all
}
