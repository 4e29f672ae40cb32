// Package sameseed has the property tests of a package that imports it draw the
// same cases in every run, and leave no files behind when they fail. The flag
// -rapid.seed still draws others. It is for tests alone:
//
//	import _ "bowline/model/sameseed"
package sameseed

import (
	"flag"

	_ "pgregory.net/rapid" // whose flags these are
)

func init() {
	for name, value := range map[string]string{"rapid.seed": "1", "rapid.nofailfile": "true"} {
		if err := flag.Set(name, value); err != nil {
			panic(err)
		}
	}
}
