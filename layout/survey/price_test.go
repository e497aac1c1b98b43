package survey

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAPriceIsReadAsPeopleWriteIt(t *testing.T) {
	for text, want := range map[string]struct {
		cents int64
		said  string
	}{
		"74.50":      {7450, "74.50"},
		"74,5":       {7450, "74.50"},
		"38":         {3800, "38.00"},
		"$42.50":     {4250, "$42.50"},
		"$ 42.50":    {4250, "$42.50"},
		"42,50 €":    {4250, "42.50 €"},
		"£1,250.00":  {125000, "£1250.00"},
		"1.250,00 €": {125000, "1250.00 €"},
	} {
		cents, money, ok := price(text)
		assert.True(t, ok, text)
		assert.Equal(t, want.cents, cents, text)
		assert.Equal(t, want.said, money.Of(map[int64]string{7450: "74.50", 3800: "38.00", 4250: "42.50", 125000: "1250.00"}[cents]), text)
	}
	for _, text := range []string{"", "$", "cheap", "1.234", "1,250", "$42.50 €", "-3", "12,34.00", "€ $ 3"} {
		_, _, ok := price(text)
		assert.False(t, ok, text)
	}
}
