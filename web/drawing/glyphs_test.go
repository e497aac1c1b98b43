package drawing

import (
	"testing"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"codeberg.org/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
)

// The library that writes the sheets reads the same fonts with a reader of its
// own; both must measure alike.
func TestTextIsAsWideAsOnPaper(t *testing.T) {
	pdf := fpdf.New("P", "mm", "A4", "")
	pdf.AddUTF8FontFromBytes("face", "", dejavusanscondensed.TTF)
	pdf.AddUTF8FontFromBytes("face", "B", dejavusanscondensedbold.TTF)
	const size Micron = 10 * Millimetre
	for _, s := range []string{`4'-11 7/8"`, "+35 7/8", "−39", "START 16 3/4", "niche top", "Wände, čtvrtá", "1/2 · 1/3 × 5 … 7", "WAVE To"} {
		for style, got := range map[string]Micron{"": TextWidth(s, size), "B": BoldWidth(s, size)} {
			pdf.SetFont("face", style, 10/0.352778)
			want := Micron(pdf.GetStringWidth(s) * 1000)
			assert.InDelta(t, int64(want), int64(got), float64(10*len(s)), "%q %s", s, style)
		}
	}
}

func TestACharacterTheFontLacksIsTakenForASquare(t *testing.T) {
	assert.Equal(t, Micron(2000), TextWidth("壁", 2000))
	assert.Equal(t, Micron(2000), TextWidth("\U0001F6C1", 2000))
}

func BenchmarkGlyphTable(b *testing.B) {
	for b.Loop() {
		measured(dejavusanscondensed.TTF)
	}
}
