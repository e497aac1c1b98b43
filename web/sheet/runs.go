package sheet

import "strings"

// run is pieces beside each other of which the same is to be said.
type run struct {
	ids  []string
	what string
}

// runs are such pieces from left to right. An empty run parts others.
type runs []run

// few is how many alike are named one by one.
const few = 3

// add puts one more piece to the right.
func (r runs) add(id, what string) runs {
	if n := len(r); n > 0 && len(r[n-1].ids) > 0 && r[n-1].what == what {
		r[n-1].ids = append(r[n-1].ids, id)
		return r
	}
	return append(r, run{[]string{id}, what})
}

// gap parts what stands left of it from what comes.
func (r runs) gap() runs { return append(r, run{}) }

// upTo names a row of pieces by the first and the last: "B-01-04 to 12" in one
// course.
func upTo(first, last string) string {
	at := strings.LastIndexByte(first, '-') + 1
	if rest, same := strings.CutPrefix(last, first[:at]); same && at > 0 {
		last = rest
	}
	return first + " to " + last
}

// text lists the pieces, each in one unbroken word; more than a few alike are
// told by the first and the last.
func (r runs) text() string {
	var all []string
	for _, x := range r {
		if n := len(x.ids); n > few {
			all = append(all, held(upTo(x.ids[0], x.ids[n-1])+": "+x.what+" each"))
			continue
		}
		for _, id := range x.ids {
			all = append(all, held(id+": "+x.what))
		}
	}
	return strings.Join(all, ";  ")
}
