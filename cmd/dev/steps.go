package main

import (
	"context"
	"fmt"
	"io"
	"strings"
	"time"
)

// step is one check of the suite.
type step struct {
	name  string
	needs []string // Steps that must have passed before this one can be tried.
	run   func(context.Context) error
}

// outcome is what became of a step.
type outcome struct {
	name    string
	took    time.Duration
	err     error  // Why it failed; nil when it passed or was not tried.
	without string // The step whose failure kept this one from being tried; empty when it was tried.
}

func (o outcome) passed() bool { return o.err == nil && o.without == "" }

// runSteps tries every step in order, whatever became of the others, and tells what became of each. It stops early only when ctx ends.
func runSteps(ctx context.Context, out io.Writer, steps []step) []outcome {
	passed := map[string]bool{}
	var outcomes []outcome
	for i, s := range steps {
		if ctx.Err() != nil {
			break
		}
		fmt.Fprintf(out, "\n=== %d/%d %s\n", i+1, len(steps), s.name)
		o := outcome{name: s.name, without: firstUnmet(s.needs, passed)}
		if o.without == "" {
			start := time.Now()
			o.err = s.run(ctx)
			o.took = time.Since(start)
		}
		passed[s.name] = o.passed()
		fmt.Fprintln(out, "---", describe(o))
		outcomes = append(outcomes, o)
	}
	return outcomes
}

// firstUnmet returns the first name in needs that has not passed; empty when all have.
func firstUnmet(needs []string, passed map[string]bool) string {
	for _, n := range needs {
		if !passed[n] {
			return n
		}
	}
	return ""
}

// describe puts an outcome in one line, or more where its error has more.
func describe(o outcome) string {
	switch {
	case o.without != "":
		return fmt.Sprintf("not run: %s (needs: %s)", o.name, o.without)
	case o.err != nil:
		return fmt.Sprintf("FAILED: %s after %.1f s: %v", o.name, o.took.Seconds(), o.err)
	}
	return fmt.Sprintf("passed: %s in %.1f s", o.name, o.took.Seconds())
}

// summarize prints every outcome and returns an error that names the steps that did not pass.
func summarize(out io.Writer, outcomes []outcome, planned int) error {
	fmt.Fprintln(out, "\n=== summary")
	var total time.Duration
	var bad []string
	for _, o := range outcomes {
		fmt.Fprintln(out, describe(o))
		total += o.took
		if !o.passed() {
			bad = append(bad, o.name)
		}
	}
	switch {
	case len(outcomes) < planned:
		return fmt.Errorf("interrupted after %d of %d steps", len(outcomes), planned)
	case len(bad) > 0:
		return fmt.Errorf("%d of %d steps did not pass: %s", len(bad), planned, strings.Join(bad, ", "))
	}
	fmt.Fprintf(out, "all %d steps passed in %.0f s\n", planned, total.Seconds())
	return nil
}
