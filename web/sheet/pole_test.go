package sheet

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/finding"
	"coursewright/layout/length"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
)

// What the sheet of a wall writes beside every fifth course is what the story pole lists for
// it: a setter who holds one to the other finds one figure.
func TestWallsAndPoleGiveACourseOneHeight(t *testing.T) {
	rooms := map[string]layout.Plan{"hexagon": demoIn(t, "4 1/4", "4 1/4", survey.Bond{Kind: "hexagon"}),
		"mixed heights": demoIn(t, "7", "3", survey.Bond{Kind: "mixed heights", Tiles: []survey.Tile{{Name: "strip", Width: "7", Height: "1 1/2"}}})}
	for _, name := range []string{"jobs/alcove", "jobs/old-house", "jobs/corner-shower", "cases/g-300x600"} {
		rooms[name] = roomOf(t, name)
	}
	for name, plan := range rooms {
		b := newBook(plan, Options{Kinds: []Kind{Elevations}})
		checked := 0
		for _, tile := range b.pole().tiles {
			for _, l := range b.leaves {
				said := texts(l)
				if tile.course%5 != 0 || !written(said, b.signed(tile.bottom)) {
					assert.False(t, tile.course%5 == 0 && written(said, b.signed(tile.top)), "%s, %s: course %d is given by its top edge", name, l.wall, tile.course)
					continue
				}
				checked++
			}
		}
		assert.Greater(t, checked, 1, name)
	}
}

// The courses of a pattern stand on the pole where they stand on the walls, the course line among them. Courses of hexagons once bore the
// number of the next, and of mixed heights only those at the foot of the pattern were listed.
func TestThePoleListsTheCoursesOfAPatternAsTheyStand(t *testing.T) {
	for name, made := range map[string]layout.Plan{"hexagon": demoIn(t, "4 1/4", "4 1/4", survey.Bond{Kind: "hexagon"}),
		"double herringbone": demoIn(t, "7 1/2", "2 3/8", survey.Bond{Kind: "double herringbone"}),
		"mixed heights":      demoIn(t, "7", "3", survey.Bond{Kind: "mixed heights", Tiles: []survey.Tile{{Name: "strip", Width: "7", Height: "1 1/2"}}})} {
		foot := map[int]length.Length{}
		for _, u := range newBook(made, Options{}).pole().tiles {
			foot[u.course] = u.bottom
		}
		assert.Contains(t, slices.Collect(maps.Values(foot)), made.Setout.Line, name)
		reached := map[int]bool{}
		for _, w := range made.Walls {
			for _, p := range w.Pieces {
				require.Contains(t, foot, p.Course, "%s: %s", name, p.ID)
				require.GreaterOrEqual(t, p.Tile.Bottom, foot[p.Course], "%s: %s", name, p.ID)
				reached[p.Course] = reached[p.Course] || p.Tile.Bottom == foot[p.Course]
			}
		}
		assert.Len(t, reached, len(foot), name)
		assert.NotContains(t, slices.Collect(maps.Values(reached)), false, name)
	}
}

// Courses that are too many for one column go on over the marks: the list takes one leaf, and names every course.
func TestAPoleOfManyCoursesTakesOneLeaf(t *testing.T) {
	b := newBook(demoIn(t, "2", "2", survey.Bond{Kind: "hexagon"}), Options{Kinds: []Kind{StoryPole}, Paper: Papers()[1]})
	require.Len(t, b.leaves, 1)
	said := map[string]bool{}
	for _, x := range texts(b.leaves[0]) {
		said[x.Text] = true
	}
	tiles := b.pole().tiles
	require.Greater(t, len(tiles), 45)
	for _, u := range tiles {
		assert.True(t, said[number(u.course)] && said[held(b.signed(u.bottom))], "course %d", u.course)
	}
}

