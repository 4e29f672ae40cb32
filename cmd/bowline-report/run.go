package main

import (
	"cmp"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path"
	"strconv"
	"strings"
	"time"

	"bowline/app/report"
	"bowline/assets"
	"bowline/model/analysis"
	"bowline/model/assumptions"
	"bowline/model/carfile"
	"bowline/model/holes"
	"bowline/model/launch"
	"bowline/model/stock"
	"bowline/model/units"
)

// Exit statuses.
const (
	succeeded = 0
	failed    = 1 // The errors are on standard error.
	misused   = 2 // The usage is on standard error.
)

const usage = `usage: bowline-report [-setup NAME] [-json] [-pdf FILE] [-csv DIR] [-charts DIR] [-tables FILE]
                      [-picture FILE [-at T | -travel Q] [-view VIEW] [-size WxH]]
                      [-movie FILE [-view VIEW] [-size WxH] [-speed S]] [-card FILE -holes N,N,N,N]
                      [-search N [-launch-all] [-by ORDER]] [-preload]
                      (CAR.toml | -demo)

Writes a text report of the car to standard output. Options come before the car file.
Files are written first: when one fails, the others are written but not the report.
The exit status is 0, 1 with every error on standard error, or 2 for wrong usage.

`

const program = "bowline-report: "

// request is what the command line asks for.
type request struct {
	setup, pdf, csv, charts, tables, card, by string
	holes                                     holeNumbers
	search                                    int
	json, demo, launchAll, preload            bool
	shot                                      shot
	car                                       string
}

// run carries out the command and returns its exit status. PDF pages are dated
// now.
func run(args []string, stdout, stderr io.Writer, now time.Time) int {
	q, err := parse(args, stdout, stderr)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return succeeded
	case err != nil:
		return misused
	}
	if err := q.carryOut(stdout, now); err != nil {
		complain(stderr, err)
		return failed
	}
	return succeeded
}

// complain writes errors, each after the program's name. What is wrong with a
// file is a list of lines that begin with its name instead.
func complain(w io.Writer, err error) {
	switch err := err.(type) {
	case interface{ Unwrap() []error }:
		for _, one := range err.Unwrap() {
			complain(w, one)
		}
	case carfile.Problems:
		fmt.Fprintln(w, err)
	default:
		fmt.Fprintf(w, program+"%v\n", err)
	}
}

