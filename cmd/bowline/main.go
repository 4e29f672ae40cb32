// Command bowline opens Bowline's window.
//
// Usage:
//
//	bowline [-tables FILE] [-statelog FILE] [CAR.toml]
//
// Without a car file it opens the demo car.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"

	"bowline/app/window"
	"bowline/assets"
	"bowline/model/carfile"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
)

func main() {
	tables := flag.String("tables", "", "`file` with materials and tubes of your own")
	states := flag.String("statelog", "", "`file` that a line is added to after each picture")
	flag.Usage = func() {
		fmt.Fprintln(flag.CommandLine.Output(), "usage: bowline [-tables FILE] [-statelog FILE] [CAR.toml]")
		flag.PrintDefaults()
	}
	flag.Parse()
	if flag.NArg() > 1 {
		fmt.Fprintf(os.Stderr, "bowline: %q is too much; give one car file, after the options\n", flag.Arg(1))
		flag.Usage()
		os.Exit(2)
	}
	if err := run(*tables, *states, flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// run opens the window and returns when it is closed.
func run(tables, states, path string) error {
	library, err := carfile.StockWith(tables)
	if err != nil {
		return err
	}
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" {
		return errors.New("bowline: there is no display (DISPLAY is not set); bowline-report writes the report without one")
	}
	leanGraphics()
	a := app.NewWithID("racing.saltgrass.bowline")
	a.SetIcon(fyne.NewStaticResource("icon.png", assets.Icon))
	w, err := window.New(a, window.Options{
		Path: path, StateLog: states, Library: library,
		Folder: filepath.Join(a.Storage().RootURI().Path(), "kept"),
	})
	if err != nil {
		return err
	}
	w.ShowAndRun()
	return nil
}
