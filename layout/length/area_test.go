package length_test

import (
	"errors"
	"testing"

	"coursewright/layout/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseArea(t *testing.T) {
	foot, inch, metre := length.Foot.Times(length.Foot), length.Inch.Times(length.Inch), length.Metre.Times(length.Metre)
	for text, want := range map[string]length.Area{
		"11.63 sq ft": (1163*foot + 50) / 100, "11,63 sqft": (1163*foot + 50) / 100, "5": 5 * foot, " 5 sq. ft. ": 5 * foot, "10 1/2 ft²": 21 * foot / 2,
		"1116 sq in": 1116 * inch, "1.08 m²": 108 * metre / 100, "1 m2": metre, "2 square metres": 2 * metre,
	} {
		got, err := length.ParseArea(text, length.Imperial)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	bare, err := length.ParseArea("1.5", length.Metric)
	require.NoError(t, err)
	assert.Equal(t, 3*metre/2, bare)
	for text, says := range map[string]string{
		"": "ends where a number is needed; write an area", "much": "where a number is needed", "5 yd": "has no unit of area “yd”; write sq ft, sq in or m²",
		"-5 m2": "where a number is needed", "10001 m2": "is out of bounds", "99999999999999999999999 sq ft": "is out of bounds",
	} {
		_, err := length.ParseArea(text, length.Imperial)
		var refused *length.ParseError
		require.True(t, errors.As(err, &refused), text)
		assert.Contains(t, err.Error(), says)
	}
}
