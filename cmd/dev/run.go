package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"
)

// demoFolder is where the report's charts go when there is no display; git ignores it.
const demoFolder = "bowline-demo"

// dialTimeout is how long an X server may take to answer.
const dialTimeout = 2 * time.Second

// runBowline builds the window and opens it, or writes the report where no window can open. args go to the program.
func runBowline(ctx context.Context, args []string) error {
	if runtime.GOOS == "linux" {
		if err := displayProblem(os.Getenv, dialAnswers); err != nil {
			fmt.Printf("No window can open here: %v.\nHere is the report without a window instead.\n", err)
			return runReport(ctx, args)
		}
	}
	cc, err := goCompiler(ctx)
	if err != nil {
		return err
	}
	if err := provide(ctx, cc, buildNeeds(runtime.GOOS, cc)); err != nil {
		return err
	}
	fmt.Println("Building the window. The first time takes some minutes, most of them for the graphics library.")
	env := slices.Concat(withCgo, memoryTuning(runtime.GOOS, os.LookupEnv))
	window := append([]string{"run", "-tags", windowTags, "bowline/cmd/bowline"}, args...)
	return command(ctx, "", env, "go", window...).Run()
}

// runReport prints the headless report, of the demo car unless args name another, and says where its charts are.
func runReport(ctx context.Context, args []string) error {
	folder, err := filepath.Abs(demoFolder)
	if err != nil {
		return err
	}
	if len(args) == 0 {
		args = []string{"-demo"}
	}
	report := append([]string{"run", "bowline/cmd/bowline-report", "-charts", demoFolder}, args...)
	if err := command(ctx, "", withoutCgo, "go", report...).Run(); err != nil {
		return err
	}
	files, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	fmt.Println("\nThe charts are in", folder)
	for _, f := range files {
		fmt.Println("  " + f.Name())
	}
	return nil
}

// displayProblem says why no window can open on Linux, or returns nil. The window is an X client, so what counts is whether the X server
// that DISPLAY names answers; reach tries an address.
func displayProblem(getenv func(string) string, reach func(network, address string) bool) error {
	display := getenv("DISPLAY")
	switch {
	case display == "" && getenv("WAYLAND_DISPLAY") != "":
		return errors.New("this Wayland session offers no X server (DISPLAY is not set); install Xwayland or turn it on")
	case display == "":
		return errors.New("there is no display (neither DISPLAY nor WAYLAND_DISPLAY is set)")
	}
	addresses, err := displayAddresses(display)
	if err != nil {
		return err
	}
	for _, a := range addresses {
		if reach(a[0], a[1]) {
			return nil
		}
	}
	return fmt.Errorf("the display DISPLAY=%s does not answer", display)
}

// displayAddresses returns the network and address pairs at which an X server may listen, the likeliest first, for a display written
// [HOST]:NUMBER[.SCREEN] (X(7), "Display Names"): the local socket without a host, otherwise TCP port 6000 + NUMBER.
func displayAddresses(display string) ([][2]string, error) {
	colon := strings.LastIndex(display, ":")
	if colon < 0 {
		return nil, fmt.Errorf("DISPLAY=%s names no display: it should look like :0 or host:0", display)
	}
	host, rest := display[:colon], display[colon+1:]
	digits, _, _ := strings.Cut(rest, ".")
	number, err := strconv.ParseUint(digits, 10, 15)
	if err != nil {
		return nil, fmt.Errorf("DISPLAY=%s names no display: %q should be a number", display, digits)
	}
	if host == "" || host == "unix" {
		socket := fmt.Sprintf("/tmp/.X11-unix/X%d", number)
		return [][2]string{{"unix", socket}, {"unix", "@" + socket}}, nil
	}
	return [][2]string{{"tcp", net.JoinHostPort(host, strconv.FormatUint(6000+number, 10))}}, nil
}

// dialAnswers reports whether something listens at the address.
func dialAnswers(network, address string) bool {
	connection, err := net.DialTimeout(network, address, dialTimeout)
	if err != nil {
		return false
	}
	connection.Close()
	return true
}

// memoryTuning returns settings of glibc's allocator, those the user has not chosen: by default it hands the memory of every frame's
// texture back to the system and faults it in again, which halves the frame rate where the drawing is done in software.
func memoryTuning(goos string, lookup func(string) (string, bool)) []string {
	if goos != "linux" {
		return nil
	}
	var out []string
	for _, s := range [][2]string{
		{"MALLOC_TRIM_THRESHOLD_", "536870912"},
		{"MALLOC_MMAP_THRESHOLD_", "33554432"},
		{"MALLOC_TOP_PAD_", "67108864"},
	} {
		if _, set := lookup(s[0]); !set {
			out = append(out, s[0]+"="+s[1])
		}
	}
	return out
}
