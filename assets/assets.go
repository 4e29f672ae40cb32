// Package assets holds what is built into the programs.
package assets

import _ "embed"

// Materials is the built-in material table.
//
//go:embed materials.toml
var Materials []byte

// Tubes is the built-in table of round tube sizes.
//
//go:embed tubes.toml
var Tubes []byte

// Icon is the program's icon, a PNG picture.
//
//go:embed icon.png
var Icon []byte
