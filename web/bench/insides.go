package bench

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"coursewright/web/drawing"
	"coursewright/web/page"
)

// insideDrawings draws the insides and tops of the walls that are shown, each by itself.
func insideDrawings(b Bench) []templ.Component {
	var out []templ.Component
	if b.Finish {
		return nil
	}
	for _, i := range b.Walls() {
		for k, in := range b.Plan.Walls[i].Insides {
			out = append(out, page.Picture(drawing.FoldOut(b.Plan, i, k, drawing.Options{Wide: b.Wide, Handles: true}), fmt.Sprintf("inside-%s", in.Letter)))
		}
		if t := b.Plan.Walls[i].Top; t != nil {
			out = append(out, page.Picture(drawing.FoldTop(b.Plan, i, drawing.Options{Wide: b.Wide, Handles: true}), "top-"+t.Wall.Found.Letter))
		}
	}
	return out
}

// Choices of what is said of an inside.
var (
	sizeChoices   = page.Choices("", "tile to tile (finished)", "lined", "board to board (lined)", "rough", "stud to stud (rough)")
	depthChoices  = page.Choices("", "as place and size", "finished", "tile to tile (finished)", "lined", "board to board (lined)", "rough", "stud to back (rough)")
	frontChoices  = page.Choices("", "the wall’s tile laps over", "flush", "its tile comes out flush")
	behindChoices = page.Choices("", "nobody has looked", "inside", "a room: an inside wall", "outside", "outdoors: an outside wall")
	faceBonds     = page.Choices("", "plain rows", "stack", "stack bond", "running", "running bond", "hexagon", "hexagon")
	backBonds     = append(page.Choices("", "as on the wall"), bondChoices...)
)

// sideOf tells whether a face stands on the sill.
func sideOf(name survey.FaceName) bool { return name == survey.LeftFace || name == survey.RightFace }

// beginChoices are where the courses of a side may begin, short enough for a phone: by themselves as those beside it on the
// wall do, and those of a tile of its own with the same cut at sill and top.
func beginChoices(f survey.InsideFace) []page.Choice {
	if f.Tile != nil {
		return page.Choices("", "centred", "sill", "from the sill")
	}
	return page.Choices("", "as the wall’s", "sill", "from the sill")
}

// insideWord offers the inside of an opening.
func insideWord(o survey.Opening) string {
	if o.Kind == "window" {
		return "Tiled returns and sill"
	}
	return "Its depth and inside"
}

// facesOf are the faces of an inside in the order of survey.FaceNames.
func facesOf(o survey.Opening) []*survey.InsideFace {
	in := o.Inside
	return []*survey.InsideFace{&in.Back, &in.Left, &in.Right, &in.Sill, &in.Top}
}

// runOfFall is over which length a fall is told.
func (b Bench) runOfFall() string {
	if b.System() == length.Metric {
		return "metre"
	}
	return "foot"
}

// usualSlab is a plain thickness of stone, to be typed over.
func (b Bench) usualSlab() string {
	if b.System() == length.Metric {
		return "20"
	}
	return "3/4"
}

// bandsWithin are the names of the bands that go on upon one face of an inside, or, without a name of a face, upon any,
// and whether nothing else is laid there.
func (b Bench) bandsWithin(path string, names ...survey.FaceName) (bands string, alone bool) {
	var wall, opening int
	if n, _ := fmt.Sscanf(path, "walls[%d].openings[%d]", &wall, &opening); n < 2 || wall >= len(b.Plan.Walls) {
		return "", false
	}
	on := map[int]bool{}
	for _, in := range b.Plan.Walls[wall].Insides {
		for _, f := range in.Faces {
			if in.Opening != opening || len(names) > 0 && !slices.Contains(names, f.Is) {
				continue
			}
			for _, p := range f.Pieces {
				on[p.Laid] = true
			}
		}
	}
	alone = !on[0]
	delete(on, 0)
	var all []string
	for _, laid := range slices.Sorted(maps.Keys(on)) {
		all = append(all, b.Plan.Room.Bands[laid-1].Name)
	}
	return strings.Join(all, ", "), alone
}

// asWall says what a face is laid in of which nothing is said.
func (b Bench) asWall(path string, name survey.FaceName) string {
	bands, alone := b.bandsWithin(path, name)
	any, _ := b.bandsWithin(path)
	switch {
	case b.inRows(path, name):
		return "in plain rows of the wall’s tile, as held"
	case bands != "" && alone:
		return "as on the wall: all in " + bands
	case bands != "":
		return "as on the wall, " + bands + " too"
	case any != "":
		return "the tile of the field"
	}
	return "as on the wall"
}

// inRows tells whether a return is in plain rows although the wall is in a pattern, because the set-out held was made so.
func (b Bench) inRows(path string, name survey.FaceName) bool {
	returns := strings.Contains(path, ".inside.") && name != survey.BackFace
	return returns && b.Plan.Room.InRows && !b.Plan.Room.Bond.Coursed()
}

// liningLine says in short what the faces get.
func liningLine(o survey.Opening) string {
	own := 0
	for _, f := range facesOf(o) {
		if f.Tile != nil || f.Slab != "" || f.Cased || f.Begin != "" {
			own++
		}
	}
	if own == 0 {
		return "as on the wall"
	}
	return strconv.Itoa(own) + " of its faces otherwise than the wall"
}

// insideID is a plain name for the fold of an inside.
func insideID(path string) string {
	return "inside-" + strings.Trim(strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, path), "-")
}
