package main

import (
	"bytes"
	"errors"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// checkFormat reports Go files under root that gofmt would change. Folders whose names begin with a dot are passed over.
func checkFormat(root string) error {
	var problems []string
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case entry.IsDir() && path != root && strings.HasPrefix(entry.Name(), "."):
			return fs.SkipDir
		case entry.IsDir() || filepath.Ext(path) != ".go":
			return nil
		}
		source, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if problem := formatProblem(source); problem != "" {
			problems = append(problems, fmt.Sprintf("%s %s", path, problem))
		}
		return nil
	})
	if err != nil {
		return err
	}
	if len(problems) > 0 {
		return errors.New(strings.Join(problems, "\n"))
	}
	return nil
}

// formatProblem says what is wrong with the form of a Go file; empty when gofmt would leave it as it is.
func formatProblem(source []byte) string {
	formatted, err := format.Source(source)
	switch {
	case err != nil:
		return "does not parse: " + err.Error()
	case !bytes.Equal(formatted, source):
		return "is not formatted: run gofmt -w on it"
	}
	return ""
}
