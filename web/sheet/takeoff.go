package sheet

import (
	"fmt"
	"strings"

	"coursewright/layout/takeoff"
)

// takeOff lists what to buy.
func (b *book) takeOff() {
	b.fitted(subject{title: "Take-off"}, false, func(f *flow) {
		f.words(plain, "What to buy, in the packs of a shop: counted from the pieces and the joints, not guessed.")
		t := table{columns: []column{{name: "item", share: 32, bold: true}, {name: "buy", share: 19, bold: true, right: true}, {name: "of", share: 28},
			{name: "boxes", share: 12, right: true}, {name: "price", share: 20, right: true}, {name: "because", share: 69}}}
		total := int64(0)
		for _, l := range b.buy.Lines {
			total += l.Cents
			t.rows = append(t.rows, row{cells: []string{l.Item, held(l.Amount()), packText(l), unlessZero(l.Boxes), l.Price(), l.Because}})
		}
		f.table(t)
		if total > 0 {
			f.words(strong, "Known prices together: "+takeoff.Line{Cents: total}.Price())
		}
		f.words(plain, fmt.Sprintf("To compare: the flat 10 %% rule would buy %d tiles (%s).", b.buy.Flat.Count, b.buy.Flat.Because))
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
