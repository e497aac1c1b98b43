package survey

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"unicode/utf8"
)

// MaxBytes bounds a job file.
const MaxBytes = 1 << 20

// Read reads a job file as typed, without looking at its lengths. It refuses
// what is longer than MaxBytes, no JSON, of another format, or has a field
// that is unknown, of the wrong kind or there twice; the error is then Faults,
// all of them, or the format alone where it is another of ours, as that of a plan. A byte-order mark at the start is skipped. Lists and objects that
// are empty read as absent, so that Read gives back exactly what Write was given.
func Read(data []byte) (Job, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if len(data) > MaxBytes {
		return Job{}, tooLong(len(data))
	}
	var faults Faults
	if kind := stranger(data); kind != "" {
		faults.add("document", kind, jobFile)
		return Job{}, faults
	}
	tree, bad := parse(data)
	if bad != nil {
		faults.add("document", bad.found, bad.want)
		return Job{}, faults
	}
	var job Job
	d := decoder{faults: doubled(data)}
	d.into(reflect.ValueOf(&job).Elem(), tree, "")
	if strings.HasPrefix(job.Format, "coursewright-") && job.Format != Format {
		d.faults = nil // its fields are those of another file
	}
	if d.faults == nil && job.Format != Format {
		d.faults.add("format", quote(job.Format), Format+", as in a job file that Export writes")
	}
	if d.faults != nil {
		return Job{}, d.faults
	}
	return job, nil
}

// jobFile is what Read wants in place of what is none.
const jobFile = "a job file, as Export writes it"

// stranger says what a file is that nobody meant as a job file, as a picture or a sheet; empty of one that
// may be meant so.
func stranger(data []byte) string {
	switch text := bytes.TrimSpace(data); {
	case len(text) == 0:
		return "an empty file"
	case bytes.HasPrefix(text, []byte("%PDF")):
		return "a PDF"
	case bytes.HasPrefix(data, []byte("\x89PNG")), bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		return "a picture"
	case bytes.HasPrefix(data, []byte("PK\x03\x04")):
		return "a ZIP file, as that of a spreadsheet is too"
	case bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")):
		return "text in UTF-16, where a job file is in UTF-8"
	case !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0:
		return "a file that is no text"
	case text[0] == '<':
		return "a page or a drawing"
	case text[0] != '{':
		return "text that begins with " + quote(beginning(text)) + ", where a job file begins with {"
	}
	return ""
}

// Write gives the job file in its canonical form, indented, absent fields
// left out. It refuses with Faults what would be longer than MaxBytes, since
// Read would not read it back, and fails on a job that Read cannot give.
func Write(job Job) ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(job); err != nil {
		return nil, fmt.Errorf("write job: %w", err)
	}
	if out.Len() > MaxBytes {
		return nil, tooLong(out.Len())
	}
	return out.Bytes(), nil
}

// tooLong refuses a job file of so many bytes.
func tooLong(n int) Faults {
	var faults Faults
	faults.add("document", fmt.Sprintf("%d bytes", n), "at most 1 MiB (1048576 bytes)")
	return faults
}

// beginning is as much of a text as names the place where it stands: of its first line.
func beginning(text []byte) string {
	const most = 24
	line, _, _ := bytes.Cut(text, []byte("\n"))
	letters := []rune(string(bytes.TrimSpace(line)))
	if len(letters) > most {
		return string(letters[:most]) + "…"
	}
	return string(letters)
}

// unread says why a text is no JSON, in the words of somebody who has never written any.
type unread struct{ found, want string }

func (u *unread) Error() string { return u.found }

// parse reads one JSON value and nothing after it.
func parse(data []byte) (any, *unread) {
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	var tree any
	if err := d.Decode(&tree); err != nil {
		return nil, place(data, err)
	}
	end := d.InputOffset()
	if _, err := d.Token(); err != io.EOF {
		return nil, &unread{fmt.Sprintf("a job that ends in line %d, and more after it", lineOf(data, end)), "one job alone, as Export writes it"}
	}
	return tree, nil
}

// place says at which line and letter a text cannot be read on, and what stands there.
func place(data []byte, err error) *unread {
	if errors.Is(err, io.ErrUnexpectedEOF) {
		text := bytes.TrimSpace(data)
		return &unread{fmt.Sprintf("a file that ends in line %d, before the job does: the rest of it is missing", lineOf(text, int64(len(text)))), jobFile}
	}
	at := int64(len(data))
	if syntax, ok := err.(*json.SyntaxError); ok {
		at = max(syntax.Offset-1, 0) // of the letter that was not expected
	}
	by := "by " + quote(beginning(data[at:]))
	if beginning(data[at:]) == "" {
		by = "at its end"
	}
	letter := utf8.RuneCount(data[bytes.LastIndexByte(data[:at], '\n')+1:at]) + 1
	return &unread{fmt.Sprintf("a mistake in line %d, at letter %d, %s", lineOf(data, at), letter, by),
		jobFile + "; where it was typed into, a comma, a quotation mark or a bracket is most often missing there, or one too many"}
}

// lineOf counts the lines up to a place.
func lineOf(data []byte, at int64) int { return bytes.Count(data[:at], []byte("\n")) + 1 }
