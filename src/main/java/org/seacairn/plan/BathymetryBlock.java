package org.seacairn.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.Bathymetry;
import org.seacairn.plan.SitingPlan.Uncertainty;
import org.seacairn.plan.SitingPlan.Values;

/** The plan's {@code bathymetry} block. */
final class BathymetryBlock {
    private static final Unit[] UNITS =
            {Unit.METRE, Unit.FOOT, Unit.US_SURVEY_FOOT, Unit.FATHOM, Unit.KILOMETRE, Unit.CENTIMETRE};

    private BathymetryBlock() {}

    static Optional<Bathymetry> read(Block plan, PlanFolder folder) {
        return plan.need("bathymetry", "bathymetry: {file: depths.tif, values: elevation, unit: m}")
                .flatMap(value -> value.block("bathymetry", LayerBlock.keys("values", "unit", "datum",
                        "survey-order", "vertical-uncertainty", "horizontal-uncertainty")))
                .map(block -> bathymetry(block, folder));
    }

    private static Bathymetry bathymetry(Block block, PlanFolder folder) {
        Optional<Unit> unit = unit(block);
        return new Bathymetry(
                LayerBlock.read(block, "bathymetry", "depths.tif", folder),
                values(block),
                unit.map(u -> u.toSi(1)).orElse(Double.NaN),
                unit.map(Unit::symbol).orElse(""),
                block.text("datum"),
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

    private static Uncertainty uncertainty(Block block) {
        OptionalDouble verticalM = block.quantity("vertical-uncertainty", Kind.LENGTH);
        OptionalDouble horizontalM = block.quantity("horizontal-uncertainty", Kind.LENGTH);
        boolean stated = verticalM.isPresent() || horizontalM.isPresent();
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
        if (verticalM.isEmpty() || horizontalM.isEmpty()) {
            block.findings().warning("bathymetry: " + (verticalM.isEmpty() ? "vertical" : "horizontal")
                    + "-uncertainty is not stated and taken as 0 m");
        }
        return new Uncertainty(verticalM.orElse(0), 0, horizontalM.orElse(0), 0, "stated in the plan");
    }
}
