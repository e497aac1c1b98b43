package form

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"coursewright/layout/survey"
)

// edited is a copy of the demo with fields set.
func edited(t require.TestingT, fields ...string) survey.Job {
	job := demo(t)
	for i := 0; i < len(fields); i += 2 {
		require.NoError(t, Set(&job, fields[i], fields[i+1]))
	}
	return job
}

func merged(t require.TestingT, base, saved, later survey.Job, yours ...string) Merged {
	m, err := Merge(base, saved, later, func(path string) bool {
		for _, one := range yours {
			if one == path {
				return true
			}
		}
		return false
	})
	require.NoError(t, err)
	return m
}

func TestEditsOfDifferentFieldsBothComeThrough(t *testing.T) {
	m := merged(t, demo(t), edited(t, "joint", "3/16", "walls[1].base[0].readings[1].drop", "40"), edited(t, "walls[1].width", "60", "title", "Mine"))
	assert.Equal(t, edited(t, "joint", "3/16", "walls[1].base[0].readings[1].drop", "40", "walls[1].width", "60", "title", "Mine"), m.Job)
	assert.Empty(t, m.Clashes)
	assert.Equal(t, []Change{
		{"title", "Heron Street, upstairs bath", "Mine", true}, {"joint", "1/8", "3/16", false},
		{"walls[1].width", "59 7/8", "60", true}, {"walls[1].base[0].readings[1].drop", Get(demo(t), "walls[1].base[0].readings[1].drop"), "40", false},
	}, m.Changes)
}

func TestAFieldBothChangedIsAClashWithAChoice(t *testing.T) {
	base, saved, later := demo(t), edited(t, "joint", "3/16", "bed", "1/4"), edited(t, "joint", "3/32", "bed", "1/2")
	m := merged(t, base, saved, later, "bed")
	assert.Equal(t, []Clash{{"joint", "1/8", "3/16", "3/32", false}, {"bed", demo(t).Bed, "1/4", "1/2", false}}, m.Clashes)
	assert.Equal(t, "3/16", m.Job.Joint.Plain)
	assert.Equal(t, "1/2", m.Job.Bed)
	assert.Empty(t, m.Changes)
	assert.Empty(t, merged(t, base, saved, saved).Clashes, "the same change twice is no clash")
}

func TestAChangeOfUnitsOnOneSideClashesWithNothing(t *testing.T) {
	base, saved, later := demo(t), demo(t), edited(t, "joint", "3/16")
	require.NoError(t, keepUnit(&saved, "in"))
	saved.Units = "mm"
	for _, m := range []Merged{merged(t, base, saved, later), merged(t, base, later, saved)} {
		assert.Empty(t, m.Clashes)
		assert.Equal(t, "mm", m.Job.Units)
		assert.Equal(t, "3/16 in", m.Job.Joint.Plain)
		assert.Len(t, m.Changes, 2)
	}
}

func TestARenamedWallTakesThePinsOfTheOtherSideAlong(t *testing.T) {
	base := demo(t)
	base.Pins.Walls = map[string]survey.WallPin{"back": {Joint: "30"}}
	renamed, pinned := base, base
	renamed.Walls = append([]survey.Wall{}, base.Walls...)
	before := wallNames(base)
	renamed.Walls[1].Name = "long"
	renamed.SetOrder = append([]string{}, base.SetOrder...)
	rename(&renamed, before)
	pinned.Pins.Walls = map[string]survey.WallPin{"back": {Joint: "31"}}
	for i, m := range []Merged{merged(t, base, renamed, pinned), merged(t, base, pinned, renamed)} {
		assert.Empty(t, m.Clashes)
		assert.Equal(t, map[string]survey.WallPin{"long": {Joint: "31"}}, m.Job.Pins.Walls)
		assert.Contains(t, m.Changes, Change{Path: "walls[1].name", Was: "back", Is: "long", Yours: i == 1})
	}
}

func TestWallsBothRenamedClash(t *testing.T) {
	m := merged(t, demo(t), edited(t, "walls[1].name", "long"), edited(t, "walls[1].name", "wide"))
	assert.Contains(t, m.Clashes, Clash{"walls[1].name", "back", "long", "wide", false})
}

func TestAListThatGrewOnBothSidesIsOneChoice(t *testing.T) {
	base, saved, later := demo(t), demo(t), edited(t, "walls[0].width", "36")
	require.NoError(t, Apply(&saved, "add walls[1].openings pipe"))
	m := merged(t, base, saved, later)
	assert.Empty(t, m.Clashes, "one side alone is no clash")
	assert.Len(t, m.Job.Walls[1].Openings, 2)
	assert.Equal(t, "36", m.Job.Walls[0].Width)
	assert.False(t, SameFields(m.Job, later))

	require.NoError(t, Apply(&later, "add walls[1].openings window"))
	m = merged(t, base, saved, later, "walls[1].openings")
	assert.Equal(t, []Clash{{"walls[1].openings", "shelf", "shelf; pipe", "shelf; window", false}}, m.Clashes)
	assert.Equal(t, later.Walls[1].Openings, m.Job.Walls[1].Openings)
}

func TestAPlaceAndARangeAreNeverMixed(t *testing.T) {
	base, saved, later := demo(t), demo(t), demo(t)
	require.NoError(t, Apply(&saved, "measure walls[1].openings[0].left"))
	require.NoError(t, Set(&later, "walls[1].openings[0].left.from", "20"))
	for _, yours := range [][]string{nil, {"walls[1].openings[0].left"}} {
		m := merged(t, base, saved, later, yours...)
		require.Len(t, m.Clashes, 1)
		assert.Contains(t, []survey.Mark{*saved.Walls[1].Openings[0].Left, *later.Walls[1].Openings[0].Left}, *m.Job.Walls[1].Openings[0].Left)
	}
}

// joined are fields that move others along (a wall's name its pins) or come as one with others.
var joined = regexp.MustCompile(`^format$|^units$|^walls\[\d\]\.name$|\.(kind|meets)$|\.(stops|left|width|bottom|height)\.(at|from|to)$`)

func TestNoEditIsLostInAMerge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := demo(t)
		fields := Fields(base)
		draw := func(label string) survey.Job {
			job := demo(t)
			for range rapid.IntRange(0, 4).Draw(t, label) {
				f := rapid.SampledFrom(fields).Draw(t, "field")
				if f.Value == "true" || joined.MatchString(f.Path) {
					continue
				}
				require.NoError(t, Set(&job, f.Path, rapid.SampledFrom([]string{"3", "7", "12"}).Draw(t, "value")))
			}
			return job
		}
		saved, later := draw("saved"), draw("later")
		all := rapid.Bool().Draw(t, "all yours")
		m, err := Merge(base, saved, later, func(string) bool { return all })
		require.NoError(t, err)
		again, err := Merge(base, saved, base, nil)
		require.NoError(t, err)
		require.Equal(t, saved, again.Job)
		for _, f := range fields {
			b, s, l, got := f.Value, Get(saved, f.Path), Get(later, f.Path), Get(m.Job, f.Path)
			switch {
			case s == l || b == l:
				require.Equal(t, s, got, f.Path)
			case b == s:
				require.Equal(t, l, got, f.Path)
			default:
				require.Contains(t, []string{s, l}, got, f.Path)
			}
		}
	})
}
