package org.seacairn.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seacairn.InputException;
import org.seacairn.plan.Quantity.Kind;

class QuantityTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
            500 m,          LENGTH,     500
            500m,           LENGTH,     500
            '  0.5   nmi ', LENGTH,     926
            85 ft,          LENGTH,     25.908
            125 ft,         LENGTH,     38.1
            +1e3 m,         LENGTH,     1000
            .5 km,          LENGTH,     500
            5. m,           LENGTH,     5
            0 m,            LENGTH,     0
            3.5 kn,         SPEED,      1.8005555555555555
            8.5 short_ton,  MASS,       7711.07029
            4 kPa,          PRESSURE,   4000
            1.5 kPa/m,      GRADIENT,   1500
            5 deg,          SLOPE,      5
            100 %,          SLOPE,      45
            8.75 %,         SLOPE,      5.0006
            20 deg,         ANGLE,      20
            2.5 m3,         VOLUME,     2.5
            3 cells,        CELLS,      3
            20 %,           SHARE,      0.2
            0.2,            SHARE,      0.2
            1,              SHARE,      1
            0.02,           RUGGEDNESS, 0.02
            """)
    void readsNumberAndUnit(String text, Kind kind, double expected) {
        assertEquals(expected, Quantity.si("x", text, kind), 1e-4 * Math.max(1e-9, Math.abs(expected)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            20          | LENGTH     | x is "20"; write the unit, for example "20 m"
            0           | LENGTH     | x is "0"; write the unit, for example "0 m"
            3           | CELLS      | x is "3"; write the unit, for example "3 cells"
            wide        | LENGTH     | x is "wide"; write a number with a decimal point and a unit, for example "20 m"
            0,5 nmi     | LENGTH     | x is "0,5 nmi"; write a number with a decimal point and a unit, for example "20 m"
            1,000 m     | LENGTH     | x is "1,000 m"; write a number with a decimal point and a unit, for example "20 m"
            5 -3 m      | LENGTH     | x is "5 -3 m"; write a number with a decimal point and a unit, for example "20 m"
            nan m       | LENGTH     | x is "nan m"; write a number with a decimal point and a unit, for example "20 m"
            .inf m      | LENGTH     | x is ".inf m"; write a number with a decimal point and a unit, for example "20 m"
            0x10 m      | LENGTH     | x is "0x10 m", but "x10 m" is not a unit known here; a length is written in m, km, cm, mm, ft, ft_us, fathom, nmi, mi, yd
            1e999 m     | LENGTH     | x is "1e999 m", which is too large; check number and unit
            20001 nmi   | LENGTH     | x is "20001 nmi", which is too large; check number and unit
            200 kn      | SPEED      | x is "200 kn", which is too large; check number and unit
            -60 m       | LENGTH     | x is "-60 m"; a length is 0 or more (depths are positive down) here
            20 feet     | LENGTH     | x is "20 feet", but "feet" is not a unit known here; a length is written in m, km, cm, mm, ft, ft_us, fathom, nmi, mi, yd
            20 M        | LENGTH     | x is "20 M", but "M" is not a unit known here; a length is written in m, km, cm, mm, ft, ft_us, fathom, nmi, mi, yd
            5 kn        | LENGTH     | x is "5 kn", which is a speed; a length is written in m, km, cm, mm, ft, ft_us, fathom, nmi, mi, yd
            5 m         | SPEED      | x is "5 m", which is a length; a speed is written in m/s, kn, km/h, ft/s
            5 %         | ANGLE      | x is "5 %", which is a slope; an angle is written in deg, rad
            5 m         | SLOPE      | x is "5 m", which is a length; a slope is written in deg, rad, %
            91 deg      | SLOPE      | x is "91 deg"; a slope is 0 deg to 90 deg here
            361 deg     | ANGLE      | x is "361 deg"; an angle is 0 deg to 360 deg here
            1.01        | SHARE      | x is "1.01"; a share is 0 to 1 here
            101 %       | SHARE      | x is "101 %"; a share is 0 to 1 here
            -0.1        | SHARE      | x is "-0.1"; a share is 0 to 1 here
            half        | SHARE      | x is "half"; write a number with a decimal point, for example "0.5"
            1 m         | SHARE      | x is "1 m", which is a length; a share is written as a number from 0 to 1 or in %
            1 m         | RUGGEDNESS | x is "1 m", which is a length; a ruggedness is written as a number from 0 to 1
            4 kPa       | GRADIENT   | x is "4 kPa", which is a pressure; a gradient is written in Pa/m, kPa/m
            """)
    void refusesWhatIsNoSuchQuantity(String text, Kind kind, String expected) {
        InputException e = assertThrows(InputException.class, () -> Quantity.si("x", text, kind));
        assertEquals(expected, e.getMessage());
    }

    @Test
    void negativeZeroIsZero() {
        assertEquals(0L, Double.doubleToRawLongBits(Quantity.si("x", "-0 m", Kind.LENGTH)));
    }

    @Test
    void emptyTextIsRefused() {
        InputException e = assertThrows(InputException.class, () -> Quantity.si("x", "", Kind.LENGTH));
        assertEquals("x is \"\"; write a number with a decimal point and a unit, for example \"20 m\"", e.getMessage());
    }
}
