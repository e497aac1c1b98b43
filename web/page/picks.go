package page

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"coursewright/layout/survey"
	"coursewright/web/form"
)

// pickName says what a person picked whose change is one of several: a bond, or the size of its tile. Of any
// other change it is empty.
func pickName(job survey.Job, c form.Change, all []form.Change) string {
	at, field := bondOrTile(c.Path)
	of := ""
	if at != "" {
		of = " of " + lower(PlaceIn(job, strings.TrimSuffix(at, ".")))
	}
	switch {
	case field == "bond" && c.Is != "":
		return "picking " + c.Is + strings.Replace(of, " of ", " for ", 1)
	case field == "tile.width" && changed(all, at+"tile.height"), field == "tile.height" && changed(all, at+"tile.width"):
		return "size of the tile" + of
	}
	return ""
}

// cameAlong tells whether a change is none of what a person did, but followed from another: the tile takes sizes with
// which the bond that was picked closes, and the further tiles of a bond follow the first.
func cameAlong(c form.Change, all []form.Change) bool {
	at, field := bondOrTile(c.Path)
	switch {
	case field == "tile", field == "tile.width", field == "tile.height":
		return changed(all, at+"bond")
	case strings.HasPrefix(field, "bond.tiles"):
		return changed(all, at+"tile.width") || changed(all, at+"tile.height")
	}
	return false
}

// bondOrTile takes the field of a bond or a tile apart into what has it, empty for the room, and the rest:
// "bands[0]." and "tile.width".
func bondOrTile(path string) (at, field string) {
	parts := strings.Split(path, ".")
	i := slices.IndexFunc(parts, func(p string) bool { return p == "bond" || p == "tile" })
	if i < 0 {
		return "", ""
	}
	if field = strings.Join(parts[i:], "."); i > 0 {
		at = strings.Join(parts[:i], ".") + "."
	}
	return at, field
}

func changed(all []form.Change, path string) bool {
	return slices.ContainsFunc(all, func(c form.Change) bool { return c.Path == path })
}

// lower writes the first letter of a name small, as it stands within a sentence.
func lower(name string) string {
	first, n := utf8.DecodeRuneInString(name)
	return strings.TrimSpace(string(unicode.ToLower(first)) + name[n:])
}
