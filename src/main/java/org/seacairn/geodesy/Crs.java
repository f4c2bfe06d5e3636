package org.seacairn.geodesy;

import java.util.Locale;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Unit;
import net.sf.geographiclib.Geodesic;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.Ellipsoid;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.seacairn.InputException;
import si.uom.SI;

/**
 * A horizontal coordinate reference system with its axes in the order easting, northing (or
 * longitude, latitude), whatever order the authority publishes. Immutable.
 */
public final class Crs {
    /** Longitude and latitude in degrees on WGS 84. */
    public static final Crs WGS84 = new Crs(DefaultGeographicCRS.WGS84);

    private static final Pattern EPSG_CODE =
            Pattern.compile("(?:urn:(?:x-)?ogc:def:crs:)?EPSG:(?:[0-9.]*:)?([0-9]{1,6})", Pattern.CASE_INSENSITIVE);
    private static final Pattern EPSG_URL =
            Pattern.compile("https?://www\\.opengis\\.net/def/crs/EPSG/[0-9.]+/([0-9]{1,6})", Pattern.CASE_INSENSITIVE);
    private static final Pattern CRS84 =
            Pattern.compile("(?:urn:ogc:def:crs:)?OGC:(?:[0-9.]*:)?CRS84", Pattern.CASE_INSENSITIVE);

    /** Far above the longest definitions in use. */
    private static final int LONGEST_WKT = 100_000;
    private static final int DEEPEST_WKT = 50;

    private final SingleCRS crs;
    private final OptionalInt epsg;

    private Crs(SingleCRS crs) {
        this(crs, OptionalInt.empty());
    }

    private Crs(SingleCRS crs, OptionalInt epsg) {
        this.crs = crs;
        this.epsg = epsg;
    }

    /**
     * Reads an authority code ({@code EPSG:32617}, its URN or URL forms, {@code OGC:CRS84}) or
     * well-known text.
     *
     * @throws InputException if the text is neither, or names a CRS that is not geographic or projected
     */
    public static Crs parse(String text) {
        // Names of it are told in messages, which are lines.
        String trimmed = text.strip().replaceAll("[\\s\\p{Cntrl}]+", " ");
        Matcher code = EPSG_CODE.matcher(trimmed);
        Matcher url = EPSG_URL.matcher(trimmed);
        if (code.matches()) {
            return ofEpsg(Integer.parseInt(code.group(1)));
        }
        if (url.matches()) {
            return ofEpsg(Integer.parseInt(url.group(1)));
        }
        if (CRS84.matcher(trimmed).matches()) {
            return WGS84;
        }
        if (trimmed.indexOf('[') < 0) {
            throw new InputException("CRS \"" + shortened(trimmed)
                    + "\" is not known; write an EPSG code such as EPSG:32617, or well-known text");
        }
        requireShallow(trimmed);
        try {
            return of(CRS.parseWKT(trimmed));
        } catch (FactoryException | RuntimeException e) {
            throw new InputException("CRS text \"" + shortened(trimmed) + "\" cannot be read ("
                    + firstLine(e) + "); write an EPSG code such as EPSG:32617", e);
        }
    }

    /** The library recurses into brackets as deep as the text asks for, and looks at the whole text at each. */
    private static void requireShallow(String wkt) {
        int depth = 0;
        int deepest = 0;
        for (int i = 0; i < wkt.length(); i++) {
            char c = wkt.charAt(i);
            depth += c == '[' || c == '(' ? 1 : c == ']' || c == ')' ? -1 : 0;
            deepest = Math.max(deepest, depth);
        }
        if (wkt.length() > LONGEST_WKT || deepest > DEEPEST_WKT) {
            throw new InputException("CRS text \"" + shortened(wkt) + "\" has " + wkt.length() + " characters, nested " + deepest
                    + " deep, more than any CRS needs; write an EPSG code such as EPSG:32617");
        }
    }

    /** Whether the data set gives what it is known to hold; the library does not tell a full disk from an unknown code. */
    private static boolean hasDataSet() {
        try {
            return CRS.decode("EPSG:32601", true) != null;
        } catch (FactoryException e) {
            return false;
        }
    }

    /** @throws InputException if the EPSG data set has no such horizontal CRS, or cannot be opened */
    public static Crs ofEpsg(int code) {
        if (code == 4326) {
            return WGS84;
        }
        try {
            return new Crs(horizontal(CRS.decode("EPSG:" + code, true)), OptionalInt.of(code));
        } catch (FactoryException e) {
            throw new InputException(hasDataSet() ? "CRS EPSG:" + code + " is not in the EPSG data set; check the code"
                    : "the EPSG data set cannot be unpacked to the folder for temporary files, "
                    + System.getProperty("java.io.tmpdir") + "; make room there, or name another folder with -Djava.io.tmpdir=", e);
        }
    }

    /**
     * Takes the horizontal part of a library CRS, longitude or easting first.
     *
     * @throws InputException if it has no horizontal part that is geographic or projected
     */
    public static Crs of(CoordinateReferenceSystem any) {
        SingleCRS flat = horizontal(any);
        OptionalInt code = statedCode(flat);
        if (CRS.getAxisOrder(flat) != CRS.AxisOrder.NORTH_EAST) {
            return new Crs(flat, code);
        }
        // The data set knows the same CRS with its axes in our order.
        return ofEpsg(code.orElseThrow(() -> new InputException("CRS \"" + flat.getName().getCode()
                + "\" counts north before east and states no EPSG code; write its code, for example EPSG:32617")));
    }

