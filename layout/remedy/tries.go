package remedy

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coursewright/layout/length"
	"coursewright/layout/plan"
	"coursewright/layout/survey"
)

// try is a change that may help.
type try struct {
	kind  Kind
	about string // of the changes about one thing only the best is told
	text  string
	use   []Use
	move  *move // what is let go, to be told where that puts it; then use is of that
}

// tries lists the changes that may help, those first that are about the poor cuts alone.
func (a *asker) tries() []try {
	poor := a.trouble()
	return slices.Concat(a.legs(poor), a.covers(poor), a.gaps(poor), a.pins(poor), a.moves(poor), a.seats(poor), a.joints(), a.stops(poor), a.hands(), a.offsets(), a.preferences())
}

// stands tells whether some tile is set already, so that tile, joint and bond are what they are.
func (a *asker) stands() bool {
	return slices.ContainsFunc(a.now.Walls, func(w plan.Wall) bool { return w.Found.Set != nil })
}

// joints are the other spacers that the tile allows: no joint under three times
// what the tiles vary (ANSI A108.02 4.3, joint widths, as commonly quoted), and
// none under 1/16 in (1.5 mm).
func (a *asker) joints() (out []try) {
	if a.stands() {
		return nil
	}
	room := &a.now.Room
	least := max(3*room.Tile.Vary, a.either(length.Inch/16, 3*length.Millimetre/2))
	for _, s := range a.spacers() {
		if s < least || s == room.Joint || slices.Contains(room.Joints, s) {
			continue
		}
		text := fmt.Sprintf("Set with joints of %s instead of %s.", a.say(s), a.say(room.Joint))
		out = append(out, try{Joint, "joint " + a.typed(s), text, []Use{{"joint", a.typed(s)}}, nil})
	}
	return out
}

// spacers are the sizes in every shop: those of survey.Spacers in inches, fewer in
// millimetres.
func (a *asker) spacers() []length.Length {
	if a.now.Room.Units == length.Imperial {
		return survey.Spacers(length.Imperial)
	}
	const mm = length.Millimetre
	return []length.Length{mm, 3 * mm / 2, 2 * mm, 3 * mm, 4 * mm, 5 * mm}
}

// gaps widens the sealed joint at every boundary that cuts poor pieces, as far as
// sealant may fill it.
func (a *asker) gaps(poor []troubled) []try {
	var use []Use
	var places []string
	limit := a.now.Room.Sealant
	for _, t := range poor {
		for _, edge := range t.run.Edges {
			path, where, gap := a.sealed(t.wall, edge)
			u := Use{path, a.typed(limit)}
			if path != "" && gap < limit && !slices.Contains(use, u) {
				use, places = append(use, u), append(places, where)
			}
		}
	}
	if use == nil {
		return nil
	}
	return []try{{Gap, "gap", fmt.Sprintf("Leave a sealed joint of %s at %s.", a.say(limit), list(places)), use, nil}}
}

// sealed gives the field of the gap at an edge of a wall that meets something, the
// edge in words, and the gap.
func (a *asker) sealed(wall int, edge string) (path, where string, gap length.Length) {
	w := a.now.Walls[wall].Found
	at := fmt.Sprintf("walls[%d].", wall)
	switch {
	case edge == "left" && w.Left.Meets:
		return at + "left.gap", "the left end of " + w.Name, w.Left.Gap
	case edge == "right" && w.Right.Meets:
		return at + "right.gap", "the right end of " + w.Name, w.Right.Gap
	case edge == "head" && w.Head.Meets:
		return at + "head.gap", "the ceiling over " + w.Name, w.Head.Gap
	}
	if n, found := strings.CutPrefix(edge, "base "); found {
		if i, err := strconv.Atoi(n); err == nil && i < len(w.Base) {
			return fmt.Sprintf("%sbase[%d].gap", at, i), fmt.Sprintf("the %s under %s", w.Base[i].Meets, w.Name), w.Base[i].Gap
		}
	}
	return "", "", 0
}

// stops moves ends and heads that stop further out, by an eighth, a quarter and
// a half of a tile, of at most two places the two larger steps.
func (a *asker) stops(poor []troubled) (out []try) {
	var places [][]bound
	for _, t := range poor {
		for _, b := range a.bounds(t) {
			if len(b) > 0 && !slices.ContainsFunc(places, func(o []bound) bool { return o[0].path == b[0].path }) {
				places = append(places, b)
			}
		}
	}
	parts := []length.Length{8, 4, 2}
	if len(places) > 1 {
		places, parts = places[:2], parts[1:]
	}
	for _, b := range places {
		for _, part := range parts {
			if t, there := a.further(b, part); there {
				out = append(out, t)
			}
		}
	}
	return out
}

// bound is a mark at which tile stops, and the way out from it.
type bound struct {
	path, where string
	wall        int
	stops       survey.Span
	out         length.Length // 1 where further is to the right or up, -1 where it is to the left
	tile        length.Length
	most        length.Length // the furthest it may stop
}

