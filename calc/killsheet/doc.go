// Package killsheet is the arithmetic of a kill sheet for a well with a subsea stack, and of the tests that go before it.
//
// A kick that is shut in: [KillDensity], [Initial] and [Final], the [StepDown] between them, what came in ([InfluxDensity],
// [KindOf]) and how fast it rises ([MigrationRate], [EmpiricalRise]). The stack on the seabed: the [ChokeLine], [BringUp], gas
// [Trapped] between the rams, and what goes with the riser ([Seabed]). Top hole without a riser: [DynamicKill] and [GasSand].
// Tests: [PressureTest], [MASP], [ShoeTest].
//
// Everything is SI. Pressures are gauge pressures in Pa except where gas takes them, which is said there; densities kg/m³;
// depths m below the rotary, true vertical unless they are called along hole (MD); flows m³/s. Nothing is rounded. A shut-in
// pressure is one that has settled.
//
// Every result comes with an error that says in one line which value was not usable and what to give; without an error it is an
// ordinary number.
//
// Left out: how high an influx stands in its annulus; friction there below the stack at slow rates; mud that gives under pressure
// and heat; gas that dissolves, slips through the mud or strings out; and an influx of more than one kind. The package knows no
// well and judges nothing.
package killsheet
