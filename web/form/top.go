package form

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"

	"coursewright/layout/survey"
)

// addTop puts a top on a wall, or gives a top a tile of its own:
//
//	add walls[3].top seat
//	add walls[3].top.face.tile
//
// What it holds at first is a plain default, to be typed over: a seat 16 in deep, a
// curb of 4 1/2 in, the cap of a half wall of studs and boards (common practice, no
// source).
func addTop(job *survey.Job, w *survey.Wall, way []step, what string) error {
	if len(way) == 3 && way[1].name == "face" && way[2].name == "tile" && w.Top != nil {
		ownTile(job, &w.Top.Face)
		return nil
	}
	if len(way) != 1 || !slices.Contains(survey.TopKinds(), what) {
		return fmt.Errorf("a top is one of %v, not %q", survey.TopKinds(), what)
	}
	w.Top = &survey.Top{Kind: what}
	switch survey.Kind(what) {
	case survey.SeatTop:
		w.Top.Depth = pick(job, "16", "400")
	case survey.LedgeTop:
		w.Top.Depth = pick(job, "4", "100")
	default:
		w.Top.Depth = pick(job, "5", "130")
	}
	w.Head.Meets, w.Head.Gap, w.Head.Readings, w.Head.Finish, w.Head.Trim = "", "", nil, "", ""
	for i := range job.Walls {
		if capRound(job, i) == w.Top { // it lies over the end of the half wall too
			job.Walls[i].Head.Finish, job.Walls[i].Head.Trim = "", ""
		}
	}
	return nil
}

// capRound is the cap or curb that lies over a wall from round its outside corners, or nil.
func capRound(job *survey.Job, i int) *survey.Top {
	over := func(step int, turns func(*survey.Wall) string) *survey.Top {
		for k := i; turns(&job.Walls[k]) == string(survey.OutsideCorner) && k+step >= 0 && k+step < len(job.Walls); {
			k += step
			next := &job.Walls[k]
			if !reflect.DeepEqual(job.Walls[i].Head.Stops, next.Head.Stops) {
				return nil
			}
			if t := next.Top; t != nil && (t.Kind == string(survey.CapTop) || t.Kind == string(survey.CurbTop)) {
				return t
			}
		}
		return nil
	}
	if job.Walls[i].Top != nil {
		return nil
	}
	return cmp.Or(over(-1, func(w *survey.Wall) string { return w.Left.Meets }), over(1, func(w *survey.Wall) string { return w.Right.Meets }))
}

// ownTile gives a face a tile of its own, in stack bond whatever the wall's is: small tile, as a mosaic is, stands
// square to itself, in the shifts of a wall's bond it ends in scraps, and few tiles close in a wall's pattern
// (common practice, no source).
func ownTile(job *survey.Job, face *survey.InsideFace) {
	face.Slab, face.Cased = "", false
	face.Tile = &survey.Tile{Width: pick(job, "1", "25"), Height: pick(job, "1", "25"), Thickness: pick(job, "1/4", "6")}
	face.Joint = pick(job, "1/8", "3")
	if face.Bond == nil && job.Bond.Kind != string(survey.Stack) {
		face.Bond = &survey.Bond{Kind: string(survey.Stack)}
	}
}

// forgetTop drops the top of a wall, or the tile of its own.
func forgetTop(job *survey.Job, way []step) error {
	if way[1].index < 0 || way[1].index >= len(job.Walls) || job.Walls[way[1].index].Top == nil {
		return fmt.Errorf("there is no top to be forgotten")
	}
	w := &job.Walls[way[1].index]
	switch {
	case len(way) == 3:
		w.Top = nil
	case len(way) == 5 && way[3].name == "face" && way[4].name == "tile":
		w.Top.Face.Tile, w.Top.Face.Joint, w.Top.Face.Bond = nil, "", nil
	default:
		return fmt.Errorf("there is nothing to be forgotten")
	}
	return nil
}

// addWallBetween adds the front of a bench or the face of a curb: a wall between two
// others, which it meets in their run, with its top: as wide as the wall that stands between these, where one does. Seats are 17 to 19 in high (NKBA, as
// quoted by a how-to page); a curb of 4 in is common practice, no source.
func addWallBetween(job *survey.Job, what string) error {
	name, kind, high := "bench", string(survey.SeatTop), pick(job, "18", "450")
	if what == "curb" {
		name, kind, high = "curb", string(survey.CurbTop), pick(job, "4", "100")
	}
	keepBands(job)
	right := survey.End{}
	if n := len(job.Walls); n > 0 {
		right = job.Walls[n-1].Right
	}
	if err := addWall(job); err != nil {
		return err
	}
	n := len(job.Walls)
	w, drop := &job.Walls[n-1], pick(job, "40", "1000")
	if n > 1 {
		job.Walls[n-2].Right = right // it meets none at its end
	}
	w.Name, w.Width = freshName(wallNames(*job), name), pick(job, "36", "900")
	if n == 4 || n > 4 && Between(job.Walls[3]) {
		if behind := job.Walls[1]; behind.Left.Meets == string(survey.Corner) && behind.Right.Meets == string(survey.Corner) {
			w.Width = behind.Width
		}
	}
	w.Left = survey.End{Meets: "wall", Gap: pick(job, "1/8", "3")}
	w.Right = w.Left
	if s := stoodOn(*job); s != nil {
		drop = s.Readings[0].Drop
		w.Base[0] = survey.Segment{Meets: s.Meets, Gap: s.Gap}
	}
	w.Base[0].Readings, w.Base[0].Trim = []survey.Drop{{At: "0", Drop: drop}, {At: w.Width, Drop: drop}}, "" // nor its cove
	w.Head = survey.Head{Stops: &survey.Mark{At: less(job, high, drop)}}
	job.Guess = append(job.Guess, At("walls", n-1)+".top.depth", At("walls", n-1)+".width")
	return addTop(job, w, []step{{name: "top"}}, kind)
}

// stoodOn is a stretch of shower base in the room, or nil.
func stoodOn(job survey.Job) *survey.Segment {
	for i := range job.Walls {
		for k := range job.Walls[i].Base {
			if s := &job.Walls[i].Base[k]; s.Meets == string(survey.ShowerBase) && len(s.Readings) > 0 {
				return s
			}
		}
	}
	return nil
}

// tidyTop drops what means nothing for a top as it is made. A profile needs trim.
func tidyTop(job *survey.Job, w *survey.Wall) {
	t := w.Top
	if t == nil {
		return
	}
	if w.Head.Meets != "" {
		w.Top = nil
		return
	}
	w.Head.Finish, w.Head.Trim = "", ""
	if kind := survey.Kind(t.Kind); kind != survey.SeatTop && kind != survey.LedgeTop {
		t.Behind = ""
	}
	how := survey.Kind(t.Corner)
	if how == survey.Mitre || how == survey.Profile {
		t.Laps = ""
	}
	fitTrim(job, how, &t.Trim)
	tidyFace(job, &t.Face)
}
