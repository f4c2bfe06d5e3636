import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.locationtech.jts.io.WKBWriter;
import org.seacairn.InputException;
import org.seacairn.layer.Feature;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.VectorLayer;
import org.seacairn.layer.VectorLayers;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * {@code ChartDump FILE CLASS…}: what Seacairn reads of a chart, for {@code chart-reference.py} to compare. One line a
 * feature: class, id, geometry as WKB, then attributes; a class that is refused is a line with the word "refused".
 */
final class ChartDump {
    private ChartDump() {}

    public static void main(String[] arguments) {
        for (int i = 1; i < arguments.length; i++) {
            dump(Path.of(arguments[0]).toAbsolutePath(), arguments[i]);
        }
    }

    private static void dump(Path file, String objectClass) {
        Optional<String> none = Optional.empty();
        try {
            VectorLayer layer = VectorLayers.read(new LayerFile("chart", file, Optional.of(objectClass), none, none, none, 0, Edges.GEODESIC));
            System.out.println("note\t" + objectClass + "\t" + String.join("; ", layer.notes()) + "\t"
                    + GeometryCheck.of(layer).stream().mapToInt(GeometryCheck.Finding::features).sum());
            for (Feature feature : layer.features()) {
                System.out.println(objectClass + "\t" + feature.id() + "\t" + WKBWriter.toHex(new WKBWriter(2).write(feature.geometry()))
                        + "\t" + attributes(feature.attributes()));
            }
        } catch (InputException e) {
            System.out.println("refused\t" + objectClass + "\t" + e.getMessage());
        }
    }

    private static String attributes(Map<String, Object> attributes) {
        return attributes.entrySet().stream().filter(e -> e.getValue() != null)
                .map(e -> String.format(Locale.ROOT, "%s=%s", e.getKey(), e.getValue().toString().replaceAll("[\t\r\n\u001d]", " ")))
                .collect(Collectors.joining("\u001d"));
    }
}
