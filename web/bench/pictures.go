package bench

import (
	"fmt"
	"strconv"
)

// across is a level dimension with its ticks, as the path of a picture.
func across(y, from, to int) string {
	return fmt.Sprintf("M%d %dH%dM%d %dl10-10M%d %dl10-10", from, y, to, from-5, y+5, to-5, y+5)
}

// upright is a plumb dimension with its ticks.
func upright(x, from, to int) string {
	return fmt.Sprintf("M%d %dV%dM%d %dl12-10M%d %dl12-10", x, from, to, x-6, from+5, x-6, to+5)
}

// tiled are tiles in rows, as one path: so many across and up, from a corner, each of a size, a gap apart; every other row is moved by shift.
func tiled(x, y, across, up, wide, high, gap, shift int) string {
	path := ""
	for row := range up {
		for n := range across {
			path += fmt.Sprintf("M%d %dh%dv%dh%dz", x+n*(wide+gap)+row%2*shift, y+row*(high+gap), wide, high, -wide)
		}
	}
	return path
}

func px(n int) string { return strconv.Itoa(n) }
