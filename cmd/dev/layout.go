package main

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"slices"
	"strings"
)

// topLevel is everything that stands at the top of the tree, beside names that begin with a dot.
var topLevel = []string{
	"cmd", "app", "model", "plotting", "assets", "testdata",
	"go.mod", "go.sum", "README.md", "DEVELOPERS.md", "FyneApp.toml",
}

// checkLayout reports names at the top of the tree that do not belong there or that are missing. Files that git ignores do not count.
func checkLayout(ctx context.Context, root string) error {
	list := exec.CommandContext(ctx, "git", "-c", "safe.directory=*", "ls-files", "-z", "--cached", "--others", "--exclude-standard")
	list.Dir = root
	files, err := list.Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			err = errors.New(strings.TrimSpace(string(exit.Stderr)))
		}
		return fmt.Errorf("cannot list the files of the working copy: git ls-files: %w", err)
	}
	if problems := layoutProblems(strings.Split(strings.TrimRight(string(files), "\x00"), "\x00")); len(problems) > 0 {
		return errors.New(strings.Join(problems, "\n"))
	}
	return nil
}

// layoutProblems compares the first path elements of files with topLevel.
func layoutProblems(files []string) []string {
	found := map[string]bool{}
	for _, f := range files {
		name, _, _ := strings.Cut(f, "/")
		found[name] = true
	}
	var problems []string
	for name := range found {
		if !strings.HasPrefix(name, ".") && !slices.Contains(topLevel, name) {
			problems = append(problems, fmt.Sprintf("%s does not belong at the top level (allowed: %s)", name, strings.Join(topLevel, " ")))
		}
	}
	slices.Sort(problems)
	for _, name := range topLevel {
		if !found[name] {
			problems = append(problems, name+" is missing at the top level")
		}
	}
	return problems
}
