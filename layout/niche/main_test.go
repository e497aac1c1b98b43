package niche_test

import (
	"os"
	"testing"

	"coursewright/layout/steady"
)

// TestMain keeps the random niches the same from run to run.
func TestMain(m *testing.M) { os.Exit(steady.Run(m, "200")) }
