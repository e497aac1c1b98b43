package drawing

// JoinedUp is joinedUp for tests, of boxes as left, top, right and bottom.
func JoinedUp(all [][4]Micron, joint Micron) [][4]Micron {
	var in []box
	for _, t := range all {
		in = append(in, box{Point{t[0], t[1]}, Point{t[2], t[3]}})
	}
	var out [][4]Micron
	for _, t := range joinedUp(in, joint) {
		out = append(out, [4]Micron{t.from.X, t.from.Y, t.to.X, t.to.Y})
	}
	return out
}
