package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.CrsDomain;
import org.seacairn.geodesy.GeodesicEdges;

/**
 * Looks for geometries that cannot be right: invalid ones (in the sense of OGC 06-103r4, Simple
 * Feature Access: rings that cross themselves, holes outside their shell and so on) and coordinates that do not suit the CRS. Nothing is
 * repaired here: see {@link GeometryRepair}.
 */
public final class GeometryCheck {
    /** Code of a coordinate that its CRS cannot hold. */
    public static final String OUTSIDE_DOMAIN = "outside-domain";

    /** Places told for each code; more are only counted. */
    private static final int PLACES_TOLD = 3;
    /** Most problems told by {@link #requireValid}. */
    private static final int PROBLEMS_TOLD = 20;

    private static final double HALF_TURN_DEG = 180;

    /** Where a problem is: feature id, and x, y in the layer's CRS. */
    public record Place(long featureId, double x, double y) {
        @Override
        public String toString() {
            return "feature " + featureId + " at (" + x + ", " + y + ")";
        }
    }

    /**
     * One kind of problem.
     *
     * @param code short and fixed, for programs: {@code self-intersection}, {@code outside-domain} …
     * @param features how many features have it, or all of the layer's for a problem of the whole layer
     * @param places the first few
     * @param message one line for people
     * @param fatal whether {@link #requireValid} refuses the layer for it
     */
    public record Finding(String code, int features, List<Place> places, String message, boolean fatal) {}

    private record Flaw(String code, Place place) {}

    private GeometryCheck() {}

    /** Everything found, fatal findings first and each sort by code; empty if all is well. */
    public static List<Finding> of(VectorLayer layer) {
        Map<String, List<Place>> byCode = new TreeMap<>();
        for (Flaw flaw : flaws(layer)) {
            byCode.computeIfAbsent(flaw.code(), code -> new ArrayList<>()).add(flaw.place());
        }
        List<Finding> findings = new ArrayList<>();
        byCode.forEach((code, places) -> findings.add(new Finding(code, places.size(),
                List.copyOf(places.subList(0, Math.min(PLACES_TOLD, places.size()))),
                places.size() + " of " + layer.features().size() + " features: " + meaning(code) + ", first "
                        + places.get(0), true)));
        unitsFinding(layer).ifPresent(findings::add);
        return findings;
    }

    /**
     * Refuses a layer with an invalid geometry or a coordinate outside the CRS.
     *
     * @return the layer
     * @throws InputException naming the file, the features (at most 20), where in them, and what to do
     */
    public static VectorLayer requireValid(VectorLayer layer) {
        List<Flaw> flaws = flaws(layer);
        if (flaws.isEmpty()) {
            return layer;
        }
        List<String> problems = new ArrayList<>();
        for (Flaw flaw : flaws.subList(0, Math.min(PROBLEMS_TOLD, flaws.size()))) {
            problems.add(layer.file().getFileName() + ", " + flaw.place() + ": " + meaning(flaw.code()) + "; " + remedy(flaw.code(), layer.crs()));
        }
        if (flaws.size() > PROBLEMS_TOLD) {
            problems.add(layer.file().getFileName() + ": and " + (flaws.size() - PROBLEMS_TOLD) + " more features like these");
        }
        throw new InputException(problems);
    }

    private static List<Flaw> flaws(VectorLayer layer) {
        List<Flaw> flaws = new ArrayList<>();
        CrsDomain domain = CrsDomain.of(layer.crs());
        for (Feature feature : layer.features()) {
            domain.firstOutside(feature.geometry()).map(c -> new Flaw(OUTSIDE_DOMAIN, new Place(feature.id(), c.x, c.y)))
                    .or(() -> invalid(feature, layer.crs())).ifPresent(flaws::add);
        }
        return flaws;
    }

    private static Optional<Flaw> invalid(Feature feature, Crs crs) {
        Geometry geometry = runningOn(feature.geometry(), crs);
        TopologyValidationError error = new IsValidOp(geometry).getValidationError();
        if (error == null) {
            return Optional.empty();
        }
        Coordinate at = error.getCoordinate() == null ? geometry.getCoordinate() : error.getCoordinate();
        return Optional.of(new Flaw(code(error), new Place(feature.id(), at.x, at.y)));
    }

