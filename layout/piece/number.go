package piece

import "fmt"

// Number gives every piece its course, counted from 1 for the lowest course of
// the room (with columns: from 1 for the first column of its wall), and its ID:
// wall letter, course, place in the course.
func Number(walls [][]Piece, letters []string, plumb bool) {
	lowest := make([]int, len(walls))
	for w, pieces := range walls {
		lowest[w] = firstRow(pieces)
	}
	if !plumb {
		level(lowest, walls)
	}
	for w, pieces := range walls {
		place := map[int]int{}
		for i := range pieces {
			p := &pieces[i]
			p.Course = p.Row + p.Lift - lowest[w] + 1
			place[p.Course]++
			p.ID = fmt.Sprintf("%s-%02d-%02d", letters[w], p.Course, place[p.Course])
		}
	}
}

func firstRow(pieces []Piece) int {
	first := 0
	for i, p := range pieces {
		if i == 0 || p.Row+p.Lift < first {
			first = p.Row + p.Lift
		}
	}
	return first
}

// level gives every wall the lowest course of the room.
func level(lowest []int, walls [][]Piece) {
	least, any := 0, false
	for w, l := range lowest {
		if len(walls[w]) > 0 && (!any || l < least) {
			least, any = l, true
		}
	}
	for w := range lowest {
		lowest[w] = least
	}
}
