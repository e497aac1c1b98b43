package jobs_test

import (
	"fmt"
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

func TestJobsAreFoundByNameAndReadByThePage(t *testing.T) {
	s := trial.Swift(t)
	for i := range 120 {
		_, err := s.Store.Create(t.Context(), fmt.Sprintf("House %d <bath>", i), []byte(`{}`))
		require.NoError(t, err)
	}
	path, seen := "/", 0
	for path != "" {
		answer, page := s.Get(path)
		require.Equal(t, http.StatusOK, answer.StatusCode)
		seen += strings.Count(page, `class="job"`)
		path = ""
		if _, rest, found := strings.Cut(page, `rel="next" href="`); found {
			path, _, _ = strings.Cut(rest, `"`)
		}
	}
	assert.Equal(t, 121, seen)
	_, page := s.Get("/?find=" + url.QueryEscape("house 11 <"))
	assert.Equal(t, 11, strings.Count(page, `class="job"`), "11, and 110 to 119")
	assert.Contains(t, page, "11 jobs found.")
	assert.Contains(t, page, `action="/#list"`, "on a phone what is found stands under all there is to begin with")
	assert.Contains(t, page, `value="house 11 &lt;"`)
	_, page = s.Get("/?find=house&from=50")
	assert.Contains(t, page, `href="/?find=house"`)
	assert.Contains(t, page, `href="/?find=house&amp;from=100"`)
	_, page = s.Get("/?find=garden")
	assert.Contains(t, page, "No job is called that.")
	for _, odd := range []string{"/?from=-5", "/?from=x", "/?from=99999", "/?find=" + strings.Repeat("x", 5000)} {
		answer, _ := s.Get(odd)
		assert.Equal(t, http.StatusOK, answer.StatusCode, odd)
	}
}

func TestADeletedJobIsErasedAndItsBackupsAreSaid(t *testing.T) {
	s := trial.Swift(t)
	kept, err := s.Store.Create(t.Context(), "a name of its own", []byte(`{}`))
	require.NoError(t, err)
	require.NoError(t, s.Store.DailyBackup(t.Context(), time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)))
	path := fmt.Sprintf("/jobs/%d", kept.ID)
	answer, page := s.Post(path+"/erase", nil)
	assert.Equal(t, http.StatusConflict, answer.StatusCode, "a job in use is not erased")
	assert.Contains(t, page, "Delete it first")
	s.Post(path+"/delete", nil)
	_, page = s.Get("/")
	assert.Contains(t, page, "Erase for good a name of its own")
	answer, page = s.Post(path+"/erase", nil)
	require.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Contains(t, page, "no byte of it is left")
	assert.Contains(t, page, "daily-2026-03-01.db")
	assert.NotContains(t, page, "a name of its own")
	answer, _ = s.Post(path+"/erase", nil)
	assert.Equal(t, http.StatusNotFound, answer.StatusCode)
	body, err := os.ReadFile(s.Store.Path())
	require.NoError(t, err)
	assert.NotContains(t, string(body), "a name of its own")
}
