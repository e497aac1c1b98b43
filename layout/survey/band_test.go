package survey_test

import (
	"testing"

	"coursewright/layout/length"
	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// liner is a band of one course, 6 in wide and 1/2 in high.
func liner() survey.Band {
	return survey.Band{Name: "liner", Tile: survey.Tile{Width: "6", Height: "1/2"}, Bottom: *free("0", "8")}
}

// Each case spoils one thing in a sound job with a band, and names the one fault.
func TestBandsAreRefused(t *testing.T) {
	for fault, spoil := range map[string]func(*survey.Job, *survey.Band){
		"bands[0].name: found nothing; write a name":                                          func(_ *survey.Job, b *survey.Band) { b.Name = "" },
		"bands[0].walls[0]: found “d”; write the name of a wall":                              func(_ *survey.Job, b *survey.Band) { b.Walls = []string{"d"} },
		"bands[0].walls[1]: found “a” a second time; write each wall":                         func(_ *survey.Job, b *survey.Band) { b.Walls = []string{"a", "a"} },
		"bands[0].tile.height: found “0”; write a length from":                                func(_ *survey.Job, b *survey.Band) { b.Tile.Height = "0" },
		"bands[0].joint: found “x”":                                                           func(_ *survey.Job, b *survey.Band) { b.Joint = "x" },
		"bands[0].bond.kind: found “odd”; write one of":                                       func(_ *survey.Job, b *survey.Band) { b.Bond.Kind = "odd" },
		"bands[0].bond: found columns":                                                        func(_ *survey.Job, b *survey.Band) { b.Bond = survey.Bond{Kind: "stack", Along: "plumb"} },
		"bands[0].courses: found -1; write a whole number from 1 to 10":                       func(_ *survey.Job, b *survey.Band) { b.Courses = -1 },
		"bands[0].courses: found 2; write nothing here":                                       func(_ *survey.Job, b *survey.Band) { b.Courses, b.ToHead = 2, true },
		"bands[0].bottom.at: found nothing; write a length, with a minus where it is under 0": func(_ *survey.Job, b *survey.Band) { b.Bottom = survey.Mark{} },
		"bands[0].bottom: found a band from 0\" up; write heights over":                       func(_ *survey.Job, b *survey.Band) { b.Bottom = *free("0", "30") },
		"bond: found columns; write level courses, or a pattern":                              func(j *survey.Job, _ *survey.Band) { j.Bond.Along = "plumb" },
		"bands[0].bottom: found a height that misses the joint lines of the course line at 1\" by 1\"; write 1, or let go": func(j *survey.Job, b *survey.Band) {
			b.Bottom, j.Pins.Course.Line = *mark("0"), "1"
		},
		"bands[0].height: found “4”; write nothing here": func(_ *survey.Job, b *survey.Band) { b.Height = "4" },
		"bands[0].height: found nothing":                 func(_ *survey.Job, b *survey.Band) { b.Bond.Kind = "herringbone" },
		"bands[0].courses: found 2; write nothing here: a band laid in a pattern": func(_ *survey.Job, b *survey.Band) {
			b.Bond.Kind, b.Height, b.Courses = "herringbone", "4", 2
		},
		"bands[0].bond.tiles: found 0 tiles; write one square of another size": func(_ *survey.Job, b *survey.Band) {
			b.Bond, b.Height, b.Tile = survey.Bond{Kind: "pinwheel"}, "4", survey.Tile{Width: "3", Height: "3"}
		},
		`bands[0].bond.kind: found a modular of tile 1" × 1" with a joint of 1/8", which do not close; write 2 1/8" × 1" as tile 2`: func(_ *survey.Job, b *survey.Band) {
			b.Bond, b.Height, b.Joint, b.Tile = survey.Bond{Kind: "modular", Tiles: []survey.Tile{{Width: "2", Height: "1"}, {Width: "2"}, {Width: "3", Height: "2"}}}, "4", "1/8", survey.Tile{Width: "1", Height: "1"}
		},
		"bands[0].bond: found a band in a pattern, where a strip goes from base to head": func(j *survey.Job, b *survey.Band) {
			b.Bond.Kind, b.Height = "herringbone", "4"
			j.Walls[0].Strips = []survey.Strip{{Name: "s", Middle: *mark("20"), Tile: survey.Tile{Width: "2", Height: "2"}}}
		},
		"bands[0].bottom: found a band where niche n of a may stand; write a height clear of it": func(j *survey.Job, _ *survey.Band) {
			j.Bond = survey.Bond{Kind: "herringbone"}
			j.Walls[0].Openings = []survey.Opening{{Kind: "niche", Name: "n", Left: mark("10"), Width: mark("10"), Bottom: free("4", "10"), Height: &survey.Measure{Mark: mark("8")}}}
		},
		"bands[1].upon: found “x”; write the name of a band that comes before it": func(j *survey.Job, b *survey.Band) {
			j.Bands = []survey.Band{*b}
			b.Name, b.Bottom, b.Upon = "cap", survey.Mark{}, "x"
		},
		"bands[1].bottom: found a height; write nothing here: the band stands upon liner": func(j *survey.Job, b *survey.Band) {
			j.Bands = []survey.Band{*b}
			b.Name, b.Upon = "cap", "liner"
		},
		"bands[1].near: found “3”; write nothing here: the band it stands upon says its height": func(j *survey.Job, b *survey.Band) {
			j.Bands = []survey.Band{*b}
			b.Name, b.Bottom, b.Upon, b.Near = "cap", survey.Mark{}, "liner", "3"
		},
		"bands[1].walls: found a wall on which liner does not run": func(j *survey.Job, b *survey.Band) {
			j.Bands = []survey.Band{*b}
			j.Bands[0].Walls = []string{"a"}
			b.Name, b.Bottom, b.Upon, b.Walls = "cap", survey.Mark{}, "liner", []string{"b"}
		},
		"bands[1].upon: found “liner”, which goes up to the head; write a band that ends under it": func(j *survey.Job, b *survey.Band) {
			j.Bands = []survey.Band{*b}
			j.Bands[0].ToHead = true
			b.Name, b.Bottom, b.Upon = "cap", survey.Mark{}, "liner"
		},
		"bands[2].upon: found “liner”, upon which another stands": func(j *survey.Job, b *survey.Band) {
			on := *b
			on.Name, on.Bottom, on.Upon = "deco", survey.Mark{}, "liner"
			j.Bands = []survey.Band{*b, on}
			b.Name, b.Bottom, b.Upon = "cap", survey.Mark{}, "liner"
		},
		"bands: found 5 bands; write at most 4": func(j *survey.Job, _ *survey.Band) { j.Bands = make([]survey.Band, 4) },
	} {
		job, b := sketch("in", "a", "b", "c"), liner()
		spoil(&job, &b)
		job.Bands = append(job.Bands, b)
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, "%s: %v", fault, faults) {
			assert.Contains(t, faults[0].String(), fault)
		}
	}
}

