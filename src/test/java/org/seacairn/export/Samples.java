package org.seacairn.export;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;
import org.seacairn.drop.Embedment;
import org.seacairn.drop.LandingParts;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.Standing;
import org.seacairn.drop.Touchdown;
import org.seacairn.place.Clearance;
import org.seacairn.place.Site;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Bathymetry;
import org.seacairn.plan.SitingPlan.Combination;
import org.seacairn.plan.SitingPlan.Criterion;
import org.seacairn.plan.SitingPlan.Curve;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Measure;
import org.seacairn.plan.SitingPlan.Pairwise;
import org.seacairn.plan.SitingPlan.ReefModule;
import org.seacairn.plan.SitingPlan.Sites;
import org.seacairn.plan.SitingPlan.Uncertainty;

/** A plan with two keep-off layers and two sites, on an invented coast. */
final class Samples {
    static final Path PLAN = Path.of("/invented/coast/plan.yaml");

    private Samples() {}

    static SitingPlan plan(String... keepOffLabels) {
        LayerFile grid = new LayerFile("bathymetry", PLAN.resolveSibling("bathymetry.tif"), Optional.empty(),
                Optional.of("EPSG:32617"), Optional.empty(), Optional.empty(), 4,
                Edges.GEODESIC);
        List<KeepOff> keepOff = List.of(keepOffLabels).stream()
                .map(label -> new KeepOff(
                        new LayerFile(label, PLAN.resolveSibling("layers/lanes.shp"), Optional.empty(), Optional.empty(),
                                Optional.empty(), Optional.empty(), 9, Edges.RHUMB_LINE),
                        Optional.empty(), 500, OptionalDouble.of(1852), 20, Optional.of("a rule"), false,
                        Optional.of(extent(label)), true))
                .toList();
        return new SitingPlan(PLAN, "Infill off <Nowhere> & back", SitingPlan.Display.US, Optional.empty(),
                OptionalDouble.of(20),
                new Bathymetry(grid, SitingPlan.Values.ELEVATION, 1, "m", Optional.of("MLLW"), 0, SitingPlan.Gridding.USUAL, Uncertainty.NONE),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), keepOff,
                new Limits(OptionalDouble.of(60), OptionalDouble.of(150), OptionalDouble.of(5), OptionalDouble.empty(),
                        OptionalDouble.of(25.908), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()),
                new ReefModule(Optional.empty(), "pole", 9.1, OptionalDouble.of(30), Optional.empty(), List.of("base", "pole")),
                Optional.empty(), 0, 3,
                List.of(new Criterion(Measure.DEPTH, 3, Optional.of(new Curve(60, 80, 120, 150))),
                        new Criterion(Measure.CLEARANCE, 2, Optional.empty())),
                Optional.of(new Pairwise(new double[][] {{1, 3}, {1 / 3.0, 1}}, 2, 0, "from memory")),
                Combination.WEIGHTED_MEAN, new Sites(25, 150), List.of("weights do not sum to one"));
    }

    private static LayerFile extent(String label) {
        Optional<String> none = Optional.empty();
        return new LayerFile(label + " coverage", PLAN.resolveSibling("layers/extent.geojson"), none, none, none, none, 10,
                Edges.GEODESIC);
    }

    static SitingPlan plan() {
        return plan("Shipping lanes", "cables");
    }

    /** Complete, with a name that a spreadsheet would run and XML and CSV must escape. */
    static Site site() {
        return new Site(1, "=S-01, \"<A&B>\"", 3, 4, 601234.5, 3012345.25, -79.123456789123, 27.243666666666,
                92.4, 0.75, 1.25, "sand", 0.8123456789, suitability(1, 0.5),
                List.of(new Clearance("Shipping lanes", 812.3456, 540.25, "#7", -79.1, 27.2),
                        new Clearance("cables", 1200, 540.25, "-cable", -79.2, 27.2)),
                Optional.of(new Clearance("reefs", 75.5, 67.0825, "@old wreck", -79.12, 27.24)), 30, drops(),
                List.of(new Clearance("Shipping lanes", 640.04, 500, "#7", -79.1, 27.2)),
                Optional.of(new Standing(3.66, 62_300, 2.4, new Embedment(0.44, 1.9), 8.7, 4.16)));
    }

    /** Nothing known that may be unknown. */
    static Site bareSite() {
        return new Site(2, "S-02", 3, 5, 601234.5, 3012325.25, -79.1234, 27.2434, 93, Double.NaN, Double.NaN, "", 0.5,
                suitability(Double.NaN, 0), List.of(), Optional.empty(), 0, List.of(), List.of(),
                Optional.empty());
    }

    private static List<PlannedDrop> drops() {
        return List.of(new PlannedDrop("spring", -79.1240004, 27.2429996, 201.4,
                new Touchdown(92.4, 27.4, 11, 29, 3.66, 0.6, 1.2, 62_300), new LandingParts(21.1, 9.9, 4.2, 5)));
    }

    static List<Site> sites() {
        return List.of(site(), bareSite());
    }

    private static Map<Measure, Double> suitability(double depth, double clearance) {
        Map<Measure, Double> suitability = new EnumMap<>(Measure.class);
        suitability.put(Measure.DEPTH, depth);
        suitability.put(Measure.CLEARANCE, clearance);
        return suitability;
    }

    /** A clockwise shell with a counterclockwise hole, two shells, and a layer with no ground at all. */
    static List<KeepOffBuffer> buffers() {
        return List.of(
                new KeepOffBuffer("Shipping lanes", 500, Optional.of("a rule"), true, geometry(
                        "POLYGON ((0 0, 0 3, 3 3, 3 0, 0 0), (1 1, 2 1, 2 2, 1 2, 1 1))")),
                new KeepOffBuffer("cables", 92.6, Optional.empty(), false, geometry(
                        "MULTIPOLYGON (((5 0, 6 0, 6 1, 5 0)), ((7 0, 7 1, 8.123456786 1, 7 0)))")),
                new KeepOffBuffer("empty", 0, Optional.empty(), false, geometry("POLYGON EMPTY")));
    }

    static Geometry geometry(String wkt) {
        try {
            return new WKTReader().read(wkt);
        } catch (ParseException e) {
            throw new AssertionError(wkt, e);
        }
    }
}
