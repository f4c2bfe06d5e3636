package org.seacairn.layer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.CoordinateHeaders.Kind;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.Suggestion;

/**
 * Which columns of a CSV file hold the coordinates: those that the plan or the user names, or else a pair found by the
 * header. A file with both pairs, such as {@code sites.csv}, is read by the one that suits the plan's CRS.
 *
 * @param x column of longitude or easting, from 0
 * @param y column of latitude or northing, from 0
 */
record CsvColumns(int x, int y) {
    /** A longer list of columns is told in part. */
    private static final int COLUMNS_TOLD = 12;

    private static final String NAME_THEM = "name the columns with \"x-column\" and \"y-column\"";

    /**
     * @param crs the CRS that the plan states, or empty
     * @throws InputException without a place, if there is no such pair or it does not suit the CRS
     */
    static CsvColumns find(List<String> header, LayerFile source, Optional<Crs> crs) {
        if (source.xColumn().isPresent() || source.yColumn().isPresent()) {
            return named(header, source, crs);
        }
        boolean projected = crs.isPresent() && !crs.get().isGeographic();
        Optional<CsvColumns> degrees = CoordinateHeaders.pair(header, Kind.DEGREES);
        Optional<CsvColumns> metres = CoordinateHeaders.pair(header, Kind.METRES);
        if (projected ? metres.isPresent() : degrees.isPresent()) {
            if (!projected) {
                requireWholeCoordinates(header);
            }
            return (projected ? metres : degrees).get();
        }
        if (metres.isPresent()) {
            throw metresWithoutCrs(header.get(metres.get().x()), crs);
        }
        if (degrees.isPresent()) {
            throw new InputException("its columns \"" + header.get(degrees.get().x()) + "\" and \"" + header.get(degrees.get().y())
                    + "\" are degrees while its \"crs\" is stated as " + crs.orElseThrow().label()
                    + "; state a geographic one such as EPSG:4326, or " + NAME_THEM);
        }
        Optional<CsvColumns> either = CoordinateHeaders.pair(header, Kind.EITHER);
        if (either.isPresent()) {
            return either.get();
        }
        requireWholeCoordinates(header);
        CoordinateHeaders.countedBackward(header).ifPresent(column -> {
            throw new InputException("its column \"" + column + "\" tells the hemisphere in its name and not in its values;"
                    + " write it after each value, for example 87.25 W, and name the column longitude or latitude");
        });
        throw new InputException("no columns of longitude and latitude, or easting and northing, among " + quoted(header)
                + "; give them these names in a header line, or " + NAME_THEM);
    }

    /** Degrees alone, without the minutes or the hemisphere beside them, would be read as some other place. */
    private static void requireWholeCoordinates(List<String> header) {
        CoordinateHeaders.partOfCoordinate(header).ifPresent(part -> {
            throw new InputException("its column \"" + part + "\" looks like minutes or hemisphere kept apart from their degrees;"
                    + " join them in one value such as 27 14.620 N, or, if it is something else, " + NAME_THEM);
        });
    }

    private static CsvColumns named(List<String> header, LayerFile source, Optional<Crs> crs) {
        if (source.xColumn().isEmpty() || source.yColumn().isEmpty()) {
            throw new InputException("only one of \"x-column\" and \"y-column\" is given; give both or neither");
        }
        CsvColumns columns = new CsvColumns(byName(header, source.xColumn().get()), byName(header, source.yColumn().get()));
        String x = header.get(columns.x());
        if (crs.isEmpty() && CoordinateHeaders.isEasting(x)) {
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
        return new InputException("its column \"" + column + "\" is no longitude, and " + crs.map(c -> "its \"crs\" is stated as " + c.label())
                .orElse("a CSV file states no CRS") + "; state its projected \"crs\", for example EPSG:32617, or, if it holds degrees, EPSG:4326 and "
                + NAME_THEM);
    }

    /** {@code Longitude (deg)} becomes {@code longitude_deg}. */
    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("^_+|_+$", "");
    }

    private static String quoted(List<String> header) {
        String told = header.stream().limit(COLUMNS_TOLD).map(name -> "\"" + XmlElements.shown(name) + "\"").collect(Collectors.joining(", "));
        return header.size() <= COLUMNS_TOLD ? told : told + " and " + (header.size() - COLUMNS_TOLD) + " more";
    }
}