// The number of columns of a strip that may have more is bounded.
func TestColumnsOfAStripAreBounded(t *testing.T) {
	job := sketch("in", "a")
	s := survey.Strip{Name: "s", Middle: *mark("20"), Tile: survey.Tile{Width: "1", Height: "1"}, Columns: 2}
	for most, want := range map[int]string{1: "a whole number from 2 to 7, or nothing where it has 2", 8: "a whole number from 2 to 7", -1: "a whole number from 2 to 7"} {
		s.MostColumns = most
		job.Walls[0].Strips = []survey.Strip{s}
		_, faults := job.Resolve()
		if assert.Len(t, faults, 1, "%d: %v", most, faults) {
			assert.Contains(t, faults[0].String(), "walls[0].strips[0].mostColumns: ")
			assert.Contains(t, faults[0].String(), want)
		}
	}
	for _, most := range []int{0, 2, 3, 7} {
		s.MostColumns = most
		job.Walls[0].Strips = []survey.Strip{s}
		_, faults := job.Resolve()
		assert.Empty(t, faults)
	}
}

// Two bands have to stand on joint lines of the same courses.
func TestBandsClashWithEachOther(t *testing.T) {
	job, under, over := sketch("in", "a"), liner(), liner()
	over.Name = "cap"
	under.Bottom, over.Bottom = *mark("0"), *mark("11")
	job.Bands = []survey.Band{under, over}
	_, faults := job.Resolve()
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].String(), "bands[1].bottom: found heights with which no course line puts liner and cap on joint lines")
	over.Bottom = *mark("1/4")
	job.Bands = []survey.Band{under, over}
	_, faults = job.Resolve()
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].String(), `bands[1].bottom: found 1/4"; write a height over 1/2", the top of the band liner`)
}

// A liner of 1/2 in with joints of 1/8 in takes 3/4 in between the tiles over and
// under it: facts.md section 3 (trade press: a joint above and below the band).
func TestWhatALinerTakes(t *testing.T) {
	job := sketch("in", "a")
	job.Joint.Plain = "1/8"
	job.Bands = []survey.Band{liner()}
	room, faults := job.Resolve()
	require.Empty(t, faults)
	b := room.Bands[0]
	assert.Equal(t, 3*length.Inch/4, b.High(room.Joint)+2*room.Joint)
	b.Courses = 3
	assert.Equal(t, 7*length.Inch/4, b.High(room.Joint), "three courses and the two joints between them")
}
