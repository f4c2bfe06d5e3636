package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.Suggestion;

/**
 * Which columns of a CSV file hold the coordinates: those that the plan names, or else a pair found by the
 * header. A file with both pairs, such as {@code sites.csv}, is read by the one that suits the plan's CRS.
 *
 * @param x column of longitude or easting, from 0
 * @param y column of latitude or northing, from 0
 */
record CsvColumns(int x, int y) {
    private record Pair(String x, String y) {}

    private static final List<Pair> DEGREES = new ArrayList<>();
    private static final List<Pair> METRES = new ArrayList<>();
    private static final List<Pair> EITHER = List.of(new Pair("x", "y"));

    static {
        // Decimal degrees come before the same place in minutes, which may be rounded.
        for (String suffix : List.of("", "_deg", "_dd", "_ddm", "_dms")) {
            for (String stem : List.of("longitude", "lon", "long", "lng")) {
                DEGREES.add(new Pair(stem + suffix, (stem.equals("longitude") ? "latitude" : "lat") + suffix));
            }
        }
        for (String suffix : List.of("", "_m")) {
            METRES.add(new Pair("easting" + suffix, "northing" + suffix));
            METRES.add(new Pair("east" + suffix, "north" + suffix));
        }
        METRES.add(new Pair("x_m", "y_m"));
    }

    /**
     * @param crs the CRS that the plan states, or empty
     * @throws InputException without a place, if there is no such pair or it does not suit the CRS
     */
    static CsvColumns find(List<String> header, LayerFile source, Optional<Crs> crs) {
        if (source.xColumn().isPresent() || source.yColumn().isPresent()) {
            return byPlan(header, source, crs);
        }
        boolean projected = crs.isPresent() && !crs.get().isGeographic();
        Optional<CsvColumns> degrees = pair(header, DEGREES);
        Optional<CsvColumns> metres = pair(header, METRES);
        Optional<CsvColumns> suited = (projected ? metres : degrees)
                .or(() -> projected ? degrees.isPresent() ? Optional.empty() : pair(header, EITHER)
                        : metres.isPresent() ? Optional.empty() : pair(header, EITHER));
        if (suited.isPresent()) {
            return suited.get();
        }
        if (metres.isPresent()) {
            throw metresWithoutCrs(header.get(metres.get().x()), crs);
        }
        if (degrees.isPresent()) {
            throw new InputException("its columns \"" + header.get(degrees.get().x()) + "\" and \"" + header.get(degrees.get().y())
                    + "\" are degrees while the plan states " + crs.orElseThrow().label()
                    + "; state a geographic CRS such as EPSG:4326, or name other columns with \"x-column:\" and \"y-column:\"");
        }
        throw new InputException("no columns of longitude and latitude, or easting and northing, among " + quoted(header)
                + "; start the file with a header line, or name its columns in the plan with \"x-column:\" and \"y-column:\"");
    }

    private static CsvColumns byPlan(List<String> header, LayerFile source, Optional<Crs> crs) {
        if (source.xColumn().isEmpty() || source.yColumn().isEmpty()) {
            throw new InputException("the plan names only one of \"x-column:\" and \"y-column:\"; name both or neither");
        }
        CsvColumns columns = new CsvColumns(byName(header, source.xColumn().get()), byName(header, source.yColumn().get()));
        String x = header.get(columns.x());
        if (crs.isEmpty() && METRES.stream().anyMatch(pair -> pair.x().equals(plain(x)))) {
            throw metresWithoutCrs(x, crs);
        }
        return columns;
    }

    private static int byName(List<String> header, String name) {
        int exact = header.indexOf(name.strip());
        int at = exact >= 0 ? exact : header.stream().map(CsvColumns::plain).toList().indexOf(plain(name));
        if (at < 0) {
            throw new InputException("has no column \"" + name + "\""
                    + Suggestion.nearest(name, header).map(near -> " (did you mean \"" + near + "\"?)").orElse("")
                    + "; name one from " + quoted(header));
        }
        return at;
    }

    private static InputException metresWithoutCrs(String column, Optional<Crs> crs) {
        return new InputException("its column \"" + column + "\" is no longitude, and " + crs.map(c -> "the plan states " + c.label())
                .orElse("a CSV file states no CRS") + "; add the projected CRS to the layer in the plan, for example \"crs: EPSG:32617\"");
    }

    private static Optional<CsvColumns> pair(List<String> header, List<Pair> pairs) {
        List<String> plain = header.stream().map(CsvColumns::plain).toList();
        return pairs.stream().filter(pair -> plain.contains(pair.x()) && plain.contains(pair.y())).findFirst()
                .map(pair -> new CsvColumns(plain.indexOf(pair.x()), plain.indexOf(pair.y())));
    }

    /** {@code Longitude (deg)} becomes {@code longitude_deg}. */
    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("^_+|_+$", "");
    }

    private static String quoted(List<String> header) {
        return header.stream().map(name -> "\"" + name + "\"").reduce((a, b) -> a + ", " + b).orElse("none");
    }
}
