package state

// Nothing is the fluid number of an empty length of string.
const Nothing = -1

// A Layer is a length of conduit that holds one fluid.
type Layer struct {
	Top    float64 // Top is the depth of its upper end in metres along the hole.
	Bottom float64 // Bottom is the depth of its lower end in metres along the hole.
	Fluid  int     // Fluid is the fluid's number, [Nothing] where the string is empty.
	Volume float64 // Volume in m³.
}

// AppendLayers appends to dst what stands in a conduit, from the top down. Layers
// meet, and no two neighbours hold the same fluid.
func (w *Well) AppendLayers(dst []Layer, c Conduit) []Layer {
	if c < 0 || int(c) >= conduits {
		return dst
	}
	channel := &w.now.channels[c]
	volume := w.empty(c)
	md := channel.top
	if volume > 0 {
		level := channel.depth(volume)
		dst = append(dst, Layer{md, level, Nothing, volume})
		md = level
	}
	s := w.stacks[c]
	for i := range s {
		volume += s[i].volume
		bottom := channel.bottom
		if i < len(s)-1 {
			bottom = channel.depth(volume)
		}
		dst = append(dst, Layer{md, bottom, s[i].fluid, s[i].volume})
		md = bottom
	}
	return dst
}

// Top returns the depth in metres of the uppermost boundary above a fluid in a
// conduit: the top of cement, for one. It reports false where there is none.
func (w *Well) Top(c Conduit, fluid int) (md float64, ok bool) {
	if c < 0 || int(c) >= conduits {
		return 0, false
	}
	volume := w.empty(c)
	for _, s := range w.stacks[c] {
		if s.fluid == fluid {
			return w.now.channels[c].depth(volume), true
		}
		volume += s.volume
	}
	return 0, false
}
