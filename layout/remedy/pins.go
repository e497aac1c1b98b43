package remedy

import (
	"fmt"
	"maps"
	"slices"

	"coursewright/layout/survey"
)

// pins lets go of the course line, or of the starts of the walls that have poor cuts, where they
// are pinned and no tile stands.
func (a *asker) pins(poor []troubled) (out []try) {
	if a.stands() {
		return nil
	}
	if a.job.Pins.Course.Line != "" {
		out = append(out, try{Pin, "course line", "Let go of the course line.", []Use{{"pins.course.line", ""}}, nil})
	}
	for _, name := range slices.Sorted(maps.Keys(a.job.Pins.Walls)) {
		p := a.job.Pins.Walls[name]
		if !slices.ContainsFunc(poor, func(t troubled) bool { return a.now.Walls[t.wall].Found.Name == name && t.run.Across }) {
			continue
		}
		for field, text := range started(p) {
			if text != "" {
				out = append(out, try{Pin, "start " + name, fmt.Sprintf("Let go of the start of %s.", name), []Use{{under("pins.walls", name, field), ""}}, nil})
			}
		}
	}
	return out
}

// started are the fields that say where a wall starts. At most one is in use.
func started(p survey.WallPin) map[string]string {
	return map[string]string{"edge": p.Edge, "joint": p.Joint, "tile": p.Tile}
}
