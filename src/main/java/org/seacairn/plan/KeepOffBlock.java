package org.seacairn.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.seacairn.geodesy.GeodesicBuffer;
import org.seacairn.plan.Quantity.Kind;
import org.seacairn.plan.SitingPlan.KeepOff;
import org.seacairn.plan.SitingPlan.Limits;
import org.seacairn.plan.SitingPlan.Reefs;

/** The plan's {@code keep-off} list and its {@code reefs} block: layers with a distance to stand off. */
final class KeepOffBlock {
    /** A reason is one bit of 32; twelve are taken by the reasons that are no layer, and one is the sign. Some limits take one more each. */
    static final int MOST_LAYERS = 19;

    private static final String EXAMPLE = "{layer: cables, file: cables.geojson, distance: 500 m}";

    private KeepOffBlock() {}

    static List<KeepOff> read(Block plan, Limits limits, PlanFolder folder) {
        int most = MOST_LAYERS - (limits.embedmentM().isPresent() ? 1 : 0) - (limits.stability().isPresent() ? 1 : 0);
        List<KeepOff> layers = new ArrayList<>();
        Map<String, String> labelsByColumn = new HashMap<>(Map.of("reefs", "reefs"));
        for (Value item : plan.get("keep-off").map(Value::items).orElse(List.of())) {
            if (layers.size() == most) {
                item.problem("keep-off has more than " + most
                        + " layers; put layers with the same rule into one file");
                break;
            }
            item.block("this keep-off layer", keys("layer", "distance", "comfortable", "coverage", "surface"))
                    .map(block -> layer(block, labelsByColumn, folder))
                    .ifPresent(layers::add);
        }
        return layers;
    }

    private static KeepOff layer(Block block, Map<String, String> labelsByColumn, PlanFolder folder) {
        Optional<Value> layer = block.need("layer", EXAMPLE);
        String label = layer.map(Value::text).orElse("");
        if (!label.isEmpty()) {
            checkUnique(layer.get(), label, labelsByColumn);
        }
        double distanceM = distanceM(block, "distance", "distance: 500 m");
        RuleBlock rule = RuleBlock.read(block, "keep-off \"" + label + "\"");
        return new KeepOff(LayerBlock.read(block, label, "cables.geojson", folder), block.text("name"), distanceM,
                comfortable(block, distanceM), rule.positionUncertaintyM(), rule.source(), rule.confirmed(),
                block.get("coverage").map(value -> LayerBlock.coverage(value, label, folder)),
                block.get("surface").map(Value::flag).orElse(false));
    }

    private static void checkUnique(Value layer, String label, Map<String, String> labelsByColumn) {
        String column = ColumnName.of(label);
        String other = labelsByColumn.putIfAbsent(column, label);
        if (column.isEmpty()) {
            layer.problem("layer is " + Shown.quoted(label) + " without a letter or digit; write a name");
        } else if (other != null) {
            layer.problem("layer is " + Shown.quoted(label) + ", which becomes the same column name \"" + column
                    + "\" as " + (other.equals("reefs") ? "that of the existing reefs" : Shown.quoted(other))
                    + "; write another name");
        }
    }

    /** 0, or what can be drawn as a buffer. */
    private static double distanceM(Block block, String key, String example) {
        double distanceM = block.needQuantity(key, Kind.LENGTH, example);
        if (distanceM != 0 && distanceM < GeodesicBuffer.LEAST_DISTANCE_M || distanceM > GeodesicBuffer.MOST_DISTANCE_M) {
            Value value = block.get(key).orElseThrow();
            value.problem(key + " is " + Shown.quoted(value.text()) + "; write 0 m, or from " + Shown.metres(GeodesicBuffer.LEAST_DISTANCE_M) + " to "
                    + Shown.number(GeodesicBuffer.MOST_DISTANCE_M / 1000) + " km");
        }
        return distanceM;
    }

    private static OptionalDouble comfortable(Block block, double distanceM) {
        OptionalDouble comfortableM = block.quantity("comfortable", Kind.LENGTH);
        if (comfortableM.isPresent() && comfortableM.getAsDouble() <= distanceM) {
            Value value = block.get("comfortable").get();
            value.problem("comfortable is " + Shown.quoted(value.text()) + ", which is not more than the distance "
                    + Shown.quoted(block.get("distance").map(Value::text).orElse("")) + "; raise it or leave it out");
        }
        return comfortableM;
    }

    static Optional<Reefs> reefs(Block plan, PlanFolder folder) {
        return plan.get("reefs")
                .flatMap(value -> value.block("reefs", keys("keep-off")))
                .map(block -> {
                    RuleBlock rule = RuleBlock.read(block, "reefs");
                    return new Reefs(LayerBlock.read(block, "reefs", "reefs.csv", folder), block.text("name"),
                            distanceM(block, "keep-off", "keep-off: 60 m"),
                            rule.positionUncertaintyM(), rule.source(), rule.confirmed());
                });
    }

    private static String[] keys(String... own) {
        return LayerBlock.keys(Stream.of(own, RuleBlock.KEYS, new String[] {"name", LayerBlock.CLASS, LayerBlock.EDGES, LayerBlock.REPAIR})
                .flatMap(Stream::of).toArray(String[]::new));
    }
}
