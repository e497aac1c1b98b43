// Command coursewright works out where every tile of a tub or shower lands:
// it serves the bench, solves a job file, and draws a wall of it.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := (&program{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}).run(ctx, os.Args[1:])
	stop()
	os.Exit(code)
}

// Exit codes: a job that cannot be solved, and a command line that cannot be read.
const (
	failed  = 1
	misused = 2
)

const usage = `Coursewright works out where every tile of a tub or shower lands.

  coursewright [serve] [--listen 127.0.0.1:7310] [--data FILE] [--host NAME] [--lan]
      serve the bench to a browser; with --lan also to devices of the network that show a code
  coursewright restore BACKUP [--data FILE]
      put a backup in the place of the data file, which is moved aside
  coursewright solve JOB.json
      print the plan file of a job
  coursewright draw JOB.json --wall NAME
      print the drawing of one wall as SVG
  coursewright sheets JOB.json -o FILE.pdf [--paper a4] [--kinds set-out,elevations,…]
      print sheets to work by as one PDF
  coursewright cuts JOB.json
      print the cut schedule as CSV

JOB.json may be - for standard input.
`

// program is the command as a value, so that tests can run it.
type program struct {
	In       io.Reader
	Out, Err io.Writer
	Ready    func(address string) // called once when serve listens, if set
	Limits   limits               // of serve; the usual ones where they are zero
}

// run does what the arguments ask and gives the exit code.
func (p *program) run(ctx context.Context, args []string) int {
	command, rest := "serve", args
	if len(args) > 0 && (args[0] == "" || args[0][0] != '-' || isHelp(args[0])) {
		command, rest = args[0], args[1:]
	}
	switch command {
	case "serve":
		return p.serve(ctx, rest)
	case "restore":
		return p.restore(rest)
	case "solve":
		return p.solve(rest)
	case "draw":
		return p.draw(rest)
	case "sheets":
		return p.sheets(rest)
	case "cuts":
		return p.cuts(rest)
	case "help", "-h", "-help", "--help":
		fmt.Fprint(p.Out, usage)
		return 0
	}
	return p.misuse("There is no command %q.", command)
}

func isHelp(arg string) bool { return arg == "-h" || arg == "-help" || arg == "--help" }

// misuse says what is wrong with the command line and how it goes.
func (p *program) misuse(format string, a ...any) int {
	fmt.Fprintf(p.Err, format+"\n\n%s", append(a, usage)...)
	return misused
}

// fail says what went wrong.
func (p *program) fail(err error) int {
	fmt.Fprintf(p.Err, "coursewright: %v\n%s", err, wayBack(err))
	return failed
}
