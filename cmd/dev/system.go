package main

import (
	"fmt"
	"slices"
	"strings"
)

// manager is a Linux distribution's package manager.
type manager string

const (
	apt    manager = "apt"
	dnf    manager = "dnf"
	pacman manager = "pacman"
	zypper manager = "zypper"
)

// probe is how a need is recognized as met; exactly one field is set.
type probe struct {
	command string // A program on the path.
	header  string // A header that the C compiler finds.
	module  string // A module that pkg-config knows.
}

// need is one thing the machine must have, and the package that brings it for each package manager.
type need struct {
	what     string
	probe    probe
	packages map[manager]string
}

// needOf writes a need with its packages in the order apt, dnf, pacman, zypper.
func needOf(what string, p probe, aptName, dnfName, pacmanName, zypperName string) need {
	return need{what, p, map[manager]string{apt: aptName, dnf: dnfName, pacman: pacmanName, zypper: zypperName}}
}

// compilerNeeds is what cgo takes, and so the race detector; cc is the compiler that Go would call.
func compilerNeeds(cc string) []need {
	return []need{
		needOf("a C compiler ("+cc+")", probe{command: cc}, "gcc", "gcc", "gcc", "gcc"),
		needOf("the C library's headers", probe{header: "stdlib.h"}, "libc6-dev", "glibc-devel", "glibc", "glibc-devel"),
	}
}

// windowNeeds is what building the window takes on Linux beside the compiler. The libraries it loads when it runs come along.
func windowNeeds() []need {
	return []need{
		needOf("pkg-config", probe{command: "pkg-config"}, "pkg-config", "pkgconf-pkg-config", "pkgconf", "pkgconf-pkg-config"),
		needOf("OpenGL headers", probe{module: "gl"}, "libgl-dev", "mesa-libGL-devel", "libglvnd", "Mesa-libGL-devel"),
		needOf("Xcursor headers", probe{module: "xcursor"}, "libxcursor-dev", "libXcursor-devel", "libxcursor", "libXcursor-devel"),
		needOf("Xrandr headers", probe{module: "xrandr"}, "libxrandr-dev", "libXrandr-devel", "libxrandr", "libXrandr-devel"),
		needOf("Xinerama headers", probe{module: "xinerama"}, "libxinerama-dev", "libXinerama-devel", "libxinerama", "libXinerama-devel"),
		needOf("Xi headers", probe{module: "xi"}, "libxi-dev", "libXi-devel", "libxi", "libXi-devel"),
		needOf("Xxf86vm headers", probe{module: "xxf86vm"}, "libxxf86vm-dev", "libXxf86vm-devel", "libxxf86vm", "libXxf86vm-devel"),
	}
}

// buildNeeds is all that building the window takes; beyond Linux the system itself brings the libraries.
func buildNeeds(goos, cc string) []need {
	if goos != "linux" {
		return compilerNeeds(cc)
	}
	return append(compilerNeeds(cc), windowNeeds()...)
}

// displayNeeds is what the end-to-end test takes beside the window: an X server without a screen, a hand on its mouse and keyboard,
// and pictures of it.
func displayNeeds() []need {
	return []need{
		needOf("Xvfb", probe{command: "Xvfb"}, "xvfb", "xorg-x11-server-Xvfb", "xorg-server-xvfb", "xorg-x11-server-Xvfb"),
		needOf("xdotool", probe{command: "xdotool"}, "xdotool", "xdotool", "xdotool", "xdotool"),
		needOf("ImageMagick's import", probe{command: "import"}, "imagemagick", "ImageMagick", "imagemagick", "ImageMagick"),
	}
}

// scriptNeeds is what the comparison with a general-purpose physics engine takes.
func scriptNeeds() []need {
	return []need{
		needOf("Node.js", probe{command: "node"}, "nodejs", "nodejs", "nodejs", "nodejs-default"),
		needOf("npm", probe{command: "npm"}, "npm", "npm", "npm", "npm-default"),
	}
}

// missing returns the needs that has does not find on this machine.
func missing(needs []need, has func(probe) bool) []need {
	var out []need
	for _, n := range needs {
		if !has(n.probe) {
			out = append(out, n)
		}
	}
	return out
}

// parseOSRelease reads the text of /etc/os-release, as freedesktop.org's os-release(5) lays it out: NAME=value lines, the value bare or
// in quotes; empty lines, comments and lines that are no assignment are passed over.
func parseOSRelease(text string) map[string]string {
	values := map[string]string{}
	for line := range strings.Lines(text) {
		name, value, ok := strings.Cut(strings.TrimSpace(line), "=")
		if !ok || strings.HasPrefix(name, "#") {
			continue
		}
		if len(value) >= 2 && (value[0] == '"' || value[0] == '\'') && value[len(value)-1] == value[0] {
			value = value[1 : len(value)-1]
		}
		values[name] = value
	}
	return values
}

// managerOf chooses the package manager by the distribution's ID, then by those it says it is like, nearest first; empty when none is known.
func managerOf(osRelease map[string]string) manager {
	families := map[manager][]string{
		apt:    {"debian", "ubuntu"},
		dnf:    {"fedora", "rhel", "centos"},
		pacman: {"arch"},
		zypper: {"suse", "opensuse", "sles"},
	}
	for _, id := range append([]string{osRelease["ID"]}, strings.Fields(osRelease["ID_LIKE"])...) {
		for m, ids := range families {
			if slices.ContainsFunc(ids, func(f string) bool { return id == f || strings.HasPrefix(id, f+"-") }) {
				return m
			}
		}
	}
	return ""
}

// packagesOf lists the packages that bring needs, each once, in order.
func packagesOf(m manager, needs []need) []string {
	var out []string
	for _, n := range needs {
		if p := n.packages[m]; !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// installCommands are the commands, to be run as root, that install packages.
func installCommands(m manager, packages []string) [][]string {
	switch m {
	case apt:
		return [][]string{{"apt-get", "update"}, append([]string{"apt-get", "install", "-y", "--no-install-recommends"}, packages...)}
	case dnf:
		return [][]string{append([]string{"dnf", "install", "-y"}, packages...)}
	case pacman:
		return [][]string{append([]string{"pacman", "-S", "--needed"}, packages...)}
	case zypper:
		return [][]string{append([]string{"zypper", "install"}, packages...)}
	}
	return nil
}

// advice says what is missing and what to type, for a machine on which we may not install or do not know how.
func advice(goos string, m manager, lacking []need) string {
	names := make([]string, len(lacking))
	for i, n := range lacking {
		names[i] = n.what
	}
	text := "missing: " + strings.Join(names, ", ")
	switch {
	case goos == "darwin":
		return text + "\ninstall a C compiler: xcode-select --install"
	case goos == "windows":
		return text + "\ninstall a C compiler that cgo can call (gcc of MinGW-w64, 64 bit) and put its bin folder on PATH"
	case m == "":
		return text + "\ninstall them with this system's package manager"
	}
	var lines []string
	for _, c := range installCommands(m, packagesOf(m, lacking)) {
		lines = append(lines, "sudo "+strings.Join(c, " "))
	}
	return fmt.Sprintf("%s\ninstall with: %s", text, strings.Join(lines, " && "))
}
