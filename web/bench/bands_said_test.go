package bench_test

import (
	"os"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
	"coursewright/web/trial"
)

// What is said of where a band stands follows what is typed: it told where the band stood before until the page was loaded
// again. Under the level line it is said in words.
func TestWhereABandStandsFollowsWhatIsTyped(t *testing.T) {
	file, err := os.ReadFile("../../static/demo.json")
	require.NoError(t, err)
	job, err := survey.Read(file)
	require.NoError(t, err)
	job.Bands = []survey.Band{{Name: "liner", Tile: survey.Tile{Width: "6", Height: "1/2"}, Bottom: survey.Mark{At: "-3"}}}
	file, err = survey.Write(job)
	require.NoError(t, err)
	s := trial.Of(t, file)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"), trial.Ready)
	said := `document.getElementById("about-bands[0]").textContent`
	require.Contains(t, trial.See[string](t, ctx, said), `Its bottom stands 3" under the level line, its top 2 1/2" under the level line`)
	trial.See[bool](t, ctx, `document.getElementById("bands[0].bottom.at").closest("details").open = true`)
	trial.Type(t, ctx, "bands[0].bottom.at", "5")
	trial.Await(t, ctx, said+`.startsWith('It stands from 5" up to 5 1/2" over the level line')`)
}
