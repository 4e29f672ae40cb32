package raster_test

import (
	"flag"

	_ "bowline/model/sameseed" // of the property tests
)

// A picture has many pixels to go wrong; a case is small.
func init() {
	if err := flag.Set("rapid.checks", "2000"); err != nil {
		panic(err)
	}
}
