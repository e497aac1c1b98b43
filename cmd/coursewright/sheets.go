package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/sheet"
	"coursewright/web/sheets"
)

// sheets prints the sheets of a job into a PDF.
func (p *program) sheets(ctx context.Context, args []string) int {
	flags := newFlags("sheets")
	out := flags.String("o", "", "the PDF to write, - for standard output")
	paper := flags.String("paper", "", "a4, letter, a3 or tabloid")
	kinds := flags.String("kinds", "", "kinds of sheet, with commas between them")
	date := flags.String("date", time.Now().Format(time.DateOnly), "the date printed on the sheets")
	file, code := p.jobFile(flags, args)
	if code != 0 {
		return code
	}
	if *out == "" {
		return p.misuse("Say where the PDF goes with -o FILE.pdf.")
	}
	opts, err := sheetOptions(*paper, *kinds, *date)
	if err != nil {
		return p.misuse("%v.", err)
	}
	if same(file, *out) {
		return p.fail(fmt.Errorf("%s is the job itself: write the PDF to another file", *out))
	}
	job, plan, err := p.solved(ctx, file)
	if err != nil {
		return p.refuse(err)
	}
	document, err := survey.Write(job)
	if err != nil {
		return p.fail(err)
	}
	help := func(one survey.Job, plan layout.Plan) []layout.Remedy {
		all, _ := layout.WouldHelp(ctx, one, plan) // its error is that the program is told to end
		return all.Remedies
	}
	solve := func(one survey.Job) (layout.Plan, error) { return layout.Solve(ctx, one) }
	opts.Hash, opts.Choices, opts.Help = sheet.Hash(document), sheet.ChoicesOf(job, solve, help), help(job, plan)
	opts.Measured = sheets.Measured(job)
	if ctx.Err() != nil {
		return p.fail(ctx.Err())
	}
	if err := p.writeSheets(*out, plan, opts); err != nil {
		return p.fail(err)
	}
	return 0
}

// sheetOptions reads what was chosen on the command line.
func sheetOptions(paper, kinds, date string) (opts sheet.Options, err error) {
	if opts.Paper, err = sheet.PaperNamed(paper); err != nil {
		return opts, err
	}
	if opts.Kinds, err = sheet.ParseKinds(kinds); err != nil {
		return opts, err
	}
	if opts.Date, err = time.Parse(time.DateOnly, date); err != nil {
		return opts, fmt.Errorf("there is no day %q; write one as 2026-03-01", date)
	}
	return opts, nil
}

// same tells whether two names are of one file.
func same(one, other string) bool {
	a, err := os.Stat(one)
	b, none := os.Stat(other)
	return err == nil && none == nil && a.Mode().IsRegular() && os.SameFile(a, b)
}

func isFolder(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.IsDir()
}

// writeSheets leaves no half a file behind, and what stood in the file until the new one is whole. A pipe or
// a device is written to as it is.
func (p *program) writeSheets(name string, plan layout.Plan, opts sheet.Options) error {
	if name == "-" {
		return sheet.Write(p.Out, plan, opts)
	}
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		f, err := os.OpenFile(name, os.O_WRONLY, 0)
		if err != nil {
			return err
		}
		return errors.Join(sheet.Write(f, plan, opts), f.Close())
	}
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real
	}
	if folder := filepath.Dir(name); !isFolder(folder) {
		return fmt.Errorf("there is no folder %s to write %s into", folder, filepath.Base(name))
	}
	part := name + ".part"
	f, err := os.Create(part)
	if err != nil {
		return err
	}
	if err = errors.Join(sheet.Write(f, plan, opts), f.Close()); err == nil {
		err = os.Rename(part, name)
	}
	if err != nil {
		os.Remove(part)
	}
	return err
}
