import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.seacairn.layer.Feature;
import org.seacairn.layer.VectorLayer;
import org.seacairn.layer.VectorLayers;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/** {@code SameLayers A B}: whether two files hold the same features in the same order, coordinates and attributes to the last bit. */
final class SameLayers {
    private SameLayers() {}

    public static void main(String[] arguments) {
        VectorLayer a = read(arguments[0]);
        VectorLayer b = read(arguments[1]);
        int vertices = 0;
        int attributes = 0;
        int differ = a.features().size() == b.features().size() && a.featuresWithoutGeometry() == b.featuresWithoutGeometry() ? 0 : 1;
        for (int i = 0; i < Math.min(a.features().size(), b.features().size()); i++) {
            Feature one = a.features().get(i);
            Feature other = b.features().get(i);
            boolean same = one.geometry().equalsExact(other.geometry()) && plain(one.attributes()).equals(plain(other.attributes()));
            if (!same && differ++ == 0) {
                System.out.println(one + "\n" + other);
            }
            vertices += one.geometry().getNumPoints();
            attributes += plain(one.attributes()).size();
        }
        System.out.println(a.features().size() + " features, " + vertices + " vertices, " + attributes + " attributes, " + a.crs().label()
                + (a.crs().equals(b.crs()) ? "" : " and not " + b.crs().label()) + "; differing: " + differ);
        System.exit(differ == 0 ? 0 : 1);
    }

    private static VectorLayer read(String file) {
        Optional<String> none = Optional.empty();
        return VectorLayers.read(new LayerFile("layer", Path.of(file).toAbsolutePath(), none, none, none, none, 0, Edges.GEODESIC));
    }

    /** Without the key that one format adds, and numbers by value: an integer has as many bits as its file gives it. */
    private static Map<String, Object> plain(Map<String, Object> attributes) {
        Map<String, Object> plain = new TreeMap<>();
        attributes.forEach((name, value) -> {
            if (value != null && !List.of("fid", "ogc_fid").contains(name)) {
                plain.put(name, value instanceof Number number ? (Object) number.doubleValue() : value);
            }
        });
        return plain;
    }
}
