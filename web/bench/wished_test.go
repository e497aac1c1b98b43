package bench_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/static"
	"coursewright/web/trial"
)

// A shelf, a bar and a band whose heights are ranges had jumped back after a drag while the page said "Saved" and
// no more. It says where they went and why, and holds them there or where they were put.
func TestWhatStandsElsewhereThanItWasPutSaysSo(t *testing.T) {
	job, err := survey.Read(static.Demo)
	require.NoError(t, err)
	height := func(from, to string) survey.Measure { return survey.Measure{Mark: &survey.Mark{From: from, To: to}} }
	job.Walls[1].Fixtures = []survey.Fixture{
		{Kind: "corner shelf", Name: "ledge", Corner: "right", Width: "8", Height: height("2", "14")},
		{Kind: "grab bar", Name: "bar", At: "30", Width: "20", Height: height("-26", "-20")},
	}
	job.Bands = []survey.Band{{Name: "liner", Tile: survey.Tile{Width: "6", Height: "1/2"}, Bottom: survey.Mark{From: "16", To: "22"}}}
	file, err := survey.Write(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	press := func(do string) string {
		answer, page := s.Post("/jobs/1?wall=2", s.With("do", do), "X-Bench", "live")
		require.Equal(t, 200, answer.StatusCode, do)
		return page
	}
	page := press("place 2 fixture ledge=11")
	assert.Contains(t, page, `>Saved. ledge went to +12&#34;</p>`)
	assert.Contains(t, page, `<strong>ledge</strong> stands at +12&#34;, not at +11&#34;: that is on the joint line of its range that is nearest to where it was put.`)
	assert.Contains(t, press("place 2 fixture ledge=9"), `>Saved</p>`, "it stands there")
	press("place 2 fixture ledge=11")

	put := trial.Button(t, page, "use walls%5B1%5D.fixtures%5B0%5D.height")
	page = press(put)
	_, job = s.Stored()
	assert.Equal(t, survey.Measure{Mark: &survey.Mark{At: "11"}}, job.Walls[1].Fixtures[0].Height, "it is held where it was put")
	assert.Empty(t, job.Walls[1].Fixtures[0].Near)
	assert.NotContains(t, page, "<strong>ledge</strong> stands at")

	page = press("place 2 fixture bar=30;-23")
	assert.Contains(t, page, `<strong>bar</strong> stands at −24 1/8&#34;, not at −23&#34;: that is the height of its range near where it was put at which its holes keep clear of the joints best.`)
	page = press("measure walls[1].fixtures[1].height")
	_, job = s.Stored()
	assert.Equal(t, "-24 1/8", job.Walls[1].Fixtures[1].Height.Mark.At, "it is held where it stands")

	page = press("place 2 band liner=20")
	assert.Contains(t, page, `>Saved. liner went to +21 1/8&#34;</p>`)
	assert.Contains(t, page, `<strong>liner</strong> stands at +21 1/8&#34;, not at +20&#34;: that is of its range the place where the set-out comes out best.`)
}
