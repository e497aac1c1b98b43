package jobs

import (
	"strconv"

	"coursewright/store"
	"coursewright/web/page"
)

// called is what buttons call a job of a list: by its name, and where others have that too by when it was saved,
// so that no two buttons of the page are called alike.
func called(job store.Summary, list []store.Summary) string {
	name := page.Titled(job.Title)
	saved := name + ", saved " + job.Saved.Format(page.Moment)
	alike, atOnce := false, false
	for _, other := range list {
		if other.ID == job.ID || page.Titled(other.Title) != name {
			continue
		}
		alike = true
		atOnce = atOnce || other.Saved.Format(page.Moment) == job.Saved.Format(page.Moment)
	}
	switch {
	case atOnce:
		return saved + ", number " + strconv.FormatInt(job.ID, 10)
	case alike:
		return saved
	}
	return name
}
