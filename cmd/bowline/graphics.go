//go:build !ci

package main

import "github.com/go-gl/glfw/v3.3/glfw"

// leanGraphics asks for a window without depth and stencil, which a flat
// picture has no use for: clearing them at every picture takes software
// graphics as long as a tenth of all pixels. The toolkit leaves these hints as
// they are. Where no window can be had, the toolkit says so itself.
func leanGraphics() {
	if glfw.Init() != nil {
		return
	}
	glfw.WindowHint(glfw.DepthBits, 0)
	glfw.WindowHint(glfw.StencilBits, 0)
}
