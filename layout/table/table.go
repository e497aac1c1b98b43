// Package table writes rows for a spreadsheet.
package table

import (
	"encoding/csv"
	"io"
	"strings"
)

// Write writes rows as CSV in UTF-8 with a byte order mark and CRLF, so that
// spreadsheets read the signs. A cell that a spreadsheet would take for a
// formula (it begins with = + - @, a tab or a line end) gets a ' before it;
// Safe tells how. It fails only when w does.
func Write(w io.Writer, rows [][]string) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for _, row := range rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = Safe(cell)
		}
		if err := out.Write(cells); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// Safe is the cell as text that no spreadsheet calculates.
func Safe(cell string) string {
	if cell != "" && strings.ContainsRune("=+-@\t\r\n", rune(cell[0])) {
		return "'" + cell
	}
	return cell
}
