package survey

import (
	"fmt"
	"strconv"
	"strings"

	"coursewright/layout/length"
)

// Work is what a person chose about cutting, buying and waiting. What is left
// out is as usual.
type Work struct {
	Kerf      string    `json:"kerf,omitempty"`
	Turn      *bool     `json:"turn,omitempty"`
	Least     string    `json:"least,omitempty"`     // no piece under this from an off-cut
	Breakage  string    `json:"breakage,omitempty"`  // percent
	Allowance string    `json:"allowance,omitempty"` // percent on grout, sealant, sheets and spacers
	Notch     string    `json:"notch,omitempty"`     // one of Notches
	Niche     NicheWork `json:"niche,omitzero"`
	Holds     bool      `json:"holds,omitempty"` // the mortar holds the tile by itself
	Hours     Hours     `json:"hours,omitzero"`
}

// NicheWork is what the inside of the niches gets.
type NicheWork struct {
	Depth string `json:"depth,omitempty"`
	Back  bool   `json:"back,omitempty"`
	Trim  bool   `json:"trim,omitempty"`
	Tile  Tile   `json:"tile,omitzero"` // left out: the room's
}

// Hours are the waits between the stages, in whole hours.
type Hours struct {
	First   string `json:"first,omitempty"`
	Grout   string `json:"grout,omitempty"`
	Sealant string `json:"sealant,omitempty"`
	Water   string `json:"water,omitempty"`
}

// WorkRule is Work read and checked; nil is as usual.
type WorkRule struct {
	Kerf, Least                  *length.Length
	Turn                         *bool
	Breakage, Allowance          *int
	Notch                        string
	NicheDepth                   length.Length // 0: the niches are left out
	NicheBack, NicheTrim         bool
	NicheTile                    TileSize // zero: the room's
	Holds                        bool
	First, Grout, Sealant, Water *int
}

// Notches are the trowels by the words of the job file: 1/4 by 1/4 in
// (6 × 6 mm), 1/4 by 3/8 in (6 × 10 mm), 1/2 by 1/2 in (12 × 12 mm).
func Notches() []string { return []string{"quarter", "three eighths", "half"} }

// work reads the settings of the work in a room with a joint as typed.
func (r *resolver) work(p path, w Work, joint Measure) WorkRule {
	const longestWait = 24 * 60
	rule := WorkRule{
		Kerf:      r.chosen(value{p.dot("kerf"), w.Kerf}, bounds{0, length.Inch}),
		Turn:      w.Turn,
		Least:     r.chosen(value{p.dot("least"), w.Least}, bounds{0, largestTile}),
		Breakage:  r.whole(value{p.dot("breakage"), w.Breakage}, 0, 100, "percent"),
		Allowance: r.whole(value{p.dot("allowance"), w.Allowance}, 0, 100, "percent"),
		NicheBack: w.Niche.Back, NicheTrim: w.Niche.Trim, Holds: w.Holds,
	}
	if w.Notch != "" {
		rule.Notch = r.choice(value{p.dot("notch"), w.Notch}, Notches()...)
	}
	rule.NicheDepth = r.or(value{p.dot("niche.depth"), w.Niche.Depth}, 0, bounds{0, 24 * length.Inch})
	if w.Niche.Tile != (Tile{}) {
		rule.NicheTile = r.tile(p.dot("niche.tile"), w.Niche.Tile, joint)
	}
	hours := p.dot("hours")
	rule.First = r.whole(value{hours.dot("first"), w.Hours.First}, 0, longestWait, "hours")
	rule.Grout = r.whole(value{hours.dot("grout"), w.Hours.Grout}, 0, longestWait, "hours")
	rule.Sealant = r.whole(value{hours.dot("sealant"), w.Hours.Sealant}, 0, longestWait, "hours")
	rule.Water = r.whole(value{hours.dot("water"), w.Hours.Water}, 0, longestWait, "hours")
	return rule
}

// chosen reads a length that may be left out.
func (r *resolver) chosen(v value, b bounds) *length.Length {
	if v.text == "" {
		return nil
	}
	l := r.length(v, b)
	return &l
}

// whole reads a whole number that may be left out.
func (r *resolver) whole(v value, least, most int, of string) *int {
	if v.text == "" {
		return nil
	}
	n, err := strconv.Atoi(strings.TrimSpace(v.text))
	if err != nil || n < least || n > most {
		r.faults.add(v.path, quote(v.text), fmt.Sprintf("a whole number of %s from %d to %d", of, least, most))
	}
	return &n
}
