package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Speed;
import org.apache.sis.measure.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import si.uom.SI;
import systems.uom.common.Imperial;
import systems.uom.common.USCustomary;

class UnitTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
            ft,         1,         0.3048,            0
            ft_us,      3937,      1200,              1e-12
            ft_us,      2000000,   609601.2192,       1e-4
            fathom,     1,         1.8288,            0
            nmi,        1,         1852,              0
            mi,         1,         1609.344,          0
            yd,         1,         0.9144,            0
            kn,         3600,      1852,              1e-12
            km/h,       3.6,       1,                 1e-15
            ft/s,       1,         0.3048,            0
            psf,        1,         47.88026,          5e-6
            lbf/ft2,    1,         47.88026,          5e-6
            lb,         1,         0.45359237,        0
            short_ton,  1,         907.18474,         1e-9
            long_ton,   1,         1016.0469088,      1e-9
            ft3,        1,         0.028316846592,    1e-15
            yd3,        1,         0.764554857984,    1e-15
            t,          1,         1000,              0
            km,         1,         1000,              0
            cm,         100,       1,                 0
            mm,         1000,      1,                 0
            kPa,        1,         1000,              0
            kPa/m,      1,         1000,              0
            rad,        3.141592653589793, 180,       0
            """)
    void factorsOfThePublishedTables(String symbol, double value, double si, double tolerance) {
        // Feet: 85 FR 62698; the two feet differ by 1.2192 m in 2,000,000 ft. Mile 1852 m: Monaco 1929.
        // psf, short and long ton, cubic foot and yard: NIST SP 811, appendix B.8, from memory.
        assertEquals(si, Unit.of(symbol).orElseThrow().toSi(value), tolerance);
    }

    @Test
    void anIndependentLibraryAgreesOnLengths() {
        Map<Unit, javax.measure.Unit<Length>> judges = Map.of(
                Unit.FOOT, Units.FOOT,
                Unit.US_SURVEY_FOOT, Units.US_SURVEY_FOOT,
                Unit.NAUTICAL_MILE, Units.NAUTICAL_MILE,
                Unit.MILE, Units.STATUTE_MILE,
                Unit.YARD, USCustomary.YARD,
                Unit.CENTIMETRE, Units.CENTIMETRE,
                Unit.KILOMETRE, Units.KILOMETRE);
        judges.forEach((unit, judge) ->
                assertEquals(judge.getConverterTo(judge.getSystemUnit().asType(Length.class)).convert(12.5),
                        unit.toSi(12.5), 1e-11 * unit.toSi(12.5), unit.name()));
    }

    @Test
    void anIndependentLibraryAgreesOnSpeedsAndMasses() {
        Map<Unit, javax.measure.Unit<Speed>> speeds = Map.of(
                Unit.KNOT, Units.KNOT, Unit.KILOMETRE_PER_HOUR, Units.KILOMETRES_PER_HOUR,
                Unit.FOOT_PER_SECOND, USCustomary.FOOT_PER_SECOND);
        speeds.forEach((unit, judge) ->
                assertEquals(judge.getConverterTo(judge.getSystemUnit().asType(Speed.class)).convert(12.5),
                        unit.toSi(12.5), 1e-11 * unit.toSi(12.5), unit.name()));
        Map<Unit, javax.measure.Unit<Mass>> masses = Map.of(
                Unit.POUND, USCustomary.POUND, Unit.SHORT_TON, USCustomary.TON, Unit.LONG_TON, Imperial.TON_UK);
        masses.forEach((unit, judge) ->
                assertEquals(judge.getConverterTo(SI.KILOGRAM).convert(12.5), unit.toSi(12.5),
                        1e-11 * unit.toSi(12.5), unit.name()));
    }

    @Test
    void percentOfASlopeIsRiseOverRun() {
        // 5 degrees are 8.75 %, 10 degrees 17.6 %, to the digits given.
        assertEquals(5, Unit.GRADE_PERCENT.toSi(8.75), 1e-3);
        assertEquals(10, Unit.GRADE_PERCENT.toSi(17.6), 0.02);
        assertEquals(45, Unit.GRADE_PERCENT.toSi(100), 1e-12);
    }

    @Test
    void noTwoUnitsOfAKindShareASymbol() {
        Set<String> seen = new HashSet<>();
        for (Unit unit : Unit.values()) {
            assertTrue(seen.add(unit.kind() + " " + unit.symbol()), unit.name());
        }
    }

    @ParameterizedTest
    @EnumSource(Unit.class)
    void everyUnitSaysWhatItRestsOn(Unit unit) {
        assertFalse(unit.source().isBlank());
    }
}
