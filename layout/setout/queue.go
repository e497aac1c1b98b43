package setout

import "container/heap"

// queue gives the most promising of what is searched first.
type queue[T any] struct {
	items  []T
	before func(a, b T) bool
}

func (q *queue[T]) Len() int           { return len(q.items) }
func (q *queue[T]) Less(i, j int) bool { return q.before(q.items[i], q.items[j]) }
func (q *queue[T]) Swap(i, j int)      { q.items[i], q.items[j] = q.items[j], q.items[i] }
func (q *queue[T]) Push(x any)         { q.items = append(q.items, x.(T)) }

func (q *queue[T]) Pop() any {
	last := len(q.items) - 1
	x := q.items[last]
	q.items = q.items[:last]
	return x
}

// first is the most promising one.
func (q *queue[T]) first() T { return q.items[0] }

// firstOf is the most promising of those that are so, or else otherwise.
func (q *queue[T]) firstOf(so func(T) bool, otherwise T) T {
	found := false
	for _, x := range q.items {
		if so(x) && (!found || q.before(x, otherwise)) {
			otherwise, found = x, true
		}
	}
	return otherwise
}

// sort puts everything in order again; settle does so where only the first has changed.
func (q *queue[T]) sort()   { heap.Init(q) }
func (q *queue[T]) settle() { heap.Fix(q, 0) }
