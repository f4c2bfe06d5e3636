package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class S57CatalogueTest {
    /** Codes as read in OSGeo/gdal, gdal/data/s57objectclasses.csv, which lists S-57 edition 3.1. */
    @ParameterizedTest
    @CsvSource({"3, ACHBRT", "4, ACHARE", "20, CBLARE", "22, CBLSUB", "27, CTNARE", "41, DWRTPT", "42, DEPARE", "43, DEPCNT", "46, DRGARE",
        "48, DMPGRD", "51, FAIRWY", "55, FSHFAC", "68, ISTZNE", "82, MARCUL", "83, MIPARE", "86, OBSTRN", "87, OFSPLF", "92, PIPARE",
        "94, PIPSOL", "96, PRCARE", "112, RESARE", "118, SNDWAV", "121, SBDARE", "129, SOUNDG", "134, SWPARE", "145, TSELNE", "148, TSSLPT",
        "150, TSEZNE", "153, UWTROC", "154, UNSARE", "159, WRECKS", "308, M_QUAL", "309, M_SDAT", "312, M_VDAT", "17011, OBJL_17011"})
    void namesObjectClasses(int code, String acronym) {
        assertEquals(acronym, S57Catalogue.objectClass(code));
    }

    /** NATSUR 113 and NATQUA 114: caris.com/s-57/attribut/natsur.htm; lists that are off by one from there exist. */
    @ParameterizedTest
    @CsvSource({"113, NATSUR, false", "114, NATQUA, false", "87, DRVAL1, true", "88, DRVAL2, true", "179, VALSOU, true", "42, CATOBS, false",
        "116, OBJNAM, false", "301, NOBJNM, false", "133, SCAMIN, true", "17050, ATTL_17050, false"})
    void namesAttributes(int code, String acronym, boolean number) {
        assertEquals(acronym, S57Catalogue.attribute(code));
        assertEquals(number, S57Catalogue.isNumber(code));
    }

    @Test
    void saysSurfacesInWordsInTheOrderOfTheList() {
        S57Feature feature = new S57Feature(new S57Name(S57Name.FEATURE, 1), S57Feature.POINT, 121, 1);
        feature.attributes().put(113, "1,9,14,18,99,x");
        assertEquals("mud, rock, coral, boulder, 99, x", S57Attributes.of(feature).get("NATSUR_words"));
    }
}
