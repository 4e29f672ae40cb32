// Package forgetful is imported by tests that open many windows: the toolkit
// then keeps what no window shows for a second instead of a minute. It reads the
// setting when it is initialized, which is after this package, by the order of
// import paths.
package forgetful

import "os"

func init() { os.Setenv("FYNE_CACHE", "1s") }
