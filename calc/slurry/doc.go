// Package slurry is the arithmetic of cement slurries: what a recipe weighs and
// yields, what a job needs of each component, and how a plug is balanced.
//
// A [Recipe] is mixed by absolute volume: every component takes the room of its
// mass over its own density, and rooms add up. Its result is a [Slurry], the three
// figures that a laboratory sheet also gives: density, yield and mix fluid. A
// [Batch] turns them into sacks and tanks, and [Balance] sets a plug through
// open-ended pipe.
//
// All shares are counted per kilogram of cement: a powder in kg/kg, which is the
// trade's per cent by weight of cement over 100, a yield or a mix fluid in m³/kg.
// Densities are kg/m³, volumes m³, masses kg, depths metres along the hole,
// capacities m³/m.
//
// Powders are dry-blended with the cement. What is dissolved in the mix water is a
// liquid of the recipe. Air drawn in while mixing, foam, compression, heat and
// thickening time are not treated here.
package slurry