    /** The EPSG code that a CRS says it has; looking one up by its parameters would cost seconds. */
    private static OptionalInt statedCode(SingleCRS crs) {
        return crs.getIdentifiers().stream()
                .filter(id -> "EPSG".equalsIgnoreCase(id.getCodeSpace()) && id.getCode().matches("[0-9]{1,6}"))
                .mapToInt(id -> Integer.parseInt(id.getCode())).findFirst();
    }

    /** The UTM zone on WGS 84 that holds a place; longitude and latitude in degrees. */
    public static Crs utmAt(double longitudeDeg, double latitudeDeg) {
        int zone = Math.floorMod((int) Math.floor((longitudeDeg + 180) / 6), 60) + 1;
        return ofEpsg((latitudeDeg < 0 ? 32700 : 32600) + zone);
    }

    private static SingleCRS horizontal(CoordinateReferenceSystem any) {
        SingleCRS flat = any == null ? null : CRS.getHorizontalCRS(any);
        if (!(flat instanceof GeographicCRS) && !(flat instanceof ProjectedCRS)) {
            throw new InputException("CRS \"" + (any == null ? "none" : any.getName().getCode())
                    + "\" is neither geographic nor projected; state the CRS in the plan, for example EPSG:32617");
        }
        return flat;
    }

    public boolean isGeographic() {
        return crs instanceof GeographicCRS;
    }

    /** Whether both axes are in metres. */
    public boolean isMetric() {
        return crs instanceof ProjectedCRS && metresPerUnit() == 1;
    }

    /** What one unit of a projected CRS is in metres; NaN for a geographic one. */
    public double metresPerUnit() {
        if (isGeographic()) {
            return Double.NaN;
        }
        Unit<?> unit = crs.getCoordinateSystem().getAxis(0).getUnit();
        return unit.asType(javax.measure.quantity.Length.class).getConverterTo(SI.METRE).convert(1.0);
    }

    /** Longitude and latitude in degrees on this CRS's own datum. */
    public Crs geographic() {
        if (isGeographic()) {
            return this;
        }
        GeographicCRS base = ((ProjectedCRS) crs).getBaseCRS();
        if (sameDatum(base, DefaultGeographicCRS.WGS84)) {
            return WGS84;
        }
        OptionalInt code = statedCode(base);
        // Without a code it is rebuilt on standard axes: the base may count in grads or put latitude first.
        return code.isPresent() ? ofEpsg(code.getAsInt())
                : new Crs(new DefaultGeographicCRS(base.getName().getCode(), base.getDatum(),
                        DefaultGeographicCRS.WGS84.getCoordinateSystem()));
    }

    private static boolean sameDatum(GeographicCRS a, GeographicCRS b) {
        return CRS.equalsIgnoreMetadata(a.getDatum(), b.getDatum());
    }

    /** Geodesics on this CRS's ellipsoid. */
    public Geodesic geodesic() {
        Ellipsoid ellipsoid = ((GeodeticDatum) crs.getDatum()).getEllipsoid();
        double metres = ellipsoid.getAxisUnit().getConverterTo(SI.METRE).convert(1.0);
        double a = ellipsoid.getSemiMajorAxis() * metres;
        double f = ellipsoid.getInverseFlattening();
        return new Geodesic(a, Double.isInfinite(f) || f == 0 ? 0 : 1 / f);
    }

    /** Whether the ellipsoid is that of WGS 84 or GRS 80, which only datums at the Earth's centre use. */
    boolean isGeocentric() {
        Geodesic geodesic = geodesic();
        return Math.abs(geodesic.EquatorialRadius() - 6_378_137) < 1e-3
                && Math.abs(1 / geodesic.Flattening() - 298.257223) < 1e-5;
    }

    /**
     * A transform from this CRS to another.
     *
     * @throws InputException if no datum shift between them is known
     */
    public CoordinateTransform to(Crs target) {
        return CoordinateTransform.between(this, target);
    }

    /** The EPSG code where the CRS has one. */
    public OptionalInt epsg() {
        return this == WGS84 ? OptionalInt.of(4326) : epsg;
    }

    public String name() {
        // The library's own object for it is named "WGS84(DD)".
        return this == WGS84 ? "WGS 84" : crs.getName().getCode();
    }

    /** {@code EPSG:32617 (WGS 84 / UTM zone 17N)}, or the name alone. */
    public String label() {
        return epsg().isPresent() ? "EPSG:" + epsg().getAsInt() + " (" + name() + ")" : name();
    }

    /** Well-known text (version 1) on one line. */
    public String wkt() {
        return ((org.geotools.referencing.wkt.Formattable) crs).toWKT(0);
    }

    /** The library's own object, axes in our order. */
    public CoordinateReferenceSystem library() {
        return crs;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Crs that && CRS.equalsIgnoreMetadata(crs, that.crs);
    }

    @Override
    public int hashCode() {
        // Equal CRSs may differ in name and code, so only the kind is safe to hash.
        return Objects.hash(isGeographic());
    }

    @Override
    public String toString() {
        return label();
    }

    private static String shortened(String text) {
        return text.length() <= 60 ? text : text.substring(0, 57) + "...";
    }

    private static String firstLine(Throwable e) {
        String message = String.valueOf(e.getMessage());
        return shortened(message.lines().findFirst().orElse("unreadable").toLowerCase(Locale.ROOT).replaceFirst(" of type '.*", ""));
    }
}
