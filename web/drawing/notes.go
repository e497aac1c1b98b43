package drawing

import (
	"strings"

	"coursewright/layout"
	"coursewright/layout/length"
	"coursewright/layout/survey"
)

// seen says from where a wall is seen and what its figures are in.
func (b *board) seen() string {
	units := "inches"
	if b.plan.Room.Units == length.Metric {
		units = "mm"
	}
	return "seen from inside the room · sizes in " + units + ", heights from the level line" + b.doubtNote()
}

// levelFrom says where the level line lies over what was measured first.
func (b *board) levelFrom(w layout.Wall) string {
	t, found := footOf(frame{scale: Scale{1, 1}}, w)
	if !found {
		return ""
	}
	at := survey.At(t.base.Readings, t.ends[0])
	if at >= 0 {
		return ""
	}
	return " · level line " + b.figure(-at) + " over the " + string(t.base.Meets) + ", left"
}

// linesOf breaks a text into lines no longer than wide, where words end; a fraction stays with its whole number.
func linesOf(text string, size, wide Micron) []string {
	var out []string
	line, words := "", strings.Split(text, " ")
	for i, word := range words {
		if i > 0 && fractionOf(words[i-1], word) {
			continue
		}
		if i+1 < len(words) && fractionOf(word, words[i+1]) {
			word += " " + words[i+1]
		}
		longer := strings.TrimPrefix(line+" "+word, " ")
		if line != "" && TextWidth(longer, size) > wide {
			out, longer = append(out, line), word
		}
		line = longer
	}
	return append(out, line)
}

// fractionOf tells whether a word is the fraction that goes with the whole number before it: 37 13/16".
func fractionOf(number, word string) bool {
	digit := func(c byte) bool { return '0' <= c && c <= '9' }
	return number != "" && digit(number[len(number)-1]) && word != "" && digit(word[0]) && strings.Contains(word, "/")
}

// notesHeight is the room that notes and legend take under a drawing.
func (b *board) notesHeight(wide Micron) Micron {
	n := Micron(len(linesOf(b.seen(), b.texts.note, wide)))
	return n*leading(b.texts.note) + b.legendHeight(wide) + 2*clearance
}

// notes writes them from a place down.
func (b *board) notes(x, y, wide Micron) {
	for _, line := range linesOf(b.seen(), b.texts.note, wide) {
		y += leading(b.texts.note)
		b.label(Label{Tag: Tag{Kind: Note, Wall: -1}, Text: line, Size: b.texts.note, At: Point{x, y}, Colour: Grey})
	}
	b.legend(Point{x, y + 2*clearance}, wide)
}
