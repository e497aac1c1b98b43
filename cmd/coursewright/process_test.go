package main

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// asProgram makes this test binary the program itself, so that a test can start a real process of
// it, and kill it.
const asProgram = "COURSEWRIGHT_TEST_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		main()
	}
	os.Exit(m.Run())
}

// process is a running program that serves a data file on a free port.
type process struct {
	*exec.Cmd
	url  string
	out  *bufio.Reader // standard output, behind its first line
	said *bytes.Buffer // standard error; read it after Wait
}

func programOf(args ...string) *exec.Cmd {
	c := exec.Command(os.Args[0], args...)
	c.Env = append(os.Environ(), asProgram+"=1")
	return c
}

// started starts serve and waits until it says where it is.
func started(t *testing.T, data string) process {
	t.Helper()
	return startedWith(t, data)
}

// startedWith starts serve with further flags.
func startedWith(t *testing.T, data string, flags ...string) process {
	t.Helper()
	p := process{Cmd: programOf(append([]string{"serve", "--listen", "127.0.0.1:0", "--data", data}, flags...)...), said: new(bytes.Buffer)}
	p.Stderr = p.said
	out, err := p.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, p.Start())
	t.Cleanup(func() { p.Process.Kill(); p.Wait() })
	p.out = bufio.NewReader(out)
	first, err := p.out.ReadString('\n')
	p.url = regexp.MustCompile(`http://[0-9.:]+`).FindString(first)
	require.NotEmpty(t, p.url, "%s %v %s", first, err, p.said)
	return p
}

// patient gives up on a server that hangs, long after any answer that comes.
var patient = &http.Client{
	Timeout:       2 * time.Minute,
	CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
}

// get gives the status and the body of a page.
func (p process) get(path string) (int, string, error) {
	answer, err := patient.Get(p.url + path)
	return read(answer, err)
}

// edit posts one field of a job as the page's script does and gives the whole answer.
func (p process) edit(job int, revision int64, field, value string) (int, string, error) {
	form := url.Values{"revision": {strconv.FormatInt(revision, 10)}, field: {value}}
	r, err := http.NewRequest(http.MethodPost, p.url+"/jobs/"+strconv.Itoa(job), strings.NewReader(form.Encode()))
	if err != nil {
		return 0, "", err
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("X-Bench", "live")
	return read(patient.Do(r))
}

// imports adds the job of a file.
func (p process) imports(t *testing.T, file string) {
	t.Helper()
	document, err := os.ReadFile(file)
	require.NoError(t, err)
	var body bytes.Buffer
	form := multipart.NewWriter(&body)
	part, err := form.CreateFormFile("file", filepath.Base(file))
	require.NoError(t, err)
	_, err = part.Write(document)
	require.NoError(t, errors.Join(err, form.Close()))
	status, page, err := read(patient.Post(p.url+"/jobs/import", form.FormDataContentType(), &body))
	require.NoError(t, err)
	require.Equal(t, http.StatusSeeOther, status, page)
}

func read(answer *http.Response, err error) (int, string, error) {
	if err != nil {
		return 0, "", err
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	return answer.StatusCode, string(body), err
}

var revisionField = regexp.MustCompile(`name="revision" value="(\d+)"`)

// revisionOf reads which revision a page was filled from.
func revisionOf(page string) int64 {
	m := revisionField.FindStringSubmatch(page)
	if m == nil {
		return 0
	}
	n, _ := strconv.ParseInt(m[1], 10, 64)
	return n
}
