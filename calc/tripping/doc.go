// Package tripping is what happens to the level in a well while a string is pulled out of it or run into it: what the hole
// must be given for the steel that leaves, how far the level and the pressure fall when it is not, and what a slug of heavier
// fluid does to the level inside the string.
//
// A string is pulled dry when its bore drains as it goes, so that its steel alone leaves, and wet when the fluid in its bore
// leaves with it. Lengths are metres, areas m², volumes m³, densities kg/m³; heights are along the vertical.
package tripping
