package sheet

import (
	"time"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"codeberg.org/go-pdf/fpdf"
)

// Font is the family of all printed text. Only the characters used are
// embedded.
const Font = "DejaVuCondensed"

// NewPDF starts a document in millimetres without margins. The same content
// and the same time give the same bytes.
func NewPDF(paper string, at time.Time) *fpdf.Fpdf {
	pdf := fpdf.New("P", "mm", paper, "")
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetCreationDate(at)
	pdf.SetModificationDate(at)
	pdf.SetCatalogSort(true)
	pdf.SetProducer("Coursewright", true)
	pdf.AddUTF8FontFromBytes(Font, "", dejavusanscondensed.TTF)
	pdf.AddUTF8FontFromBytes(Font, "B", dejavusanscondensedbold.TTF)
	return pdf
}
