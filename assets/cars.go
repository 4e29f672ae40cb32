package assets

import (
	"embed"
	"io/fs"
)

// Cars holds the example cars, all of them invented.
//
//go:embed cars/*.toml
var Cars embed.FS

// DemoCar is the file in Cars that the programs open when none is named.
const DemoCar = "cars/saltgrass-7.toml"

// CarNames lists the files in Cars, the demo car among them.
func CarNames() []string {
	names, err := fs.Glob(Cars, "cars/*.toml")
	if err != nil {
		panic(err) // the pattern is well-formed
	}
	return names
}