// Every number in a ring on the drawing of a wall is told on that sheet, or the sheet says on
// which other it stands.
func TestNumbersInRingsAreTold(t *testing.T) {
	sent := regexp.MustCompile(`^Findings [0-9,:; a-z]+\.$`)
	for _, name := range []string{"jobs/alcove", "jobs/old-house", "jobs/corner-shower", "cases/g-300x600", "cases/c2-4x16-fixed"} {
		b := newBook(roomOf(t, name), Options{})
		ringed := 0
		for _, l := range b.leaves {
			told := map[string]bool{}
			for _, x := range texts(l) {
				told[x.Text] = told[x.Text] || x.Bold && x.Finding == 0
				if sent.MatchString(x.Text) {
					for _, n := range strings.FieldsFunc(x.Text, func(r rune) bool { return !unicode.IsDigit(r) }) {
						told[n] = true
					}
				}
			}
			for _, x := range texts(l) {
				if x.Finding == 0 {
					continue
				}
				ringed++
				assert.NotEqual(t, finding.Caution, b.plan.Findings[x.Finding-1].Grade, "%s, %s: a caution has no number on paper", name, l.wall)
				assert.True(t, told[x.Text], "%s, %s: %s stands in a ring and nowhere is said what it is", name, l.wall, x.Text)
			}
		}
		require.NotZero(t, ringed, name)
	}
}

func written(all []drawing.Label, text string) bool {
	return slices.ContainsFunc(all, func(l drawing.Label) bool {
		return l.Kind == drawing.Dim && strings.Join(strings.Fields(l.Text), " ") == strings.Join(strings.Fields(text), " ")
	})
}

// A ceiling that is not level is told corner by corner, as what the walls stand on is.
func TestThePoleNamesACornerOfTheCeilingOnce(t *testing.T) {
	b := newBook(roomOf(t, "jobs/old-house"), Options{})
	var names []string
	for _, m := range b.pole().marks {
		if strings.Contains(m.name, "ceiling") {
			names = append(names, m.name)
		}
	}
	assert.Equal(t, []string{"L left ceiling", "corner L–B ceiling", "R right ceiling", "corner B–R ceiling"}, names)
}

// A height at a corner has one name on the pole and on the set-out, where it is read first.
func TestThePoleNamesCornersAsTheSetOutDoes(t *testing.T) {
	for _, name := range []string{"jobs/alcove", "jobs/old-house", "jobs/corner-shower", "cases/d-4x4-wainscot"} {
		b := newBook(roomOf(t, name), Options{})
		all := stages.Stations(b.plan.Room.Units, b.plan.Walls)
		for _, s := range all {
			kind, level := strings.TrimPrefix(string(s.Meets), "shower "), true
			for _, other := range all {
				level = level && (other.Meets != s.Meets || other.Height == s.Height)
			}
			want := s.Name + " " + kind
			if level {
				want = kind
			}
			at := slices.IndexFunc(b.pole().marks, func(m notch) bool { return m.at == s.Height && slices.Contains(strings.Split(m.name, ", "), want) })
			assert.GreaterOrEqual(t, at, 0, "%s: no mark %q at %s", name, want, b.signed(s.Height))
		}
		first := slices.IndexFunc(all, func(s stages.Station) bool {
			return b.levelLine() == b.over(-s.Height)+" the "+string(s.Meets)+", "+s.Name
		})
		require.GreaterOrEqual(t, first, 0, "%s: %s is no station", name, b.levelLine())
		for i, w := range b.plan.Walls {
			if w.Found.Order == 0 {
				assert.Contains(t, all[first].Walls, i, "%s: on the wall set first", name)
			}
		}
	}
}

// closedRoom is the wet closet of the cases on a floor, under a ceiling that is not level.
func closedRoom(t *testing.T) layout.Plan {
	return solved(t, "../cases/closed-room", func(j *survey.Job) {
		rise := []string{"1250", "1254", "1252", "1249"}
		for i := range j.Walls {
			w := &j.Walls[i]
			w.Base[0].Meets = "floor"
			w.Head = survey.Head{Meets: "ceiling", Gap: "3", Readings: []survey.Rise{{At: "0", Rise: rise[i]}, {At: w.Width, Rise: rise[(i+1)%4]}}}
		}
	})
}

// The corner in which a closed room begins and ends is one mark of the ceiling too, by the name that it has on the set-out; and
// what is measured over no rim is not said to be.
func TestAClosedRoomOnAFloor(t *testing.T) {
	b := newBook(closedRoom(t), Options{})
	var names []string
	for _, m := range b.ceilingMarks() {
		names = append(names, m.name)
	}
	assert.Equal(t, []string{"corner W–N ceiling", "corner N–E ceiling", "corner E–S ceiling", "corner S–W ceiling"}, names)
	said := words(printedText(t, b.plan, SetOut)) + words(printedText(t, b.plan, StoryPole))
	assert.NotContains(t, said, "rim ")
	says(t, said, "Measure it over the floor at each place as a check.")
	says(t, said, "line over floor")
	says(t, said, "floor where that is highest")
}