    /**
     * What is invalid about a feature, and where, in the words of {@link #requireValid}; empty where it is valid or its coordinates
     * are no places.
     */
    static Optional<String> flaw(Feature feature, Crs crs, CrsDomain domain) {
        return domain.firstOutside(feature.geometry()).isPresent() ? Optional.empty()
                : invalid(feature, crs).map(flaw -> meaning(flaw.code()) + " at (" + flaw.place().x() + ", " + flaw.place().y() + ")");
    }

    /**
     * The geometry with longitudes that run on over the antimeridian, the way that its edges are taken: a ring from 179 to -179 crosses
     * itself on paper as soon as a vertex lies between, and not on the globe.
     */
    static Geometry runningOn(Geometry geometry, Crs crs) {
        if (!crs.isGeographic() || geometry.getDimension() < 2 || geometry.getEnvelopeInternal().getWidth() <= HALF_TURN_DEG) {
            return geometry;
        }
        try {
            return GeodesicEdges.densify(geometry, crs.geodesic(), Double.MAX_VALUE);
        } catch (InputException aroundAPole) {
            return geometry;
        }
    }

    private static Optional<Finding> unitsFinding(VectorLayer layer) {
        Crs crs = layer.crs();
        boolean geographic = crs.isGeographic();
        // One stray coordinate is no sign of other units, so every feature must look that way.
        boolean all = !layer.features().isEmpty() && layer.features().stream()
                .allMatch(f -> geographic != Stream.of(f.geometry().getCoordinates()).allMatch(c -> CrsDomain.isLonLat(c.x, c.y)));
        if (!all) {
            return Optional.empty();
        }
        String message = geographic
                ? "all of it looks like metres or feet while its CRS, " + crs.label() + ", is in degrees"
                : "all of it looks like longitude and latitude while its CRS, " + crs.label() + ", is in "
                        + (crs.isMetric() ? "metres" : "feet or the like");
        return Optional.of(new Finding(geographic ? "metres-in-geographic" : "degrees-in-projected",
                layer.features().size(), List.of(), message + "; check the CRS that the file or the plan states", false));
    }

    private static String code(TopologyValidationError error) {
        return switch (error.getErrorType()) {
            case TopologyValidationError.SELF_INTERSECTION -> "self-intersection";
            case TopologyValidationError.RING_SELF_INTERSECTION -> "ring-self-intersection";
            case TopologyValidationError.HOLE_OUTSIDE_SHELL -> "hole-outside-shell";
            case TopologyValidationError.NESTED_HOLES -> "nested-holes";
            case TopologyValidationError.NESTED_SHELLS -> "nested-shells";
            case TopologyValidationError.DISCONNECTED_INTERIOR -> "disconnected-interior";
            case TopologyValidationError.TOO_FEW_POINTS -> "too-few-points";
            default -> "invalid";
        };
    }

    private static String meaning(String code) {
        return switch (code) {
            case OUTSIDE_DOMAIN -> "a coordinate lies outside what its CRS can hold";
            case "self-intersection" -> "the polygon crosses itself";
            case "ring-self-intersection" -> "a ring of the polygon touches itself";
            case "hole-outside-shell" -> "a hole lies outside its polygon";
            case "nested-holes" -> "a hole lies inside another";
            case "nested-shells" -> "a polygon lies inside another of the same feature";
            case "disconnected-interior" -> "holes cut the polygon apart";
            case "too-few-points" -> "a line or ring has too few different points";
            default -> "the geometry is invalid";
        };
    }

    private static String remedy(String code, Crs crs) {
        return switch (code) {
            case OUTSIDE_DOMAIN -> "check the CRS of the file or the plan, and the order of x and y"
                    + (crs.isGeographic() ? "" : "; where they are right, export the file in longitude and latitude (EPSG:4326)");
            case "nested-shells" -> "make the inner one a hole or a feature of its own, or delete it";
            default -> "correct the feature in a GIS (repair geometries) and export the file again, or write repair: true beside the file in the plan";
        };
    }
}
