package survey_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coursewright/layout/survey"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// jobFiles are the demo jobs and the example of formats.md.
func jobFiles(t testing.TB) map[string][]byte {
	names, err := filepath.Glob("../../testdata/jobs/*.json")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(names), 5)
	files := map[string][]byte{}
	for _, name := range append(names, "testdata/bath.json", "../../testdata/insides/shower.json") {
		files[filepath.Base(name)], err = os.ReadFile(name)
		require.NoError(t, err)
	}
	return files
}

func TestReadGivesBackWhatWriteWrote(t *testing.T) {
	for name, data := range jobFiles(t) {
		t.Run(name, func(t *testing.T) {
			job, err := survey.Read(data)
			require.NoError(t, err)
			written, err := survey.Write(job)
			require.NoError(t, err)
			again, err := survey.Read(written)
			require.NoError(t, err)
			require.Equal(t, job, again)
			typed := strings.ReplaceAll(string(data), `"grain": false,`, "") // the default
			require.JSONEq(t, typed, string(written), "nothing else that was typed is lost")
		})
	}
}

func TestReadTakesEmptyListsAsAbsent(t *testing.T) {
	job, err := survey.Read([]byte(`{"format": "coursewright-job/1", "walls": [], "setOrder": [], "pins": {"walls": {}}}`))
	require.NoError(t, err)
	require.Equal(t, survey.Job{Format: survey.Format}, job)
}

func TestReadSkipsAByteOrderMark(t *testing.T) {
	job, err := survey.Read([]byte("\ufeff" + `{"format": "coursewright-job/1", "title": "a"}`))
	require.NoError(t, err)
	require.Equal(t, "a", job.Title)
}

func TestWriteKeepsSignsReadable(t *testing.T) {
	data, err := survey.Write(survey.Job{Format: survey.Format, Title: "a < b & c"})
	require.NoError(t, err)
	require.Contains(t, string(data), "a < b & c")
}

func TestReadRefusals(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"nothing":             {``, "document: found an empty file; write a job file, as Export writes it"},
		"blanks":              {" \n", "document: found an empty file"},
		"a picture":           {"\x89PNG\r\n\x1a\n\x00", "document: found a picture; write a job file, as Export writes it"},
		"a spreadsheet":       {"PK\x03\x04\x14\x00", "document: found a ZIP file"},
		"no text":             {"{\x00\x01", "document: found a file that is no text"},
		"a text that breaks":  {"{\"title\": \"a\nb\"}", "document: found a mistake in line 1, at letter 13, at its end"},
		"another encoding":    {"\xff\xfe{\x00}\x00", "document: found text in UTF-16, where a job file is in UTF-8; write a job file"},
		"a sheet":             {"%PDF-1.7\n%\xe2\xe3", "document: found a PDF; write a job file"},
		"a drawing":           {"<svg></svg>", "document: found a page or a drawing; write a job file"},
		"not JSON":            {"{\n  \"title\" 5}", "document: found a mistake in line 2, at letter 11, by “5}”; write a job file, as Export writes it; where it was typed into, a comma"},
		"a letter":            {"Dear all,\nplease find", "document: found text that begins with “Dear all,”, where a job file begins with {"},
		"a comma missing":     {"{\"title\": \"a\"\n  \"units\": \"in\", \"joint\": \"1/8\"}", "document: found a mistake in line 2, at letter 3, by “\"units\": \"in\", \"joint\": …”"},
		"curly quotes":        {"{\"title\": “a”}", "document: found a mistake in line 1, at letter 11, by ““a”}”"},
		"cut short":           {"{\n\"title\": \"a\"\n", "document: found a file that ends in line 2, before the job does: the rest of it is missing"},
		"cut in a text":       {`{"title": "a`, "document: found a file that ends in line 1, before the job does"},
		"something behind":    {"{\n} {}", "document: found a job that ends in line 2, and more after it; write one job alone"},
		"a list":              {`[]`, "document: found text that begins with “[]”, where a job file begins with {; write a job file, as Export writes it"},
		"null":                {`null`, "document: found text that begins with “null”"},
		"no format":           {`{}`, "format: found nothing; write coursewright-job/1"},
		"another format":      {`{"format": "coursewright-job/2"}`, "format: found “coursewright-job/2”"},
		"a plan":              {`{"format": "coursewright-plan/1", "line": "0", "walls": [{"letter": "A"}]}`, "format: found “coursewright-plan/1”; write coursewright-job/1, as in a job file that Export writes"},
		"an unknown field":    {`{"tiel": {}}`, "tiel: found a field that is not known; write one of format, title, units"},
		"in another case":     {`{"Title": "a"}`, "Title: found a field that is not known"},
		"a field in a wall":   {`{"walls": [{}, {"wide": "3"}]}`, "walls[1].wide: found a field that is not known; write one of name, width"},
		"in a reading":        {`{"walls": [{"base": [{"readings": [{"at": "0", "dorp": "1"}]}]}]}`, "walls[0].base[0].readings[0].dorp: found"},
		"a number as length":  {`{"joint": 3}`, "joint: found the number 3; write a length in quotes or a mark { }"},
		"null as length":      {`{"joint": null}`, "joint: found null"},
		"a text as list":      {`{"walls": "one"}`, "walls: found “one”; write a list [ ]"},
		"a text as truth":     {`{"tile": {"grain": "yes"}}`, "tile.grain: found “yes”; write true or false"},
		"a part of a tile":    {`{"tile": {"box": {"count": 1.5}}}`, "tile.box.count: found the number 1.5; write a whole number"},
		"a number as mark":    {`{"walls": [{"head": {"stops": 3}}]}`, "walls[0].head.stops: found the number 3; write an object { }"},
		"a list as height":    {`{"walls": [{"openings": [{"height": []}]}]}`, "walls[0].openings[0].height: found a list; write a length in quotes or a mark { }"},
		"a field in a height": {`{"walls": [{"openings": [{"height": {"ta": "1"}}]}]}`, "walls[0].openings[0].height.ta: found a field"},
		"a field in a pin":    {`{"pins": {"walls": {"back": {"jiont": "1"}}}}`, "pins.walls.back.jiont: found a field"},
		"a field twice":       {`{"title": "a", "tile": {}, "title": "b"}`, "title: found the field a second time; write each field once"},
		"a field twice, deep": {`{"walls": [{}, {"head": {"gap": "1", "gap": "1"}}]}`, "walls[1].head.gap: found the field a second time"},
		"too long":            {`{"title": "` + strings.Repeat("a", survey.MaxBytes) + `"}`, "document: found 1048589 bytes; write at most 1 MiB"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := survey.Read([]byte(c.text))
			var faults survey.Faults
			require.ErrorAs(t, err, &faults)
			assert.Contains(t, err.Error(), c.says)
		})
	}
}

