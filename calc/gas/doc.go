// Package gas gives the compressibility factor and the density of a natural gas, and how a bubble of it grows on its way
// up a well.
//
// [Natural] makes a [Gas] from its gravity. [Gas.Z], [Gas.Density] and [Gas.Growth] are taken at a [State]. The factor
// comes from one of three equations ([Equation]), named by their authors: two equations of state that are solved for the
// density, and an explicit fit that needs no solving and is coarser.
//
// Everything is SI. Pressures are absolute, in Pa: a gauge pressure, as the columns of a well have it, takes one
// atmosphere more. What lies outside the domain of an equation is not stretched: an [OutsideError] says what and by how
// much, and no result is ever NaN or infinite.
//
// Left out: gas that dissolves in the mud, above all in oil or synthetic mud, where a kick may hide until it breaks out;
// gas that mixes with the mud, slips through it or strings out along the hole, which all make a bubble other than one
// piece; liquids that drop out of a rich gas; water vapour; and nitrogen, carbon dioxide and hydrogen sulphide, which move
// the pseudo-critical point and need a correction of their own. The package knows no well: where a bubble is, and what
// presses on it, is the caller's to know.
package gas
