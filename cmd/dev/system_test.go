package main

import (
	"slices"
	"strings"
	"testing"
)

func TestManagerOfDistribution(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       manager
	}{
		{"Debian", "PRETTY_NAME=\"Debian GNU/Linux 12 (bookworm)\"\nID=debian\n", apt},
		{"derived from Ubuntu", "# a comment with ID=arch\nID=linuxmint\nID_LIKE=\"ubuntu debian\"\n", apt},
		{"Fedora", "NAME=\"Fedora Linux\"\nID=fedora\n", dnf},
		{"like RHEL first", "ID='rocky'\nID_LIKE='rhel centos fedora'\n", dnf},
		{"Arch", "ID=arch\n\n", pacman},
		{"openSUSE Leap", "ID=\"opensuse-leap\"\nID_LIKE=\"suse opensuse\"\n", zypper},
		{"nearest family first", "ID=other\nID_LIKE=\"arch debian\"\n", pacman},
		{"a name that only begins alike", "ID=archaic\n", ""},
		{"unknown", "ID=plan9\nno assignment here\n", ""},
		{"empty", "", ""},
	} {
		if got := managerOf(parseOSRelease(c.text)); got != c.want {
			t.Errorf("%s: manager %q, want %q", c.name, got, c.want)
		}
	}
}

func TestParseOSReleaseQuotes(t *testing.T) {
	got := parseOSRelease("A=\"two words\"\n  B='x=y'\nC=\nD=\"\n#E=1\n")
	for name, want := range map[string]string{"A": "two words", "B": "x=y", "C": "", "D": "\""} {
		if value, ok := got[name]; !ok || value != want {
			t.Errorf("%s = %q (present: %v), want %q", name, value, ok, want)
		}
	}
	if len(got) != 4 {
		t.Errorf("%d names read, want 4: %v", len(got), got)
	}
}

func TestMissingKeepsOrderAndAsksEachNeed(t *testing.T) {
	needs := buildNeeds("linux", "gcc")
	has := func(p probe) bool { return p.command != "" || p.module == "gl" || p.module == "xi" }
	got := packagesOf(apt, missing(needs, has))
	want := []string{"libc6-dev", "libxcursor-dev", "libxrandr-dev", "libxinerama-dev", "libxxf86vm-dev"}
	if !slices.Equal(got, want) {
		t.Errorf("missing packages %v, want %v", got, want)
	}
}

func TestBareDebianInstallsTheMeasuredPackages(t *testing.T) {
	nothing := func(probe) bool { return false }
	got := strings.Join(packagesOf(apt, missing(buildNeeds("linux", "gcc"), nothing)), " ")
	want := "gcc libc6-dev pkg-config libgl-dev libxcursor-dev libxrandr-dev libxinerama-dev libxi-dev libxxf86vm-dev"
	if got != want {
		t.Errorf("packages\n%s\nwant\n%s", got, want)
	}
}

func TestEveryNeedHasAPackageEverywhereAndOneProbe(t *testing.T) {
	for _, n := range slices.Concat(buildNeeds("linux", "gcc"), scriptNeeds(), displayNeeds()) {
		for _, m := range []manager{apt, dnf, pacman, zypper} {
			if n.packages[m] == "" {
				t.Errorf("%s: no package for %s", n.what, m)
			}
		}
		set := 0
		for _, p := range []string{n.probe.command, n.probe.header, n.probe.module} {
			if p != "" {
				set++
			}
		}
		if set != 1 {
			t.Errorf("%s: %d probes set, want 1", n.what, set)
		}
	}
}

func TestAdviceNamesTheExactCommand(t *testing.T) {
	lacking := []need{displayNeeds()[0], displayNeeds()[1]}
	for _, c := range []struct {
		goos string
		m    manager
		want string
	}{
		{"linux", apt, "sudo apt-get update && sudo apt-get install -y --no-install-recommends xvfb xdotool"},
		{"linux", dnf, "sudo dnf install -y xorg-x11-server-Xvfb xdotool"},
		{"linux", pacman, "sudo pacman -S --needed xorg-server-xvfb xdotool"},
		{"linux", zypper, "sudo zypper install xorg-x11-server-Xvfb xdotool"},
		{"linux", "", "this system's package manager"},
		{"darwin", "", "xcode-select --install"},
		{"windows", "", "MinGW-w64"},
	} {
		got := advice(c.goos, c.m, lacking)
		if !strings.HasPrefix(got, "missing: Xvfb, xdotool\n") || !strings.Contains(got, c.want) {
			t.Errorf("%s %s: advice %q lacks the list of what is missing or %q", c.goos, c.m, got, c.want)
		}
	}
}

func TestOnlyTheCompilerIsNeededBeyondLinux(t *testing.T) {
	if got := missing(buildNeeds("darwin", "clang"), func(p probe) bool { return p.command != "clang" }); len(got) != 1 {
		t.Errorf("%d needs miss on a machine without its compiler, want 1: %v", len(got), got)
	}
}
