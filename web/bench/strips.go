package bench

import "coursewright/web/page"

var stripBonds = page.Choices("", "stack bond", "running", "columns that shift")

// besideStrips are the ways to lay the field next to a strip from base to head.
var besideStrips = page.Choices("", "whole, unless that leaves slivers", "whole", "always whole")

// stripOn is what a button says that lets an edge of a strip go on.
var stripOn = map[string]string{"bottom": "From the base up", "top": "Up to the head"}

// stripAbout says where a strip stands now.
func (b Bench) stripAbout(wall, name string) string {
	for _, w := range b.Plan.Walls {
		for i := range w.Strips {
			s := &w.Strips[i]
			if w.Found.Name != wall || w.Found.Openings[s.Opening].Name != name {
				continue
			}
			u := b.Plan.Room.Units
			return "Its tile stands from " + s.Box.Left.Tape(u) + " to " + s.Box.Right.Tape(u) + " from the left end, " + s.Box.Width().Tape(u) + " wide; its middle is at " +
				(s.Box.Left + s.Box.Right).Half().Tape(u) + "."
		}
	}
	return "Behind a valve its middle is usually that of the valve."
}
