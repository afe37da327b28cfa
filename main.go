// Command borewalk plans a subsea well one hole section at a time, full screen in a terminal; without one it prints the
// section sheets.
package main

import (
	"cmp"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"time"

	"github.com/charmbracelet/x/term"
	"github.com/mattn/go-isatty"

	"borewalk/calc"
	"borewalk/model"
	"borewalk/model/harmless"
	"borewalk/model/journal"
	"borewalk/model/planfile"
	"borewalk/model/planlock"
	"borewalk/model/quantity"
	"borewalk/model/statefolder"
	"borewalk/plans"
	"borewalk/ui"
	"borewalk/ui/dialogue"
	"borewalk/ui/leaving"
	_ "borewalk/ui/quiet" // before bubbletea: keeps start-up from asking the terminal
	"borewalk/ui/sheet"
	"borewalk/ui/terminal"
	"borewalk/ui/usage"
)

// Exit codes.
const (
	exitOK    = 0
	exitError = 1 // the plan cannot be read, or the call is wrong
	exitStop  = 2 // the plan has a stop finding
	exitLost  = 3 // the lines of a dialogue ended before something was saved
)

// Messages quote what the command line and files hold, which must not drive the terminal.
func main() { os.Exit(run(os.Args[1:], os.Stdout, harmless.Lines{To: os.Stderr})) }

// options are what the command line asks for.
type options struct {
	print, units, demo string
	paper              string
	demoChosen         bool
	check, fresh       bool
	readOnly           bool
	lines, linesChosen bool
	ascii, plain       bool
	version            bool
	section            int
	name               string
	since, against     string
	path               string
}

func run(args []string, out, errs io.Writer) int {
	o, err := parse(args, errs)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return exitOK
	case err != nil:
		return exitError
	case o.version:
		fmt.Fprintln(out, "borewalk", version())
		return exitOK
	}
	file, source, err := open(o)
	if err == nil {
		err = fits(o, file.Plan)
	}
	if err != nil {
		fmt.Fprintln(errs, err)
		return exitError
	}
	if o.check || o.print != "" || o.paper != "" || !o.lines && !terminals(out) {
		return printed(o, file, source, out, errs)
	}
	if why := byLines(o); o.lines || why != "" {
		return spoken(o, file, source, why, out, errs)
	}
	return planned(o, file, source, errs)
}

// What the program is, and the options in the order in which they are asked for.
const what = `borewalk [options] [PLAN.toml]

Plans a subsea well one hole section at a time, full screen. Without a plan it
opens a demo well, as a copy to try things on; ? shows every key.
A planning aid: verify by independent calculation; competent persons and local
codes rule.

  borewalk                      the demo
  borewalk well.toml            a plan of your own
  borewalk -new                 begin a plan from a few questions
  borewalk -check well.toml     what was found, without a screen
  borewalk -lines well.toml     in lines of text, without a screen
`

var optionGroups = []usage.Group{
	{Title: "Opening a plan", Names: []string{"demo", "new", "read-only", "section", "units", "name"}},
	{Title: "The screen", Names: []string{"lines", "ascii", "no-colour"}},
	{Title: "Printing without a screen", Names: []string{"print", "paper", "check", "since", "against"}},
}

