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
	tree, err := parse(data)
	if err != nil {
		var faults Faults
		if kind := stranger(data); kind != "" {
			faults.add("document", kind, "a job file, as Export writes it")
		} else {
			faults.add("document", err.Error(), "a job file in JSON")
		}
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

// stranger says what a file is that nobody meant as JSON, as a picture or a sheet; empty of one that
// may be meant so.
func stranger(data []byte) string {
	switch text := bytes.TrimSpace(data); {
	case bytes.HasPrefix(text, []byte("%PDF")):
		return "a PDF"
	case bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")):
		return "text in UTF-16, where a job file is in UTF-8"
	case !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0:
		return "a file that is no text, as a picture is"
	case len(text) > 0 && text[0] == '<':
		return "a page or a drawing"
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

// parse reads one JSON value and nothing after it.
func parse(data []byte) (any, error) {
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	var tree any
	if err := d.Decode(&tree); err != nil {
		return nil, place(data, d.InputOffset(), err)
	}
	end := d.InputOffset()
	if _, err := d.Token(); err != io.EOF {
		return nil, place(data, end, fmt.Errorf("something after the end"))
	}
	return tree, nil
}

// place says at which line and column an error stands.
func place(data []byte, at int64, err error) error {
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return errors.New("an empty file")
	case errors.Is(err, io.ErrUnexpectedEOF):
		return fmt.Errorf("a file that ends in line %d, before the job does: the rest of it is missing", bytes.Count(bytes.TrimSpace(data), []byte("\n"))+1)
	}
	if syntax, ok := err.(*json.SyntaxError); ok {
		at = syntax.Offset
	}
	before := data[:min(max(at, 0), int64(len(data)))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := len(before) - bytes.LastIndexByte(before, '\n')
	return fmt.Errorf("at line %d, column %d: %w", line, column, err)
}
