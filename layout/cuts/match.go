package cuts

// match finds a maximum matching in the graph of n vertices that fits joins:
// no other has more pairs. The answer gives each vertex its mate, or -1. It
// begins by giving each vertex in turn the first that is free and fits, then
// grows trees of alternating paths, shrinking odd circuits (the method of
// Edmonds). A tree that cannot grow is never looked at again, so that all
// fruitless searches together ask fits at most n² times.
func match(n int, fits func(i, j int) bool) []int {
	m := matcher{n: n, fits: fits, mate: make([]int, n), parent: make([]int, n), base: make([]int, n),
		outer: make([]bool, n), spent: make([]bool, n)}
	for i := range n {
		m.mate[i] = -1
	}
	for i := range n {
		for j := i + 1; j < n && m.mate[i] < 0; j++ {
			if m.mate[j] < 0 && fits(i, j) {
				m.mate[i], m.mate[j] = j, i
			}
		}
	}
	for i := range n {
		if m.mate[i] < 0 {
			m.search(i)
		}
	}
	return m.mate
}

type matcher struct {
	n      int
	fits   func(i, j int) bool
	mate   []int  // -1: free
	parent []int  // along the tree, for inner vertices and those in circuits; -1: not in it
	base   []int  // the vertex that stands for the shrunken circuit
	outer  []bool // at even distance from the root
	spent  []bool // in a tree that could not grow
	queue  []int
}

// search grows a tree from a free vertex until it reaches another one, and then
// swaps the pairs along the way between them.
func (m *matcher) search(root int) {
	for i := range m.n {
		m.parent[i], m.base[i], m.outer[i] = -1, i, false
	}
	m.outer[root], m.queue = true, append(m.queue[:0], root)
	for next := 0; next < len(m.queue); next++ {
		v := m.queue[next]
		for to := range m.n {
			if end := m.step(v, to); end >= 0 {
				m.swap(end)
				return
			}
		}
	}
	for i := range m.n {
		m.spent[i] = m.spent[i] || m.outer[i] || m.parent[i] >= 0
	}
}

// step looks at the edge from v to another vertex. It gives the end of a path
// that can be swapped, or -1.
func (m *matcher) step(v, to int) int {
	if m.spent[to] || v == to || m.base[v] == m.base[to] || m.mate[v] == to || !m.fits(v, to) {
		return -1
	}
	switch {
	case m.outer[to]:
		m.shrink(v, to)
	case m.parent[to] < 0 && m.mate[to] < 0:
		m.parent[to] = v
		return to
	case m.parent[to] < 0:
		m.parent[to] = v
		m.add(m.mate[to])
	}
	return -1
}

func (m *matcher) add(v int) {
	if !m.outer[v] {
		m.outer[v] = true
		m.queue = append(m.queue, v)
	}
}

// shrink makes the odd circuit through v and w stand as one outer vertex.
func (m *matcher) shrink(v, w int) {
	root := m.meet(v, w)
	in := make([]bool, m.n)
	m.mark(in, v, root, w)
	m.mark(in, w, root, v)
	for i := range m.n {
		if in[m.base[i]] {
			m.base[i] = root
			m.add(i)
		}
	}
}

// meet is the base at which the ways from v and w to the root come together.
func (m *matcher) meet(v, w int) int {
	seen := make([]bool, m.n)
	for v = m.base[v]; ; v = m.base[m.parent[m.mate[v]]] {
		seen[v] = true
		if m.mate[v] < 0 {
			break
		}
	}
	for w = m.base[w]; !seen[w]; w = m.base[m.parent[m.mate[w]]] {
	}
	return w
}

// mark notes the bases on the way from v to root, and turns the parents so that
// paths may run either way round the circuit; child is where v is entered from.
func (m *matcher) mark(in []bool, v, root, child int) {
	for m.base[v] != root {
		in[m.base[v]], in[m.base[m.mate[v]]] = true, true
		m.parent[v] = child
		child = m.mate[v]
		v = m.parent[child]
	}
}

// swap pairs anew along the path that ends at v.
func (m *matcher) swap(v int) {
	for v >= 0 {
		before := m.parent[v]
		next := m.mate[before]
		m.mate[v], m.mate[before] = before, v
		v = next
	}
}

// gather pairs anew, without losing a pair, so that alike vertices stand
// together where they fit: of two pairs whose first and whose second are alike,
// it makes one of the firsts and one of the seconds.
func gather(mate []int, fits, alike func(i, j int) bool) {
	for a := range mate {
		b := mate[a]
		if b < a || alike(a, b) {
			continue
		}
		for c := a + 1; c < len(mate); c++ {
			d := mate[c]
			if d < c || !alike(a, c) || !alike(b, d) || !fits(a, c) || !fits(b, d) {
				continue
			}
			mate[a], mate[c], mate[b], mate[d] = c, a, d, b
			break
		}
	}
}
