package door

import (
	"cmp"
	"io/fs"
	"net/http"
	"slices"
	"strconv"

	"coursewright/store"
	"coursewright/web/page"
)

// Devices is the page that lists who has a pass.
type Devices struct {
	Passes  []store.Pass
	Own     int64 // the pass of the device that asks, or 0
	All     bool  // this machine asks, and may take back every pass
	Network bool  // devices of the network can come in now
}

// mayEdit tells whether whoever asks may rename a pass and take it back.
func (d Devices) mayEdit(p store.Pass) bool { return d.All || p.ID == d.Own }

// devices gathers the page. This machine sees to all passes, a device to its own.
func (d *Door) devices(r *http.Request) (Devices, error) {
	own, _, err := d.passes.of(r)
	if err != nil {
		return Devices{}, err
	}
	out := Devices{Own: own.ID, All: AtHome(r), Network: d.Network}
	d.passes.mu.Lock()
	defer d.passes.mu.Unlock()
	for _, p := range d.passes.known {
		if out.mayEdit(p) {
			out.Passes = append(out.Passes, p)
		}
	}
	slices.SortFunc(out.Passes, func(a, b store.Pass) int { return cmp.Compare(a.ID, b.ID) })
	return out, nil
}

func (d *Door) showDevices(w http.ResponseWriter, r *http.Request) error {
	list, err := d.devices(r)
	if err != nil {
		return err
	}
	return page.Render(w, r, http.StatusOK, DevicesPage(list))
}

// editDevices renames a pass or takes it back.
func (d *Door) editDevices(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return page.BadRequest(err)
	}
	list, err := d.devices(r)
	if err != nil {
		return err
	}
	id, _ := strconv.ParseInt(r.PostForm.Get("id"), 10, 64)
	i := slices.IndexFunc(list.Passes, func(p store.Pass) bool { return p.ID == id })
	if i < 0 {
		return fs.ErrNotExist
	}
	switch r.PostForm.Get("do") {
	case "rename":
		err = d.passes.rename(r.Context(), list.Passes[i], deviceName(r.PostForm.Get("name"), r))
	case "take":
		err = d.passes.take(r.Context(), list.Passes[i])
	default:
		err = &page.Refusal{Status: http.StatusBadRequest, Text: "That button is not known. Load the page again."}
	}
	if err != nil {
		return err
	}
	http.Redirect(w, r, "/devices", http.StatusSeeOther)
	return nil
}
