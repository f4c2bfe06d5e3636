package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitNameTest {
    /** The foot of 0.3048 m and the US survey foot of 1200/3937 m: 85 FR 62698 (5 October 2020). */
    @ParameterizedTest
    @CsvSource(textBlock = """
            m,                1
            Metre,            1
            meters,           1
            km,               1000
            ft,               0.3048
            ft.,              0.3048
            feet,             0.3048
            Foot_US,          0.30480060960121919
            US survey foot,   0.30480060960121919
            us-ft,            0.30480060960121919
            ftUS,             0.30480060960121919
            fathoms,          1.8288
            """)
    void usualSpellingsAreKnown(String name, double metres) {
        assertEquals(metres, UnitName.metres(name).orElseThrow(), 1e-15);
    }

    @Test
    void otherNamesAreNot() {
        for (String name : new String[] {"", "-", "degC", "dm", "s"}) {
            assertEquals(OptionalDouble.empty(), UnitName.metres(name), name);
        }
    }
}
