package sheets_test

import (
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"coursewright/web/trial"
)

// The page says how many pages its button prints, shows a picture of each in that order,
// and the button prints so many: findings without room on their own wall go to another
// list that is printed, not to a leaf of their own.
func TestThePageCountsWhatTheButtonPrints(t *testing.T) {
	for _, name := range []string{"alcove.json", "hexagon.json"} {
		s := trial.Of(t, trial.File(t, name))
		for _, query := range []string{"", "?for=saw", "?for=client", "?kind=elevations&kind=cuts&paper=a4"} {
			_, page := s.Get("/jobs/1/sheets" + query)
			said := regexp.MustCompile(`>Print (\d+) pages?<`).FindStringSubmatch(page)
			require.NotNil(t, said, "%s %s", name, query)
			want, err := strconv.Atoi(said[1])
			require.NoError(t, err)
			pictures := regexp.MustCompile(`src="(/jobs/1/sheet.svg[^"]*)"`).FindAllStringSubmatch(page, -1)
			assert.Len(t, pictures, want, "%s %s", name, query)
			for n, p := range pictures {
				path := strings.ReplaceAll(p[1], "&amp;", "&")
				assert.Contains(t, path, "page="+strconv.Itoa(n+1)+"&", "%s %s", name, query)
				answer, picture := s.Get(path)
				require.Equal(t, http.StatusOK, answer.StatusCode, path)
				assert.Contains(t, picture, strconv.Itoa(n+1)+" of "+strconv.Itoa(want), "%s: the picture bears the number of its page", path)
			}
			print := regexp.MustCompile(`href="(/jobs/1/sheets.pdf[^"#]*)"`).FindStringSubmatch(page)
			require.NotNil(t, print)
			_, pdf := s.Get(strings.ReplaceAll(print[1], "&amp;", "&"))
			file := filepath.Join(t.TempDir(), "sheets.pdf")
			require.NoError(t, os.WriteFile(file, []byte(pdf), 0o600))
			info, err := exec.Command("pdfinfo", file).Output()
			require.NoError(t, err)
			assert.Regexp(t, `Pages: +`+said[1]+`\n`, string(info), "%s %s", name, query)
		}
	}
}

// A list that stands under another has no page of its own: the page says on which it is.
func TestAListUnderAnotherIsFound(t *testing.T) {
	_, page := trial.Of(t, trial.File(t, "hexagon.json")).Get("/jobs/1/sheets")
	on := regexp.MustCompile(`Story pole</b>[^/]*</small></span> <i>on (\d+)</i>`).FindStringSubmatch(page)
	require.NotNil(t, on)
	assert.Contains(t, page, "<b>"+on[1]+"</b> Cut schedule, story pole")
}

// Who sets the tile gets the story pole with the rest: the stages send him to it every fifth course.
func TestTheJobIncludesTheStoryPole(t *testing.T) {
	_, page := trial.New(t).Get("/jobs/1/sheets")
	assert.Regexp(t, `value="story-pole"[^>]* checked`, page)
}
