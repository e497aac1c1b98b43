package form

import (
	"fmt"
	"strings"

	"coursewright/layout/survey"
)

// stand says that a wall's courses stand up to one of them, to be typed over
// with what was measured:
//
//	walls[1]=8;-32 5/16;-32 5/16;left edge;12 3/8;left
//
// the course, its top edge at the left and right end, the kind and place of its
// start, and the hand of a bond that has one and of which nothing was said.
func stand(job *survey.Job, rest string) error {
	wall, value, _ := strings.Cut(rest, "=")
	parts := strings.Split(value, ";")
	if len(parts) != 6 {
		return fmt.Errorf("%q does not say what stands", rest)
	}
	for i, field := range []string{"course", "left", "right", "start.is", "start.at"} {
		if err := Set(job, wall+".set."+field, parts[i]); err != nil {
			return err
		}
	}
	if job.Bond.Kind != "stack" && job.Bond.Hand == "" {
		job.Bond.Hand = parts[5]
	}
	return nil
}

// forget drops a whole group that was typed: the sample of the tile, what stands
// on a wall, the inside of an opening, or the top of a wall.
func forget(job *survey.Job, path string) error {
	if path == "tile.sample" {
		job.Tile.Sample = nil
		return nil
	}
	way, err := steps(path)
	if err != nil {
		return err
	}
	if len(way) >= 5 && way[0].name == "walls" && way[2].name == "openings" && way[4].name == "inside" {
		return forgetInside(job, way)
	}
	if len(way) >= 3 && way[0].name == "walls" && way[2].name == "top" {
		return forgetTop(job, way)
	}
	if len(way) != 3 || way[0].name != "walls" || way[1].index < 0 || way[1].index >= len(job.Walls) || way[2].name != "set" {
		return fmt.Errorf("%q is not to be forgotten", path)
	}
	job.Walls[way[1].index].Set = nil
	return nil
}

// tidySample drops what is as usual, the empty tiles at the end of the list,
// and a sample that holds nothing.
func tidySample(t *survey.Tile) {
	s := t.Sample
	if s == nil {
		return
	}
	for _, run := range []*survey.Run{&s.Across, &s.Up} {
		if run.Tiles == survey.UsualRun {
			run.Tiles = ""
		}
		if run.Joints == "between" {
			run.Joints = ""
		}
	}
	for n := len(s.Singles); n > 0 && s.Singles[n-1] == (survey.Single{}); n-- {
		s.Singles = s.Singles[:n-1]
	}
	if len(s.Singles) == 0 {
		s.Singles = nil
	}
	if empty := s.Across == (survey.Run{}) && s.Up == (survey.Run{}) && s.Singles == nil; empty {
		t.Sample = nil
	}
}
