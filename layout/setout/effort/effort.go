// Package effort adds up what searches count, for whoever has several of them made and has to
// end. Counted work is the same on every machine and on every run.
package effort

import "context"

// Sum is what the searches have counted that were made with its context.
type Sum struct{ spent int }

// Spent is how much that is so far, in what search.Work is counted in.
func (s *Sum) Spent() int { return s.spent }

type key struct{}

// Counted is a context whose searches are added up, one after the other.
func Counted(ctx context.Context) (context.Context, *Sum) {
	sum := &Sum{}
	return context.WithValue(ctx, key{}, sum), sum
}

// Add adds what a search has counted.
func Add(ctx context.Context, work int) {
	if sum, _ := ctx.Value(key{}).(*Sum); sum != nil {
		sum.spent += work
	}
}
