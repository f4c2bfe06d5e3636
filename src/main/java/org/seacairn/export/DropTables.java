package org.seacairn.export;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.seacairn.drop.Coefficient;
import org.seacairn.drop.LandingParts;
import org.seacairn.drop.ModuleDrop;
import org.seacairn.drop.PlannedDrop;
import org.seacairn.drop.SinkingBody;
import org.seacairn.drop.Standing;
import org.seacairn.drop.StandingTable;
import org.seacairn.drop.Touchdown;
import org.seacairn.layer.LandingsCsv;
import org.seacairn.plan.Shown;

/** Sinking, landing and standing as tables. Every one has the cautions in its last column. */
public final class DropTables {
    private DropTables() {}

    /** One way down, depth by depth. */
    public record Step(String profile, Touchdown touchdown, double tiltDeg, double currentMPerS, double currentTowardDeg) {}

    /**
     * A drop onto one target.
     *
     * @param current in words: as stated, or by how much faster
     * @param glideM how far it may come down from there by leaning; within the scatter
     */
    public record Case(String site, String current, PlannedDrop drop, Standing standing, double glideM) {}

    /** What a module is, one figure a row; a coefficient with the area or volume that it multiplies. */
    private record Figure(String what, double value, int decimals, String unit, String times, String source) {
        Figure(String what, double value, int decimals, String unit, String source) {
            this(what, value, decimals, unit, "", source);
        }
    }

    /** An earlier drop, and how far it missed. */
    public record Missed(LandingsCsv.Row row, double eastM, double northM) {}

    /** The way down in each profile, from the surface to a depth. */
    public static List<Step> descent(ModuleDrop drop, double depthM) {
        List<Step> steps = new ArrayList<>();
        for (int profile = 0; profile < drop.profiles().size(); profile++) {
            for (int metre = 0; metre < depthM; metre++) {
                steps.add(step(drop, profile, metre));
            }
            steps.add(step(drop, profile, depthM));
        }
        return List.copyOf(steps);
    }

    private static Step step(ModuleDrop drop, int profile, double depthM) {
        double east = drop.flow(profile).eastMPerS(depthM);
        double north = drop.flow(profile).northMPerS(depthM);
        return new Step(drop.profiles().get(profile), drop.touchdown(profile, depthM), drop.attitude(profile).tiltDegAt(depthM),
                Math.hypot(east, north), (Math.toDegrees(Math.atan2(east, north)) + 360) % 360);
    }

    /** Writes {@code descent.csv}. */
    public static void writeDescent(Path file, List<Step> steps) {
        CsvTable.write(file, List.of(
                Column.text("profile", Step::profile),
                figure("depth_m", 1, s -> s.touchdown().depthM()),
                figure("time_s", 1, s -> s.touchdown().timeS()),
                figure("drift_east_m", 1, s -> s.touchdown().driftEastM()),
                figure("drift_north_m", 1, s -> s.touchdown().driftNorthM()),
                figure("drift_m", 1, s -> s.touchdown().driftM()),
                figure("sink_speed_m_s", 2, s -> s.touchdown().sinkSpeedMPerS()),
                figure("east_m_s", 2, s -> s.touchdown().eastMPerS()),
                figure("north_m_s", 2, s -> s.touchdown().northMPerS()),
                figure("tilt_deg", 0, Step::tiltDeg),
                figure("current_m_s", 2, Step::currentMPerS),
                figure("current_toward_deg", 0, Step::currentTowardDeg),
                caution()), steps);
    }

    /** Writes {@code drop.csv}: one line a profile and current. */
    public static void writeCases(Path file, List<Case> cases) {
        List<Column<Case>> columns = new ArrayList<>(List.of(
                Column.text("site", Case::site), Column.text("profile", c -> c.drop().profile()), Column.text("current", Case::current),
                figure("release_longitude_deg", Decimals.RELEASE_DEG, c -> c.drop().releaseLongitudeDeg()),
                figure("release_latitude_deg", Decimals.RELEASE_DEG, c -> c.drop().releaseLatitudeDeg()),
                figure("release_bearing_deg", 0, c -> c.drop().bearingDeg()),
                figure("release_distance_m", 0, c -> c.drop().touchdown().driftM()),
                figure("depth_m", 1, c -> c.drop().touchdown().depthM()),
                figure("sink_time_s", 0, c -> c.drop().touchdown().timeS())));
        columns.addAll(landing(c -> c.drop().landing()));
        columns.addAll(List.of(
                figure("impact_speed_m_s", 1, c -> c.standing().impactSpeedMPerS()),
                figure("impact_energy_kj", 0, c -> c.standing().impactEnergyJ() / 1000),
                figure("tilt_deg", 0, c -> c.standing().tiltDeg()),
                figure("glide_m", 0, Case::glideM),
                figure("embedment_m", 1, c -> c.standing().embedment().depthM()),
                figure("relief_m", 1, c -> c.standing().reliefM()),
                figure("bearing_factor", 1, c -> c.standing().embedment().bearingFactor()),
                figure("stability", 1, c -> c.standing().stability()),
                Column.text("standing_note", c -> StandingNote.of(c.standing().embedment())), caution()));
        CsvTable.write(file, columns, cases);
    }

    private static <T> List<Column<T>> landing(Function<T, LandingParts> parts) {
        return List.of(figure("landing_radius_computed_m", 0, row -> parts.apply(row).radiusM()),
                figure("landing_scatter_m", 0, row -> parts.apply(row).scatterM()),
                figure("landing_drift_m", 0, row -> parts.apply(row).driftM()),
                figure("landing_drag_m", 0, row -> parts.apply(row).dragM()),
                figure("landing_barge_m", 0, row -> parts.apply(row).bargeM()));
    }

