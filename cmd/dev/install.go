package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strings"
)

// goCompiler returns the C compiler that cgo calls, without its flags.
func goCompiler(ctx context.Context) (string, error) {
	out, err := exec.CommandContext(ctx, "go", "env", "CC").Output()
	if err != nil {
		return "", fmt.Errorf("go env CC: %w", err)
	}
	words := strings.Fields(string(out))
	if len(words) == 0 {
		return "", errors.New("go env CC names no C compiler: unset CC, or set it to one")
	}
	return words[0], nil
}

// machineHas returns a function that reports whether this machine meets a need; cc compiles C.
func machineHas(ctx context.Context, cc string) func(probe) bool {
	return func(p probe) bool {
		switch {
		case p.command != "":
			_, err := exec.LookPath(p.command)
			return err == nil
		case p.module != "":
			return exec.CommandContext(ctx, "pkg-config", "--exists", p.module).Run() == nil
		}
		check := exec.CommandContext(ctx, cc, "-fsyntax-only", "-x", "c", "-")
		check.Stdin = strings.NewReader("#include <" + p.header + ">\n")
		return check.Run() == nil
	}
}

// provide sees to it that the machine meets all needs: what is missing it installs where it may, and otherwise the error names the command.
func provide(ctx context.Context, cc string, needs []need) error {
	has := machineHas(ctx, cc)
	lacking := missing(needs, has)
	if len(lacking) == 0 {
		return nil
	}
	text, err := os.ReadFile("/etc/os-release")
	if err != nil && runtime.GOOS == "linux" {
		fmt.Println("cannot tell the distribution:", err)
	}
	m := managerOf(parseOSRelease(string(text)))
	prefix, may := rootPrefix(ctx)
	if m != apt || !may {
		return errors.New(advice(runtime.GOOS, m, lacking))
	}
	for _, line := range installCommands(m, packagesOf(m, lacking)) {
		full := slices.Concat(prefix, line)
		if err := command(ctx, "", nil, full[0], full[1:]...).Run(); err != nil {
			return fmt.Errorf("%s: %w\n%s", strings.Join(line[:2], " "), err, advice(runtime.GOOS, m, lacking))
		}
	}
	if still := missing(needs, has); len(still) > 0 {
		return errors.New("still " + advice(runtime.GOOS, m, still))
	}
	return nil
}

// rootPrefix returns what to put before a command to run it as root without asking for a password, and whether that is possible.
func rootPrefix(ctx context.Context) (prefix []string, may bool) {
	quiet := []string{"env", "DEBIAN_FRONTEND=noninteractive"}
	if os.Geteuid() == 0 {
		return quiet, true
	}
	if exec.CommandContext(ctx, "sudo", "-n", "true").Run() == nil {
		return append([]string{"sudo", "-n"}, quiet...), true
	}
	return nil, false
}
