package main

import (
	"strings"
	"testing"
)

// What is found is written instead of the report, for the setup asked for.
func TestPreload(t *testing.T) {
	got := command("-preload", "-setup", "tame", "-demo")
	if got.status != 0 || got.stderr != "" || !strings.HasPrefix(got.stdout, "Saltgrass No. 7, setup \"tame\"\n\nTURNS THAT EVEN THE REAR TIRES\n") || strings.Contains(got.stdout, "VERDICT") {
		t.Errorf("%+v", got)
	}
}

func TestPreloadRefused(t *testing.T) {
	for _, more := range [][]string{{"-search", "3"}, {"-json"}} {
		got := command(append(append([]string{"-preload"}, more...), "-demo")...)
		if want := "bowline-report: -preload and " + more[0] + " exclude each other; "; got.status != 2 || got.stdout != "" || !strings.HasPrefix(got.stderr, want) {
			t.Errorf("%v: %+v, want %q", more, got, want)
		}
	}
	wound := changed(t, `name = "baseline"`, "name = \"baseline\"\nturns_upper_left = 24\nturns_lower_left = -24\nturns_upper_right = -24\nturns_lower_right = 24")
	got := command("-preload", wound)
	if want := "bowline-report: " + wound + ": there is no launch to make even: found no rest\n"; got != (outcome{1, "", want}) {
		t.Errorf("%+v, want %q", got, want)
	}
}
