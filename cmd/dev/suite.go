package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
)

const (
	// windowTags are the build tags of the program that is handed out: it does all its drawing on one thread.
	windowTags = "migrated_fynedo"
	// headlessTags build the window's packages without cgo, headers or a display. One set for vet, tests and the race detector, so that
	// nothing is compiled twice.
	headlessTags = "ci," + windowTags
	// endToEndTags add the tests that drive the window.
	endToEndTags = headlessTags + ",e2e"
	// engineTags add the test against a general-purpose physics engine.
	engineTags = headlessTags + ",mujoco"
	// allTags reach every test.
	allTags = endToEndTags + ",mujoco"

	staticcheck = "honnef.co/go/tools/cmd/staticcheck@v0.8.2"
)

// Settings of the cgo switch.
var (
	withoutCgo = []string{"CGO_ENABLED=0"}
	withCgo    = []string{"CGO_ENABLED=1"}
)

// runSuite carries out every check and reports all that fail.
func runSuite(ctx context.Context) error {
	root, err := moduleRoot(ctx)
	if err != nil {
		return err
	}
	cc, err := goCompiler(ctx)
	if err != nil {
		return err
	}
	bin, err := os.MkdirTemp("", "bowline-test-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(bin)
	s := suite{root: root, bin: bin, cc: cc}
	steps := s.steps(runtime.GOOS)
	return summarize(os.Stdout, runSteps(ctx, os.Stdout, steps), len(steps))
}

// suite holds what the steps share.
type suite struct {
	root string // The module's folder.
	bin  string // Where built programs go.
	cc   string // The C compiler.
}

// race is a package that goroutines meet in, with the tests in which they do as a regular expression; empty for all of them. The race
// detector makes a test take up to ten times as long.
type race struct{ folder, tests string }

// raced are what the race detector looks at; a test sees to it that no package is left out.
var raced = []race{
	{"./app/look", ""},
	{"./app/runner", ""},
	{"./app/runner/runnertest", ""},
	{"./app/study", ""},
	{"./app/window", "Autosave|Chart|Drag|Export|Launch|Search"},
	{"./cmd/bowline/e2e", ""},
	{"./model/assumptions", "Cancel|StrongestFirst"},
	{"./model/carfile", ""},
	{"./model/holes", "SearchStops|Progress|Workers|LaunchesCome|LaunchingStops"},
	{"./model/preload", "Workers|Cancel"},
	{"./plotting", "Goroutines"},
	{"./plotting/raster", ""},
}

// Names of steps that others need.
const (
	toolsStep      = "system packages"
	windowStep     = "build of the window"
	threadingBuild = "build of the window with thread warnings"
)

// steps lists the suite: first what needs only Go, then what needs a C compiler, then, on Linux alone, what needs Node.js and what needs
// a display, for the end-to-end test drives an X server.
func (s suite) steps(goos string) []step {
	steps := []step{
		{name: "formatting", run: func(context.Context) error { return checkFormat(s.root) }},
		{name: "layout", run: func(ctx context.Context) error { return checkLayout(ctx, s.root) }},
		{name: "module file", run: s.goStep(nil, "mod", "tidy", "-diff")},
		{name: "build of the report", run: s.goStep(withoutCgo, "build", "-buildvcs=false", "-o", s.program("bowline-report"), "./cmd/bowline-report")},
		{name: "go vet", run: s.goStep(withoutCgo, "vet", "-tags", allTags, "./...")},
		{name: "unit tests", run: s.goStep(withoutCgo, "test", "-shuffle=on", "-tags", headlessTags, "./...")},
		{name: "staticcheck", run: s.goStep(withoutCgo, "run", staticcheck, "-tags", allTags, "./...")},
		{name: toolsStep, run: s.provideTools(goos)},
		{name: "race detector", needs: []string{toolsStep}, run: s.race},
		{name: windowStep, needs: []string{toolsStep}, run: s.buildWindow("bowline", windowTags)},
	}
	if goos != "linux" {
		return steps
	}
	return append(steps,
		step{name: "against a general-purpose engine", run: s.againstEngine},
		step{name: "go vet of the window as built", needs: []string{windowStep}, run: s.goStep(withCgo, "vet", "-tags", windowTags, "./cmd/bowline/...")},
		step{name: threadingBuild, needs: []string{windowStep}, run: s.buildWindow("bowline-threads", "")},
		step{name: "end to end", needs: []string{windowStep}, run: s.endToEnd("bowline")},
		step{name: "end to end with thread warnings", needs: []string{threadingBuild}, run: s.endToEnd("bowline-threads")},
	)
}

// goStep returns a step that runs the go command in the module's folder.
func (s suite) goStep(env []string, args ...string) func(context.Context) error {
	return func(ctx context.Context) error {
		return command(ctx, s.root, env, "go", args...).Run()
	}
}

// race runs the raced tests with the race detector.
func (s suite) race(ctx context.Context) error {
	for _, r := range raced {
		args := []string{"test", "-race", "-tags", headlessTags, r.folder}
		if r.tests != "" {
			args = append(args, "-run", r.tests)
		}
		if err := s.goStep(withCgo, args...)(ctx); err != nil {
			return err
		}
	}
	return nil
}

// buildWindow returns a step that builds the window under the given tags; untagged, the toolkit warns of calls on the wrong thread.
func (s suite) buildWindow(name, tags string) func(context.Context) error {
	return s.goStep(withCgo, "build", "-buildvcs=false", "-tags", tags, "-o", s.program(name), "./cmd/bowline")
}

// endToEnd returns a step that drives the program of that name; pictures of its failures stay in a folder that git ignores until the next run.
func (s suite) endToEnd(name string) func(context.Context) error {
	return func(ctx context.Context) error {
		pictures := filepath.Join(s.root, ".artifacts", name)
		if err := os.RemoveAll(pictures); err != nil {
			return err
		}
		if err := os.MkdirAll(pictures, 0o755); err != nil {
			return err
		}
		err := command(ctx, s.root, withoutCgo, "go", "test", "-count=1", "-tags", endToEndTags,
			"-artifacts", "-outputdir", pictures, "./cmd/bowline/e2e", "-args", "-bowline", s.program(name)).Run()
		if err != nil {
			return fmt.Errorf("%w (pictures of the screen: %s)", err, pictures)
		}
		return nil
	}
}

// againstEngine launches car files in a general-purpose physics engine, which a script runs under Node.js, and compares.
func (s suite) againstEngine(ctx context.Context) error {
	if err := provide(ctx, s.cc, scriptNeeds()); err != nil {
		return err
	}
	script := filepath.Join(s.root, "testdata", "mujoco")
	if err := command(ctx, script, nil, "npm", "ci").Run(); err != nil {
		return fmt.Errorf("npm ci: %w", err)
	}
	return command(ctx, s.root, withoutCgo, "go", "test", "-count=1", "-v", "-tags", engineTags, "-run", "MuJoCo", "./model/launch").Run()
}

// provideTools returns the step that sees to compiler, headers, X server and hands on it.
func (s suite) provideTools(goos string) func(context.Context) error {
	needs := buildNeeds(goos, s.cc)
	if goos == "linux" {
		needs = append(needs, displayNeeds()...)
	}
	return func(ctx context.Context) error { return provide(ctx, s.cc, needs) }
}

// program returns the path of a built program.
func (s suite) program(name string) string {
	if runtime.GOOS == "windows" {
		name += ".exe"
	}
	return filepath.Join(s.bin, name)
}
