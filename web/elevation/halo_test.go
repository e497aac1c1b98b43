package elevation_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/web/drawing"
	"coursewright/web/drawing/sample"
	"coursewright/web/elevation"
)

// Lines that run over cuts, of the start, a lap and a corner, are each on a halo of at least 3 to 1 (WCAG 2.2, SC 1.4.11), on light ground
// and on dark: straight on the cuts they had 1.1 to 2.2 there. No halo is printed.
func TestLinesOverCutsStandOnAHalo(t *testing.T) {
	svg := string(write(t, drawing.Wrap(sample.Plan(), drawing.Options{}), elevation.Options{}))
	paths := regexp.MustCompile(`<path d="([^"]*)" class="(\w+)"`).FindAllStringSubmatch(svg, -1)
	found := 0
	for i, p := range paths {
		if over := p[2] == "start" || p[2] == "lap" || p[2] == "corner"; over && !strings.HasSuffix(p[1], "z") {
			found++
			assert.Equal(t, []string{p[1], "halo"}, paths[i-1][1:], p[2])
		}
	}
	assert.Greater(t, found, 5)
	assert.Contains(t, elevation.Style, "@media print{.drawing .halo{display:none}}")
	for halo, lines := range map[string][]string{
		"#ffffff": {"#000000", "#0b4a8f", "#595959"}, // light
		"#13181c": {"#e9e6df", "#8fbfff", "#a9b1b8"}, // dark
	} {
		for _, line := range lines {
			assert.Contains(t, elevation.Style+svg+`"#595959"`, line)
			assert.GreaterOrEqual(t, contrast(halo, line), 3.0, "%s on %s", line, halo)
		}
	}
	assert.Contains(t, svg, `stroke="#ffffff" stroke-width="1050"`)
	assert.Contains(t, elevation.Style, ".drawing .halo{stroke:#13181c}")
}

// contrast is that of two colours by WCAG 2.2.
func contrast(a, b string) float64 {
	light := func(colour string) (sum float64) {
		for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
			n, _ := strconv.ParseUint(colour[1+2*i:3+2*i], 16, 8)
			v := float64(n) / 255
			if v <= 0.04045 {
				sum += weight * v / 12.92
			} else {
				sum += weight * math.Pow((v+0.055)/1.055, 2.4)
			}
		}
		return sum
	}
	x, y := light(a), light(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}
