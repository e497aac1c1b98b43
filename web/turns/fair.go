package turns

import (
	"cmp"
	"net"
	"net/http"
	"strings"
)

// Places are given by turns to the devices that wait for one, and of one device to the jobs it
// waits for, so that a device that asks for very much makes others wait no longer than anybody.

// asker is who waits: a device, by its address, and the job it asks for, by the first two parts of its path.
type asker struct{ device, job string }

func askerOf(r *http.Request) asker {
	device, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		device = r.RemoteAddr
	}
	parts := strings.SplitN(r.URL.Path, "/", 4)
	return asker{device, strings.Join(parts[:min(3, len(parts))], "/")}
}

// each is how many places every device has.
type each map[string]int

func (e *each) add(device string, n int) {
	if *e == nil {
		*e = each{}
	}
	if (*e)[device] += n; (*e)[device] <= 0 {
		delete(*e, device)
	}
}

// lately is when devices and their jobs were last let in, in the order that they were: of a device, and, with
// the job, of a job. Nothing of it is kept once nothing is worked on.
type lately struct {
	count int
	last  map[asker]int
}

func (l *lately) note(a asker) {
	if l.last == nil {
		l.last = map[asker]int{}
	}
	l.count++
	l.last[a], l.last[asker{device: a.device}] = l.count, l.count
}

// compare tells who was let in longer ago: the device, then its job.
func (l *lately) compare(a, b asker) int {
	return cmp.Or(cmp.Compare(l.last[asker{device: a.device}], l.last[asker{device: b.device}]), cmp.Compare(l.last[a], l.last[b]))
}
