// Package steady keeps random tests the same from run to run.
package steady

import (
	"flag"
	"testing"
)

// Run runs a package's tests with the same random cases every time, checks of
// them for each law, so that a plain run says the same twice. The flags
// -rapid.seed=0 and -rapid.checks=N, where given, draw others and more of them.
func Run(m *testing.M, checks string) int {
	flag.Parse()
	given := map[string]bool{}
	flag.Visit(func(f *flag.Flag) { given[f.Name] = true })
	for name, value := range map[string]string{"rapid.seed": "7", "rapid.checks": checks} {
		if given[name] {
			continue
		}
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
	return m.Run()
}
