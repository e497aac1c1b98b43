package form

import (
	"fmt"
	"slices"

	"coursewright/layout/survey"
)

// addInside gives an opening an inside, or a face of it a tile of its own:
//
//	add walls[0].openings[1].inside studs   between two studs, free there
//	add walls[0].openings[1].inside built   as it is built, board to board
//	add walls[0].openings[1].inside         its depth alone
//	add walls[0].openings[1].inside.back.tile
//
// What it holds at first is a plain default, to be typed over: a bay of 14 1/2 in
// between studs at 16 in, 3 1/2 in deep (how-to pages).
func addInside(job *survey.Job, w *survey.Wall, way []step, what string) error {
	if way[1].index < 0 || way[1].index >= len(w.Openings) || w.Openings[way[1].index].Kind == "pipe" {
		return fmt.Errorf("there is no niche or window there")
	}
	o := &w.Openings[way[1].index]
	if len(way) == 5 && way[2].name == "inside" && way[4].name == "tile" && o.Inside != nil {
		face := faceOf(o.Inside, way[3].name)
		if face == nil {
			return fmt.Errorf("an inside has no %q", way[3].name)
		}
		ownTile(job, face)
		return nil
	}
	if len(way) != 3 || way[2].name != "inside" {
		return fmt.Errorf("nothing can be added there")
	}
	if !slices.Contains([]string{"", "studs", "built"}, what) {
		return fmt.Errorf("an inside is between studs or built, not %q", what)
	}
	in := o.Inside
	if in == nil {
		in = &survey.Inside{Depth: pick(job, "3 1/2", "90")}
		goRound(job)
		o.Inside = in
	}
	switch what {
	case "studs":
		mid := middle(job, "0", w.Width)
		in.Studs = &survey.Studs{Left: less(job, mid, pick(job, "7 1/4", "184")), Right: less(job, mid, pick(job, "-7 1/4", "-184"))}
		in.Sizes, in.DepthIs, in.Tolerance = "", "rough", ""
		o.Left, o.Width = nil, nil
	case "built":
		built(job, w, o)
		in.Studs, in.Sizes, in.DepthIs = nil, "lined", "lined"
		in.Tolerance = pick(job, "1/8", "3")
	}
	return nil
}

// goRound lets tile go on round the edges of openings in a set-out that is held, if it lines none yet: of none is anything held.
func goRound(job *survey.Job) {
	lined := func(o survey.Opening) bool { return o.Inside != nil }
	if job.Held == nil || slices.ContainsFunc(job.Walls, func(w survey.Wall) bool { return slices.ContainsFunc(w.Openings, lined) }) {
		return
	}
	held := *job.Held
	held.Round = true
	job.Held = &held
}

// guessInside says of what was just added that nobody has measured it.
func guessInside(job *survey.Job, path, what string) {
	fields := []string{path + ".depth"}
	opening := path[:len(path)-len(".inside")]
	switch what {
	case "studs":
		fields = append(fields, path+".studs.left", path+".studs.right")
	case "built":
		fields = append(fields, opening+".left.at", opening+".width.at", opening+".bottom.at", opening+".height.at")
	}
	for _, f := range fields {
		if !slices.Contains(job.Guess, f) {
			job.Guess = append(job.Guess, f)
		}
	}
}

// faceOf is a face of an inside by its name, or nil.
func faceOf(in *survey.Inside, name string) *survey.InsideFace {
	for i, f := range faces(in) {
		if survey.FaceName(i).String() == name {
			return f
		}
	}
	return nil
}

// faces are the faces of an inside in the order of survey.FaceNames.
func faces(in *survey.Inside) []*survey.InsideFace {
	return []*survey.InsideFace{&in.Back, &in.Left, &in.Right, &in.Sill, &in.Top}
}

// forgetInside drops the inside of an opening, or the tile of one of its faces.
func forgetInside(job *survey.Job, way []step) error {
	o, err := openingAt(job, way)
	if err != nil {
		return err
	}
	switch {
	case len(way) == 5:
		if o.Left == nil && o.Width == nil { // it stood between its studs
			fresh := survey.Wall{Width: job.Walls[way[1].index].Width}
			if err := addOpening(job, &fresh, o.Kind); err != nil {
				return err
			}
			o.Left, o.Width = fresh.Openings[0].Left, fresh.Openings[0].Width
		}
		o.Inside = nil
	case len(way) == 7 && way[6].name == "tile" && faceOf(o.Inside, way[5].name) != nil:
		face := faceOf(o.Inside, way[5].name)
		face.Tile, face.Joint, face.Bond = nil, "", nil
	default:
		return fmt.Errorf("there is nothing to be forgotten")
	}
	return nil
}

// openingAt is the opening with an inside that a path leads to.
func openingAt(job *survey.Job, way []step) (*survey.Opening, error) {
	if way[1].index < 0 || way[1].index >= len(job.Walls) || way[3].index < 0 || way[3].index >= len(job.Walls[way[1].index].Openings) {
		return nil, fmt.Errorf("there is no such opening")
	}
	o := &job.Walls[way[1].index].Openings[way[3].index]
	if o.Inside == nil {
		return nil, fmt.Errorf("%s has no inside", o.Name)
	}
	return o, nil
}

// tidyInside drops what a choice has emptied.
func tidyInside(job *survey.Job, o *survey.Opening) {
	in := o.Inside
	if in == nil {
		return
	}
	if in.Studs != nil && *in.Studs == (survey.Studs{}) {
		in.Studs = nil
	}
	for _, f := range faces(in) {
		tidyFace(job, f)
	}
}

// tidyFace drops what a choice has emptied of one face.
func tidyFace(job *survey.Job, f *survey.InsideFace) {
	if f.Tile != nil && *f.Tile == (survey.Tile{}) {
		f.Tile, f.Joint = nil, ""
	}
	if f.Bond != nil && f.Bond.Kind == "" {
		f.Bond = nil
	}
	if f.Bond != nil && f.Bond.Kind == "running" && f.Bond.Offset == "" {
		f.Bond.Offset = "1/2"
	}
	if f.Bond != nil {
		tidyPattern(f.Bond, ofFace(job, f))
	}
}
