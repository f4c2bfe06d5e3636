package org.seacairn.layer;

import java.util.Locale;
import java.util.Optional;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

/**
 * The CRS of a grid from its grid mapping variable, CF conventions 1.11, section 5.6 and appendix F. Text of a
 * whole CRS goes before an EPSG code, and that before single parameters: it names the datum, which they need not.
 */
final class CfCrs {
    private final NetCdfVariable mapping;

    private CfCrs(NetCdfVariable mapping) {
        this.mapping = mapping;
    }

    /** @throws InputException if the mapping is one that is not read here; the message names no file */
    static Crs of(NetCdfVariable mapping) {
        CfCrs reader = new CfCrs(mapping);
        InputException unread = null;
        for (String attribute : new String[] {"crs_wkt", "spatial_ref"}) {
            String wkt = mapping.text(attribute);
            if (!wkt.isEmpty()) {
                try {
                    return WktText.horizontal(wkt);
                } catch (InputException e) {
                    unread = e;
                }
            }
        }
        String code = mapping.text("epsg_code");
        if (!code.isEmpty() || mapping.numbers("epsg_code").length > 0) {
            return Crs.parse("EPSG:" + (code.isEmpty() ? Math.round(mapping.number("epsg_code", 0)) : code.replaceFirst("(?i)^EPSG:+", "")));
        }
        if (unread != null && mapping.text("grid_mapping_name").isEmpty()) {
            throw unread;
        }
        return Crs.parse(reader.wkt());
    }

    private String wkt() {
        String name = mapping.text("grid_mapping_name");
        String projection = switch (name) {
            case "latitude_longitude" -> "";
            case "transverse_mercator" -> projection("Transverse_Mercator",
                    parameter("latitude_of_origin", required("latitude_of_projection_origin")),
                    parameter("central_meridian", required("longitude_of_central_meridian")),
                    parameter("scale_factor", required("scale_factor_at_central_meridian")));
            case "mercator" -> mercator();
            case "lambert_conformal_conic" -> lambert();
            default -> throw new InputException("the grid mapping \"" + XmlElements.shown(name)
                    + "\" is not read here; state crs in the plan, for example EPSG:32617");
        };
        return projection.isEmpty() ? geographic() : "PROJCS[\"" + name + "\"," + geographic() + "," + projection + "]";
    }

    private String mercator() {
        double meridian = mapping.number("longitude_of_projection_origin", mapping.number("longitude_of_central_meridian", Double.NaN));
        String central = parameter("central_meridian", finite("longitude_of_projection_origin", meridian));
        return mapping.numbers("standard_parallel").length > 0
                ? projection("Mercator_2SP", parameter("standard_parallel_1", required("standard_parallel")), central)
                : projection("Mercator_1SP", central, parameter("scale_factor", mapping.number("scale_factor_at_projection_origin", 1)));
    }

    private String lambert() {
        double[] parallels = mapping.numbers("standard_parallel");
        String origin = parameter("latitude_of_origin", required("latitude_of_projection_origin"));
        String meridian = parameter("central_meridian", required("longitude_of_central_meridian"));
        if (parallels.length == 0) {
            required("standard_parallel");
        }
        if (parallels.length == 1 && parallels[0] == required("latitude_of_projection_origin")) {
            return projection("Lambert_Conformal_Conic_1SP", origin, meridian, parameter("scale_factor", 1));
        }
        return projection("Lambert_Conformal_Conic_2SP", parameter("standard_parallel_1", parallels[0]),
                parameter("standard_parallel_2", parallels[parallels.length - 1]), origin, meridian);
    }

    private String projection(String name, String... parameters) {
        return "PROJECTION[\"" + name + "\"]," + String.join(",", parameters) + "," + parameter("false_easting", mapping.number("false_easting", 0))
                + "," + parameter("false_northing", mapping.number("false_northing", 0)) + ",UNIT[\"metre\",1]";
    }

    private String geographic() {
        double radius = mapping.number("earth_radius", Double.NaN);
        double major = mapping.number("semi_major_axis", Double.isNaN(radius) ? 6_378_137 : radius);
        double minor = mapping.number("semi_minor_axis", Double.NaN);
        double flattening = mapping.number("inverse_flattening",
                !Double.isNaN(minor) ? minor == major ? 0 : major / (major - minor) : Double.isNaN(radius) ? 298.257223563 : 0);
        boolean stated = mapping.numbers("semi_major_axis").length > 0 || !Double.isNaN(radius);
        boolean wgs84 = major == 6_378_137 && Math.abs(flattening - 298.257223563) < 1e-8;
        String datum = quotable(mapping.text("horizontal_datum_name"));
        if (datum.isEmpty()) {
            // CF takes no datum for granted; an ellipsoid left out or that of WGS 84 is taken for WGS 84, as everywhere.
            datum = wgs84 || !stated ? "WGS_1984" : "unknown";
        }
        return "GEOGCS[\"" + datum + "\",DATUM[\"" + datum + "\",SPHEROID[\"" + datum + "\"," + shown(finite("semi_major_axis", major)) + ","
                + shown(finite("inverse_flattening", flattening)) + "]],PRIMEM[\"prime meridian\","
                + shown(mapping.number("longitude_of_prime_meridian", 0)) + "],UNIT[\"degree\",0.017453292519943295]]";
    }

    private static String quotable(String name) {
        return name.replaceAll("[^A-Za-z0-9_ ()./-]", "");
    }

    private double required(String attribute) {
        return finite(attribute, mapping.number(attribute, Double.NaN));
    }

    private double finite(String attribute, double value) {
        if (!Double.isFinite(value)) {
            throw new InputException("the grid mapping \"" + XmlElements.shown(mapping.text("grid_mapping_name")) + "\" has no " + attribute
                    + "; state crs in the plan, for example EPSG:32617");
        }
        return value;
    }

    private static String parameter(String name, double value) {
        return "PARAMETER[\"" + name + "\"," + shown(value) + "]";
    }

    private static String shown(double value) {
        return String.format(Locale.ROOT, "%s", value);
    }

    /** The name of the grid mapping variable in a grid's attribute, which may list coordinates behind it. */
    static Optional<String> mappingName(NetCdfVariable grid) {
        String text = grid.text("grid_mapping");
        return text.isEmpty() ? Optional.empty() : Optional.of(text.split("[:\\s]", 2)[0]);
    }
}
