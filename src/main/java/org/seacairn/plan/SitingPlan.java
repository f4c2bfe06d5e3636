package org.seacairn.plan;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A siting plan as understood: every quantity in SI units, every path resolved, every key checked.
 *
 * @param file the plan file
 * @param title heading of the outputs
 * @param display units of what people read; files for programs are always metric
 * @param crs working CRS as written, or empty: the UTM zone of the bathymetry's centre
 * @param cellM side of a working cell in metres, or empty: the bathymetry's own cell
 * @param bottom bottom types, or empty: no bottom rule and no bottom criterion
 * @param reefs existing reefs, or empty
 * @param inside polygons that sites must lie in, or empty: anywhere on the grid
 * @param depthAreas what a chart says of the depth, or empty: no depth is compared with a chart
 * @param keepOff layers with a distance inside which nothing may be placed, in the plan's order
 * @param current the water's motion, or empty: not stated
 * @param bargeUncertaintyM of the barge's position at the release of a module, 95 %
 * @param ruggednessWindowCells odd side of the window of the vector ruggedness measure
 * @param criteria weighted criteria, in the plan's order, at least one
 * @param pairwise how the weights were derived, or empty: they stand in the plan
 * @param warnings what the reader of the plan should know, one line each
 */
public record SitingPlan(
        Path file,
        String title,
        Display display,
        Optional<String> crs,
        OptionalDouble cellM,
        Bathymetry bathymetry,
        Optional<Bottom> bottom,
        Optional<Reefs> reefs,
        Optional<LayerFile> inside,
        Optional<DepthAreas> depthAreas,
        List<KeepOff> keepOff,
        Limits limits,
        ReefModule module,
        Optional<Current> current,
        double bargeUncertaintyM,
        int ruggednessWindowCells,
        List<Criterion> criteria,
        Optional<Pairwise> pairwise,
        Combination combine,
        Sites sites,
        List<String> warnings) {

    /** Units of the outputs that people read. */
    public enum Display { US, METRIC }

    /** How the suitabilities of one cell become its score. */
    public enum Combination { WEIGHTED_MEAN, WEIGHTED_GEOMETRIC, LIMITING }

    /** The measures that a plan can score. */
    public enum Measure { DEPTH, SLOPE, RUGGEDNESS, BOTTOM, CLEARANCE, SPACING }

    /** What runs between two neighbouring vertices of a layer: the shortest line, or the line of one course. */
    public enum Edges { GEODESIC, RHUMB_LINE }

    /** Sense of the numbers in a bathymetry file. */
    public enum Values { ELEVATION, DEPTH }

    /**
     * Where a layer's data is and how to read it.
     *
     * @param label the layer's name in messages and outputs
     * @param file absolute path
     * @param table table of a GeoPackage, or empty: its only one; object class of a chart, by its acronym
     * @param crs CRS stated by the plan, which overrides the file's, or empty
     * @param xColumn column of a CSV file with longitude or easting, or empty: found by its header
     * @param yColumn column of a CSV file with latitude or northing, or empty: found by its header
     * @param line line of the plan that names the file
     * @param edges how the layer's lines and outlines run between their vertices
     * @param repair whether polygons that cross themselves are to be repaired instead of refused
     */
    public record LayerFile(
            String label,
            Path file,
            Optional<String> table,
            Optional<String> crs,
            Optional<String> xColumn,
            Optional<String> yColumn,
            int line,
            Edges edges,
            boolean repair) {

        /** A layer that is taken as it stands. */
        public LayerFile(String label, Path file, Optional<String> table, Optional<String> crs, Optional<String> xColumn,
                Optional<String> yColumn, int line, Edges edges) {
            this(label, file, table, crs, xColumn, yColumn, line, edges, false);
        }
    }

    /**
     * @param metresPerUnit what one unit of the file's numbers is in metres
     * @param unit the unit as written
     * @param datum vertical datum of the plan's depths as written, or empty
     * @param datumOffsetM what is added to every depth of the file, positive down, to come to that datum; 0 if none is stated
     * @param gridding how soundings become cells; of no effect on a grid
     */
    public record Bathymetry(
            LayerFile source, Values values, double metresPerUnit, String unit,
            Optional<String> datum, double datumOffsetM, Gridding gridding, Uncertainty uncertainty) {}

    /** What a file's own vertical uncertainty of each cell is. */
    public enum CellFigures {
        /** What the file says of it; where it does not say, a standard deviation. */
        AS_THE_FILE_SAYS,
        /** Half of what holds 95 %, near enough. */
        STANDARD_DEVIATION,
        /** It holds 95 % as it stands. */
        HOLDS_95_PERCENT
    }

    /** How the depth of a cell follows from soundings. */
    public enum GriddingMethod { MEDIAN }

    /**
     * @param reachM a cell farther than this from every sounding has no depth, or empty: one and a half cells
     */
    public record Gridding(GriddingMethod method, OptionalDouble reachM) {
        /** What a plan that says nothing has. */
        public static final Gridding USUAL = new Gridding(GriddingMethod.MEDIAN, OptionalDouble.empty());
    }

    /**
     * Uncertainty of the bathymetry at 95 % confidence, as a function of depth.
     * Vertical: sqrt(a² + (b·depth)²), unless it stands in the bathymetry's file, cell by cell; horizontal: fixed +
     * share·depth. The form is that of IHO S-44 edition 6, table 1; a plan that states plain figures has b = 0 and share = 0.
     *
     * @param cells what the vertical figures in the file are, or empty: the formula counts
     * @param source what the figures come from, for example {@code IHO S-44 order 1a}
     */
    public record Uncertainty(
            double verticalFixedM, double verticalShare,
            double horizontalFixedM, double horizontalShare, Optional<CellFigures> cells, String source) {

        /** No uncertainty stated. */
        public static final Uncertainty NONE = new Uncertainty(0, 0, 0, 0, "none stated");

        /** By depth alone. */
        public Uncertainty(double verticalFixedM, double verticalShare, double horizontalFixedM, double horizontalShare, String source) {
            this(verticalFixedM, verticalShare, horizontalFixedM, horizontalShare, Optional.empty(), source);
        }

        /**
         * Vertical uncertainty in metres (95 %) at a depth in metres, positive down.
         *
         * @throws IllegalStateException if the depth does not tell it, since it stands in the file
         */
        public double verticalM(double depthM) {
            if (cells.isPresent()) {
                throw new IllegalStateException("the vertical uncertainty is that of a cell");
            }
            double growing = verticalShare * depthM;
            return growing == 0 ? verticalFixedM : Math.sqrt(verticalFixedM * verticalFixedM + growing * growing);
        }

        /** Horizontal uncertainty in metres (95 %) at a depth in metres, positive down. */
        public double horizontalM(double depthM) {
            return horizontalFixedM + horizontalShare * Math.max(0, depthM);
        }
    }

    /**
     * @param classAttribute attribute of the layer that holds the class
     * @param unmappedSuitability suitability where no polygon lies, or empty: excluded
     * @param classes in the plan's order
     */
    public record Bottom(
            LayerFile source, String classAttribute, OptionalDouble unmappedSuitability,
            List<BottomClass> classes) {}

    /**
     * @param suitability 0..1, or empty: never
     * @param shearStrengthPa undrained strength at the mud line, or empty
     * @param strengthGradientPaPerM growth of that strength with depth below the mud line, or empty
     */
    public record BottomClass(
            String name, OptionalDouble suitability, OptionalDouble shearStrengthPa,
            OptionalDouble strengthGradientPaPerM) {}

    /** @param nameAttribute attribute with a reef's name, or empty: numbered */
    public record Reefs(
            LayerFile source, Optional<String> nameAttribute, double keepOffM,
            double positionUncertaintyM, Optional<String> ruleSource, boolean confirmed) {}

    /**
     * Polygons that each tell between which depths the water in them lies, such as the depth areas of a chart.
     *
     * @param shallowAttribute attribute with the depth of an area's shallow end, positive down, negative where it dries
     * @param deepAttribute attribute with the depth of its deep end
     * @param metresPerUnit what one unit of those is in metres
     * @param unit the unit as written
     * @param ruleSource which chart and edition they come from, or empty
     * @param confirmed false: nobody has checked that source
     */
    public record DepthAreas(
            LayerFile source, String shallowAttribute, String deepAttribute, double metresPerUnit, String unit,
            Optional<String> ruleSource, boolean confirmed) {
        /** The names in S-57, which a plan need not repeat. */
        public static final String USUAL_SHALLOW = "DRVAL1";
        public static final String USUAL_DEEP = "DRVAL2";
    }

    /**
     * @param distanceM nothing may be placed nearer than this (before uncertainty)
     * @param comfortableM beyond this, more distance earns nothing, or empty: the layer earns 1
     *     from its required distance on
     * @param ruleSource what the distance comes from, or empty
     * @param confirmed false: nobody has checked the rule's text yet
     * @param coverage polygons within which the layer was surveyed or compiled, or empty: everywhere
     * @param surface whether the distance holds for the barge at the release point too
     */
    public record KeepOff(
            LayerFile source, Optional<String> nameAttribute, double distanceM, OptionalDouble comfortableM,
            double positionUncertaintyM, Optional<String> ruleSource, boolean confirmed,
            Optional<LayerFile> coverage, boolean surface) {}

    /**
     * Limits of a cell; an empty one is not applied.
     *
     * @param heightShare of the water depth, 0..1
     * @param embedmentM how far the base may sink into the bottom
     * @param stability least factor of safety against overturning
     */
    public record Limits(
            OptionalDouble shallowestM, OptionalDouble deepestM, OptionalDouble steepestDeg,
            OptionalDouble roughest, OptionalDouble clearanceAboveM, OptionalDouble heightShare,
            OptionalDouble embedmentM, OptionalDouble stability) {}

    /**
     * The reef module.
     *
     * @param file the module file, or empty: described in the plan itself
     * @param heightM from the underside of the base to the top of the pole
     * @param landingRadiusM radius about the target that holds 95 % of landings, or empty: computed from the sinking
     * @param body what it is made of, or empty: not stated, or not whole
     * @param missing what the module file would have to add for its sinking to be computed, as it is written there
     */
    public record ReefModule(
            Optional<Path> file, String name, double heightM, OptionalDouble landingRadiusM, Optional<ModuleBody> body,
            List<String> missing) {}

    /**
     * The water's motion over depth, on one day or several. Uncertainties are those at 95 %.
     *
     * @param file the table, or empty: written in the plan itself
     * @param profiles at least one; release points are given for the first
     * @param speedUncertaintyMPerS to which the share of the speed adds
     */
    public record Current(
            Optional<Path> file, List<CurrentProfile> profiles, double speedUncertaintyMPerS, double speedUncertaintyShare,
            double directionUncertaintyDeg) {}

    /** @param levels at least one, from the surface down */
    public record CurrentProfile(String name, List<CurrentLevel> levels) {}

    /** Current at one depth: speed, and the true direction it flows toward. */
    public record CurrentLevel(double depthM, double speedMPerS, double towardDeg) {}

    /** @param curve empty for the criteria that have none (bottom, clearance) */
    public record Criterion(Measure measure, double weight, Optional<Curve> curve) {}

    /**
     * Suitability of a measure: 0 up to a, rising to 1 at b, 1 to c, falling to 0 at d.
     * Requires a &lt;= b &lt;= c &lt;= d.
     */
    public record Curve(double a, double b, double c, double d) {
        public Curve {
            if (!(a <= b && b <= c && c <= d)) {
                throw new IllegalArgumentException("curve corners must not fall: " + a + ", " + b + ", " + c + ", " + d);
            }
        }

        /** Suitability 0..1 of a measure; NaN stays NaN. */
        public double at(double x) {
            if (Double.isNaN(x)) {
                return x;
            }
            if (x < b) {
                return x <= a ? 0 : (x - a) / (b - a);
            }
            if (x <= c) {
                return 1;
            }
            return x >= d ? 0 : (d - x) / (d - c);
        }
    }

    /**
     * Weights from pairwise comparisons.
     *
     * @param randomIndexList name and source of the random-index list that was used
     */
    public record Pairwise(double[][] matrix, double lambdaMax, double consistencyRatio, String randomIndexList) {}

    /** @param apartM least geodesic distance between two chosen sites */
    public record Sites(int count, double apartM) {}
}
