// Package steel is the weight and the volume of pipe: mass per length, steel
// displacement, buoyancy, the weight of tapered strings in one fluid or two, the
// API drift, and the weight that collars can put on a bit.
//
// Two ways lead to the weight of a string in mud. The buoyancy factor takes off
// the weight of the fluid that the steel displaces; it gives one number for a
// string, and with one fluid inside and outside it is exact ([BuoyancyFactor],
// [Buoyed]). The pressure-area method adds up the forces that pressure exerts on
// every end and shoulder; it gives the true axial force at each place
// ([Forces]). Both give the same weight at the top, and the tests hold them to it;
// the force in between differs, for a hanging string is in compression near its
// lower end.
//
// Lengths, depths and diameters are metres, masses per length kg/m, densities
// kg/m³, pressures Pa, forces N, angles radians. Depths are true vertical: in an
// inclined hole the part of the weight that hangs along the pipe is its mass per
// length times the fall. Friction on the wall, bending and temperature are not
// treated, and strengths are not here.
package steel
