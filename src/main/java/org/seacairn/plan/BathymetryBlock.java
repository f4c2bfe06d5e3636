package org.seacairn.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Bathymetry;
import org.seacairn.plan.SitingPlan.CellFigures;
import org.seacairn.plan.SitingPlan.Gridding;
import org.seacairn.plan.SitingPlan.GriddingMethod;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.SitingPlan.Uncertainty;
import org.seacairn.plan.SitingPlan.Values;

/** The plan's {@code bathymetry} block. */
final class BathymetryBlock {
    private static final Unit[] UNITS =
            {Unit.METRE, Unit.FOOT, Unit.US_SURVEY_FOOT, Unit.FATHOM, Unit.KILOMETRE, Unit.CENTIMETRE};

    private static final String FROM_FILE = "from-file";
    private static final Map<String, CellFigures> FIGURES =
            Map.of("standard-deviation", CellFigures.STANDARD_DEVIATION, "95 %", CellFigures.HOLDS_95_PERCENT);

    private BathymetryBlock() {}

    static Optional<Bathymetry> read(Block plan, PlanFolder folder) {
        return plan.need("bathymetry", "bathymetry: {file: depths.tif, values: elevation, unit: m}")
                .flatMap(value -> value.block("bathymetry", LayerBlock.keys("values", "unit", "datum", "datum-offset",
                        "gridding", "reach", "survey-order", "vertical-uncertainty", "uncertainty-in-file", "horizontal-uncertainty")))
                .map(block -> bathymetry(block, folder));
    }

    private static Bathymetry bathymetry(Block block, PlanFolder folder) {
        Optional<Unit> unit = unit(block);
        LayerFile source = LayerBlock.read(block, "bathymetry", "depths.tif", folder);
        return new Bathymetry(
                source,
                values(block),
                unit.map(u -> u.toSi(1)).orElse(Double.NaN),
                unit.map(Unit::symbol).orElse(""),
                block.text("datum"),
                datumOffsetM(block),
                gridding(block, source),
                uncertainty(block));
    }

    /** No default: a sign taken the wrong way round puts a module on a bank. */
    private static Values values(Block block) {
        if (!block.has("values")) {
            block.problem("bathymetry has no \"values\"; write \"values: elevation\" if depths are negative in the file,"
                    + " or \"values: depth\" if they are positive");
        }
        return block.get("values").flatMap(value -> value.choice(Values.class)).orElse(Values.DEPTH);
    }

    private static Optional<Unit> unit(Block block) {
        Map<String, Unit> bySymbol = new LinkedHashMap<>();
        for (Unit unit : UNITS) {
            bySymbol.put(unit.symbol(), unit);
        }
        return block.need("unit", "unit: m").flatMap(value -> value.choice(bySymbol, bySymbol.keySet()));
    }

    /** An offset leads from one datum to another, so that other must have a name. */
    private static double datumOffsetM(Block block) {
        if (block.has("datum-offset") && !block.has("datum")) {
            block.get("datum-offset").get().problem("datum-offset is given and datum is not; name the datum to which it brings the"
                    + " depths, for example \"datum: MLLW\"");
        }
        return block.quantity("datum-offset", Kind.OFFSET).orElse(0);
    }

    private static Gridding gridding(Block block, LayerFile source) {
        for (String key : List.of("gridding", "reach")) {
            if (block.has(key) && !source.file().toString().isEmpty() && !holdsSoundings(source)) {
                block.get(key).get().problem(key + " is for files of soundings (.xyz, .txt, .csv), and "
                        + Shown.quoted(source.file().getFileName().toString()) + " is a grid; leave it out");
            }
        }
        return new Gridding(
                block.get("gridding").flatMap(value -> value.choice(GriddingMethod.class)).orElse(GriddingMethod.MEDIAN),
                block.quantity("reach", Kind.LENGTH));
    }

    private static boolean holdsSoundings(LayerFile source) {
        return source.file().getFileName().toString().toLowerCase(Locale.ROOT).matches(".*\\.(xyz|txt|csv)");
    }

    private static Uncertainty uncertainty(Block block) {
        Optional<CellFigures> cells = cells(block);
        OptionalDouble verticalM = cells.isPresent() ? OptionalDouble.empty() : verticalM(block);
        OptionalDouble horizontalM = block.quantity("horizontal-uncertainty", Kind.LENGTH);
        boolean stated = cells.isPresent() || verticalM.isPresent() || horizontalM.isPresent();
        if (block.has("survey-order")) {
            Value order = block.get("survey-order").get();
            if (stated) {
                order.problem("survey-order is given beside vertical-uncertainty or horizontal-uncertainty;"
                        + " leave out the one or the other");
            }
            Map<String, SurveyOrder> orders = SurveyOrder.byLabel();
            return order.choice(orders, orders.keySet()).map(SurveyOrder::uncertainty).orElse(Uncertainty.NONE);
        }
        if (!stated) {
            block.findings().warning("bathymetry: no uncertainty is stated (survey-order, or vertical-uncertainty and"
                    + " horizontal-uncertainty); depths and positions are taken as exact");
            return Uncertainty.NONE;
        }
        if (cells.isEmpty() && verticalM.isEmpty() || horizontalM.isEmpty()) {
            block.findings().warning("bathymetry: " + (horizontalM.isEmpty() ? "horizontal" : "vertical")
                    + "-uncertainty is not stated and taken as 0 m");
        }
        return new Uncertainty(verticalM.orElse(0), 0, horizontalM.orElse(0), 0, cells,
                cells.isPresent() ? "vertical from the file, cell by cell" : "stated in the plan");
    }

    private static OptionalDouble verticalM(Block block) {
        Optional<String> word = block.get("vertical-uncertainty").filter(BathymetryBlock::isSingle).map(Value::text)
                .filter(text -> text.matches("\\D+"));
        if (word.isPresent()) {
            block.get("vertical-uncertainty").get().problem("vertical-uncertainty is " + Shown.quoted(word.get())
                    + "; write a number and a unit, for example \"1 m\", or \"" + FROM_FILE + "\"");
            return OptionalDouble.of(Double.NaN);
        }
        return block.quantity("vertical-uncertainty", Kind.LENGTH);
    }

    private static boolean isSingle(Value value) {
        return !value.isBlock() && !value.isList();
    }

    private static Optional<CellFigures> cells(Block block) {
        Optional<Value> vertical = block.get("vertical-uncertainty")
                .filter(value -> isSingle(value) && FROM_FILE.equals(value.text()));
        Optional<Value> kind = block.get("uncertainty-in-file");
        if (vertical.isEmpty()) {
            kind.ifPresent(value -> value.problem("uncertainty-in-file says what the figures in the file are, and they are not used;"
                    + " write \"vertical-uncertainty: " + FROM_FILE + "\", or leave it out"));
            return Optional.empty();
        }
        return Optional.of(kind.flatMap(value -> value.choice(FIGURES, List.of("standard-deviation", "95 %"))).orElse(CellFigures.AS_THE_FILE_SAYS));
    }
}
