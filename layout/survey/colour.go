package survey

import (
	"fmt"
	"strconv"
	"strings"
)

// Colour is a colour as screens mix it, 0xRRGGBB.
type Colour uint32

// Colours of a job that names none: a warm white tile and a light grey grout.
// They only serve the look of the finished wall.
const (
	UsualTile  Colour = 0xf3efe4
	UsualGrout Colour = 0xb5afa3
	UsualBand  Colour = 0x7d8f8c // the tile of a band: a grey green that stands out from it
)

// String writes the colour as a job file holds it.
func (c Colour) String() string { return fmt.Sprintf("#%06x", uint32(c)) }

// colour reads "#rrggbb"; nothing gives what is usual.
func (r *resolver) colour(v value, usual Colour) Colour {
	if v.text == "" {
		return usual
	}
	digits, hash := strings.CutPrefix(v.text, "#")
	n, err := strconv.ParseUint(digits, 16, 24)
	if !hash || len(digits) != len("rrggbb") || err != nil {
		r.faults.add(v.path, quote(v.text), "a colour as # and six digits 0 to f, such as "+usual.String())
		return usual
	}
	return Colour(n)
}
