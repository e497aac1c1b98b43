package phase

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

func (q *queue[T]) empty() bool { return len(q.items) == 0 }
func (q *queue[T]) first() T    { return q.items[0] }
func (q *queue[T]) add(x T)     { heap.Push(q, x) }
func (q *queue[T]) take() T     { return heap.Pop(q).(T) }
