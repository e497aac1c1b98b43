package count

// meter counts work for a budget: one for about as much as a server does in a sixth of a microsecond, whatever is done.
type meter struct{ work int }

func (m *meter) add(n int) { m.work += n }
