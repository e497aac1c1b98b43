package web

import (
	"io"
	"io/fs"
	"net/http"

	"coursewright/web/elevation"
)

// static serves embedded files. They change only with the program, and a page
// asks again whether they have.
func static(files fs.FS) http.Handler {
	serve := http.FileServerFS(files)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "" || r.URL.Path[len(r.URL.Path)-1] == '/' {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Cache-Control", "no-cache")
		serve.ServeHTTP(w, r)
	})
}

// drawingStyle is the style sheet that belongs to every drawing.
func drawingStyle(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/css; charset=utf-8")
	_, _ = io.WriteString(w, elevation.Style)
}

// font serves one of the fonts that drawings and sheets are measured with.
func font(ttf []byte) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "font/ttf")
		w.Header().Set("Cache-Control", "max-age=86400")
		_, _ = w.Write(ttf) // the reader is gone: nothing left to tell it
	}
}
