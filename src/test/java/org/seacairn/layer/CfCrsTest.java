package org.seacairn.layer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

class CfCrsTest {
    private static NetCdfVariable mapping(String text) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        for (String part : text.split("; *")) {
            String[] pair = part.split("=", 2);
            attributes.put(pair[0], pair[1].matches("[-0-9., ]+")
                    ? java.util.Arrays.stream(pair[1].split(" +")).mapToDouble(Double::parseDouble).toArray() : pair[1]);
        }
        return new NetCdfVariable("crs", List.of(), new int[0], attributes, Optional.empty(), () -> null);
    }

    /** The parameters of each system are those of the EPSG data set, which places the point for the comparison. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "32617 | -80 | 27 | grid_mapping_name=transverse_mercator; latitude_of_projection_origin=0; longitude_of_central_meridian=-81;"
                + " scale_factor_at_central_meridian=0.9996; false_easting=500000; false_northing=0; semi_major_axis=6378137; inverse_flattening=298.257223563",
        "3395  | -80 | 27 | grid_mapping_name=mercator; longitude_of_projection_origin=0; scale_factor_at_projection_origin=1; semi_major_axis=6378137; semi_minor_axis=6356752.314245179",
        "3832  | 170 | 10 | grid_mapping_name=mercator; longitude_of_projection_origin=150; standard_parallel=0",
        "3994  | 170 | -40 | grid_mapping_name=mercator; longitude_of_projection_origin=100; standard_parallel=-41",
        "3034  | 12 | 50 | grid_mapping_name=lambert_conformal_conic; latitude_of_projection_origin=52; longitude_of_central_meridian=10; standard_parallel=35 65;"
                + " false_easting=4000000; false_northing=2800000; semi_major_axis=6378137; inverse_flattening=298.257222101",
        "4326  | -80 | 27 | grid_mapping_name=latitude_longitude; semi_major_axis=6378137; inverse_flattening=298.257223563",
        "4326  | -80 | 27 | grid_mapping_name=latitude_longitude; epsg_code=EPSG:4326",
        "4326  | -80 | 27 | grid_mapping_name=latitude_longitude",
    })
    void aMappingPutsAPointWhereItsEpsgCodeDoes(int epsg, double longitude, double latitude, String text) {
        Crs ours = CfCrs.of(mapping(text));
        Crs published = Crs.ofEpsg(epsg);
        Coordinate expected = published.geographic().to(published).apply(longitude, latitude);
        Coordinate point = ours.geographic().to(ours).apply(longitude, latitude);
        assertEquals(0, expected.distance(point), 1e-4, point + " and " + expected);
    }

    @Test
    void textOfAWholeCrsGoesFirst() {
        assertEquals(Crs.ofEpsg(32617), CfCrs.of(mapping("grid_mapping_name=latitude_longitude; crs_wkt=" + BagFixture.WKT)));
        // Of version 2 only the code is taken; without one the parameters count.
        assertEquals(Crs.ofEpsg(26917), CfCrs.of(mapping("grid_mapping_name=latitude_longitude; crs_wkt=PROJCRS[\"x\",ID[\"EPSG\",26917]]")));
        assertEquals(Crs.WGS84, CfCrs.of(mapping("grid_mapping_name=latitude_longitude; crs_wkt=GEOGCRS[\"x\",CS[ellipsoidal,2]]")));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "grid_mapping_name=rotated_latitude_longitude | the grid mapping \"rotated_latitude_longitude\" is not read here; state crs in the plan, for example EPSG:32617",
        "grid_mapping_name=transverse_mercator | the grid mapping \"transverse_mercator\" has no latitude_of_projection_origin; state crs in the plan, for example EPSG:32617",
        "grid_mapping_name=lambert_conformal_conic; latitude_of_projection_origin=1; longitude_of_central_meridian=2"
                + " | the grid mapping \"lambert_conformal_conic\" has no standard_parallel; state crs in the plan, for example EPSG:32617",
        "long_name=crs | the grid mapping \"\" is not read here; state crs in the plan, for example EPSG:32617",
    })
    void whatIsNotReadIsRefused(String text, String problem) {
        assertEquals(problem, assertThrows(InputException.class, () -> CfCrs.of(mapping(text))).getMessage());
    }
}
