package main

import (
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"coursewright/layout/survey"
)

// A long run, most of it compiling: go test ./cmd/coursewright -run Processor -processors arm64,386
var processors = flag.String("processors", "", "further processors, with commas between, whose program has to give the same bytes")

// emulator gives the command that runs a program of a processor here. An amd64 runs 386 itself.
func emulator(t *testing.T, processor string) []string {
	if processor == "386" {
		return nil
	}
	name := map[string]string{"arm64": "qemu-aarch64-static", "riscv64": "qemu-riscv64-static", "s390x": "qemu-s390x-static", "ppc64le": "qemu-ppc64le-static"}[processor]
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("no emulator for %s: install qemu-user-static", processor)
	}
	return []string{path}
}

// TestAnotherProcessorGivesTheSameBytes compiles the program for another processor and compares plan,
// drawings, tables and sheets of every job that ships. Where a processor fuses a product and a sum
// of floats, or counts in 32 bits, this is where it would show.
func TestAnotherProcessorGivesTheSameBytes(t *testing.T) {
	if *processors == "" {
		t.Skip("only where -processors names some")
	}
	here := builtFor(t, "")
	for processor := range strings.SplitSeq(*processors, ",") {
		t.Run(processor, func(t *testing.T) {
			there := append(emulator(t, processor), builtFor(t, processor)...)
			for _, args := range everyOutput(t) {
				require.Equal(t, outputOf(t, here, args), outputOf(t, there, args), args)
			}
		})
	}
}

// builtFor compiles the program.
func builtFor(t *testing.T, processor string) []string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "coursewright")
	build := exec.Command("go", "build", "-o", file, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if processor != "" {
		build.Env = append(build.Env, "GOARCH="+processor)
	}
	out, err := build.CombinedOutput()
	require.NoError(t, err, string(out))
	return []string{file}
}

// everyOutput lists the command lines that print all that is made of the jobs that ship.
func everyOutput(t *testing.T) (out [][]string) {
	t.Helper()
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		out = append(out, []string{"solve", file}, []string{"cuts", file}, []string{"sheets", file, "-o", "-", "--date", "2026-03-01"})
		document, err := os.ReadFile(file)
		require.NoError(t, err)
		job, err := survey.Read(document)
		require.NoError(t, err)
		for _, w := range job.Walls {
			out = append(out, []string{"draw", file, "--wall", w.Name})
		}
	}
	return out
}

func outputOf(t *testing.T, program, args []string) string {
	t.Helper()
	all := append(append([]string{}, program...), args...)
	out, err := exec.Command(all[0], all[1:]...).Output()
	require.NoError(t, err, args)
	require.NotEmpty(t, out)
	return string(out)
}
