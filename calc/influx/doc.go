// Package influx is one bubble of influx in an annulus: how much of it a place on the way out bears, the kick tolerance, and
// how hard a given one presses there.
//
// A [Well] is an annulus in cells with mud and an [Influx]: a real gas, a gas of one density that gives by Boyle's law as
// handbooks have it, or a liquid. [Well.Tolerance] is the largest influx, [Well.Press] the highest pressure of one, and
// [Well.ShutIn] where it stands before it moves. The formulas of the trade that need no annulus stand beside them: [MAASP],
// [Factor], [ShoeEMW], [Height].
//
// The pressure at the bottom of the hole is held at that of the formation, and the mud is the original one all over: the
// first circulation of two (driller's method), when a place above the bubble is pressed on hardest. Mud alone then hangs from
// the bottom with a straight line of pressure, and a bubble that has not passed the place adds there what it weighs less than
// the mud in its stead, over its height. So a place bears a bubble until that has taken up what the place stands beyond the
// mud alone: its room. Pressures go along TVD, volumes along hole, and a slanted hole makes the same volume less high.
//
// Everything is SI: metres, m², m³, kg/m³, K, and gauge pressures in Pa. A real gas is asked at one atmosphere more.
//
// Left out: gas that dissolves in mud, mixes with it, slips through it or strings out along the hole, which all press less;
// a second influx; the mud's give under pressure and heat; the annulus changing as the string moves; and friction, but for
// what the caller says presses on the place.
//
// Sources: the balance of columns, and conservation of mass; S. Devereux, Practical Well Planning and Drilling Manual (1998),
// appendix 1, for the two moments that are looked at, the bubble round the bottom hole assembly and its top at the shoe.
package influx
