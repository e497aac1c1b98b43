package ask

import (
	"net/url"
	"slices"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// endWord stands in the words of a question for the end that it is asked from.
const endWord = "{end}"

// along makes a question of how far something stands along a wall. The job
// counts from the left end; on a wall with one corner it is asked from the corner,
// because that is where the end of the tape goes, or from the front.
func (r *room) along(q Question, wall int) Question {
	if r.corner(wall, true) == r.corner(wall, false) {
		q.say("left end of " + WallName(r.job.Walls[wall].Name))
		return q
	}
	q.width = form.At("walls", wall) + ".width"
	q.fromRight = r.corner(wall, false) != r.fromFront
	q.say(map[bool]string{false: "corner", true: "front of " + WallName(r.job.Walls[wall].Name)}[r.fromFront])
	return q
}

func (q *Question) say(end string) {
	for _, text := range []*string{&q.Ask, &q.Label, &q.Help} {
		*text = strings.ReplaceAll(*text, endWord, end)
	}
}

// HasEnds tells whether a question may be asked from either end of its wall.
func (q Question) HasEnds() bool { return q.width != "" }

// readRight turns a distance from the right end into one from the left.
func (q Question) readRight(job survey.Job, posted url.Values) {
	values, there := posted[FromRight+q.Path]
	if !there || q.width == "" {
		return
	}
	q.fromRight = true
	typed := values[len(values)-1]
	if typed == q.Shown(job) && (posted.Get(q.width) == "" || posted.Get(q.width) == form.Get(job, q.width)) {
		return // untouched, as is the width it is counted from
	}
	system, _ := form.System(job.Units)
	width, wide := length.Parse(orOld(posted.Get(q.width), form.Get(job, q.width)), system)
	from, err := length.Parse(typed, system)
	switch {
	case strings.TrimSpace(typed) == "" && slices.Contains(job.Guess, q.Path):
		return
	case err != nil || wide != nil:
		posted.Set(q.Path, typed) // does not read: the job says so at this field
	default:
		posted.Set(q.Path, (width-from).Plain(system, 0))
	}
}

// keepFromCorner keeps a guess as far from the corner as it is when the width of its wall is
// typed, where that is counted from the wall's other end: a tub is as deep on a wider wall.
func (q Question) keepFromCorner(job survey.Job, posted url.Values) {
	typed := posted.Get(q.width)
	if !q.fromRight || typed == "" || typed == form.Get(job, q.width) {
		return
	}
	system, _ := form.System(job.Units)
	was, err := length.Parse(form.Get(job, q.width), system)
	width, wide := length.Parse(typed, system)
	at, unread := length.Parse(form.Get(job, q.Path), system)
	moved := at + width - was
	if err != nil || wide != nil || unread != nil || moved <= 0 {
		return
	}
	for _, path := range append([]string{q.Path}, q.Same...) {
		posted.Set(path, moved.Plain(system, 0))
	}
}