func parse(args []string, errs io.Writer) (options, error) {
	var o options
	f := flag.NewFlagSet("borewalk", flag.ContinueOnError)
	f.SetOutput(io.Discard) // what is wrong is said in one line, below
	f.StringVar(&o.print, "print", "", "print the sheets in a `format`, and exit: text, markdown, csv, json or pdf")
	f.StringVar(&o.paper, "paper", "", "print a `paper`, as text unless -print says otherwise, and exit: "+strings.Join(sheet.PaperNames(), ", "))
	f.IntVar(&o.section, "section", 0, "`number` of the section to print alone, or to open the planner at; counted from 1")
	f.StringVar(&o.units, "units", "", "`set` of units to show: metric, field or si; without it the plan's own")
	f.BoolVar(&o.check, "check", false, "print the findings, and exit: 0 no stop, 1 unreadable, 2 a stop finding")
	f.StringVar(&o.demo, "demo", plans.Default, "`name` of the demo to open when no plan is named: "+strings.Join(plans.Names(), ", "))
	f.BoolVar(&o.fresh, "new", false, "start a new plan from a few questions")
	f.BoolVar(&o.readOnly, "read-only", false, "open the plan to look and try: it is saved under another name only")
	f.StringVar(&o.name, "name", "", "your `name` or initials, for the plan's log; without it you are asked at the first save")
	f.StringVar(&o.since, "since", "", "what a change note begins at: the last `mark` in the plan's log, handover or baseline; without it the baseline")
	f.StringVar(&o.against, "against", "", "the other `plan`'s file of a comparison")
	f.BoolVar(&o.lines, "lines", false, "a dialogue in lines of text, for screen readers, paper and scripts; on by itself where TERM is dumb")
	f.BoolVar(&o.ascii, "ascii", false, "use plain ASCII; on by itself where the locale is not UTF-8")
	f.BoolVar(&o.plain, "no-colour", false, "use no colour; on by itself with NO_COLOR and on simple terminals")
	f.BoolVar(&o.version, "version", false, "print the version and exit")
	switch err := f.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		usage.Write(f, errs, what, optionGroups)
		return o, err
	case err != nil:
		fmt.Fprintf(errs, "%s; borewalk -h lists the options\n", err)
		return o, err
	}
	o.path = f.Arg(0)
	f.Visit(func(set *flag.Flag) {
		o.demoChosen = o.demoChosen || set.Name == "demo"
		o.linesChosen = o.linesChosen || set.Name == "lines"
	})
	if err := o.clash(f.Args()); err != nil {
		fmt.Fprintln(errs, err)
		return o, err
	}
	return o, nil
}

// clash returns why the options cannot be followed together.
func (o options) clash(plans []string) error {
	switch {
	case len(plans) > 1:
		return fmt.Errorf("one plan at a time: %q is too many; put options before the plan", plans[1])
	case o.demoChosen && o.path != "":
		return errors.New("-demo opens a demo well and the plan is named too: take one of them")
	case o.fresh && (o.path != "" || o.demoChosen):
		return errors.New("-new starts a new plan: name no plan and no demo with it")
	case o.fresh && (o.check || o.print != "" || o.paper != ""):
		return errors.New("-new asks its questions full screen: -print, -paper and -check need a plan that is there")
	case o.readOnly && (o.path == "" || o.check || o.print != "" || o.paper != ""):
		return errors.New("-read-only opens a plan in the planner: name the plan, without -print, -paper and -check, which only read it anyway")
	case o.lines && (o.check || o.print != "" || o.paper != ""):
		return errors.New("-lines holds a dialogue, -print, -paper and -check print and exit: take one of them")
	case o.check && (o.print != "" || o.paper != ""):
		return errors.New("-check and -print or -paper print different things: take one of them")
	case o.since != "" && !o.prints(sheet.ChangeNote):
		return errors.New("-since is for -paper change-note: name that paper with it")
	case o.since != "" && o.since != model.MarkHandover && o.since != model.MarkBaseline:
		return fmt.Errorf("-since %q: take %s or %s", model.Clean(o.since), model.MarkHandover, model.MarkBaseline)
	case (o.against != "") != o.prints(sheet.ComparisonPaper):
		return errors.New("-paper comparison and -against OTHER.toml go together: give both")
	case o.section < 0:
		return fmt.Errorf("section %d: sections are counted from 1", o.section)
	}
	return nil
}

// open reads the plan that the command line names, or a demo, and returns what to call it.
func open(o options) (*planfile.File, string, error) {
	if o.path != "" {
		file, err := planfile.Open(o.path)
		if errors.Is(err, fs.ErrNotExist) {
			err = fmt.Errorf("%w; check name and folder, or begin a plan with borewalk -new", err)
		}
		return file, o.path, err
	}
	text, ok := plans.Demo(o.demo)
	if !ok {
		return nil, "", fmt.Errorf("there is no demo %q; the demos are %s", model.Clean(o.demo), strings.Join(plans.Names(), ", "))
	}
	file, err := planfile.Read("demo "+o.demo, text)
	return file, "demo " + o.demo, err
}

// terminals reports whether a person sits at both ends.
func terminals(out io.Writer) bool {
	f, ok := out.(*os.File)
	return ok && isatty.IsTerminal(f.Fd()) && isatty.IsTerminal(os.Stdin.Fd())
}

