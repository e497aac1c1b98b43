package sheet

import (
	"fmt"
	"strings"

	"coursewright/layout/length"
	"coursewright/web/drawing"
)

const mmPaper = drawing.Millimetre

// Paper is a size of paper, upright.
type Paper struct {
	Name          string
	Width, Height drawing.Micron
}

// Papers lists the sizes there are: ISO 216 A4 and A3, ANSI A (Letter) and B (Tabloid).
func Papers() []Paper {
	return []Paper{
		{"A4", 210 * mmPaper, 297 * mmPaper}, {"Letter", 215900, 279400},
		{"A3", 297 * mmPaper, 420 * mmPaper}, {"Tabloid", 279400, 431800},
	}
}

// PaperNamed finds a paper by its name in any case; nothing gives the zero
// Paper. The error says which there are.
func PaperNamed(name string) (Paper, error) {
	if name == "" {
		return Paper{}, nil
	}
	for _, p := range Papers() {
		if strings.EqualFold(p.Name, name) {
			return p, nil
		}
	}
	return Paper{}, fmt.Errorf("there is no paper %q; choose a4, letter, a3 or tabloid", name)
}

func usualPaper(units length.System) Paper {
	if units == length.Metric {
		return Papers()[0]
	}
	return Papers()[1]
}

// lie is the paper upright or on its long side.
func (p Paper) lie(wide bool) drawing.Point {
	if wide {
		return drawing.Point{X: p.Height, Y: p.Width}
	}
	return drawing.Point{X: p.Width, Y: p.Height}
}