// parse reads the command line. When it is wrong it says so with the usage on
// stderr; asked for help it prints the usage on stdout.
func parse(args []string, stdout, stderr io.Writer) (request, error) {
	var q request
	flags := flag.NewFlagSet("bowline-report", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringVar(&q.setup, "setup", "", "the setup's `NAME`; the first one if left out")
	flags.BoolVar(&q.json, "json", false, "write a JSON document instead of the text")
	flags.StringVar(&q.pdf, "pdf", "", "write the report with its charts to a PDF `FILE` too")
	flags.StringVar(&q.csv, "csv", "", "write "+report.TravelFile+", "+report.BarsFile+", "+report.LaunchFile+" and "+report.SummaryFile+" into `DIR` too")
	flags.StringVar(&q.charts, "charts", "", "write every chart as SVG and PNG into `DIR` too")
	q.shot.flags(flags)
	flags.StringVar(&q.card, "card", "", "write a card to tape to the car, with how to get from the setup to -holes, to a PDF `FILE` too")
	flags.Var(&q.holes, "holes", "the holes of the card: upper chassis, lower chassis, upper housing, lower housing, counted from 1, as in 4,3,2,3 for `N,N,N,N`")
	flags.IntVar(&q.search, "search", 0, "write the best `N` combinations of holes instead of the report, those within the bars' loads first and then by -by; with -csv all of them into "+report.HolesFile+" too")
	flags.BoolVar(&q.launchAll, "launch-all", false, "with -search, launch every combination too, which takes seconds: loads of the launch count, and the front lift limit where the car has one")
	flags.StringVar(&q.by, "by", "", "with -search, the `ORDER` of the combinations: target (if left out), push, share or turns; with -launch-all also time to 60 ft, envelope of side view and launch, even rear tires, or lift of the front")
	flags.BoolVar(&q.preload, "preload", false, "write the turns of the bars that make the rear tires most even through the launch instead of the report")
	flags.StringVar(&q.tables, "tables", "", "take materials and tubes from `FILE` before the built-in ones")
	flags.BoolVar(&q.demo, "demo", false, "take the built-in demo car")
	explain := func(w io.Writer) {
		fmt.Fprint(w, usage)
		flags.SetOutput(w)
		flags.PrintDefaults()
	}
	err := flags.Parse(args)
	if errors.Is(err, flag.ErrHelp) {
		explain(stdout)
		return q, err
	}
	if err == nil {
		q.car = flags.Arg(0)
		err = cmp.Or(checkGiven(flags), q.check(flags.Args()), q.checkHoles(flags), q.checkOrder(), q.checkPreload(), q.shot.check(flags))
	}
	if err != nil {
		complain(stderr, err)
		explain(stderr)
	}
	return q, err
}

// checkGiven refuses options that are given an empty text.
func checkGiven(flags *flag.FlagSet) error {
	var empty []error
	flags.Visit(func(f *flag.Flag) {
		if name, _ := flag.UnquoteUsage(f); f.Value.String() == "" {
			empty = append(empty, fmt.Errorf("-%s is empty; give it a %s or leave it out", f.Name, name))
		}
	})
	return errors.Join(empty...)
}

// check refuses anything but one car.
func (q *request) check(rest []string) error {
	switch {
	case q.demo && len(rest) > 0:
		return fmt.Errorf("-demo and the car file %q exclude each other", rest[0])
	case !q.demo && len(rest) == 0:
		return errors.New("there is no car; give a car file or -demo")
	case len(rest) > 1:
		return fmt.Errorf("%q is too much; give one car file, after the options", rest[1])
	case !q.demo && q.car == "":
		return errors.New("the name of the car file is empty")
	}
	return nil
}

// carryOut analyzes the car and writes all that is asked for: the files, and then
// the report or the search unless one of them failed. A file that fails does not
// keep the others from being written.
func (q *request) carryOut(stdout io.Writer, now time.Time) error {
	in, err := q.analyze()
	if err != nil {
		return err
	}
	r, l, system := in.result, in.launch, in.units
	var failed []error
	if q.pdf != "" {
		failed = append(failed, q.saveOver("pdf", q.pdf, func() error { return report.SavePDF(q.pdf, r, l, in.worth, system, now) }))
	}
	if q.card != "" {
		failed = append(failed, q.saveOver("card", q.card, func() error { return q.saveCard(in, now) }))
	}
	if q.shot.wanted() {
		failed = append(failed, q.saveShots(in))
	}
	if q.csv != "" {
		failed = append(failed, report.SaveCSV(q.csv, r, l, system))
	}
	var places []holes.Place
	if q.search > 0 {
		if places, err = q.rank(in); err != nil {
			failed = append(failed, err)
		} else if q.csv != "" {
			failed = append(failed, report.SaveHolesCSV(q.csv, places, system))
		}
	}
	if q.charts != "" {
		failed = append(failed, report.SaveCharts(q.charts, r, l, system))
	}
	if err := errors.Join(failed...); err != nil {
		return err
	}
	switch {
	case q.preload:
		return q.writeTurns(stdout, in)
	case q.search > 0:
		return report.WriteHoles(stdout, r.Car, r.Options.Setup, places, q.search, system)
	case q.json:
		return report.WriteJSON(stdout, r, l, in.worth, system)
	}
	return report.WriteText(stdout, r, l, in.worth, system)
}

// patience is how long the report waits for what the assumptions are worth, which takes
// some eighty launches: a second for most cars, minutes for one that is so stiff that
// each takes two. It is then written without.
const patience = 10 * time.Second

// analyzed is the car asked for with its analysis and launch.
type analyzed struct {
	library stock.Library
	file    *carfile.File
	result  *analysis.Result
	launch  *launch.Result
	worth   []assumptions.Worth // of the launch's assumptions; nil where nothing asked for tells it
	units   units.System
}

// analyze reads the car, analyzes the setup asked for and launches it.
func (q *request) analyze() (*analyzed, error) {
	library, err := carfile.StockWith(q.tables)
	if err != nil {
		return nil, err
	}
	file, err := q.read(library)
	if err != nil {
		return nil, err
	}
	setup := 0
	if q.setup != "" {
		if setup = file.Car.SetupNamed(q.setup); setup < 0 {
			var names []string
			for _, s := range file.Car.Setups {
				names = append(names, strconv.Quote(s.Name))
			}
			return nil, fmt.Errorf("%s: there is no setup %q; give one of %s", q.name(), q.setup, strings.Join(names, ", "))
		}
	}
	in := &analyzed{library: library, file: file, units: file.Units}
	if in.result, err = analysis.Run(context.Background(), file.Car, library, analysis.Options{Setup: setup}); err != nil {
		return nil, err
	}
	if in.launch, err = launch.Run(context.Background(), file.Car, setup, library, launch.Options{Hold: true}); err != nil {
		return nil, err
	}
	if q.pdf != "" || q.search == 0 {
		ctx, cancel := context.WithTimeout(context.Background(), patience)
		defer cancel()
		if in.worth, err = assumptions.Find(ctx, file.Car, setup, library); err != nil && !errors.Is(err, context.DeadlineExceeded) {
			return nil, err
		}
	}
	return in, nil
}

// read returns the car file asked for.
func (q *request) read(library stock.Library) (*carfile.File, error) {
	if !q.demo {
		return carfile.Read(q.car, library)
	}
	data, err := assets.Cars.ReadFile(assets.DemoCar)
	if err != nil {
		return nil, err
	}
	return carfile.Decode(q.name(), data, library)
}

// name is the car file's name in messages.
func (q *request) name() string {
	if q.demo {
		return path.Base(assets.DemoCar)
	}
	return q.car
}

// saveOver saves a file unless that would replace one of the files read.
func (q *request) saveOver(option, file string, save func() error) error {
	for _, input := range []string{q.car, q.tables} {
		if sameFile(file, input) {
			return fmt.Errorf("%s: is read from, and it would be replaced; give -%s another file", file, option)
		}
	}
	return save()
}

func sameFile(a, b string) bool {
	infoA, errA := os.Stat(a)
	infoB, errB := os.Stat(b)
	return errA == nil && errB == nil && os.SameFile(infoA, infoB)
}
