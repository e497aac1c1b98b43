package web

import (
	"net/http"

	"github.com/go-chi/chi/v5/middleware"

	"coursewright/web/door"
)

// squeezed compresses what goes over the network; this machine has it as it is,
// because packing would take longer than handing it over.
func squeezed(next http.Handler) http.Handler {
	packed := middleware.Compress(5, "text/html", "text/css", "text/javascript", "text/csv", "image/svg+xml", "application/json", "font/ttf")(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if door.AtHome(r) {
			next.ServeHTTP(w, r)
			return
		}
		packed.ServeHTTP(w, r)
	})
}
