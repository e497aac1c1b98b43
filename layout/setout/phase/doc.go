// Package phase sets out walls laid in a pattern: tiles on a lattice that has no
// level courses. What is to be found is a phase in two directions: the line, which
// is the lowest point of a tile of the cell's first place and is shared by all walls,
// and on every wall the start, the left side of that tile.
//
// Laws, each with a test:
//  1. Wall.Count is read from the pieces that piece.Lay makes: nothing is counted in
//     two ways.
//  2. What Wall.AtBest gives does not come after what Wall.Count gives at any phase
//     within its reach, wherever free marks stand: a cut changes its width by no more than
//     the phase moves. Nor does what a choice, or Wall.Closely, gives for a way to place them.
//  3. Where the result says it is proven, no line and starts on the marks of the tape
//     are better, with free marks among their options, before the terms that walls share at
//     their corners. Options are joint lines, places wished for, middles of tiles and joints, lines of
//     symmetry, and even steps. That holds for rooms whose rim and head are to be alike too, in which the walls are judged
//     together from there on.
//  4. The same room gives the same result: what bounds the search is counted work. It
//     ends soon after its context does.
//
// Of the order of merit a pattern has every term but the courses round the corners; slack is weighed
// among the marks beside the start that was found. Runs are
// told apart by their edges, without classes, and shares are of the least width. Exposed ends
// and openings are judged by the joint lines of the pattern (bond.Lines); where it has none that run
// plumb or level, those terms are the same for all phases. A start is found again by the tile
// that is struck or by a joint line on the middle of the field, or by full tiles at an end.
package phase