// printed prints the sheets or the findings. What was not asked for by name stands for the planner, so that its exit code tells of
// a stop finding as that of a check does.
func printed(o options, file *planfile.File, source string, out, errs io.Writer) int {
	format, err := sheet.ParseFormat(o.print)
	if o.print == "" {
		format, err = sheet.Text, nil
	}
	paper := sheet.Sheets
	if o.paper != "" && err == nil {
		paper, err = sheet.ParsePaper(o.paper)
	}
	if err != nil {
		fmt.Fprintln(errs, err)
		return exitError
	}
	for _, notice := range file.Notices {
		fmt.Fprintln(errs, notice)
	}
	leftBehind(o, file.Plan, errs)
	system, _ := system(o, file.Plan)
	against, err := compared(o, file.Plan)
	if err != nil {
		fmt.Fprintln(errs, err)
		return exitError
	}
	result := calc.Evaluate(file.Plan)
	options := sheet.Options{
		Format: format, Paper: paper, System: system, Section: o.section - 1, ASCII: o.ascii, Source: source, Version: version(),
		Hash: model.Hash(file.Plan), Printed: time.Now(),
		Against: against, Changes: model.ChangesSince(file.Plan, file.Plan.Log),
	}
	write := sheet.Write
	if o.check {
		write = sheet.Check
	}
	if err := write(out, file.Plan, result, options); err != nil {
		fmt.Fprintln(errs, err)
		return exitError
	}
	if o.print == "" && o.paper == "" && stops(result, o.section-1) {
		return exitStop
	}
	return exitOK
}

// prints reports whether a paper is asked for.
func (o options) prints(paper sheet.Paper) bool {
	asked, err := sheet.ParsePaper(o.paper)
	return err == nil && asked == paper
}

// compared returns what a change note or a comparison is made against; nothing for other papers.
func compared(o options, plan *model.Plan) (sheet.Against, error) {
	switch {
	case o.prints(sheet.ComparisonPaper):
		other, err := planfile.Open(o.against)
		if err != nil {
			return sheet.Against{}, err
		}
		return sheet.Against{Plan: other.Plan, Name: o.against}, nil
	case o.prints(sheet.ChangeNote):
		mark := cmp.Or(o.since, model.MarkBaseline)
		n, ok := model.RowsSince(plan.Log, mark)
		if !ok {
			return sheet.Against{}, fmt.Errorf("there is no %s in the log of the plan: mark one with C in the planner, or take -since %s", mark, model.MarkBaseline)
		}
		then, misfits := model.Rewind(plan, n)
		a := sheet.Against{Plan: then, Name: "the plan as its log began", Log: plan.Log[len(plan.Log)-n:], Misfits: misfits}
		if n < len(plan.Log) {
			from := plan.Log[len(plan.Log)-n-1]
			a.Name = "the " + mark + " of " + from.When + ", " + from.Who
		}
		return a, nil
	}
	return sheet.Against{}, nil
}

// fits returns an error when the plan has no section of the number asked for, or there are no such units.
func fits(o options, plan *model.Plan) error {
	if o.section > len(plan.Sections) {
		return fmt.Errorf("section %d: the plan has %d", o.section, len(plan.Sections))
	}
	_, err := system(o, plan)
	return err
}

// stops reports whether there is a stop finding among those that a check of a section prints, its own and the well's; of the
// whole plan for section -1.
func stops(result *calc.Result, section int) bool {
	return slices.ContainsFunc(result.Findings, func(f calc.Finding) bool {
		return f.Severity == calc.Stop && (section < 0 || f.Section < 0 || f.Section == section)
	})
}

// system returns the units to print in.
func system(o options, plan *model.Plan) (quantity.System, error) {
	if o.units == "" {
		set, err := quantity.ParseSet(plan.Well.UnitSet)
		return plan.System(set, true), err
	}
	set, err := quantity.ParseSet(o.units)
	return plan.System(set, false), err
}

// planned opens the planner and returns when it is left.
func planned(o options, file *planfile.File, source string, errs io.Writer) int {
	collecting := debug.SetGCPercent(400) // until the first picture there is hardly any garbage, and nothing shall keep it waiting
	seen := terminal.Look(os.Getenv, runtime.GOOS)
	terminal.NarrowAmbiguous()
	choices := ui.Options{Path: o.path, Colours: seen.Colours, ASCII: seen.ASCII || o.ascii, Fresh: o.fresh, Section: max(0, o.section-1), Units: o.units, Name: model.Clean(o.name), Version: version()}
	choices.ReadOnly, choices.Computer = o.readOnly, planlock.This()
	if o.path == "" {
		choices.Title, choices.Demo = "demo", !o.fresh
	}
	if o.plain {
		choices.Colours = 0
	}
	choices.Columns, choices.Lines = terminal.SizeOf(os.Stdout)
	output := terminal.NewOutput(os.Stdout)
	choices.Terminal = output
	choices.Journal, choices.Left = journalled(o, file)
	planner := ui.New(file, choices)
	defer planner.Close()
	debug.SetGCPercent(collecting)
	input, err := terminal.Stdin()
	if err != nil {
		fmt.Fprintln(errs, "the keyboard cannot be read:", err)
		return exitError
	}
	end := leaving.Run(ui.NewLive(planner, output), choices.Journal, input, output)
	return end.Farewell(errs, reporter(planner.Name()))
}

