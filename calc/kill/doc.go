// Package kill circulates a gas kick out of a well through a choke, and heavier mud round behind it, with the pressure at the
// bottom held constant.
//
// A [Job] says how the well is built, what came in, and how it is to be pumped; [Run] goes from the well shut in to the well
// dead and shows every [Moment] on the way: choke, standpipe, pressures at places along the annulus, where the gas is. The
// [Summary] has the peaks and what had been pumped when gas or kill mud came to where one waits for them.
//
// # How it is worked out
//
// The well is a [state.Well]. The gas lies in the annulus as parcels, one above the other, from the bit up when the well has
// been shut in. Each keeps its mass; its volume follows from the pressure and the temperature where it is ([state.Well.Settle]).
// The choke gives whatever holds the pressure at the bit. What is below the gas does not give way, so that gas bottom and kill
// mud come to any place after a volume that is known beforehand; when the gas top does is solved for. Moments stand on all
// of these, and wherever the annulus changes its size, so that peaks do not depend on the number of steps. Six parcels are
// within 0.1 % of a march in slices of half a metre, in the well of the tests.
//
// The string stands with its end at the bottom of the hole, open, without a float. The standpipe is the balance of the columns
// and the friction up the annulus and down the string as laid out: neither bit nozzles nor surface lines are in it. Where the
// column inside is too heavy for the balance, the standpipe shows nothing.
//
// A choke cannot pull. Where friction up the annulus, in a long choke line above all, is more than what is to be held, it is
// wide open, shows nothing, and the pressure at the bottom is above what was asked for: as much as the friction makes it.
//
// Gas rubs as the model of friction has it, with its own density and a viscosity of 0.02 mPa s, as natural gas has at some
// hundred bar (from memory; where gas flows it is turbulent, and a fourth root of the viscosity is felt).
//
// # What is left out
//
// Gas does not rise through the mud, nor string out along the hole, mix with mud, or dissolve in it: in oil or synthetic mud
// a kick hides and breaks out later, and this package is not for it. Mud neither shrinks nor heats up. Friction is that of
// the flow pumped: what flows faster above expanding gas is not seen, which in a choke line gives a little too much choke.
// The pumps come up to speed at once, the gas then being pressed together by mud that goes in at the outlet; the choke
// follows at once. A riser above the closed stack is no part of the well.
//
// Everything is SI. Depths are metres along the hole below the rotary, volumes m³, pressures gauge Pa, temperatures K.
//
// The two ways are common practice, known as the driller's method and as wait and weight.
package kill
