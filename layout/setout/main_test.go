package setout

import (
	"flag"
	"os"
	"testing"
)

// Solving a room takes far longer than counting one, so a plain run draws few
// rooms; -rapid.checks=N draws more.
func TestMain(m *testing.M) {
	flag.Parse()
	given := false
	flag.Visit(func(f *flag.Flag) { given = given || f.Name == "rapid.checks" })
	if !given {
		if err := flag.Set("rapid.checks", "12"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
