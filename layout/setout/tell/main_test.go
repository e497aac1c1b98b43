package tell

import (
	"os"
	"testing"

	"coursewright/layout/steady"
)

func TestMain(m *testing.M) { os.Exit(steady.Run(m, "60")) }
