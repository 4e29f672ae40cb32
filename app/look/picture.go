package look

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// NewPicture returns a raster whose pixels are shown one for one, which is
// crisper than smoothed ones and takes software graphics half the time. It
// stays so as long as its size is a whole number of pixels: show it through
// PictureRenderer.
func NewPicture(draw func(w, h int) image.Image) *canvas.Raster {
	r := canvas.NewRaster(draw)
	r.ScaleMode = canvas.ImageScalePixels
	return r
}

// PictureRenderer renders a widget that is one picture. The picture is as large
// as the widget, and less than a pixel larger where that makes its size whole.
func PictureRenderer(picture *canvas.Raster) fyne.WidgetRenderer {
	return &pictureRenderer{picture, []fyne.CanvasObject{picture}}
}

type pictureRenderer struct {
	picture *canvas.Raster
	objects []fyne.CanvasObject
}

// Layout implements fyne.WidgetRenderer.
func (r *pictureRenderer) Layout(size fyne.Size) {
	scale := float32(1)
	if c := fyne.CurrentApp().Driver().CanvasForObject(r.picture); c != nil {
		scale = c.Scale()
	}
	r.picture.Resize(fyne.NewSize(whole(size.Width, scale), whole(size.Height, scale)))
}

// whole returns the least length of whole pixels that is not below a length.
func whole(length, scale float32) float32 {
	const slack = 1e-3 // of a pixel: what rounding adds to a length that is whole
	return float32(math.Ceil(float64(length*scale-slack))) / scale
}

// MinSize implements fyne.WidgetRenderer.
func (r *pictureRenderer) MinSize() fyne.Size { return r.picture.MinSize() }

// Refresh implements fyne.WidgetRenderer.
func (r *pictureRenderer) Refresh() { r.picture.Refresh() }

// Objects implements fyne.WidgetRenderer.
func (r *pictureRenderer) Objects() []fyne.CanvasObject { return r.objects }

// Destroy implements fyne.WidgetRenderer.
func (r *pictureRenderer) Destroy() {}
