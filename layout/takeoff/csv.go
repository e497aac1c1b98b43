package takeoff

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/survey"
	"coursewright/layout/table"
)

var columns = []string{"item", "count", "unit", "net", "spare", "boxes", "price", "because"}

// Columns are the heads of the columns of the CSV.
func Columns() []string { return slices.Clone(columns) }

// CSV writes the list with one row per line and the flat 10 % rule last, safe
// to open in a spreadsheet (see table.Write). It fails only when w does.
func (t Takeoff) CSV(w io.Writer) error {
	rows := [][]string{columns}
	for _, l := range append(t.Lines[:len(t.Lines):len(t.Lines)], t.Flat) {
		rows = append(rows, []string{l.Item, l.Amount(), l.Unit, strconv.Itoa(l.Net), strconv.Itoa(l.Spare), unlessZero(l.Boxes), l.Price(), l.Because})
	}
	return table.Write(w, rows)
}

// Amount is the count, or the range, to buy: "352", "3 to 4", and "open" for
// what cannot be counted.
func (l Line) Amount() string {
	if l.Open {
		return "open"
	}
	if l.Least > 0 && l.Least < l.Count {
		return fmt.Sprintf("%d to %d", l.Least, l.Count)
	}
	return strconv.Itoa(l.Count)
}

// Of is the unit of so many: "bags of 10 lb" of which there are two.
func (l Line) Of() string {
	if l.Count == 1 || l.Open {
		return l.Unit
	}
	noun, rest, _ := strings.Cut(l.Unit, " ")
	return strings.TrimSpace(noun + "s " + rest)
}

// Price is the price with its hundredths, "447.00"; empty when not known.
func (l Line) Price() string {
	if l.Cents == 0 {
		return ""
	}
	return decimal(l.Cents, 2)
}

// Cost is the price with the sign of its money as it was typed, for people: "$447.00".
func (l Line) Cost() string {
	if l.Cents == 0 {
		return ""
	}
	return l.Money.Of(decimal(l.Cents, 2))
}

// Tiles is how much tile there is to buy, of every size and of bands, strips and faces too: "42",
// or where some comes on sheets "42 and 6 sheets".
func Tiles(lines []Line) string {
	pieces, sheets := 0, 0
	for _, l := range lines {
		switch {
		case l.Item != "tile" && l.Item != sheeted && l.Further == 0 && !l.Other:
		case l.Unit == "sheet":
			sheets += l.Count
		default:
			pieces += l.Count
		}
	}
	switch {
	case sheets == 0:
		return strconv.Itoa(pieces)
	case pieces == 0:
		return counted(sheets, "sheet")
	}
	return fmt.Sprintf("%d and %s", pieces, counted(sheets, "sheet"))
}

// Total adds up what has a price, and tells how many lines those are. Prices of several moneys add up
// to a figure without a sign.
func Total(lines []Line) (total Line, known int) {
	for _, l := range lines {
		if l.Cents == 0 {
			continue
		}
		if known++; known == 1 {
			total.Money = l.Money
		}
		if total.Cents += l.Cents; total.Money != l.Money {
			total.Money = survey.Money{}
		}
	}
	return total, known
}

// Unpriced names what a total leaves out, as "trim, backing board, membrane and 4 more"; empty where all has a price.
func Unpriced(lines []Line) string {
	const named = 3
	var out []string
	for _, l := range lines {
		if l.Cents == 0 && !slices.Contains(out, l.Item) {
			out = append(out, l.Item)
		}
	}
	if n := len(out) - named; n > 1 {
		out = append(out[:named:named], fmt.Sprintf("%d more", n))
	}
	last := len(out) - 1
	if last < 1 {
		return strings.Join(out, "")
	}
	return strings.Join(out[:last], ", ") + " and " + out[last]
}

func unlessZero(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}
