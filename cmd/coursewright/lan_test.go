package main

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/netip"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// opened starts the program in this process with some flags and limits, and
// gives what it printed by the time it serves.
func opened(t *testing.T, l limits, flags ...string) (s serving, out, errs *bytes.Buffer) {
	t.Helper()
	ctx, end := context.WithCancel(t.Context())
	ready, code := make(chan string, 1), make(chan int, 1)
	out, errs = new(bytes.Buffer), new(bytes.Buffer)
	p := &program{Out: out, Err: errs, Watched: true, Limits: l, Ready: func(address string) { ready <- address }}
	ended := make(chan struct{})
	go func() { defer close(ended); code <- p.run(ctx, flags) }()
	t.Cleanup(func() { end(); <-ended })
	select {
	case address := <-ready:
		return serving{"http://" + address, end, code}, out, errs
	case c := <-code:
		t.Fatalf("ended with %d before it served: %s", c, errs)
	}
	return serving{}, out, errs
}

func TestTheNetworkTakesLan(t *testing.T) {
	for _, address := range []string{"0.0.0.0:0", "[::]:0", ":0"} {
		code, out, errs := command(t, "", "--listen", address, "--data", filepath.Join(t.TempDir(), "jobs.db"))
		assert.Equal(t, 1, code, address)
		assert.Contains(t, errs, "add --lan", address)
		assert.Empty(t, out, address)
	}
}

func TestLanKeepsThePortAndANamedAddress(t *testing.T) {
	for listen, want := range map[string]string{
		"127.0.0.1:7310": ":7310", "localhost:80": ":80", "[::1]:7": ":7", "192.168.7.2:7310": "192.168.7.2:7310", "0.0.0.0:1": "0.0.0.0:1", "odd": "odd",
	} {
		assert.Equal(t, want, onNetwork(listen), listen)
	}
	assert.Equal(t, "127.0.0.1:7310", atHome(netip.MustParseAddrPort("[::]:7310")))
	assert.Equal(t, []string{"192.168.7.2:7310"}, abroad(netip.MustParseAddrPort("192.168.7.2:7310")))
}

var shownCode = regexp.MustCompile(`(?:[0-9a-z]{4}-){12}[0-9a-z]{4}`)

func TestLanShowsTheCodeOnceAndLetsInWhoShowsIt(t *testing.T) {
	s, out, errs := opened(t, limits{}, "--lan", "--listen", "127.0.0.1:0", "--data", filepath.Join(t.TempDir(), "jobs.db"))
	codes := shownCode.FindAllString(out.String(), -1)
	require.Len(t, codes, 1, out.String())
	plain := strings.ReplaceAll(codes[0], "-", "")
	assert.NotContains(t, out.String(), plain, "the link that holds it stands in the square alone")
	assert.Contains(t, out.String(), "not encrypted")
	assert.Contains(t, s.page(t, "/"), "Heron Street", "this machine needs no code")

	found := regexp.MustCompile(`Devices find it at (http://[0-9.:]+)/`).FindStringSubmatch(out.String())
	if found == nil {
		t.Skip("this machine is on no network")
	}
	link := readSquare(t, out.String())
	assert.Equal(t, found[1]+"/open/"+plain, link)
	jar, err := cookiejar.New(nil)
	require.NoError(t, err)
	phone := &http.Client{Jar: jar}
	assert.Contains(t, pageOf(t, phone, found[1]+"/jobs/1"), "not let in yet")
	assert.Contains(t, pageOf(t, phone, link), "Heron Street")
	assert.Contains(t, pageOf(t, phone, found[1]+"/jobs/1"), "Heron Street", "and stays in")
	s.end()
	assert.Zero(t, <-s.code)
	assert.NotContains(t, errs.String(), plain)
	assert.NotContains(t, errs.String(), codes[0])
}

func pageOf(t *testing.T, c *http.Client, address string) string {
	t.Helper()
	answer, err := c.Get(address)
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return string(body)
}

// readSquare reads the square code that was printed with a reader that shares
// nothing with the writer. The reader is told that the picture is exact: looking
// for the square as in a photograph it misses one in 240.
func readSquare(t *testing.T, printed string) string {
	t.Helper()
	const module = 4
	var lines []string
	for line := range strings.Lines(printed) {
		if _, rest, found := strings.Cut(line, "\x1b[30;107m"); found {
			row, _, _ := strings.Cut(rest, "\x1b[0m")
			lines = append(lines, row)
		}
	}
	require.NotEmpty(t, lines)
	picture := image.NewGray(image.Rect(0, 0, module*len([]rune(lines[0])), 2*module*len(lines)))
	for y, line := range lines {
		for x, c := range []rune(line) {
			for i := range 2 * module * module {
				shade := color.Gray{255}
				if above := i < module*module; c == '█' || c == '▀' && above || c == '▄' && !above {
					shade.Y = 0
				}
				picture.SetGray(x*module+i%module, 2*y*module+i/module, shade)
			}
		}
	}
	bits, err := gozxing.NewBinaryBitmapFromImage(picture)
	require.NoError(t, err)
	read, err := qrcode.NewQRCodeReader().Decode(bits, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_PURE_BARCODE: true})
	require.NoError(t, err)
	return read.GetText()
}

// What the program prints where nobody looks may be kept by a log, so the code is not among it.
func TestTheCodeIsForAPersonAndNotForALog(t *testing.T) {
	for _, flag := range []string{"--lan", "--ask-everyone"} {
		data := filepath.Join(t.TempDir(), "jobs.db")
		p := startedWith(t, data, flag)
		file, said := data+"-code", ""
		for !strings.Contains(said, file) {
			line, err := p.out.ReadString('\n')
			require.NoError(t, err, said)
			said += line
		}
		body, err := os.ReadFile(file)
		require.NoError(t, err)
		info, err := os.Stat(file)
		require.NoError(t, err)
		assert.Equal(t, os.FileMode(0o600), info.Mode().Perm())
		code := shownCode.FindString(string(body))
		require.NotEmpty(t, code)
		answer, err := patient.PostForm(p.url+"/open", url.Values{"code": {code}})
		status, _, err := read(answer, err)
		require.NoError(t, err)
		assert.Equal(t, http.StatusSeeOther, status)
		assert.Equal(t, flag == "--ask-everyone", len(answer.Cookies()) == 1, "this machine is given a pass where it needs one")
		status, _, err = p.get("/")
		require.NoError(t, err)
		assert.Equal(t, map[string]int{"--lan": http.StatusOK, "--ask-everyone": http.StatusForbidden}[flag], status)
		require.NoError(t, p.Process.Signal(os.Interrupt))
		rest, err := io.ReadAll(p.out)
		require.NoError(t, err)
		require.NoError(t, p.Wait())
		for _, kept := range []string{said, string(rest), p.said.String()} {
			assert.NotContains(t, kept, code)
			assert.NotContains(t, kept, strings.ReplaceAll(code, "-", ""))
		}
		assert.NoFileExists(t, file)
	}
}
