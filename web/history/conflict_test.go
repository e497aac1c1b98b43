package history_test

import (
	"coursewright/web/trial"

	"context"
	"net/http"
	"net/url"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inTwoWindows edits the same form twice, in the second without the first.
func inTwoWindows(s trial.Site, first, second []string, headers ...string) (*http.Response, string) {
	s.T.Helper()
	a, b := s.Bench(), s.Bench()
	for i := 0; i < len(first); i += 2 {
		a.Set(first[i], first[i+1])
	}
	for i := 0; i < len(second); i += 2 {
		b.Set(second[i], second[i+1])
	}
	answer, page := s.Post("/jobs/1", a)
	require.Equal(s.T, http.StatusSeeOther, answer.StatusCode, page)
	return s.Post("/jobs/1", b, headers...)
}

// picks answers the page on which two edits meet.
func picks(t *testing.T, page string, fields ...string) url.Values {
	out := trial.Hidden(t, page)
	for i := 0; i < len(fields); i += 2 {
		out.Set(fields[i], fields[i+1])
	}
	return out
}

func TestAFieldBothWindowsChangedIsAskedFor(t *testing.T) {
	s := trial.Swift(t)
	answer, page := inTwoWindows(s, []string{"joint", "3/16", "walls[0].width", "35"}, []string{"joint", "3/32", "tile.name", "mine"})
	require.Equal(t, http.StatusConflict, answer.StatusCode)
	assert.Contains(t, page, `<span class="value">3/16</span>`)
	assert.Contains(t, page, `<span class="value">3/32</span>`)
	assert.Contains(t, page, "was: 1/8")
	assert.NotContains(t, page, `name="pick tile.name"`, "only one changed it")
	_, job := s.Stored()
	assert.Equal(t, "3/16", job.Joint.Plain, "nothing is written yet")

	answer, again := s.Post("/jobs/1/keep", trial.Hidden(t, page))
	require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode, "a choice is made by the person")
	assert.Contains(t, again, "Choose one of the two")
	answer, _ = s.Post("/jobs/1/keep", picks(t, again, "pick joint", "yours"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/jobs/1", answer.Header.Get("Location"))
	_, job = s.Stored()
	assert.Equal(t, []string{"3/32", "35", "mine"}, []string{job.Joint.Plain, job.Walls[0].Width, job.Tile.Name})

	s.Post("/jobs/1/undo", s.With())
	_, job = s.Stored()
	assert.Equal(t, []string{"3/16", "35", "kiln white"}, []string{job.Joint.Plain, job.Walls[0].Width, job.Tile.Name}, "undo brings back what was saved")
}

func TestTheSavedValueCanBeKept(t *testing.T) {
	s := trial.Swift(t)
	_, page := inTwoWindows(s, []string{"joint", "3/16", "tile.name", "theirs"}, []string{"joint", "3/32", "tile.name", "mine", "bed", "1/4"})
	before, _ := s.Stored()
	answer, _ := s.Post("/jobs/1/keep", picks(t, page, "pick joint", "saved", "pick tile.name", "yours"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.Equal(t, []string{"3/16", "mine", "1/4"}, []string{job.Joint.Plain, job.Tile.Name, job.Bed})
	s.Post("/jobs/1/undo", s.With())
	after, _ := s.Stored()
	assert.Equal(t, before.Revision, after.Revision)

	s = trial.Swift(t)
	_, page = inTwoWindows(s, []string{"joint", "3/16", "tile.name", "theirs", "walls[0].width", "35"}, []string{"joint", "3/32", "tile.name", "mine"})
	s.Post("/jobs/1/keep", picks(t, page, "all", "yours"))
	_, job = s.Stored()
	assert.Equal(t, []string{"3/32", "mine", "35"}, []string{job.Joint.Plain, job.Tile.Name, job.Walls[0].Width})
}

func TestEditsOfDifferentFieldsAreSavedTogetherAndSaid(t *testing.T) {
	for _, header := range [][]string{nil, {"X-Bench", "live"}} {
		s := trial.Swift(t)
		answer, page := inTwoWindows(s, []string{"joint", "3/16"}, []string{"tile.name", "mine"}, header...)
		require.Equal(t, http.StatusOK, answer.StatusCode)
		assert.Regexp(t, `id="status"[^>]*>Saved, together with what was changed in another window: [Jj]oint: 3/16<`, page)
		assert.Equal(t, "3/16", trial.Fields(t, page).Get("joint"))
		_, job := s.Stored()
		assert.Equal(t, []string{"3/16", "mine"}, []string{job.Joint.Plain, job.Tile.Name})
		answer, page = s.Post("/jobs/1", trial.Fields(t, page))
		require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
		_, again := s.Stored()
		assert.Equal(t, job, again)
	}
}

// Two people measure a new room, each in a window of their own.
func TestWhatIsMeasuredInTwoWindowsIsMeasured(t *testing.T) {
	guessed := func() trial.Site {
		s := trial.Swift(t)
		edited(t, s, "do", "guess tile.width tile.height")
		return s
	}
	s := guessed()
	answer, page := inTwoWindows(s, []string{"tile.width", "6"}, []string{"tile.height", "3"})
	require.Equal(t, http.StatusOK, answer.StatusCode, "two figures, no question")
	assert.Contains(t, page, "Saved, together with what was changed in another window: Width of a tile: 6")
	_, job := s.Stored()
	assert.Equal(t, []string{"6", "3"}, []string{job.Tile.Width, job.Tile.Height})
	assert.Empty(t, job.Guess)

	s = guessed()
	_, job = s.Stored()
	answer, page = inTwoWindows(s, []string{"tile.width", "6"}, []string{"tile.width", job.Tile.Width})
	require.Equal(t, http.StatusConflict, answer.StatusCode, "who types just what was guessed has measured it too")
	assert.Contains(t, page, "was: "+job.Tile.Width+", a guess")
	answer, page = s.Post("/jobs/1/keep", picks(t, page, "pick tile.width", "saved"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job = s.Stored()
	assert.Equal(t, "6", job.Tile.Width)
	assert.Equal(t, []string{"tile.height"}, job.Guess)

	s = guessed()
	_, job = s.Stored()
	answer, page = inTwoWindows(s, []string{"tile.width", job.Tile.Width}, []string{"tile.name", "mine"})
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "another window: Width of a tile: measured")
}

// TestAWallAddedElsewhereIsShownBeforeItIsSaved: the form of the later edit has no fields for it.
func TestAWallAddedElsewhereIsShownBeforeItIsSaved(t *testing.T) {
	s := trial.Swift(t)
	answer, page := inTwoWindows(s, []string{"do", "add walls[1].openings pipe"}, []string{"joint", "3/16"})
	require.Equal(t, http.StatusConflict, answer.StatusCode)
	assert.Contains(t, page, "shelf; pipe")
	assert.Contains(t, page, "Save both together")
	answer, page = s.Post("/jobs/1/keep", trial.Hidden(t, page))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
	_, job := s.Stored()
	assert.Len(t, job.Walls[1].Openings, 2)
	assert.Equal(t, "3/16", job.Joint.Plain)
}

func TestAThirdEditMeetsTheChoicesMade(t *testing.T) {
	s := trial.Swift(t)
	third := s.Bench()
	_, page := inTwoWindows(s, []string{"joint", "3/16"}, []string{"joint", "3/32"})
	third.Set("joint", "1/4")
	third.Set("tile.name", "third")
	_, other := s.Post("/jobs/1", third)
	s.Post("/jobs/1/keep", picks(t, other, "pick joint", "yours"))
	answer, page := s.Post("/jobs/1/keep", picks(t, page, "pick joint", "yours"))
	require.Equal(t, http.StatusConflict, answer.StatusCode)
	assert.Contains(t, page, "was: 3/16")
	answer, _ = s.Post("/jobs/1/keep", picks(t, page, "pick joint", "yours"))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	_, job := s.Stored()
	assert.Equal(t, []string{"3/32", "third"}, []string{job.Joint.Plain, job.Tile.Name})
}

func TestEditsThatCannotStandTogetherComeBackAsTyped(t *testing.T) {
	s := trial.Swift(t)
	answer, page := inTwoWindows(s, []string{"walls[1].width", "58"}, []string{"walls[1].base[0].readings[1].at", "59"})
	require.Equal(t, http.StatusConflict, answer.StatusCode)
	answer, page = s.Post("/jobs/1/keep", trial.Hidden(t, page))
	require.Equal(t, http.StatusUnprocessableEntity, answer.StatusCode)
	shown := trial.Fields(t, page)
	assert.Equal(t, "58", shown.Get("walls[1].width"))
	assert.Equal(t, "59", shown.Get("walls[1].base[0].readings[1].at"))
	shown.Set("walls[1].base[0].readings[1].at", "30")
	answer, page = s.Post("/jobs/1", shown)
	require.Equal(t, http.StatusSeeOther, answer.StatusCode, page)
}

func TestTheConflictPageRefusesWhatItDidNotAsk(t *testing.T) {
	s := trial.Swift(t)
	_, page := inTwoWindows(s, []string{"joint", "3/16"}, []string{"joint", "3/32"})
	before, _ := s.Stored()
	good := picks(t, page, "pick joint", "yours")
	for name, value := range map[string]string{"document": "{}", "revision": "", "pick joint": "both"} {
		bad := url.Values{}
		for k, v := range good {
			bad[k] = v
		}
		bad.Set(name, value)
		answer, _ := s.Post("/jobs/1/keep", bad)
		assert.Contains(t, []int{http.StatusBadRequest, http.StatusUnprocessableEntity}, answer.StatusCode, name)
	}
	after, _ := s.Stored()
	assert.Equal(t, before.Revision, after.Revision)
}

// awaitBehind waits for a script to give true in a tab that may stand behind another: it is not
// painted, so nothing that waits for a painting comes back.
func awaitBehind(t *testing.T, tab context.Context, script string) {
	t.Helper()
	_, err := chromedp.Run(tab, chromedp.Poll[bool](script, chromedp.WithPollingInterval(50*time.Millisecond)))
	require.NoError(t, err, script)
}

// TestTwoWindowsInABrowser edits one job in two tabs of one Chromium.
func TestTwoWindowsInABrowser(t *testing.T) {
	s := trial.New(t)
	one := trial.Browse(t)
	saved := `document.getElementById("status").textContent.startsWith("Saved")`
	trial.Steps(t, one, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
	two, stop := chromedp.NewContext(one)
	t.Cleanup(stop)
	trial.Steps(t, two, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))

	trial.Type(t, one, "joint", "3/16")
	trial.Await(t, one, saved)
	trial.Type(t, two, "tile.name", "mine")
	trial.Await(t, two, saved)
	assert.Contains(t, trial.See[string](t, two, `document.getElementById("status").textContent`), "another window")
	assert.Equal(t, "3/16", trial.See[string](t, two, `document.getElementById("joint").value`), "what the other changed came along")

	trial.Type(t, two, "joint", "3/32")
	trial.Await(t, two, `document.getElementById("status").textContent === "Saved"`)
	trial.Type(t, one, "joint", "1/4")
	awaitBehind(t, one, `document.querySelector(".odds") !== null`)
	assert.Equal(t, []string{"3/32", "1/4"}, trial.See[[]string](t, one, `[...document.querySelectorAll(".odds .value")].map((e) => e.textContent)`))
	trial.See[bool](t, one, `(() => { document.querySelector(".odds input[value=yours]").click(); document.querySelector("main form button").click(); return true })()`)
	require.Eventually(t, func() bool {
		_, job := s.Stored()
		return job.Joint.Plain == "1/4" && job.Tile.Name == "mine"
	}, trial.Patience, 20*time.Millisecond)
}

// TestWhatIsTypedWhileAnotherEditIsAnsweredOverwritesNothing holds an answer back in which another
// window's change comes along, and types on meanwhile.
func TestWhatIsTypedWhileAnotherEditIsAnsweredOverwritesNothing(t *testing.T) {
	s := trial.New(t)
	ctx := trial.Browse(t)
	trial.Steps(t, ctx, chromedp.Navigate(s.URL+"/jobs/1"), chromedp.WaitVisible("#drawing svg"))
	elsewhere := s.Bench()
	elsewhere.Set("tile.name", "theirs")
	s.Post("/jobs/1", elsewhere)
	trial.See[bool](t, ctx, `(() => {
		const real = window.fetch, gate = new Promise((open) => { window.openGate = open; });
		window.fetch = async (...a) => { window.asked = true; await gate; return real(...a); };
		return true;
	})()`)
	trial.Type(t, ctx, "joint", "3/16")
	trial.Await(t, ctx, `window.asked === true`)
	trial.Type(t, ctx, "bed", "1/4")
	trial.Await(t, ctx, `(window.typedAt ??= performance.now()) + 1000 < performance.now()`) // the pause after a key is over
	trial.See[bool](t, ctx, `(() => { openGate(); return true })()`)
	require.Eventually(t, func() bool {
		_, job := s.Stored()
		return job.Bed == "1/4"
	}, trial.Patience, 20*time.Millisecond)
	_, job := s.Stored()
	assert.Equal(t, []string{"3/16", "1/4", "theirs"}, []string{job.Joint.Plain, job.Bed, job.Tile.Name})
	trial.Await(t, ctx, `document.getElementById("status").textContent.startsWith("Saved")`) // by itself, or together with theirs
	assert.Equal(t, "theirs", trial.See[string](t, ctx, `document.getElementById("tile.name").value`))
}
