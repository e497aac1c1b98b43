package ask

import "coursewright/web/form"

// doorway asks where a doorway is and how high; it goes down to the floor by itself.
func (r *room) doorway(wall, opening int) {
	path := form.At(form.At("walls", wall)+".openings", opening)
	name := called(r.job.Walls[wall].Openings[opening])
	r.add(r.along(Question{Path: path + ".left.at", Picture: "doorway:left", Label: capital(name) + ", left edge from the " + endWord,
		Ask: "How far is the left edge of the " + name + " from the " + endWord + "?", Help: "To where the wall’s tile ends: over the casing, if there is one."}, wall))
	r.add(Question{Path: path + ".width.at", Picture: "doorway:width", Label: capital(name) + ", width", Ask: "How wide is the " + name + "?",
		Help: "Between where the tile ends on either side: over the casing, if there is one."})
	r.add(Question{Path: path + ".height", Picture: "doorway:top", Updown: true, Label: capital(name) + ", top from the line",
		Ask: "How far above or below the line is the top of the " + name + "?", Help: "To where the tile over it begins: over the casing, if there is one. Down to the floor it goes by itself. Never a minus: say above or below."})
}
