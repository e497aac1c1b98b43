package phase

import (
	"os"
	"testing"

	"coursewright/layout/steady"
)

// TestMain keeps the random rooms the same from run to run.
func TestMain(m *testing.M) { os.Exit(steady.Run(m, "40")) }
