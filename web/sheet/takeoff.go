package sheet

// takeOff lists what to buy.
func (b *book) takeOff() {
	f := b.flow(subject{title: "Take-off"}, false)
	f.words(body, "Counted from the pieces and the joints, not guessed. Spare is for breakage and loss, and stands apart.")
	t := table{columns: []column{{name: "item", share: 34, bold: true}, {name: "buy", share: 20, bold: true, right: true}, {name: "unit", share: 20},
		{name: "net", share: 16, right: true}, {name: "spare", share: 16, right: true}, {name: "boxes", share: 16, right: true},
		{name: "price", share: 20, right: true}, {name: "because", share: 60}}, text: plain}
	for _, l := range append(b.buy.Lines[:len(b.buy.Lines):len(b.buy.Lines)], b.buy.Flat) {
		t.rows = append(t.rows, row{cells: []string{l.Item, l.Amount(), l.Unit, number(l.Net), number(l.Spare), unlessZero(l.Boxes), l.Price(), l.Because}})
	}
	f.table(t)
	f.words(plain, "The last line is there to compare with: nothing is bought by it.")
	f.cautions(atTheSaw...)
}

func unlessZero(n int) string {
	if n == 0 {
		return ""
	}
	return number(n)
}
