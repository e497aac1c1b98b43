package mosaic

import (
	"os"
	"testing"

	"coursewright/layout/steady"
)

// TestMain keeps the random walls the same from run to run.
func TestMain(m *testing.M) { os.Exit(steady.Run(m, "100")) }
