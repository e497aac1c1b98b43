package count

// table keeps what was worked out, so many of it; what comes then finds it empty.
type table[K comparable, V any] struct {
	values map[K]V
	most   int
	meter  *meter
}

func newTable[K comparable, V any](most int, m *meter) table[K, V] {
	return table[K, V]{map[K]V{}, most, m}
}

// of is what stands in a table for a key, worked out once.
func (t table[K, V]) of(key K, make func() V) V {
	v, there := t.values[key]
	if !there {
		v = make()
		t.put(key, v)
	}
	return v
}

func (t table[K, V]) put(key K, v V) {
	if t.full() {
		t.empty()
	}
	t.values[key] = v
}

func (t table[K, V]) full() bool { return len(t.values) >= t.most }

// empty forgets all of it: it is counted again where it is asked for again.
func (t table[K, V]) empty() {
	clear(t.values)
	t.meter.emptied = true
}
