package quantity

import (
	"errors"
	"strings"
	"testing"
)

// TestParse gives for each text the plain form of the same quantity.
func TestParse(t *testing.T) {
	tests := []struct {
		text  string
		kind  Kind
		shown Unit
		want  string
	}{
		// Decimals: the point always is a decimal sign, the comma where it
		// cannot group.
		{"1262 ft", Length, Metre, "1262 ft"},
		{"1262", Length, Foot, "1262 ft"},
		{"+1262", Length, Foot, "1262 ft"},
		{"-3.5", Temperature, Celsius, "-3.5 degC"},
		{"−3,5", Temperature, Celsius, "-3.5 degC"},
		{"-0", Length, Metre, "0 m"},
		{"7.200", Density, SpecificGravity, "7.2 sg"},
		{"13.625", Diameter, Inch, "13.625 in"},
		{"1,25 sg", Density, 0, "1.25 sg"},
		{"1,2345", Density, SpecificGravity, "1.2345 sg"},
		{"20 #/bbl", Concentration, 0, "20 lb/bbl"},
		{"150 kg/m³", Concentration, 0, "150 kg/m3"},
		{"0,125", Density, SpecificGravity, "0.125 sg"},
		{"0,052 psi/ft", Gradient, 0, "0.052 psi/ft"},
		{"-0,125", Number, 0, "-0.125"},
		{",125 in", Diameter, 0, "0.125 in"},
		{".5 h", Time, 0, "0.5 h"},
		{"5.", Time, Hour, "5 h"},
		{"7,2", Length, Metre, "7.2 m"},
		{"7,20", Length, Metre, "7.2 m"},
		{"7,2000", Length, Metre, "7.2 m"},
		{"1234,567", Length, Metre, "1234.567 m"},
		{"0.85", Number, Foot, "0.85"},
		{"000000000000000000012 m", Length, 0, "12 m"},
		{"0.000000000000000000000001 m", Length, 0, "0.000000000000000000000001 m"},
		{"999999999999999 m", Length, 0, "999999999999999 m"},

		// Fractions.
		{"13 5/8 in", Diameter, 0, "13.625 in"},
		{"13-5/8", Diameter, Inch, "13.625 in"},
		{"13–5/8″", Diameter, 0, "13.625 in"},
		{"13 5/8in", Diameter, 0, "13.625 in"},
		{"  9\u00a05/8  \"", Diameter, 0, "9.625 in"},
		{"12 1/4''", Diameter, 0, "12.25 in"},
		{"17-1/2-in", Diameter, 0, "17.5 in"},
		{"17-1/2-in.", Diameter, 0, "17.5 in"},
		{"5/8 inch", Diameter, 0, "0.625 in"},
		{"-5/8 in", Diameter, 0, "-0.625 in"},
		{"-13 5/8 in", Diameter, 0, "-13.625 in"},
		{"12/32 in", Diameter, 0, "0.375 in"},
		{"63/64 in", Diameter, 0, "0.984375 in"},
		{"1/4 bbl/min", Flow, 0, "0.25 bbl/min"},
		{"12 in/32", Diameter, 0, "12 in/32"},

		// Spellings.
		{"10 lbs/gal", Density, 0, "10 ppg"},
		{"10 LB/GAL", EMW, 0, "10 ppg"},
		{"10#/gal", Density, 0, "10 ppg"},
		{"10 pcf", Density, 0, "10 lb/ft3"},
		{"1.1 S.G.", Density, 0, "1.1 sg"},
		{"1100 kg/m³", Density, 0, "1100 kg/m3"},
		{"1100 kg/m^3", Density, 0, "1100 kg/m3"},
		{"5 m³", Volume, 0, "5 m3"},
		{"5 bbls", Volume, 0, "5 bbl"},
		{"5 cu ft", Volume, 0, "5 ft3"},
		{"0.5 sq. in.", Area, 0, "0.5 in2"},
		{"300 kips", Force, 0, "300 klbf"},
		{"300 klb", Force, 0, "300 klbf"},
		{"300 t", Force, 0, "300 tf"},
		{"300 t", Mass, 0, "300 t"},
		{"94 lb", Mass, 0, "94 lb"},
		{"94 lb", Force, 0, "94 lbf"},
		{"15 lb/100 ft²", YieldPoint, 0, "15 lbf/100ft2"},
		{"7.5 Pa", YieldPoint, 0, "7.5 Pa"},
		{"7.5 Pa", Pressure, 0, "7.5 Pa"},
		{"18 mPa·s", Viscosity, 0, "18 mPa.s"},
		{"18 mPa s", Viscosity, 0, "18 mPa.s"},
		{"18 cps", Viscosity, 0, "18 cP"},
		{"35 MPa", Pressure, 0, "35 MPa"},
		{"35 mpa", Stress, 0, "35 MPa"},
		{"80 °F", Temperature, 0, "80 degF"},
		{"80 F", Temperature, 0, "80 degF"},
		{"27 deg C", Temperature, 0, "27 degC"},
		{"3.4 °C/100 m", TemperatureGradient, 0, "3.4 degC/100m"},
		{"35°", Angle, 0, "35 deg"},
		{"35 degrees", Angle, 0, "35 deg"},
		{"3°/30 m", Dogleg, 0, "3 deg/30m"},
		{"3 deg/100ft", Dogleg, 0, "3 deg/100ft"},
		{"20 ft·lbf", Torque, 0, "20 ft-lbf"},
		{"20 ft lb", Torque, 0, "20 ft-lbf"},
		{"20 kN.m", Torque, 0, "20 kN-m"},
		{"2300 lpm", Flow, 0, "2300 L/min"},
		{"2300 l/min", Flow, 0, "2300 L/min"},
		{"8 bpm", Flow, 0, "8 bbl/min"},
		{"0.1 bbl per ft", Capacity, 0, "0.1 bbl/ft"},
		{"1.15 cuft/sk", SlurryYield, 0, "1.15 ft3/sk"},
		{"4.3 gal/sk", MixWater, 0, "4.3 gal/sk"},
		{"75.8 L/100 kg", MixWater, 0, "75.8 L/100kg"},
		{"5000'", Length, 0, "5000 ft"},
		{"5000 feet", Length, 0, "5000 ft"},
		{"30 %", Ratio, 0, "30 %"},
		{"97%", Ratio, 0, "97 %"},
		{"2.5 HSI", PowerPerArea, 0, "2.5 hp/in2"},
		{"25 m/hr", ROP, 0, "25 m/h"},
		{"6", Count, 0, "6"},
		{"12910 strokes", Strokes, 0, "12910 stk"},
	}
	for _, tt := range tests {
		v, err := Parse(tt.text, tt.kind, tt.shown)
		if err != nil {
			t.Errorf("Parse(%q, %v) failed: %v", tt.text, tt.kind, err)
			continue
		}
		if got := v.Text(); got != tt.want {
			t.Errorf("Parse(%q, %v).Text() = %q, want %q", tt.text, tt.kind, got, tt.want)
		}
	}
}

