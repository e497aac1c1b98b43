package page

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

func TestAnEditIsNamed(t *testing.T) {
	job := survey.Job{Walls: []survey.Wall{{Name: "left"}, {Name: "back"}}, Bands: []survey.Band{{Name: "foot"}}}
	width := form.Change{Path: "walls[1].width", Was: "60", Is: "59 7/8"}
	for _, c := range []struct {
		changes []form.Change
		want    string
	}{
		{[]form.Change{width}, "width of back"},
		{[]form.Change{{Path: "guess"}, width}, "width of back"},
		{[]form.Change{width, {Path: "walls[1].base[0].readings[1].at", Was: "60", Is: "59 7/8"}}, "width of back"},
		{[]form.Change{width, {Path: "walls[0].width", Was: "35", Is: "36"}}, "width of back and 1 more"},
		{[]form.Change{{Path: "guess", Was: "walls[1].width"}}, "width of back"},
		{[]form.Change{{Path: "guess", Was: "walls[0].width", Is: "walls[0].width, walls[1].width"}}, "width of back"},
		{[]form.Change{{Path: "guess", Was: "walls[0].width, walls[1].width"}}, "what is measured"},
		{[]form.Change{{Path: "walls[0].name", Was: "", Is: "a"}, {Path: "walls[1].name", Was: "", Is: "a"}}, "name of left and 1 more"},
		{[]form.Change{{Path: "walls[1].left", Was: "meets corner", Is: "stops 40"}}, "left end of back"},
		{[]form.Change{{Path: "tile.width", Was: "6", Is: "4"}, {Path: "bond", Was: "stack bond", Is: "hexagon"}}, "picking hexagon"},
		{[]form.Change{{Path: "tile.width", Was: "6", Is: "4"}, {Path: "joint", Was: "1/8", Is: "1/4"}, {Path: "bond", Was: "stack bond", Is: "hexagon"}}, "joint and 1 more"},
		{[]form.Change{{Path: "bands[0].tile.height", Was: "6", Is: "4"}, {Path: "bands[0].bond", Was: "stack bond", Is: "herringbone at 45°"}}, "picking herringbone at 45° for band foot"},
		{[]form.Change{{Path: "tile.width", Was: "6", Is: "4"}, {Path: "tile.height", Was: "3", Is: "2"}, {Path: "bond.tiles[0].width", Was: "1", Is: "2"}}, "size of the tile"},
		{[]form.Change{{Path: "tile.width", Was: "6", Is: "4"}, {Path: "bond.tiles[0].width", Was: "1", Is: "2"}}, "width of a tile"},
		{[]form.Change{{Path: "bond.tiles[0].width", Was: "1", Is: "2"}}, "bond, tiles 1, width"},
	} {
		assert.Equal(t, c.want, EditName(job, c.changes), c.changes)
	}
}

func TestAnEditOfTheChoicesIsNamed(t *testing.T) {
	must := func(job survey.Job, err error) survey.Job {
		require.NoError(t, err)
		return job
	}
	none := survey.Job{Tile: survey.Tile{Name: "white"}}
	two := must(none.Duplicate("white", "grey"))
	three := must(two.Duplicate("grey", "blue"))
	for want, job := range map[string][2]survey.Job{
		"adding choice grey":  {none, two},
		"adding choice blue":  {two, three},
		"choosing grey":       {two, must(two.Choose("grey"))},
		"name of choice grey": {two, must(two.Rename("grey", "stone"))},
		"deleting blue":       {three, must(three.Drop("blue"))},
	} {
		assert.Equal(t, want, ChoicesEdit(job[0], job[1]))
	}
	other := two
	other.Bed = "1/4"
	assert.Empty(t, ChoicesEdit(two, other), "what is edited is no matter of choices")
}
