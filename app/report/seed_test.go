package report

import (
	"flag"

	_ "pgregory.net/rapid" // whose flags these are
)

// Property tests draw the same cases in every run; -rapid.seed draws others.
func init() {
	for name, value := range map[string]string{"rapid.seed": "1", "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
}
