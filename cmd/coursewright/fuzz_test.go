package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"coursewright/layout"
	"coursewright/layout/cuts"
	"coursewright/layout/length"
	"coursewright/layout/stages"
	"coursewright/layout/survey"
	"coursewright/layout/takeoff"
	"coursewright/web/drawing"
	"coursewright/web/elevation"
	"coursewright/web/sheet"
)

// fewEnough is the most pieces a fuzzed job may have to be printed: sheets of thousands say no more.
const fewEnough = 2000

// FuzzJobFile takes any bytes as a job file through everything that is made of a job.
func FuzzJobFile(f *testing.F) {
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	require.NoError(f, err)
	for _, file := range append(files, "../../testdata/insides/shower.json") {
		document, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(document)
	}
	f.Fuzz(func(t *testing.T, document []byte) {
		job, err := survey.Read(document)
		if err != nil || tooLarge(job) {
			return
		}
		ctx, cancel := context.WithTimeout(t.Context(), 2*time.Second) // the fuzzer takes ten for a crash
		defer cancel()
		plan, err := layout.Solve(ctx, job)
		if err != nil {
			return
		}
		var out bytes.Buffer
		_, err = plan.File()
		require.NoError(t, err)
		schedule := cuts.Of(cuts.Input{Room: plan.Room, Walls: plan.Walls}, cuts.For(plan.Room))
		require.NoError(t, schedule.CSV(&out, plan.Room.Units))
		buy := takeoff.Of(takeoff.Input{Room: plan.Room, Walls: plan.Walls, Cuts: schedule.Offcuts}, takeoff.For(plan.Room))
		require.NoError(t, buy.CSV(&out))
		stages.Of(stages.Input{Room: plan.Room, Walls: plan.Walls, Cuts: schedule}, stages.For(plan.Room))
		for i := range plan.Walls {
			require.NoError(t, elevation.Write(&out, drawing.Elevation(plan, i, drawing.Options{Handles: true}), elevation.Options{}))
			require.NoError(t, elevation.Write(&out, drawing.Slide(plan, i, 0), elevation.Options{}))
		}
		require.NoError(t, elevation.Write(&out, drawing.Wrap(plan, drawing.Options{}), elevation.Options{Inline: true, ID: "x"}))
		require.NoError(t, sheet.Write(&out, plan, sheet.Options{}))
	})
}

// tooLarge tells of a job whose walls over its tile come to more than a fuzzer has time for.
func tooLarge(job survey.Job) bool {
	room, faults := job.Resolve()
	if len(faults) > 0 {
		return true
	}
	pieces := 0
	for _, w := range room.Walls {
		high := w.Head.Stops.To + 3*length.Metre // from somewhere under the level line
		pieces += int(w.Width/(room.Tile.Width+room.Joint)+2) * int(high/(room.Tile.Height+room.Joint)+2)
	}
	return pieces > fewEnough
}
