package count

// meter counts work for a budget: one stands for about the same time, whatever is done (a quarter to a half of a microsecond on a busy server).
type meter struct {
	work    int
	emptied bool // a table was: some of the work may be counted twice
}

func (m *meter) add(n int) { m.work += n }
