package store

import (
	"context"
	"slices"
	"strings"
)

// Find lists jobs that are not deleted and whose title holds every one of the words, whatever their
// case, the one saved last first. It passes over the first so many and gives no more than most; all
// says how many there are together. No words find every job.
func (s *Store) Find(ctx context.Context, words string, skip, most int) (found []Summary, all int, err error) {
	found, err = s.Jobs(ctx)
	if err != nil {
		return nil, 0, err
	}
	wanted := strings.Fields(strings.ToLower(words))
	found = slices.DeleteFunc(found, func(m Summary) bool {
		title := strings.ToLower(m.Title)
		return slices.ContainsFunc(wanted, func(word string) bool { return !strings.Contains(title, word) })
	})
	all = len(found)
	skip = min(max(skip, 0), all)
	return found[skip:min(skip+max(most, 0), all)], all, nil
}
