package count

// meter counts how many tiles were cut and features looked at, for a budget.
type meter struct{ work int }

func (m *meter) add(n int) { m.work += n }
