package quantity

// The definitions on which the unit table is built. Each is an exact integer
// in a decimal fraction of its SI unit, so that every factor in the table is
// an exact ratio of two integers, checked for overflow by the compiler. The
// comment names the decimal fraction and the source.
const (
	// inch is in 1e-4 m. Exact: international yard and pound agreement, 1959
	// (NIST SP 811, appendix B.6: 1 in = 25.4 mm).
	inch = 254

	// foot is in 1e-4 m. Exact: twelve inches. This is the international foot;
	// the US survey foot, withdrawn in 2022, is not offered.
	foot = 12 * inch

	// pound is in 1e-8 kg. Exact: international yard and pound agreement,
	// 1959 (avoirdupois pound, 0.45359237 kg).
	pound = 45359237

	// gravity is in 1e-5 m/s². Exact: standard acceleration of free fall,
	// 3rd CGPM, 1901. It makes a force of a pound, a kilogram or a tonne; it
	// is no local gravity.
	gravity = 980665

	squareInch = inch * inch // in 1e-8 m²
	squareFoot = foot * foot // in 1e-8 m²

	// cubicFoot is in 1e-12 m³.
	cubicFoot = foot * foot * foot

	// gallon is in 1e-12 m³. Exact: the US liquid gallon of 231 cubic inches
	// (NIST Handbook 44, appendix C). No other gallon is offered.
	gallon = 231 * inch * inch * inch

	// barrel is in 1e-12 m³. Exact: the petroleum barrel of 42 US gallons
	// (NIST Handbook 44, appendix C; API MPMS chapter 1).
	barrel = 42 * gallon

	// poundForce is in 1e-13 N. Exact: a pound under standard gravity
	// (NIST SP 811, appendix B.8).
	poundForce = pound * gravity

	// horsepower is in 1e-16 W. Exact: 550 foot pounds-force a second, the
	// mechanical horsepower (NIST SP 811, appendix B.8).
	horsepower = 55 * foot * poundForce

	// sack is in 1e-8 kg. The trade's sack of Portland cement, 94 lb, one
	// cubic foot in bulk (API RP 10B-2; API Bulletin 10C).
	sack = 94 * pound

	// atmosphere is in Pa. Exact: standard atmosphere, 10th CGPM, 1954.
	atmosphere = 101325

	// celsiusZero is in 1e-2 °C: the distance of 0 °C from 0 K. Exact: the
	// definition of the degree Celsius (SI brochure, 9th edition, 2.3.1).
	celsiusZero = 27315

	// fahrenheitZero is in 1e-2 °F: the distance of 0 °F from 0 K, since
	// 273.15 K is 32 °F and a degree Fahrenheit is 5/9 K (NIST SP 811, B.8).
	fahrenheitZero = 45967
)

// Pi is irrational, so no ratio of integers turns degrees into radians. The
// table uses this decimal, whose error of one part in 1e59 cannot be seen in a
// float64. Degrees do not drift all the same, because a Value remembers that
// it was entered in degrees.
const (
	piDigits = "314159265358979323846264338327950288419716939937510582097494" // OEIS A000796
	piPlaces = 59
)
