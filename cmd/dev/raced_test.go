package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Every package that starts a goroutine or guards against one is among those that the race detector looks at.
func TestRaceDetectorLooksWhereGoroutinesMeet(t *testing.T) {
	const root = "../.."
	found := map[string]bool{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "node_modules" || strings.HasPrefix(d.Name(), ".") && path != root) {
			return filepath.SkipDir
		}
		if filepath.Ext(path) != ".go" {
			return nil
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		if meets(file) {
			folder, err := filepath.Rel(root, filepath.Dir(path))
			found["./"+filepath.ToSlash(folder)] = err == nil
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(found) < 3 {
		t.Errorf("only %v are found", found)
	}
	for folder := range found {
		if !slices.ContainsFunc(raced, func(r race) bool { return r.folder == folder }) {
			t.Errorf("%s has goroutines or locks, and is not among the packages for the race detector", folder)
		}
	}
	for _, r := range raced {
		if !found[r.folder] {
			t.Errorf("%s has neither goroutines nor locks, and need not be raced", r.folder)
		}
		names := testNames(t, filepath.Join(root, r.folder))
		for word := range strings.SplitSeq(r.tests, "|") {
			if !slices.ContainsFunc(names, regexp.MustCompile(word).MatchString) {
				t.Errorf("%s has no test with %q in its name for the race detector", r.folder, word)
			}
		}
	}
}

// testNames returns the names of a folder's tests.
func testNames(t *testing.T, folder string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder, "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, path := range files {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && strings.HasPrefix(f.Name.Name, "Test") {
				names = append(names, f.Name.Name)
			}
		}
	}
	return names
}

// meets reports whether a file starts a goroutine or imports what guards against others.
func meets(file *ast.File) bool {
	for _, i := range file.Imports {
		if i.Path.Value == `"sync"` || i.Path.Value == `"sync/atomic"` {
			return true
		}
	}
	starts := false
	ast.Inspect(file, func(n ast.Node) bool {
		_, is := n.(*ast.GoStmt)
		starts = starts || is
		return !starts
	})
	return starts
}