    /** Writes {@code standing.csv}: depth by bottom by current. */
    public static void writeStanding(Path file, List<StandingTable.Row> rows, double factor) {
        CsvTable.write(file, List.of(
                Column.text("bottom", StandingTable.Row::bottom),
                figure("surface_current_m_s", 2, StandingTable.Row::surfaceCurrentMPerS),
                Column.text("current", r -> r.asStated() ? "as stated" : "scaled"),
                figure("depth_m", 0, StandingTable.Row::depthM),
                figure("sink_time_s", 0, r -> r.touchdown().timeS()),
                figure("drift_m", 0, r -> r.touchdown().driftM()),
                figure("landing_radius_computed_m", 0, StandingTable.Row::landingRadiusM),
                figure("impact_speed_m_s", 1, r -> r.touchdown().sinkSpeedMPerS()),
                figure("impact_energy_kj", 0, r -> r.touchdown().impactEnergyJ() / 1000),
                figure("tilt_deg", 0, StandingTable.Row::tiltDeg),
                figure("embedment_m", 1, r -> r.embedment().depthM()),
                figure("relief_m", 1, StandingTable.Row::reliefM),
                figure("bearing_factor", 1, r -> r.embedment().bearingFactor()),
                figure("stability_asked", 2, r -> factor),
                figure("steepest_slope_deg", 0, StandingTable.Row::steepestDeg),
                Column.text("standing_note", r -> StandingNote.of(r.embedment())), caution()), rows);
    }

    /** Writes {@code module.csv}: what the module weighs, where its centres are, and what its coefficients rest on. */
    public static void writeModule(Path file, ModuleDrop drop) {
        SinkingBody body = drop.body();
        List<Figure> figures = new ArrayList<>(List.of(
                new Figure("height", body.heightM(), 2, "m", "stated"),
                new Figure("mass in air", body.massKg(), 0, "kg", "base and pole as stated"),
                new Figure("solid volume", body.volumeM3(), 2, "m3", "base and pole as stated"),
                new Figure("weight in sea water", body.submergedWeightN() / 1000, 1, "kN", "sea water "
                        + Shown.number(body.water().densityKgPerM3()) + " kg/m3, " + Shown.number(body.water().gravityMPerS2()) + " m/s2"),
                new Figure("centre of mass above the underside", body.centreOfMassM(), 2, "m", "derived from base and pole"),
                new Figure("centre of buoyancy above the underside", body.centreOfBuoyancyM(), 2, "m", "derived from base and pole"),
                new Figure("terminal speed, upright", body.terminalSpeedMPerS(), 2, "m/s", "weight in water = drag"),
                new Figure("angle of scatter", drop.scatter().angleDeg(), 1, "deg",
                        body.parts().scatterDeg().isPresent() ? "stated" : "DNV-RP-F107, table 10 (2010), flat or long object of that mass"),
                new Figure("tilt on leaving the deck", body.parts().releaseTiltDeg(), 0, "deg", "stated, or on its side")));
        for (Coefficient c : body.coefficients()) {
            figures.add(new Figure(c.name(), c.value(), 2, "", Decimals.text(c.reference(), 2) + " " + c.referenceUnit(), c.source()));
        }
        CsvTable.write(file, List.of(Column.text("what", Figure::what),
                Column.text("value", f -> Decimals.text(f.value, f.decimals)), Column.text("unit", Figure::unit), Column.text("times", Figure::times),
                Column.text("source", Figure::source), caution()), figures);
    }

    /** Writes {@code landing_radius.csv}: the radius by depth, with its parts, in each profile. */
    public static void writeLanding(Path file, ModuleDrop drop, double[] depthsM) {
        record At(String profile, Touchdown touchdown, LandingParts parts) {}
        List<At> rows = new ArrayList<>();
        for (int profile = 0; profile < drop.profiles().size(); profile++) {
            for (double depthM : depthsM) {
                rows.add(new At(drop.profiles().get(profile), drop.touchdown(profile, depthM), drop.landing(profile, depthM)));
            }
        }
        List<Column<At>> columns = new ArrayList<>(List.of(Column.text("profile", At::profile),
                figure("depth_m", 0, r -> r.touchdown().depthM()), figure("sink_time_s", 0, r -> r.touchdown().timeS()),
                figure("drift_m", 0, r -> r.touchdown().driftM()),
                figure("drift_toward_deg", 0, r -> toward(r.touchdown()))));
        columns.addAll(landing(At::parts));
        columns.add(caution());
        CsvTable.write(file, columns, rows);
    }

    private static double toward(Touchdown touchdown) {
        return touchdown.driftM() == 0 ? Double.NaN
                : (Math.toDegrees(Math.atan2(touchdown.driftEastM(), touchdown.driftNorthM())) + 360) % 360;
    }

    /** Writes {@code past_landings.csv}: earlier drops and their misses. */
    public static void writePast(Path file, List<Missed> missed) {
        CsvTable.write(file, List.of(Column.text("name", m -> m.row().name()),
                figure("miss_east_m", 1, Missed::eastM), figure("miss_north_m", 1, Missed::northM),
                figure("miss_m", 1, m -> Math.hypot(m.eastM(), m.northM())),
                figure("depth_m", 1, m -> m.row().depthM().orElse(Double.NaN)), caution()), missed);
    }

    private static <T> Column<T> figure(String name, int decimals, ToDoubleFunction<T> figure) {
        return Column.real(name, decimals, row -> Decimals.rounded(figure.applyAsDouble(row), decimals));
    }

    private static <T> Column<T> caution() {
        return Column.text("caution", row -> Cautions.DROP_SHORT);
    }
}
