package layout_test

import (
	"flag"
	"os"
	"testing"
)

// TestMain draws the same random jobs every time, so that a plain run says the
// same twice; -rapid.seed=0 draws others, -rapid.checks=N more of them.
func TestMain(m *testing.M) {
	flag.Parse()
	given := map[string]bool{}
	flag.Visit(func(f *flag.Flag) { given[f.Name] = true })
	for name, value := range map[string]string{"rapid.seed": "7", "rapid.checks": "40"} {
		if given[name] {
			continue
		}
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
