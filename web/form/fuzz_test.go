package form

import (
	"errors"
	"net/url"
	"testing"

	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// posts are forms to begin with: as a page posts them, with buttons, and spoilt.
var posts = []string{
	"revision=1&joint=3%2F16&walls%5B1%5D.width=60", "do=add+walls", "do=add+walls%5B1%5D.openings+niche", "do=remove+walls%5B0%5D",
	"do=free+walls%5B1%5D.openings%5B0%5D.left", "do=measure+walls%5B1%5D.openings%5B0%5D.left", "do=pin+back+tile%3D30", "do=release+pins.walls.back.joint",
	"do=place+2+niche+shelf+left%3D33", "do=place+1+pipe+valve%3D20%3B-8", "do=set+joint%3D1%2F4", "do=add+walls%5B0%5D.base+left",
	"units=mm&tile.box.count=many", "walls%5B1%5D.name=a.b%5B%22c%22%5D&pins.walls.back.joint=31", "walls%5B3%5D.width=1", "walls%5B499%5D.name=x",
	"pins.walls%5B%22%22%5D.marks.x=1", "walls%5B0%5D.left.meets=&walls%5B0%5D.left.stops.at=3", "setOrder%5B0%5D=right&setOrder%5B5%5D=x",
	"=&%00=%ff&walls%5B=&walls%5B-1%5D=&..=&%5B%22", "filled=%7B%7D", "measured.singles%5B0%5D.width=6&measured.run.tiles=10",
}

// FuzzPost lays any posted form over a job and does what any button asks. What comes of it can be
// read: a job that is written reads back as itself, and only as far as the job file goes.
func FuzzPost(f *testing.F) {
	for _, post := range posts {
		f.Add(post)
	}
	f.Fuzz(func(t *testing.T, post string) {
		posted, err := url.ParseQuery(post)
		if err != nil {
			return
		}
		job, err := Base(demo(t), posted)
		if err != nil {
			return
		}
		before := demo(t)
		err = Decode(&job, posted)
		var faults survey.Faults
		if err != nil && !errors.As(err, &faults) {
			return
		}
		if Apply(&job, posted.Get(Do)) != nil {
			return
		}
		document, err := survey.Write(job)
		if err != nil || len(document) > survey.MaxBytes {
			return
		}
		again, err := survey.Read(document)
		require.NoError(t, err)
		for _, field := range Fields(again) {
			require.Equal(t, field.Value, Get(again, field.Path), field.Path)
		}
		_, faults = again.Resolve()
		for _, fault := range faults {
			require.NotEmpty(t, fault.Want, fault.Path)
		}
		merged, err := Merge(before, demo(t), again, nil)
		require.NoError(t, err)
		require.Equal(t, again, merged.Job, "an edit met by no other is that edit")
		require.Empty(t, merged.Clashes)
		Shown(job, before)
		SameFields(job, before)
	})
}
