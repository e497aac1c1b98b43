package survey

import (
	"coursewright/layout/length"
	"coursewright/layout/plane"
)

// Shape is what one wall leaves for tile once its marks are placed.
type Shape struct {
	Region  plane.Region // outline less openings, pipes and gaps
	Visible plane.Region // the region less the lap cover at its ends
	Solid   plane.Region // the region without the pipes' holes, for measuring
	Sides   []Boundary   // what plane.Side n means, at index n; index 0 is the factory edge
}

// Boundary is one thing that edges of a region lie on.
type Boundary struct {
	Name  string        // "left", "right", "base", "head", "niche NAME", "window NAME", "pipe NAME", "lap"
	Meets bool          // it meets something, so sealant may fill up to the limit
	Gap   length.Length // the gap kept where it meets
}