func TestReadNamesAllFaultsAtOnce(t *testing.T) {
	_, err := survey.Read([]byte(`{"format": "coursewright-job/1", "joint": 3, "bed": 4, "x": 1, "tile": {"width": 5}}`))
	require.EqualError(t, err, strings.Join([]string{
		"tile.width: found the number 5; write a text in quotes",
		"joint: found the number 3; write a length in quotes or a mark { }",
		"bed: found the number 4; write a text in quotes",
		"x: found a field that is not known; write one of format, title, units, measured, tile, joint, bed, bond, limits, setOrder, prefer, confirmed, guess, trims, walls, bands, pins, held, work, grout, choices, chosen",
	}, "\n"))
}

func TestMeasureIsAMarkOrAText(t *testing.T) {
	for text, want := range map[string]survey.Measure{
		`"-7"`:                  {Plain: "-7"},
		`""`:                    {},
		`{"at":"2"}`:            {Mark: &survey.Mark{At: "2"}},
		`{"from":"1"}`:          {Mark: &survey.Mark{From: "1"}},
		`{"from":"1","to":"2"}`: {Mark: &survey.Mark{From: "1", To: "2"}},
		`{}`:                    {Mark: &survey.Mark{}},
	} {
		var m survey.Measure
		require.NoError(t, json.Unmarshal([]byte(text), &m))
		assert.Equal(t, want, m)
		data, err := json.Marshal(m)
		require.NoError(t, err)
		assert.Equal(t, text, string(data))
	}
	var m survey.Measure
	require.Error(t, json.Unmarshal([]byte(`{"at": 2}`), &m))
	require.Error(t, json.Unmarshal([]byte(`{"ta": "2"}`), &m))
	_, err := json.Marshal(survey.Measure{Mark: &survey.Mark{}, Plain: "1"})
	require.ErrorContains(t, err, "not both")
}

// FuzzRead: no document makes Read or Resolve panic; what is read is written
// and read back the same; faults all have a path and say what would be right.
func FuzzRead(f *testing.F) {
	for _, data := range jobFiles(f) {
		f.Add(data)
	}
	f.Add([]byte(`{"format": "coursewright-job/1", "walls": [{"base": [{"readings": [{}]}], "openings": [{"kind": "niche"}]}], "pins": {"walls": {"": {}}}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		job, err := survey.Read(data)
		if err != nil {
			require.NotEmpty(t, err.(survey.Faults))
			return
		}
		written, err := survey.Write(job)
		require.NoError(t, err)
		again, err := survey.Read(written)
		require.NoError(t, err)
		require.Equal(t, job, again)
		_, faults := job.Resolve()
		for _, fault := range faults {
			require.True(t, fault.Path != "" && fault.Found != "" && fault.Want != "", "%+v", fault)
		}
	})
}

// What Write gives Read takes: a job that is short on paper may be long when it is written out in lines.
func TestWriteRefusesWhatReadWould(t *testing.T) {
	job := survey.Job{Format: survey.Format, Title: strings.Repeat("x", survey.MaxBytes)}
	_, err := survey.Write(job)
	var faults survey.Faults
	require.ErrorAs(t, err, &faults)
	require.ErrorContains(t, err, "at most 1 MiB")
	for n := survey.MaxBytes - 200; n < survey.MaxBytes; n++ { // across the limit
		job.Title = strings.Repeat("x", n)
		document, err := survey.Write(job)
		if err != nil {
			require.ErrorAs(t, err, &faults)
			continue
		}
		back, err := survey.Read(document)
		require.NoError(t, err)
		require.Equal(t, job, back)
	}
	walls := `{"format":"coursewright-job/1","walls":[` + strings.Repeat(`{"name":"a"},`, 70_000) + `{}]}`
	require.Less(t, len(walls), survey.MaxBytes)
	job, err = survey.Read([]byte(walls))
	require.NoError(t, err)
	_, err = survey.Write(job)
	require.ErrorAs(t, err, &faults)
}
