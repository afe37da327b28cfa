package quantity

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestFormatUnit goes by numbers as they stand in well programmes.
func TestFormatUnit(t *testing.T) {
	tests := []struct {
		text string
		kind Kind
		unit Unit
		want string
	}{
		{"12.5 ppg", Density, PoundPerGallon, "12.50 ppg"},
		{"1.25 sg", EMW, SpecificGravity, "1.250 sg"},
		{"1249.6 kg/m3", Density, KilogramPerCubicMetre, "1250 kg/m3"},
		{"7200 ft", Length, Foot, "7200 ft"},
		{"7200.04 ft", Length, Foot, "7200 ft"},
		{"7199.97 ft", Length, Foot, "7200 ft"},
		{"7200.3 ft", Length, Foot, "7200 ft"},
		{"85.34 ft", Length, Foot, "85.3 ft"},
		{"385 m", Length, Metre, "385.0 m"},
		{"3.2 m", Length, Metre, "3.20 m"},
		{"9.996 m", Length, Metre, "10.0 m"},
		{"412 bbl", Volume, Barrel, "412.0 bbl"},
		{"999.94 bbl", Volume, Barrel, "999.9 bbl"},
		{"999.96 bbl", Volume, Barrel, "1000 bbl"},
		{"1312.4 bbl", Volume, Barrel, "1312 bbl"},
		{"8.127 m3", Volume, CubicMetre, "8.13 m3"},
		{"130.27 m3", Volume, CubicMetre, "130.3 m3"},
		{"8231.6 psi", Pressure, PSI, "8232 psi"},
		{"82.31 bar", Pressure, Bar, "82.3 bar"},
		{"345.4 bar", Pressure, Bar, "345 bar"},
		{"0.14876 bbl/ft", Capacity, BarrelPerFoot, "0.1488 bbl/ft"},
		{"0.00387 bbl/ft", Capacity, BarrelPerFoot, "0.00387 bbl/ft"},
		{"77.58 L/m", Capacity, LitrePerMetre, "77.58 L/m"},
		{"12910.4 stk", Strokes, Stroke, "12910 stk"},
		{"30 %", Ratio, Percent, "30 %"},
		{"2.5 %", Ratio, Percent, "2.5 %"},
		{"75.8 L/100kg", MixWater, LitrePer100Kilogram, "75.8 L/100kg"},
		{"1.15 ft3/sk", SlurryYield, CubicFootPerSack, "1.15 ft3/sk"},
		{"4 degC", Temperature, Celsius, "4.0 °C"},
		{"4 degC", Temperature, Fahrenheit, "39 °F"},
		{"13 5/8 in", Diameter, Inch, "13 5/8 in"},
		{"17.5 in", Diameter, Inch, "17 1/2 in"},
		{"36 in", Diameter, Inch, "36 in"},
		{"0.0625 in", Diameter, Inch, "1/16 in"},
		{"13.0625 in", Diameter, Inch, "13 1/16 in"},
		{"-0.5 in", Diameter, Inch, "-1/2 in"},
		{"0 in", Diameter, Inch, "0 in"},
		{"12.415 in", Diameter, Inch, "12.415 in"},
		{"346.075 mm", Diameter, Inch, "13 5/8 in"},
		{"13 5/8 in", Diameter, Millimetre, "346.1 mm"},
		{"12.413 in", Length, Inch, "12.41 in"},
		{"0.72", Number, Bare, "0.720"},
		{"6", Count, Bare, "6"},
	}
	for _, tt := range tests {
		v, err := Parse(tt.text, tt.kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := FormatUnit(v.SI, tt.kind, tt.unit); got != tt.want {
			t.Errorf("FormatUnit(%s, %v, %s) = %q, want %q", tt.text, tt.kind, tt.unit.ASCII(), got, tt.want)
		}
	}
}

func TestFormatWithoutANumber(t *testing.T) {
	for _, si := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e15, -1e300} {
		if got := FormatUnit(si, Length, Metre); got != "-" {
			t.Errorf("FormatUnit(%v, Length, Metre) = %q, want -", si, got)
		}
		if got := FormatChange(si, Length, Metre); got != "-" {
			t.Errorf("FormatChange(%v, Length, Metre) = %q, want -", si, got)
		}
	}
	for _, u := range []Unit{0, PSI, 65535} {
		if got := FormatUnit(1, Length, u); got != "-" {
			t.Errorf("FormatUnit(1, Length, %d) = %q, want -", u, got)
		}
	}
}

func TestFormatHasNoNegativeZero(t *testing.T) {
	for _, k := range Kinds() {
		for _, u := range Units(k) {
			for _, x := range []float64{math.Copysign(0, -1), -1e-9} {
				if got := Format(u.ToSI(x), k, u); strings.HasPrefix(got, "-") || !strings.HasPrefix(got, "0") {
					t.Errorf("Format(%v %s, %v) = %q, want 0", x, u.ASCII(), k, got)
				}
			}
		}
	}
}

