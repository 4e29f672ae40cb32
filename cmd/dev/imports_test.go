package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// listed is what go list tells of one package of the module.
type listed struct {
	ImportPath                         string
	Imports, TestImports, XTestImports []string
	Deps                               []string // What the package reaches without its tests, however far.
}

// direct returns what the package's files import, tests included.
func (p listed) direct() []string { return slices.Concat(p.Imports, p.TestImports, p.XTestImports) }

// layers are the module's folders from the bottom up: a package imports its own layer and those below.
var layers = []string{"bowline/assets", "bowline/model", "bowline/plotting", "bowline/app", "bowline/cmd"}

// windowless are the packages that never reach the window toolkit.
var windowless = []string{"bowline/model", "bowline/plotting", "bowline/app/document", "bowline/app/scene", "bowline/app/runner", "bowline/app/study", "bowline/app/report", "bowline/app/words"}

// within reports whether an import path is folder or lies below it.
func within(path, folder string) bool { return path == folder || strings.HasPrefix(path, folder+"/") }

// layerOf returns the place of a package in layers; -1 for one outside them.
func layerOf(path string) int {
	return slices.IndexFunc(layers, func(l string) bool { return within(path, l) })
}

// importProblems checks the module's rules: imports point down the layers, some packages never reach the window toolkit, its driver is
// imported by the window program alone, and the file format's parsers by model/carfile alone.
func importProblems(packages []listed) []string {
	var problems []string
	report := func(p listed, format string, args ...any) {
		problems = append(problems, p.ImportPath+" "+fmt.Sprintf(format, args...))
	}
	for _, p := range packages {
		layer := layerOf(p.ImportPath)
		if layer < 0 {
			report(p, "is in none of %v", layers)
		}
		for _, i := range p.direct() {
			if l := layerOf(i); l > layer {
				report(p, "imports %s, which is above it", i)
			}
			if within(i, "fyne.io/fyne/v2/app") && !within(p.ImportPath, "bowline/cmd/bowline") {
				report(p, "imports %s; only cmd/bowline may", i)
			}
			parser := within(i, "github.com/BurntSushi/toml") || within(i, "github.com/pelletier/go-toml")
			if parser && !within(p.ImportPath, "bowline/model/carfile") {
				report(p, "imports %s; only model/carfile may", i)
			}
		}
		if !slices.ContainsFunc(windowless, func(f string) bool { return within(p.ImportPath, f) }) {
			continue
		}
		for _, i := range slices.Concat(p.Deps, p.TestImports, p.XTestImports) {
			if within(i, "fyne.io") {
				report(p, "reaches %s; it must work without a window", i)
			}
		}
	}
	return problems
}

func TestImportsKeepTheRules(t *testing.T) {
	readTree(t)
	list := exec.Command("go", "list", "-tags", allTags, "-json=ImportPath,Imports,TestImports,XTestImports,Deps", "bowline/...")
	list.Env = append(os.Environ(), withoutCgo...)
	out, err := list.Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			t.Fatalf("go list: %v\n%s", err, exit.Stderr)
		}
		t.Fatal(err)
	}
	var packages []listed
	for decoder := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := decoder.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		packages = append(packages, p)
	}
	if !slices.ContainsFunc(packages, func(p listed) bool { return p.ImportPath == "bowline/cmd/dev" }) {
		t.Fatalf("go list did not list this package itself, but %d others", len(packages))
	}
	for _, problem := range importProblems(packages) {
		t.Error(problem)
	}
}

// readTree walks the module's folders, so that go test runs the test anew, and does not answer from its cache, when any file has changed.
func readTree(t *testing.T) {
	t.Helper()
	err := filepath.WalkDir(filepath.Join("..", ".."), func(_ string, entry fs.DirEntry, err error) error {
		if err == nil && entry.IsDir() && strings.HasPrefix(entry.Name(), ".") && strings.Trim(entry.Name(), ".") != "" {
			return fs.SkipDir
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestImportProblemsFindsEachBreach(t *testing.T) {
	for _, c := range []struct {
		name string
		pkg  listed
		want string // empty: none
	}{
		{"window program", listed{ImportPath: "bowline/cmd/bowline", Imports: []string{"fyne.io/fyne/v2/app", "bowline/app/window"}}, ""},
		{"panel", listed{ImportPath: "bowline/app/panel", Imports: []string{"fyne.io/fyne/v2/widget", "bowline/plotting"}}, ""},
		{"carfile", listed{ImportPath: "bowline/model/carfile", Imports: []string{"github.com/BurntSushi/toml", "bowline/assets"}}, ""},
		{"model reaches the toolkit", listed{ImportPath: "bowline/model/car", Deps: []string{"fmt", "fyne.io/fyne/v2"}}, "reaches fyne.io/fyne/v2"},
		{"scene's tests use the toolkit", listed{ImportPath: "bowline/app/scene", XTestImports: []string{"fyne.io/fyne/v2/test"}}, "reaches fyne.io/fyne/v2/test"},
		{"panel starts the driver", listed{ImportPath: "bowline/app/panel", TestImports: []string{"fyne.io/fyne/v2/app"}}, "only cmd/bowline"},
		{"report starts the driver", listed{ImportPath: "bowline/cmd/bowline-report", Imports: []string{"fyne.io/fyne/v2/app"}}, "only cmd/bowline"},
		{"toml elsewhere", listed{ImportPath: "bowline/app/document", Imports: []string{"github.com/pelletier/go-toml/v2"}}, "only model/carfile"},
		{"model looks up", listed{ImportPath: "bowline/model/statics", Imports: []string{"bowline/plotting/chart"}}, "above it"},
		{"plotting's tests look up", listed{ImportPath: "bowline/plotting", TestImports: []string{"bowline/app/document"}}, "above it"},
		{"a folder of its own", listed{ImportPath: "bowline/tools"}, "is in none of"},
	} {
		got := importProblems([]listed{c.pkg})
		switch {
		case c.want == "" && len(got) > 0:
			t.Errorf("%s: problems %v, want none", c.name, got)
		case c.want != "" && (len(got) != 1 || !strings.Contains(got[0], c.want)):
			t.Errorf("%s: problems %v, want one with %q", c.name, got, c.want)
		}
	}
}
