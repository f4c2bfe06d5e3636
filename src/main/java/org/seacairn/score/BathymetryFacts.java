package org.seacairn.score;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.GeographicExtent;
import org.seacairn.layer.Bathymetry;
import org.seacairn.layer.GridValues;
import org.seacairn.layer.GridValues.Band;
import org.seacairn.plan.Shown;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Values;

/**
 * What a bathymetry file holds.
 *
 * @param cellWidth in CRS units
 * @param cellHeight in CRS units
 * @param extent in the file's CRS
 * @param lonLat in degrees on WGS 84, or empty where that cannot be told
 * @param statedUnit unit that the file states for its values, or empty text
 * @param values in the file's unit and sense; within: the plan's depth limits (if it has any), then the
 *     same limits read in each of {@link SoundingUnit}
 * @param metresDown metres of depth for one unit of the file's values; negative for elevations. The plan's datum offset comes
 *     on top of it
 * @param warnings one line each
 */
public record BathymetryFacts(
        SitingPlan.Bathymetry plan, String format, Crs crs, int cols, int rows, double cellWidth, double cellHeight,
        Envelope extent, Optional<Envelope> lonLat, String statedUnit, GridValues values, double metresDown,
        List<String> warnings) {

    /** Units that soundings come in, with their metres. */
    enum SoundingUnit {
        M(1), FT(0.3048), FATHOM(1.8288);

        private final double metres;

        SoundingUnit(double metres) {
            this.metres = metres;
        }

        double metres() {
            return metres;
        }

        /** As a plan writes it. */
        String symbol() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Reads the whole file once.
     *
     * @throws org.seacairn.InputException if its cells cannot be read
     */
    static BathymetryFacts of(SitingPlan plan, Bathymetry file) {
        Envelope extent = new Envelope(file.west(), file.west() + file.cols() * file.cellWidth(),
                file.north() - file.rows() * file.cellHeight(), file.north());
        double sign = plan.bathymetry().values() == Values.ELEVATION ? -1 : 1;
        BathymetryFacts facts = new BathymetryFacts(plan.bathymetry(), file.format(), file.crs(), file.cols(), file.rows(),
                file.cellWidth(), file.cellHeight(), extent, GeographicExtent.ofRectangle(extent, file.crs()),
                file.statedUnit(), GridValues.of(file, bands(plan, sign),
                        -plan.bathymetry().datumOffsetM() * sign / plan.bathymetry().metresPerUnit()), sign * plan.bathymetry().metresPerUnit(), List.of());
        return facts.with(Stream.concat(otherDatum(plan.bathymetry(), file.statedDatum()),
                new BathymetryDoubts(facts, plan.limits()).warnings().stream()).toList());
    }

    /** Files write datums as they like, so another name is a doubt and no contradiction. */
    private static Stream<String> otherDatum(SitingPlan.Bathymetry plan, String stated) {
        boolean named = stated.matches(".*\\p{L}.*") && !stated.equalsIgnoreCase("unknown");
        return named && plan.datumOffsetM() == 0 && plan.datum().isPresent() && !plan.datum().get().equalsIgnoreCase(stated)
                ? Stream.of("the file names the vertical datum " + Shown.quoted(stated) + " and the plan \"datum: " + plan.datum().get()
                        + "\"; make sure that they are the same")
                : Stream.empty();
    }

    private BathymetryFacts with(List<String> told) {
        return new BathymetryFacts(plan, format, crs, cols, rows, cellWidth, cellHeight, extent, lonLat, statedUnit,
                values, metresDown, told);
    }

    private static List<Band> bands(SitingPlan plan, double sign) {
        Limits limits = plan.limits();
        if (limits.shallowestM().isEmpty() || limits.deepestM().isEmpty()) {
            return List.of();
        }
        List<Double> units = new ArrayList<>(List.of(plan.bathymetry().metresPerUnit()));
        Stream.of(SoundingUnit.values()).map(SoundingUnit::metres).forEach(units::add);
        return units.stream().map(metres -> {
            double a = (limits.shallowestM().getAsDouble() - plan.bathymetry().datumOffsetM()) / metres * sign;
            double b = (limits.deepestM().getAsDouble() - plan.bathymetry().datumOffsetM()) / metres * sign;
            return new Band(Math.min(a, b), Math.max(a, b));
        }).toList();
    }

    /** The least depth in metres, negative above the datum; NaN if no cell has a value. */
    public double shallowestM() {
        return depthM(metresDown < 0 ? values.greatest() : values.least());
    }

    /** The greatest depth in metres; NaN if no cell has a value. */
    public double deepestM() {
        return depthM(metresDown < 0 ? values.least() : values.greatest());
    }

    private double depthM(float value) {
        // 0.0 is added so that an elevation of 0 is no depth of -0.
        return Float.isFinite(value) ? value * metresDown + plan.datumOffsetM() + 0.0 : Double.NaN;
    }

    /** Cells above the datum: dry land, or heights that dry. */
    public long dryCells() {
        return metresDown < 0 ? values.positive() : values.negative();
    }

    /** Cells below the datum. */
    public long wetCells() {
        return metresDown < 0 ? values.negative() : values.positive();
    }
}