// journalled returns a journal, and what earlier runs left of the plan in theirs.
func journalled(o options, file *planfile.File) (*journal.Keeper, []*journal.Found) {
	state, _ := statefolder.Path(os.Getenv, runtime.GOOS) // without one, there is the plan's own folder
	keeper := journal.NewKeeper(state, func(what any, stack []byte) { reporter(o.path).Write(&leaving.Fault{What: what, Stack: stack}) })
	left, notices := journal.Begin(o.path, state, file.Plan)
	file.Notices = append(file.Notices, notices...)
	return keeper, left
}

// reporter writes the reports of faults of the program while a plan is open.
func reporter(plan string) leaving.Reporter {
	state, _ := statefolder.Path(os.Getenv, runtime.GOOS)
	return leaving.Reporter{Folder: state, Version: version(), Plan: plan, Now: time.Now}
}

// leftBehind says on one line each that changes were not saved which an earlier run of the planner made to a plan that is printed.
func leftBehind(o options, plan *model.Plan, errs io.Writer) {
	if o.path == "" {
		return
	}
	state, _ := statefolder.Path(os.Getenv, runtime.GOOS)
	found, damaged := journal.Find(o.path, state)
	for _, f := range found {
		if f.More(plan) {
			line := fmt.Sprintf("%s: changes that were not saved, of %s UTC, lie in %s; open the plan to recover them", o.path, f.When(), f.At)
			fmt.Fprintln(errs, model.Clean(line))
		}
	}
	for _, d := range damaged {
		fmt.Fprintln(errs, model.Clean(d.Why.Error()))
	}
}

// byLines says why a dialogue in lines takes the place of the full screen; nothing where it does not, or -lines=false was said.
func byLines(o options) string {
	if name := os.Getenv("TERM"); !o.linesChosen && !terminal.Places(name) {
		return fmt.Sprintf("lines mode: TERM=%s cannot place a cursor; -lines=false draws the full screen all the same", model.Clean(name))
	}
	return ""
}

// spoken holds the dialogue in lines and returns when it is left.
func spoken(o options, file *planfile.File, source, why string, out, errs io.Writer) int {
	seen := terminal.Look(os.Getenv, runtime.GOOS)
	keyboard := isatty.IsTerminal(os.Stdin.Fd())
	keeper, left := journalled(o, file)
	session := dialogue.New(file, out, dialogue.Options{
		Path: o.path, Title: source, Why: why, Fresh: o.fresh, Section: max(0, o.section-1), Units: o.units, Name: model.Clean(o.name),
		Version: version(), ASCII: seen.ASCII || o.ascii, Script: !keyboard, Width: width(out),
		ReadOnly: o.readOnly, Computer: planlock.This(), Journal: keeper, Left: left,
	})
	defer session.Close()
	end := session.Run(os.Stdin, dialogue.Heed())
	switch {
	case end.Fault != nil:
		return end.Farewell(errs, reporter(cmp.Or(o.path, source)))
	case end.Signal != nil: // the dialogue has said so
		end.Terminal = false
		return end.Farewell(errs, reporter(o.path))
	case session.Lost():
		return exitLost
	case end.Err != nil:
		return end.Farewell(errs, reporter(o.path))
	case !keyboard && session.Refused() > 0:
		fmt.Fprintf(errs, "lines not followed: %d\n", session.Refused())
		return exitError
	}
	return exitOK
}

// width returns the columns of a terminal; 0 for what is none, or does not say.
func width(out io.Writer) int {
	if f, ok := out.(*os.File); ok {
		if columns, _, err := term.GetSize(f.Fd()); err == nil {
			return columns
		}
	}
	return 0
}

// version returns what the build says of itself.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "unknown"
}
