package trial

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Of a list a browser sends what is selected, and where nothing is, the first.
func TestFieldsAreThoseABrowserSends(t *testing.T) {
	got := Fields(t, `<form id="survey">
		<select name="a"><option value="1">one</option><option value="2" selected>two</option></select>
		<select name="b"><option value="">none</option><option value="2">two</option></select>
		<select name="c"></select>
		<input type="checkbox" name="d" value="1"><input name="e" value="x"></form>`)
	assert.Equal(t, "a=2&b=&e=x", got.Encode())
}
