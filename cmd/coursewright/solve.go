package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/drawing"
	"coursewright/web/elevation"
)

// solve prints the plan file of a job, with what would help.
func (p *program) solve(ctx context.Context, args []string) int {
	flags := newFlags("solve")
	file, code := p.jobFile(flags, args)
	if code != 0 {
		return code
	}
	job, plan, err := p.solved(ctx, file)
	if err != nil {
		return p.refuse(err)
	}
	help, err := layout.Remedies(ctx, job, plan)
	if err != nil {
		return p.fail(err)
	}
	plan.Help = &help
	out, err := plan.File()
	if err != nil {
		return p.fail(err)
	}
	return p.print(out)
}

// draw prints the drawing of one wall.
func (p *program) draw(ctx context.Context, args []string) int {
	flags := newFlags("draw")
	wall := flags.String("wall", "", "the name of the wall")
	file, code := p.jobFile(flags, args)
	if code != 0 {
		return code
	}
	_, plan, err := p.solved(ctx, file)
	if err != nil {
		return p.refuse(err)
	}
	i := wallNamed(plan, *wall)
	if i < 0 {
		return p.misuse("There is no wall %q; the walls are %s.", *wall, names(plan))
	}
	if err := elevation.Write(p.Out, drawing.Elevation(plan, i, drawing.Options{}), elevation.Options{}); err != nil {
		return p.fail(err)
	}
	return 0
}

func newFlags(name string) *flag.FlagSet {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.SetOutput(io.Discard) // misuse says it in one voice
	return flags
}

// jobFile reads flags before and after the one file name and gives the name.
func (p *program) jobFile(flags *flag.FlagSet, args []string) (string, int) {
	files, err := filesOf(flags, args)
	if err != nil {
		return "", p.misuse("%v.", err)
	}
	if len(files) != 1 {
		return "", p.misuse("%s takes one job file.", flags.Name())
	}
	return files[0], 0
}

// filesOf reads flags before, between and after file names and gives the names.
func filesOf(flags *flag.FlagSet, args []string) (files []string, err error) {
	for {
		if err := flags.Parse(args); err != nil {
			return nil, err
		}
		if flags.NArg() == 0 {
			return files, nil
		}
		files, args = append(files, flags.Args()[0]), flags.Args()[1:]
	}
}

// solved reads a job file and solves it. Every command that takes a job takes it so, and refuses the
// same jobs in the same words. It gives up soon after the context ends.
func (p *program) solved(ctx context.Context, file string) (survey.Job, layout.Plan, error) {
	document, err := p.read(ctx, file)
	if err != nil {
		return survey.Job{}, layout.Plan{}, err
	}
	job, err := survey.Read(document)
	if err != nil {
		return survey.Job{}, layout.Plan{}, err
	}
	plan, err := layout.Solve(ctx, job)
	return job, plan, err
}

// read reads a file, or standard input for "-". A person at a terminal, or a program at the other end of a
// pipe, may let it wait: nobody waits for it once the context has ended.
func (p *program) read(ctx context.Context, file string) ([]byte, error) {
	type whole struct {
		document []byte
		err      error
	}
	done := make(chan whole, 1)
	go func() {
		document, err := p.readAll(file)
		done <- whole{document, err}
	}()
	select {
	case all := <-done:
		return all.document, all.err
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// readAll reads no further than a job file may be long and one byte.
func (p *program) readAll(file string) ([]byte, error) {
	in := p.In
	if file != "-" {
		f, err := os.Open(file)
		if err != nil {
			return nil, err
		}
		defer f.Close()
		in = f
	}
	return io.ReadAll(io.LimitReader(in, survey.MaxBytes+1))
}

// refuse lists every fault of a job, one a line.
func (p *program) refuse(err error) int {
	var faults survey.Faults
	if !errors.As(err, &faults) {
		return p.fail(err)
	}
	for _, f := range faults {
		fmt.Fprintln(p.Err, f)
	}
	return failed
}

func (p *program) print(out []byte) int {
	if _, err := p.Out.Write(out); err != nil {
		return p.fail(err)
	}
	return 0
}

func wallNamed(plan layout.Plan, name string) int {
	for i, w := range plan.Walls {
		if w.Found.Name == name {
			return i
		}
	}
	return -1
}

func names(plan layout.Plan) string {
	var out []string
	for _, w := range plan.Walls {
		out = append(out, w.Found.Name)
	}
	return strings.Join(out, ", ")
}
