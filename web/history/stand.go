package history

import (
	"regexp"
	"slices"

	"coursewright/layout/survey"
)

// ofStanding are the fields of courses that stand, which are told together.
var ofStanding = regexp.MustCompile(`^walls\[\d+\]\.set($|\.)`)

// stood says wall by wall what stands by now: courses that were set, and where they were measured.
func stood(was, is survey.Job) []string {
	var out []string
	for _, w := range is.Walls {
		before := survey.Wall{}
		if i := slices.IndexFunc(was.Walls, func(v survey.Wall) bool { return v.Name == w.Name }); i >= 0 {
			before = was.Walls[i]
		}
		if said := stoodOn(w.Name, before.Set, w.Set); said != "" {
			out = append(out, said)
		}
	}
	return out
}

func stoodOn(wall string, was, is *survey.AsSet) string {
	switch {
	case was == nil && is == nil, was != nil && is != nil && *was == *is:
		return ""
	case is == nil:
		return "No tile stands on " + wall + " any more, where it stood up to course " + was.Course
	case was == nil:
		return "Tile stands on " + wall + " up to course " + is.Course + ": " + measuredAt(*is)
	case was.Course != is.Course:
		return "Tile stands on " + wall + " up to course " + is.Course + ", not " + was.Course + " as before: " + measuredAt(*is)
	}
	return "Tile that stands on " + wall + " up to course " + is.Course + ", measured anew: " + measuredAt(*is) + "; before: " + measuredAt(*was)
}

// measuredAt is where a course that stands was measured.
func measuredAt(s survey.AsSet) string {
	return "top edge " + orNone(s.Left) + " at the left end, " + orNone(s.Right) + " at the right, " + startWords[s.Start.Is] + " " + orNone(s.Start.At)
}

// startWords are what a course is found again by.
var startWords = map[string]string{
	"joint": "the middle of a joint at", "tile": "the middle of a tile at", "left edge": "the left edge of a tile at", "right edge": "the right edge of a tile at",
}
