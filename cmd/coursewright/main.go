// Command coursewright works out where every tile of a tub or shower lands:
// it serves the bench, solves a job file, and draws a wall of it.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"strings"
	"syscall"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := (&program{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Watched: terminal(os.Stdout)}).run(ctx, os.Args[1:])
	stop()
	os.Exit(code)
}

// Exit codes: a job that cannot be solved, and a command line that cannot be read.
const (
	failed  = 1
	misused = 2
)

// program is the command as a value, so that tests can run it.
type program struct {
	In       io.Reader
	Out, Err io.Writer
	Watched  bool                 // a person reads Out while it is printed, and no file or log keeps it
	Ready    func(address string) // called once when serve listens, if set
	asked    *verb                // the command that is asked for, where there is one of that name
	Limits   limits               // of serve; the usual ones where they are zero
}

// terminal tells whether a file is a window that a person looks at.
func terminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// run does what the arguments ask and gives the exit code.
func (p *program) run(ctx context.Context, args []string) int {
	name, rest := "serve", args
	switch {
	case len(args) > 0 && isHelp(args[0]):
		name, rest = "help", nil
	case len(args) > 0 && (args[0] == "" || args[0][0] != '-'):
		name, rest = args[0], args[1:]
	}
	v, found := named(name)
	if !found {
		return p.misuse("There is no command %q.", name)
	}
	p.asked = &v
	if slices.ContainsFunc(rest, isHelp) {
		return p.print(v.explain())
	}
	return v.run(p, ctx, rest)
}

func isHelp(arg string) bool { return arg == "-h" || arg == "-help" || arg == "--help" }

// misuse says what is wrong with the command line and how it goes: of a command that is known its own
// line, so that what is wrong is not scrolled away.
func (p *program) misuse(format string, a ...any) int {
	said, how := fmt.Sprintf(format, a...), usage()
	said = strings.NewReplacer("flag provided but not defined: -", "There is no option --", "flag needs an argument: -", "A value is missing behind --").Replace(said)
	if p.asked != nil {
		how = fmt.Sprintf("  %s\n\ncoursewright %s --help says more.\n", p.asked.call(), p.asked.name)
	}
	fmt.Fprintf(p.Err, "%s\n\n%s", said, how)
	return misused
}

// fail says what went wrong.
func (p *program) fail(err error) int {
	if errors.Is(err, context.Canceled) {
		err = errors.New("told to end before it was done")
	}
	fmt.Fprintf(p.Err, "coursewright: %v\n%s", err, wayBack(err))
	return failed
}