// TestParseRefuses gives for each text the cause and a piece of the advice.
func TestParseRefuses(t *testing.T) {
	tests := []struct {
		text   string
		kind   Kind
		fault  Fault
		advice string
	}{
		{"", Length, ErrEmpty, "no value entered for length"},
		{" \t\u00a0 ", Length, ErrEmpty, "no value entered for length"},
		{strings.Repeat("1", 65), Length, ErrTooLong, "at most 64 bytes"},
		{"NaN", Length, ErrNotFinite, "not a finite number"},
		{"-inf m", Length, ErrNotFinite, "not a finite number"},
		{"m", Length, ErrNumber, "does not begin with a number"},
		{"-", Length, ErrNumber, "does not begin with a number"},
		{".", Length, ErrNumber, "does not begin with a number"},
		{"abc", Length, ErrNumber, "does not begin with a number"},
		{"7,200", Length, ErrAmbiguous, "write 7200 or 7.2"},
		{"-7,200 m", Length, ErrAmbiguous, "write 7200 or 7.2"},
		{"12,345 m", Length, ErrAmbiguous, "write 12345 or 12.345"},
		{"100,000", Length, ErrAmbiguous, "write 100000 or 100"},
		{"1,234.5", Length, ErrAmbiguous, "both point and comma"},
		{"1.234,5", Length, ErrAmbiguous, "both point and comma"},
		{"1,234,567", Length, ErrAmbiguous, "more than one comma"},
		{"1.234.567", Length, ErrAmbiguous, "more than one point"},
		{"7 200", Length, ErrAmbiguous, "a space does not group digits"},
		{"14 1/ in", Diameter, ErrNumber, "the fraction is not finished"},
		{"7\u2009200 m", Length, ErrAmbiguous, "a space does not group digits"},
		{"7 200m", Length, ErrAmbiguous, "a space does not group digits"},
		{"10-12 ppg", Density, ErrNumber, "is a range"},
		{"1e5 m", Length, ErrNumber, "powers of ten"},
		{"1E-5", Length, ErrNumber, "powers of ten"},
		{"13 5/7 in", Diameter, ErrNumber, "no fraction of the trade"},
		{"13 5/0 in", Diameter, ErrNumber, "no fraction of the trade"},
		{"13 8/8 in", Diameter, ErrNumber, "write the whole part first"},
		{"13/8 in", Diameter, ErrNumber, "write the whole part first"},
		{"13.5 5/8 in", Diameter, ErrNumber, "mixes a fraction with a decimal sign"},
		{"1234567890123456 m", Length, ErrDigits, "too large"},
		{"1234567890123456 1/2 in", Diameter, ErrDigits, "too large"},
		{"999999999999999.9 ft", Length, ErrDigits, "too large"},
		{"0.0000000000000000000000001 m", Length, ErrDigits, "too fine"},
		{"12", Length, ErrNoUnit, "length wants m, ft, in"},
		{"12 psi", Density, ErrKind, "psi is a unit of pressure; density wants ppg, sg, kg/m3"},
		{"12 ppg", Pressure, ErrKind, "ppg is a unit of density; pressure wants psi, bar"},
		{"12 psi", YieldPoint, ErrKind, "yield point wants lbf/100ft2, Pa"},
		{"12 deg", Temperature, ErrKind, "deg is a unit of angle; temperature wants degC, degF, K"},
		{"12 lpm", Capacity, ErrKind, "L/min is a unit of flow rate"},
		{"12 m", Number, ErrKind, "number takes no unit"},
		{"12 stk", Count, ErrKind, "count takes no unit"},
		{"12 pgp", Density, ErrUnit, "nearest is ppg"},
		{"12 barr", Pressure, ErrUnit, "nearest is bar"},
		{"12 furlong", Length, ErrUnit, "unknown unit \"furlong\": length wants m, ft"},
		{"12 ton", Mass, ErrUnit, "write t for 1000 kg"},
		{"12 mPa", Pressure, ErrUnit, "write MPa"},
		{"12 MPa.s", Viscosity, ErrUnit, "write mPa.s"},
		{"12 mN", Force, ErrUnit, "write MN"},
		{"12 ..m", Length, ErrUnit, "unknown unit"},
		{"12 --m", Length, ErrUnit, "unknown unit"},
		{"2.5", Count, ErrWhole, "not a whole number"},
		{"12\u200bm", Length, ErrNumber, "invisible character, U+200B"},
		{"12\x1b[31mm", Length, ErrNumber, "invisible character"},
		{"12 \xff", Length, ErrNumber, "not valid text"},
		{"5³", Length, ErrUnit, "unknown unit"},
	}
	for _, tt := range tests {
		v, err := Parse(tt.text, tt.kind, 0)
		if !errors.Is(err, tt.fault) {
			t.Errorf("Parse(%q, %v) = %v, %v; want fault %q", tt.text, tt.kind, v, err, tt.fault)
			continue
		}
		if !strings.Contains(err.Error(), tt.advice) {
			t.Errorf("Parse(%q, %v) says %q, want it to contain %q", tt.text, tt.kind, err, tt.advice)
		}
		if strings.ContainsAny(err.Error(), "\n\x1b") {
			t.Errorf("Parse(%q, %v) says %q, want one line without controls", tt.text, tt.kind, err)
		}
		if v != (Value{}) {
			t.Errorf("Parse(%q, %v) = %v with its error, want the zero Value", tt.text, tt.kind, v)
		}
	}
}

