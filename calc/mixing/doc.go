// Package mixing is the arithmetic of mixing fluids: weighting a mud up, thinning
// it down, and putting one together from two.
//
// Everything rests on two balances: masses add up and volumes add up. Powder takes
// the room of its mass over its own density. What powders and liquids do to each
// other, air in the mud, heat and pressure is not treated here.
//
// Volumes are m³, densities kg/m³, masses kg. In SI one formula serves every
// weighting material; handbooks print one each (1470 for barite, 945 for calcium
// carbonate), which is its density in pounds per barrel.
package mixing
