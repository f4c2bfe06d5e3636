package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import net.sf.geographiclib.PolygonArea;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.geom.util.LineStringExtracter;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.CrsDomain;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Repairs invalid geometries where the plan says so, and tells each one.
 *
 * <p>What a crossing ring covers is taken the wide way: every place that the ring goes around a number of times other than none, in either
 * sense, so both lobes of a bow tie. That holds all that the other usual rule (an odd number of crossings) gives, so
 * by neither rule is covered ground lost. What has no width (a spike, a ring along a line) stays as a line, since something is there to
 * keep away from.
 */
public final class GeometryRepair {
    /** More are told by their number alone. */
    private static final int REPAIRS_TOLD = 100;
    /** A spike that stands out less, as a share of the coordinates, is rounding. */
    private static final double ROUNDING = 1e-11;

    /** @param repairs one line for each feature that is not as it stands in the file */
    public record Repaired(VectorLayer layer, List<String> repairs) {}

    private GeometryRepair() {}

    /** The layer, repaired if the plan asks for it. */
    public static Repaired asPlanned(LayerFile source, VectorLayer layer) {
        return source.repair() ? repaired(layer) : new Repaired(layer, List.of());
    }

    private static Repaired repaired(VectorLayer layer) {
        List<Feature> features = new ArrayList<>();
        List<String> repairs = new ArrayList<>();
        List<Long> untold = new ArrayList<>();
        CrsDomain domain = CrsDomain.of(layer.crs());
        for (Feature feature : layer.features()) {
            Optional<String> flaw = GeometryCheck.flaw(feature, layer.crs(), domain);
            if (flaw.isEmpty()) {
                features.add(feature);
                continue;
            }
            Geometry before = GeometryCheck.runningOn(feature.geometry(), layer.crs());
            Geometry after = fixed(before);
            features.add(new Feature(feature.id(), after, feature.attributes()));
            if (repairs.size() < REPAIRS_TOLD) {
                repairs.add("feature " + feature.id() + " is repaired, as the plan asks: " + flaw.get() + "; it covers "
                        + squareMetres(after, layer.crs()) + " now, its rings as they stand " + squareMetres(before, layer.crs())
                        + " (parts that cross count against each other)");
            } else {
                untold.add(feature.id());
            }
        }
        if (!untold.isEmpty()) {
            repairs.add(untold.size() + " more features are repaired: " + untold.stream().map(id -> Long.toString(id)).collect(Collectors.joining(", ")));
        }
        return new Repaired(new VectorLayer(layer.label(), layer.file(), layer.format(), layer.crs(), layer.edges(), List.copyOf(features),
                layer.featuresWithoutGeometry(), layer.notes()), List.copyOf(repairs));
    }

    private static Geometry fixed(Geometry geometry) {
        GeometryFixer fixer = new GeometryFixer(geometry);
        fixer.setKeepCollapsed(true);
        Geometry fixed = fixer.getResult();
        List<Geometry> parts = new ArrayList<>(List.of(fixed));
        for (Object polygon : PolygonExtracter.getPolygons(geometry)) {
            parts.addAll(spikes(((Polygon) polygon).getExteriorRing(), fixed));
        }
        return parts.size() == 1 ? fixed : geometry.getFactory().buildGeometry(parts);
    }

    /** What of an outline stands out of the repaired polygon; its tip is a vertex. */
    private static List<Geometry> spikes(LineString outline, Geometry fixed) {
        double rounding = 0;
        for (Coordinate c : outline.getCoordinates()) {
            rounding = Math.max(rounding, ROUNDING * Math.max(Math.abs(c.x), Math.abs(c.y)));
        }
        boolean out = false;
        for (Coordinate c : outline.getCoordinates()) {
            out |= fixed.distance(outline.getFactory().createPoint(c)) > rounding;
        }
        List<Geometry> spikes = new ArrayList<>();
        if (out) {
            // As a plain line: a ring's own rules do not hold for pieces of it.
            Geometry line = outline.getFactory().createLineString(outline.getCoordinateSequence());
            for (Object piece : LineStringExtracter.getLines(OverlayNGRobust.overlay(line, fixed, OverlayNG.DIFFERENCE))) {
                if (((Geometry) piece).getLength() > rounding) {
                    spikes.add((Geometry) piece);
                }
            }
        }
        return spikes;
    }

    private static String squareMetres(Geometry geometry, Crs crs) {
        double squareMetres = 0;
        for (Object each : PolygonExtracter.getPolygons(geometry)) {
            Polygon polygon = (Polygon) each;
            squareMetres += squareMetres(polygon.getExteriorRing(), crs);
            for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
                squareMetres -= squareMetres(polygon.getInteriorRingN(i), crs);
            }
        }
        return String.format(Locale.ROOT, "%.0f m2", Math.abs(squareMetres));
    }

    private static double squareMetres(LineString ring, Crs crs) {
        if (!crs.isGeographic()) {
            return ring.getFactory().createPolygon(ring.getCoordinateSequence()).getArea() * crs.metresPerUnit() * crs.metresPerUnit();
        }
        PolygonArea area = new PolygonArea(crs.geodesic(), false);
        for (Coordinate c : ring.getCoordinates()) {
            area.AddPoint(c.y, c.x);
        }
        return Math.abs(area.Compute(false, true).area);
    }
}
