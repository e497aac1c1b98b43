// Package plane is the flat geometry of one wall: points, rings and regions
// in whole units, clipped without rounding.
package plane

import "coursewright/layout/length"

// Point is a place on a wall: X to the right of the wall's left end, Y over
// the level line.
type Point struct{ X, Y length.Length }

// Side tells what an edge lies on. Zero is the factory edge of a tile (or
// whatever line the clip was made along); other values are the boundaries of
// one wall, numbered by survey.Shape.
type Side int32

// Corner is a vertex of a ring with the side that the edge leaving it lies on.
type Corner struct {
	Point
	On Side
}

// Ring is a closed chain of corners, the first not repeated. Outer rings run
// counter-clockwise, holes clockwise.
type Ring []Corner

// Region is a set of rings that bound one area, possibly in several parts.
type Region []Ring

// Rect is an upright rectangle. It is empty when Left >= Right or Bottom >= Top.
type Rect struct{ Left, Bottom, Right, Top length.Length }
