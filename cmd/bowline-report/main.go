// Command bowline-report writes down what Bowline finds about a car, without a
// display: a text report, a JSON document, CSV tables, a PDF and the charts.
package main

import (
	"os"
	"time"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr, time.Now())) }
