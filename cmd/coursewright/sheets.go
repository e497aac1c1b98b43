package main

import (
	"context"
	"os"
	"time"

	"coursewright/layout"
	"coursewright/layout/survey"
	"coursewright/web/sheet"
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
	job, plan, err := p.solved(file)
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
	opts.Hash, opts.Choices, opts.Help = sheet.Hash(document), sheet.ChoicesOf(job, layout.Now, help), help(job, plan)
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
	opts.Date, err = time.Parse(time.DateOnly, date)
	return opts, err
}

// writeSheets leaves no half a file behind.
func (p *program) writeSheets(name string, plan layout.Plan, opts sheet.Options) error {
	if name == "-" {
		return sheet.Write(p.Out, plan, opts)
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	if err = sheet.Write(f, plan, opts); err == nil {
		err = f.Close()
	}
	if err != nil {
		f.Close()
		os.Remove(name)
	}
	return err
}
