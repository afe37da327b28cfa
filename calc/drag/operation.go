package drag

// An Operation is how the string moves and what the bit does.
type Operation struct {
	Axial     float64 // share of the friction that holds back along the hole: 1 pulled up, -1 let down, 0 turned in place
	Turning   float64 // share of the friction that holds back its turning
	BitWeight float64 // N that the bit bears: compression at the lower end
	BitTorque float64 // N m that the bit takes
}

// PickingUp is the string pulled up without turning.
func PickingUp() Operation { return Operation{Axial: 1} }

// SlackingOff is the string let down without turning.
func SlackingOff() Operation { return Operation{Axial: -1} }

// Rotating is the string turned off bottom.
func Rotating() Operation { return Operation{Turning: 1} }

// Drilling is the string turned with weight on the bit. That it goes down slowly is left out: beside the turning it hardly
// changes the direction of the friction.
func Drilling(weight, torque float64) Operation {
	return Operation{Turning: 1, BitWeight: weight, BitTorque: torque}
}

// Sliding is the string let down with weight on the bit, which a motor turns.
func Sliding(weight float64) Operation { return Operation{Axial: -1, BitWeight: weight} }
