// Command dev runs Bowline from its source and checks it:
//
//	go run ./cmd/dev run [arguments of bowline]
//	go run ./cmd/dev test
//
// It needs Go and git; whatever else a build, a run or the tests take, it installs where it may and names where it may not.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

const usage = `usage:
  go run ./cmd/dev run [arguments of bowline]   build the window and open it; without a display, write the report and its charts
  go run ./cmd/dev test                         every check: format, vet, staticcheck, tests, race detector, builds, physics engine, end to end`

// interruptGrace is how long a child has to end by itself after an interrupt before it is killed.
const interruptGrace = 10 * time.Second

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := dispatch(ctx, os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "dev:", err)
		os.Exit(1)
	}
}

// dispatch carries out the command that args name.
func dispatch(ctx context.Context, args []string) error {
	if len(args) == 0 {
		return errors.New("no command given\n" + usage)
	}
	switch args[0] {
	case "run":
		return runBowline(ctx, args[1:])
	case "test":
		if len(args) > 1 {
			return fmt.Errorf("test takes no arguments, got %q\n%s", args[1:], usage)
		}
		return runSuite(ctx)
	case "help", "-h", "-help", "--help":
		fmt.Println(usage)
		return nil
	}
	return fmt.Errorf("unknown command %q\n%s", args[0], usage)
}

// moduleRoot returns the folder of go.mod.
func moduleRoot(ctx context.Context) (string, error) {
	out, err := exec.CommandContext(ctx, "go", "env", "GOMOD").Output()
	if err != nil {
		return "", fmt.Errorf("go env GOMOD: %w", err)
	}
	file := strings.TrimSpace(string(out))
	if file == "" || file == os.DevNull {
		return "", errors.New("not inside the module: change into the folder of Bowline's source first")
	}
	return filepath.Dir(file), nil
}

// command prepares a child in folder dir that shares our output, prints its command line, and is interrupted before it is killed.
// The settings in env ("NAME=value") are added to our own environment.
func command(ctx context.Context, dir string, env []string, name string, args ...string) *exec.Cmd {
	fmt.Println("$ " + shellLine(env, name, args...))
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), env...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	cmd.Cancel = func() error { return cmd.Process.Signal(os.Interrupt) }
	cmd.WaitDelay = interruptGrace
	return cmd
}

// shellLine writes a command the way one would type it.
func shellLine(env []string, name string, args ...string) string {
	words := slices.Concat(env, []string{name})
	for _, a := range args {
		if a == "" || strings.ContainsAny(a, " \t\n'\"$*?;&|<>()\\`") {
			a = "'" + strings.ReplaceAll(a, "'", `'\''`) + "'"
		}
		words = append(words, a)
	}
	return strings.Join(words, " ")
}
