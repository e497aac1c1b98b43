package bench

import (
	"net/url"
	"slices"
	"strings"

	fixed "coursewright/layout/fixture"
	"coursewright/layout/length"
	"coursewright/layout/survey"
	"coursewright/web/form"
)

// A band, a shelf, a dish or a bar whose height is a range takes a drag as a wish. Where the lines let it stand
// elsewhere than it was put, the page says where it went and why, and offers to hold it.

// wish is a height that was wished, and the one that came of it.
type wish struct {
	name       string
	path       string // of its height
	at, wished length.Length
	why        string // why it stands there
}

// wishes are those that stand elsewhere than wished, by more than a mark of the tape.
func (b Bench) wishes() []wish {
	var all []wish
	add := func(w wish) {
		if (w.at - w.wished).Abs() >= b.TapeStep() {
			all = append(all, w)
		}
	}
	for i, band := range b.Plan.Setout.Bands {
		if found := b.Plan.Room.Bands[i]; i < len(b.Typed.Bands) && b.Typed.Bands[i].Name == found.Name && b.Typed.Bands[i].Near != "" {
			add(wish{found.Name, form.At("bands", i) + ".bottom", band.Bottom, found.Near, b.whyBand()})
		}
	}
	for i, w := range b.Plan.Walls {
		for k, p := range w.Fixtures {
			if i < len(b.Typed.Walls) && wishedHere(b.Typed.Walls[i].Fixtures, k, p.Found.Name) {
				add(fixtureWish(form.At(form.At("walls", i)+".fixtures", k)+".height", p))
			}
		}
	}
	return all
}

// whyBand says why a band stands elsewhere than wished.
func (b Bench) whyBand() string {
	if b.Typed.Held != nil {
		return "where the set-out is held"
	}
	return "of its range the place where the set-out comes out best"
}

// wishedHere tells whether a fixture is the one that was solved and has a wish.
func wishedHere(typed []survey.Fixture, k int, name string) bool {
	return k < len(typed) && typed[k].Name == name && typed[k].Near != ""
}

func fixtureWish(path string, p fixed.Placed) wish {
	w := wish{p.Found.Name, path, p.At.Y, p.Found.Near, "on the joint line of its range that is nearest to where it was put"}
	if p.Found.Kind == survey.GrabBar {
		w.why = "the height of its range near where it was put at which its holes keep clear of the joints best"
	}
	return w
}

// wishText says where something stands, and why not where it was wished.
func (b Bench) wishText(w wish) string {
	return " stands at " + b.fromZero(w.at) + ", not at " + b.fromZero(w.wished) + ": that is " + w.why + "."
}

// fromZero is a height as the drawing writes it, from the level line.
func (b Bench) fromZero(l length.Length) string {
	sign := ""
	switch {
	case l > 0:
		sign = "+"
	case l < 0:
		sign = "−"
	}
	return sign + b.Tape(l.Abs())
}

// putThere writes the height that was wished as a measured one.
func (b Bench) putThere(w wish) string {
	to := url.Values{w.path + ".at": {w.wished.Plain(b.System(), b.System().Step())}, w.path + ".from": {""}, w.path + ".to": {""}}
	return "use " + to.Encode()
}

// wentTo is said of an edit that put something where it does not stand.
func (b Bench) wentTo(do string) string {
	handle, _, placed := strings.Cut(strings.TrimPrefix(do, "place "), "=")
	if !placed || !strings.HasPrefix(do, "place ") {
		return ""
	}
	all := b.wishes()
	i := slices.IndexFunc(all, func(w wish) bool {
		return strings.HasSuffix(handle, " fixture "+w.name) || strings.HasSuffix(handle, " band "+w.name)
	})
	if i < 0 {
		return ""
	}
	return "Saved. " + all[i].name + " went to " + b.fromZero(all[i].at)
}
