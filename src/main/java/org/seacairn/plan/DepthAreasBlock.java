package org.seacairn.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.seacairn.plan.SitingPlan.DepthAreas;

/** The plan's {@code depth-areas} block: what a chart says of the depth. */
final class DepthAreasBlock {
    /** Charts are in metres, some old ones in feet or fathoms. */
    private static final Unit[] UNITS = {Unit.METRE, Unit.FOOT, Unit.US_SURVEY_FOOT, Unit.FATHOM};

    private DepthAreasBlock() {}

    static Optional<DepthAreas> read(Block plan, PlanFolder folder) {
        return plan.get("depth-areas")
                .flatMap(value -> value.block("depth-areas", LayerBlock.keys("shallow", "deep", "unit", "source", "confirmed",
                        LayerBlock.CLASS, LayerBlock.EDGES, LayerBlock.REPAIR)))
                .map(block -> depthAreas(block, folder));
    }

    private static DepthAreas depthAreas(Block block, PlanFolder folder) {
        String shallow = attribute(block, "shallow", DepthAreas.USUAL_SHALLOW);
        String deep = attribute(block, "deep", DepthAreas.USUAL_DEEP);
        if (shallow.equals(deep)) {
            block.problem("shallow and deep of depth-areas both name the attribute " + Shown.quoted(deep) + "; name the attribute of each end");
        }
        Unit unit = unit(block);
        RuleBlock rule = RuleBlock.read(block, "depth-areas");
        return new DepthAreas(LayerBlock.read(block, "depth areas", "chart.000", folder), shallow, deep, unit.toSi(1), unit.symbol(),
                rule.source(), rule.confirmed());
    }

    private static String attribute(Block block, String key, String usual) {
        return block.text(key).filter(name -> !name.isEmpty()).orElse(usual);
    }

    private static Unit unit(Block block) {
        Map<String, Unit> bySymbol = new LinkedHashMap<>();
        Stream.of(UNITS).forEach(unit -> bySymbol.put(unit.symbol(), unit));
        return block.get("unit").flatMap(value -> value.choice(bySymbol, bySymbol.keySet())).orElse(Unit.METRE);
    }
}
