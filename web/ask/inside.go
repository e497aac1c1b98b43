package ask

import (
	"strings"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// inside asks for the studs a niche stands between, for what is built, and how
// deep it is.
func (r *room) inside(wall, opening int) {
	w := r.job.Walls[wall]
	o := w.Openings[opening]
	in := o.Inside
	path := form.At(form.At("walls", wall)+".openings", opening)
	name := called(o)
	if in == nil {
		if o.Kind == string(survey.Window) && measured(o) {
			r.built(wall, path, name, sizesOver)
		}
		return
	}
	if in.Studs != nil {
		r.stud(wall, path+".inside.studs.left", name, "left", "right")
		r.stud(wall, path+".inside.studs.right", name, "right", "left")
	} else if measured(o) {
		r.built(wall, path, name, in.Sizes)
	}
	q := Question{Path: path + ".inside.depth", Picture: "deep", Label: capital(name) + ", depth", Ask: "How deep is the " + name + "?"}
	switch is := orOld(in.DepthIs, in.Sizes); {
	case o.Kind == string(survey.Window):
		q.Help = "From the face of the wall’s tile to the frame of the window."
		if is == string(survey.Lined) || is == string(survey.Rough) {
			q.Help = "From the face of the " + map[string]string{"lined": "board", "rough": "studs"}[is] + " to the frame of the window."
		}
	case is == string(survey.Rough):
		q.Help = "From the face of the studs to what is behind them; a stud of 2×4 is 3 1/2 in."
	case is == string(survey.Lined):
		q.Help = "From the face of the wall’s board to the board at the back."
	default:
		q.Help = "From the face of the wall’s tile to the face of the tile at the back."
	}
	r.add(q)
}

// called is an opening by its kind and name, or by its name where that says both.
func called(o survey.Opening) string {
	if o.Name == o.Kind || strings.HasPrefix(o.Name, o.Kind+" ") {
		return o.Name
	}
	return o.Kind + " " + o.Name
}

// stud asks for the face of one stud that looks at the other.
func (r *room) stud(wall int, path, name, side, face string) {
	r.add(r.along(Question{Path: path, Picture: "studs", Label: capital(side) + " stud of " + name + ", from the " + endWord,
		Ask:  "How far from the " + endWord + " is the " + side + " stud?",
		Help: "To its " + face + " face, the one that looks into the bay. Probe for it, and look for pipes and cables, before you cut."}, wall))
}

// measured tells whether a niche or window is built: its marks are readings.
func measured(o survey.Opening) bool {
	return o.Left != nil && o.Left.At != "" && o.Width != nil && o.Width.At != "" && o.Bottom != nil && o.Bottom.At != "" &&
		o.Height != nil && o.Height.Mark != nil && o.Height.Mark.At != ""
}

// sizesOver are the sizes of an opening that is not tiled within.
const sizesOver = "over"

// built asks where a niche or window stands and how large it is.
func (r *room) built(wall int, path, name, sizes string) {
	between := map[string]string{"lined": "board to board", "rough": "stud to stud, and between the blocking",
		sizesOver: "to where the wall’s tile ends: over the casing, if there is one"}[sizes]
	if between == "" {
		between = "tile to tile"
	}
	r.add(r.along(Question{Path: path + ".left.at", Picture: "inside", Label: capital(name) + ", left edge from the " + endWord,
		Ask: "How far is the left edge of the " + name + " from the " + endWord + "?", Help: "Measured as its size is: " + between + "."}, wall))
	r.add(Question{Path: path + ".width.at", Picture: "inside", Label: capital(name) + ", width", Ask: "How wide is the " + name + "?", Help: capital(between) + "."})
	r.add(Question{Path: path + ".bottom.at", Picture: "inside", Updown: true, Label: capital(name) + ", sill from the line",
		Ask: "How far above or below the line is the sill of the " + name + "?", Help: "At its front edge. Never a minus: say above or below."})
	r.add(Question{Path: path + ".height.at", Picture: "inside", Label: capital(name) + ", height", Ask: "How high is the " + name + "?", Help: capital(between) + "."})
}
