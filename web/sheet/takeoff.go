package sheet

import (
	"strings"

	"coursewright/layout/takeoff"
)

// takeOff lists what to buy.
func (b *book) takeOff() {
	b.fitted(subject{title: "Take-off"}, false, func(f *flow) {
		f.words(plain, "What to buy, in the packs of a shop: counted from the pieces and the joints, not guessed.")
		t := table{columns: []column{{name: "item", share: 32, bold: true}, {name: "buy", share: 19, bold: true, right: true}, {name: "of", share: 28}}}
		total, priced := takeoff.Total(b.buy.Lines)
		boxes := 0
		for _, l := range b.buy.Lines {
			boxes += l.Boxes
		}
		if boxes > 0 {
			t.columns = append(t.columns, column{name: "boxes", share: 12, right: true})
		}
		if priced > 0 {
			t.columns = append(t.columns, column{name: "price", share: 20, right: true})
		}
		t.columns = append(t.columns, column{name: "because", share: 69})
		for _, l := range b.buy.Lines {
			cells := []string{l.Item, held(l.Amount()), packText(l)}
			if boxes > 0 {
				cells = append(cells, unlessZero(l.Boxes))
			}
			if priced > 0 {
				cells = append(cells, l.Cost())
			}
			t.rows = append(t.rows, row{cells: append(cells, l.Because)})
		}
		f.table(t)
		if priced > 0 {
			f.words(strong, "Known prices together: "+total.Cost())
		}
		f.words(plain, "To compare: "+b.buy.Flat.Because+". "+b.buy.Compared())
	})
}

// packText is the pack with its size in one line.
func packText(l takeoff.Line) string {
	noun, size, _ := strings.Cut(l.Of(), " of ")
	size, other, both := strings.Cut(size, " (")
	if size = held(size); both { // in other units
		size += " " + held("("+other)
	}
	return strings.TrimSuffix(noun+" of "+size, " of ")
}

func unlessZero(n int) string {
	if n == 0 {
		return ""
	}
	return number(n)
}
