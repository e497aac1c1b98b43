package count

import (
	"reflect"
	"slices"

	"coursewright/layout/survey"
)

// Kept are walls that were counted, for rooms that have the same walls again: an edit of one wall leaves what the others
// have worked out. Nil keeps nothing.
//
// Laws, each with a test:
//  1. A wall that was kept gives what a new one gives.
//  2. Its work goes on from where it was, so that it is never less than that of a new wall: what was worked out
//     once is not counted again, and nothing was counted that is forgotten.
//  3. One wall is with one room at a time.
type Kept struct {
	walls []*Wall // the last used at the end
}

// mostKept bounds the work that went into the walls that are kept, of which each unit left some forty bytes.
const mostKept = 200_000

// Wall is a wall of a room, as it was kept or new.
func (k *Kept) Wall(room *survey.Room, found survey.WallFound, hand survey.Hand) *Wall {
	of := wallOf{basis(room), found, hand}
	if w := k.take(of); w != nil {
		return w
	}
	return newWall(of)
}

func (k *Kept) take(of wallOf) *Wall {
	if k == nil {
		return nil
	}
	for i, w := range slices.Backward(k.walls) {
		if w.of.found.Width == of.found.Width && reflect.DeepEqual(w.of, of) {
			k.walls = slices.Delete(k.walls, i, i+1)
			return w
		}
	}
	return nil
}

// Keep keeps walls that nobody counts any more, and lets those go that were not asked for the longest.
func (k *Kept) Keep(walls []*Wall) {
	if k == nil {
		return
	}
	for _, w := range walls {
		if !w.meter.emptied {
			k.walls = append(k.walls, w)
		}
	}
	sum := 0
	for i, w := range slices.Backward(k.walls) {
		if sum += w.Work(); sum > mostKept {
			k.walls = slices.Delete(k.walls, 0, i+1)
			break
		}
	}
}
