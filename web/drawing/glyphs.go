package drawing

import (
	"sync"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// tabled is how many characters, from the first, have their widths in the
// table. The font draws none over it.
const tabled = 0x10000

// em is the width that is taken for a character the font does not have, in
// thousandths of the text height. A square one, such as Chinese, is as wide.
const em = 1000

// glyphs are the widths of a face's characters, in thousandths of the text height.
type glyphs [tabled]uint16

// The widths in the faces that screen and paper are set in, made from the fonts
// themselves when first asked for.
var (
	regular = sync.OnceValue(func() *glyphs { return measured(dejavusanscondensed.TTF) })
	heavy   = sync.OnceValue(func() *glyphs { return measured(dejavusanscondensedbold.TTF) })
)

// measured makes the table of a font, which is embedded and so can be read.
func measured(ttf []byte) *glyphs {
	face, err := sfnt.Parse(ttf)
	if err != nil {
		panic(err)
	}
	var table glyphs
	var work sfnt.Buffer
	for r := range rune(tabled) {
		table[r] = em
		if g, err := face.GlyphIndex(&work, r); err == nil && g != 0 {
			if w, err := face.GlyphAdvance(&work, g, fixed.I(em), font.HintingNone); err == nil {
				table[r] = uint16(w.Ceil())
			}
		}
	}
	return &table
}

// width adds up the characters of a text.
func (g *glyphs) width(s string, size Micron) Micron {
	var w Micron
	for _, r := range s {
		if r < tabled {
			w += Micron(g[r])
		} else {
			w += em
		}
	}
	return (w*size + em - 1) / em
}

// TextWidth is how long a text of a height runs in DejaVu Sans Condensed,
// rounded up.
func TextWidth(s string, size Micron) Micron { return regular().width(s, size) }

// BoldWidth is the same in its bold face.
func BoldWidth(s string, size Micron) Micron { return heavy().width(s, size) }
