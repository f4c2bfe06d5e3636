package org.seacairn.plan;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/** The keys that every block with a layer has: which file, and how to read it. */
final class LayerBlock {
    private static final String[] KEYS = {"file", "table", "object-class", "crs", "x-column", "y-column"};
    /** Object class of a chart, allowed where it does not name an attribute: {@code object-class} says the same everywhere. */
    static final String CLASS = "class";
    /** Allowed only where the layer's edges are measured to. */
    static final String EDGES = "edges";
    /** Allowed wherever polygons may stand. */
    static final String REPAIR = "repair";

    private LayerBlock() {}

    /** The keys of a block with a layer. */
    static String[] keys(String... own) {
        return Stream.concat(Stream.of(KEYS), Stream.of(own)).toArray(String[]::new);
    }

    /** @param exampleFile a file name that suits the layer, for the message if there is none */
    static LayerFile read(Block block, String label, String exampleFile, PlanFolder folder) {
        return read(block, label, exampleFile, folder, List.of("table", "object-class", CLASS));
    }

    /** As {@link #read(Block, String, String, PlanFolder)} where {@code class} is a key of the block's own. */
    static LayerFile readWithClassAttribute(Block block, String label, String exampleFile, PlanFolder folder) {
        return read(block, label, exampleFile, folder, List.of("table", "object-class"));
    }

    private static LayerFile read(Block block, String label, String exampleFile, PlanFolder folder, List<String> tableKeys) {
        Optional<Value> file = block.need("file", "file: " + exampleFile);
        Path path = file.flatMap(folder::file).orElse(Path.of(""));
        if (block.has("x-column") != block.has("y-column")) {
            block.problem(block.has("x-column") ? "x-column is given and y-column is not; give both"
                    : "y-column is given and x-column is not; give both");
        }
        return new LayerFile(label, path, table(block, tableKeys), crs(block), block.text("x-column"),
                block.text("y-column"), file.map(Value::line).orElse(0), edges(block), block.get(REPAIR).map(Value::flag).orElse(false));
    }

    private static Optional<String> table(Block block, List<String> keys) {
        List<String> given = keys.stream().filter(block::has).toList();
        if (given.size() > 1) {
            block.problem(String.join(" and ", given) + " are given, and each names what to read of the file; give one");
        }
        return given.stream().findFirst().flatMap(block::text);
    }

    private static Edges edges(Block block) {
        return block.get(EDGES).flatMap(value -> value.choice(Edges.class)).orElse(Edges.GEODESIC);
    }

    /** The extent of a layer: a block of its own, or the name of its file alone. */
    static LayerFile coverage(Value value, String layer, PlanFolder folder) {
        String label = layer + " coverage";
        if (value.isBlock()) {
            Block block = value.block("coverage", "file", "table", "object-class", CLASS, "crs", REPAIR).orElseThrow();
            return read(block, label, "survey-extent.geojson", folder);
        }
        Optional<String> none = Optional.empty();
        return new LayerFile(label, folder.file(value).orElse(Path.of("")), none, none, none, none, value.line(),
                Edges.GEODESIC);
    }

    /** The text of a block's CRS, known to be readable. */
    static Optional<String> crs(Block block) {
        Optional<Value> value = block.get("crs");
        Optional<String> text = value.map(Value::text).filter(t -> !t.isEmpty());
        text.ifPresent(t -> parse(value.get(), t));
        return text;
    }

    /** Notes a problem if the text is no CRS. */
    static Optional<Crs> parse(Value value, String text) {
        try {
            return Optional.of(Crs.parse(text));
        } catch (InputException e) {
            value.problem(e.getMessage());
            return Optional.empty();
        }
    }
}