func TestFormatChange(t *testing.T) {
	tests := []struct {
		change float64 // in the unit
		kind   Kind
		unit   Unit
		want   string
	}{
		{18, Volume, Barrel, "+18.0"},
		{-0.1, EMW, PoundPerGallon, "-0.10"},
		{0.004, EMW, PoundPerGallon, ""},
		{-0.004, EMW, PoundPerGallon, ""},
		{0, EMW, PoundPerGallon, ""},
		{0.5, Length, Foot, "+0.5"},
		{-12, Length, Foot, "-12.0"},
		{0.04, Length, Foot, ""},
		{0.625, Diameter, Inch, "+0.625"},
		{-1, Diameter, Inch, "-1.000"},
		{9, Temperature, Fahrenheit, "+9"},
		{-1.5, Temperature, Celsius, "-1.5"},
		{1200, Volume, Barrel, "+1200"},
	}
	for _, tt := range tests {
		dsi := tt.change * tt.unit.row().scale()
		if got := FormatChange(dsi, tt.kind, tt.unit); got != tt.want {
			t.Errorf("FormatChange(%v %s, %v) = %q, want %q", tt.change, tt.unit.ASCII(), tt.kind, got, tt.want)
		}
	}
}

// TestFormatValue holds that what was entered is not rounded away.
func TestFormatValue(t *testing.T) {
	tests := []struct {
		text string
		kind Kind
		unit Unit
		want string
	}{
		{"12.375 ppg", Density, PoundPerGallon, "12.375"},
		{"12.5 ppg", Density, PoundPerGallon, "12.50"},
		{"1262.25 ft", Length, Foot, "1262.25"},
		{"1262.03 ft", Length, Foot, "1262.03"},
		{"39.5 degF", Temperature, Fahrenheit, "39.5"},
		{"97.5 %", Ratio, Percent, "97.5"},
		{"13.625 in", Diameter, Inch, "13 5/8"},
		{"2.03125 in", Diameter, Inch, "2.03125"},
		{"12.123456789 ppg", Density, PoundPerGallon, "12.12"},
		{"1262.25 ft", Length, Metre, "384.7"},
	}
	for _, tt := range tests {
		v, err := Parse(tt.text, tt.kind, 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := FormatValue(v, tt.kind, tt.unit); got != tt.want {
			t.Errorf("FormatValue(%s, %v, %s) = %q, want %q", tt.text, tt.kind, tt.unit.ASCII(), got, tt.want)
		}
	}
	if got := FormatValue(Value{}, Length, Foot); got != "" {
		t.Errorf("FormatValue of nothing entered = %q, want empty", got)
	}
	if got := FormatValue(Value{math.NaN(), Foot}, Length, Foot); got != "-" {
		t.Errorf("FormatValue(NaN) = %q, want -", got)
	}
}

// TestFormatIsWithinItsDigits reads the shown number back: it is no further
// off than half of its last digit, and it is readable at all.
func TestFormatIsWithinItsDigits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, u := anyKindAndUnit(t)
		x := rapid.OneOf(rapid.Float64Range(-2000, 2000), rapid.Float64Range(-1e9, 1e9)).Draw(t, "x")
		if k == Count {
			x = math.Round(x)
		}
		text := Format(u.ToSI(x), k, u)
		if strings.Trim(text, "0123456789./ -") != "" {
			t.Fatalf("Format(%v %s) = %q, want digits", x, u.ASCII(), text)
		}
		v, err := Parse(text, k, u)
		if err != nil {
			t.Fatalf("Format(%v %s) = %q, which does not read: %v", x, u.ASCII(), text, err)
		}
		_, places, _ := strings.Cut(text, ".")
		half := 0.5*math.Pow10(-len(places)) + 1e-12*math.Abs(x) + 1e-9
		if strings.Contains(text, "/") {
			half = fractionSlop + 1e-12*math.Abs(x)
		}
		if got := u.FromSI(v.SI); math.Abs(got-x) > half {
			t.Fatalf("Format(%v %s) = %q, off by more than %v", x, u.ASCII(), text, half)
		}
	})
}

func TestAppendFormatAppends(t *testing.T) {
	if got := string(AppendFormat([]byte("depth -"), -1e-9, Length, Metre)); got != "depth -0.00" {
		t.Errorf("AppendFormat after %q = %q, want %q", "depth -", got, "depth -0.00")
	}
}

func TestDiffers(t *testing.T) {
	for _, test := range []struct {
		a, b float64
		kind Kind
		unit Unit
		want bool
	}{
		{100, 100, Length, Metre, false},
		{100, 100.01, Length, Metre, false},
		{100.049, 100.051, Length, Metre, false}, // written otherwise, but for a difference that is not
		{100, 100.2, Length, Metre, true},
		{100.2, 100, Length, Metre, true},
		{math.NaN(), 100, Length, Metre, true},
	} {
		if got := Differs(test.a, test.b, test.kind, test.unit); got != test.want {
			t.Errorf("Differs(%g, %g) = %v", test.a, test.b, got)
		}
	}
}
