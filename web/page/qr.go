package page

import (
	"fmt"
	"strings"

	"rsc.io/qr"
)

// quiet is the empty edge round a square code, in modules.
const quiet = 4

func qrBox(c *qr.Code) string {
	return fmt.Sprintf("-%d -%d %d %d", quiet, quiet, c.Size+2*quiet, c.Size+2*quiet)
}

// qrPath draws the dark modules, each run of a row as one bar.
func qrPath(c *qr.Code) string {
	var d strings.Builder
	for y := range c.Size {
		for x := 0; x < c.Size; x++ {
			run := 0
			for x+run < c.Size && c.Black(x+run, y) {
				run++
			}
			if run > 0 {
				fmt.Fprintf(&d, "M%d %dh%dv1h-%dz", x, y, run, run)
				x += run
			}
		}
	}
	return d.String()
}
