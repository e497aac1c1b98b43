package form

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"

	"coursewright/layout/survey"
)

func TestWhatIsSoldAndWhatLeansIsSaidInOnePhrase(t *testing.T) {
	for want, v := range map[string]any{
		"10, at $42.50":                    survey.Box{Count: 10, Price: "$42.50"},
		"8 on 11.63 sq ft":                 survey.Box{Count: 8, Area: "11.63 sq ft"},
		"1/4 to the left in 48":            []survey.Lean{{Height: "0", Off: "0"}, {Height: "48", Off: "-1/4"}},
		"1/4 to the right in 60":           []survey.Lean{{Height: "-60", Off: "-1/4"}, {Height: "60", Off: "1/4"}},
		"1/4 to the right in 48":           []survey.Lean{{Height: "0", Off: "0"}, {Height: "48", Off: "1/4"}},
		"plumb":                            []survey.Lean{{Height: "0", Off: "0"}, {Height: "48", Off: "-0"}},
		"height 3, off 0; height 4, off 1": []survey.Lean{{Height: "3", Off: "0"}, {Height: "4", Off: "1"}},
	} {
		assert.Equal(t, want, phrase(reflect.ValueOf(v)))
	}
}