// bounds are the places whose moving may help a run: the ends of its wall, or its
// head with all heads that stop at the same height, so that they stay in line.
func (a *asker) bounds(t troubled) [][]bound {
	tile := a.now.Room.Tile
	w := a.now.Walls[t.wall].Found
	at := fmt.Sprintf("walls[%d].", t.wall)
	if t.run.Across {
		var left, right []bound
		if _, pinned := w.MarkPins[survey.EndLeft]; !w.Left.Meets && !pinned {
			left = []bound{{at + "left.stops", "the left end of " + w.Name, t.wall, w.Left.Stops.Moved(-w.Left.Trim.Inset(a.now.Room.Joint)), -1, tile.Width, 0}}
		}
		if _, pinned := w.MarkPins[survey.EndRight]; !w.Right.Meets && !pinned {
			right = []bound{{at + "right.stops", "the right end of " + w.Name, t.wall, w.Right.Stops.Moved(w.Right.Trim.Inset(a.now.Room.Joint)), 1, tile.Width, w.Width}}
		}
		return [][]bound{left, right}
	}
	if w.Head.Meets || w.Head.Top != nil && w.Head.Top.Kind != survey.CapTop { // a seat is moved with what was read of it
		return nil
	}
	var heads []bound
	for i, o := range a.now.Walls {
		h := o.Found.Head
		if _, pinned := o.Found.MarkPins[survey.HeadMark]; !h.Meets && !pinned && h.Stops == w.Head.Stops {
			stops := h.Stops.Moved(h.Inset(a.now.Room))
			heads = append(heads, bound{fmt.Sprintf("walls[%d].head.stops", i), "the head of " + o.Found.Name, i, stops, 1, tile.Height, stops.To + tile.Height})
		}
	}
	return [][]bound{heads}
}

// further is a change that lets a place stop further by a part of the tile. A free
// mark gets the wider range once, with the largest step.
func (a *asker) further(places []bound, part length.Length) (try, bool) {
	t := try{kind: Stop, about: places[0].path}
	var where []string
	by := (places[0].tile / part).RoundTo(a.now.Room.Tape)
	for _, b := range places {
		where = append(where, b.where)
		far := b.stops.To + by
		field := ".to"
		if b.out < 0 {
			far, field = b.stops.From-by, ".from"
		}
		if by <= 0 || far < 0 && b.out < 0 || far > b.most && b.out > 0 || b.stops.Free() && part > 2 {
			return t, false
		}
		if !b.stops.Free() {
			field = ".at"
		}
		t.use = append(t.use, Use{b.path + field, a.typed(far)})
	}
	t.text = fmt.Sprintf("Let %s stop %s further.", list(where), a.say(by))
	if places[0].stops.Free() {
		t.text = fmt.Sprintf("Let %s stop up to %s further.", list(where), a.say(by))
	}
	return t, true
}

// hands is the other hand of a bond whose hand somebody chose.
func (a *asker) hands() []try {
	b := a.now.Room.Bond
	if a.stands() || b.Num == 0 || 2*b.Num == b.Den || b.Hand == survey.Free {
		return nil
	}
	other := "left"
	if b.Hand == survey.Left {
		other = "right"
	}
	return []try{{Hand, "hand", "Let the courses step to the " + other + ".", []Use{{"bond.hand", other}}, nil}}
}

// offsets are a half bond for a third bond and a third bond for a half one, both
// for others. Of a tile over 15 in (380 mm) along the courses no half bond is
// offered (ANSI A108.02 4.3, offset patterns, as commonly quoted).
func (a *asker) offsets() (out []try) {
	b, side := a.now.Room.Bond, a.now.Room.Tile.Width
	if b.Plumb {
		side = a.now.Room.Tile.Height
	}
	if a.stands() || b.Kind != survey.Running {
		return nil
	}
	if b.Den != 2 && side <= a.either(15*length.Inch, 380*length.Millimetre) {
		out = append(out, try{Offset, "half", "Set in half bond.", []Use{{"bond.offset", "1/2"}}, nil})
	}
	if b.Den != 3 {
		out = append(out, try{Offset, "third", "Set in third bond.", []Use{{"bond.offset", "1/3"}}, nil})
	}
	return out
}

// covers lets the casing of a window hide the cuts beside it: of the window with
// the worst of them. One whose inside is tiled has no casing.
func (a *asker) covers(poor []troubled) []try {
	for _, t := range poor {
		for i, o := range a.now.Walls[t.wall].Found.Openings {
			key := o.Key() + " "
			if o.Kind != survey.Window || o.Inside.Tiled() || !slices.ContainsFunc(t.run.Edges, func(e string) bool { return strings.HasPrefix(e, key) }) {
				continue
			}
			path := fmt.Sprintf("walls[%d].openings[%d].sight", t.wall, i)
			return []try{{Cover, path, fmt.Sprintf("Let the casing of %s cover the cuts beside it, so that they are out of sight.", o.Called()), []Use{{path, "low"}}, nil}}
		}
	}
	return nil
}

// preferences are those that the job does not have. With “shared” a full tile at
// the head changes nothing.
func (a *asker) preferences() (out []try) {
	for _, word := range survey.Preferences() {
		if slices.Contains(a.job.Prefer, word) || word == "full head" && a.now.Room.Prefer.Shared {
			continue
		}
		path := fmt.Sprintf("prefer[%d]", len(a.job.Prefer))
		out = append(out, try{Preference, path, "Prefer " + preferred[word] + ".", []Use{{path, word}}, nil})
	}
	return out
}

// preferred says of each preference what it puts first.
var preferred = map[string]string{
	"large cuts": "large cuts to full tiles at an open end",
	"openings":   "joint lines at the niches and windows that are built",
	"shared":     "the cut at the rim and the cut at the head as much alike as can be",
	"full head":  "full tiles at the head, with the cut at the rim",
}

// say writes a length exactly, as a person reads it; typed as one types it.
func (a *asker) say(l length.Length) string   { return l.Format(a.now.Room.Units, 0) }
func (a *asker) typed(l length.Length) string { return l.Plain(a.now.Room.Units, 0) }

// list writes places with commas and an “and”.
func list(places []string) string {
	last := len(places) - 1
	if last == 0 {
		return places[0]
	}
	return strings.Join(places[:last], ", ") + " and " + places[last]
}