// TestSameQuantitySameBits holds that one quantity is one number, however it
// is written. Each row is true by definition of its units.
func TestSameQuantitySameBits(t *testing.T) {
	tests := []struct {
		kind  Kind
		texts []string
	}{
		{Length, []string{"1 ft", "12 in", "0.3048 m", "30.48 cm", "304.8 mm", "384 in/32"}},
		{Diameter, []string{"13 5/8 in", "13.625 in", "13-5/8\"", "346.075 mm", "436 in/32"}},
		{Volume, []string{"1 bbl", "42 gal", "0.158987294928 m3", "158.987294928 L"}},
		{Volume, []string{"1 ft3", "0.028316846592 m3"}},
		{Density, []string{"1.1 sg", "1.1 kg/L", "1.1 g/cm3", "1100 kg/m3"}},
		{Pressure, []string{"1 ksi", "1000 psi"}},
		{Pressure, []string{"1 bar", "100 kPa", "0.1 MPa", "100000 Pa"}},
		{Temperature, []string{"32 degF", "0 degC", "273.15 K"}},
		{Temperature, []string{"212 degF", "100 degC", "373.15 K"}},
		{Temperature, []string{"-40 degF", "-40 degC"}},
		{Mass, []string{"1 sk", "94 lb", "0.094 klb"}},
		{Force, []string{"1 tf", "1000 kgf", "9.80665 kN", "980.665 daN", "9806.65 N"}},
		{Flow, []string{"1 bbl/min", "42 gpm", "60 bbl/h"}},
		{Dogleg, []string{"3 deg/30m", "1 deg/10m"}},
		{Ratio, []string{"30 %", "0.3 frac"}},
		{ROP, []string{"60 m/h", "1 m/min"}},
		{Viscosity, []string{"18 cP", "18 mPa.s", "0.018 Pa.s"}},
	}
	for _, tt := range tests {
		var first Value
		for i, text := range tt.texts {
			v, err := Parse(text, tt.kind, 0)
			if err != nil {
				t.Errorf("Parse(%q, %v) failed: %v", text, tt.kind, err)
				continue
			}
			if i == 0 {
				first = v
			}
			if v.SI != first.SI {
				t.Errorf("Parse(%q, %v).SI = %b, want that of %q, %b", text, tt.kind, v.SI, tt.texts[0], first.SI)
			}
		}
	}
}

func TestParseKind(t *testing.T) {
	for _, k := range Kinds() {
		for _, name := range []string{k.String(), strings.ToUpper(k.String()), strings.ReplaceAll(k.String(), " ", "_"), strings.ReplaceAll(k.String(), " ", "-")} {
			if got, err := ParseKind(name); err != nil || got != k {
				t.Errorf("ParseKind(%q) = %v, %v, want %v", name, got, err, k)
			}
		}
	}
	if _, err := ParseKind("colour"); !errors.Is(err, ErrKind) {
		t.Errorf("ParseKind(colour) = %v, want %v", err, ErrKind)
	}
	if got := Kind(250).String(); got != "unknown kind" {
		t.Errorf("Kind(250).String() = %q", got)
	}
}
