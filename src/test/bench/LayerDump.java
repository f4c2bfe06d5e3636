import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.StringWriter;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.io.WKBWriter;
import org.seacairn.InputException;
import org.seacairn.layer.Feature;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.VectorLayer;
import org.seacairn.layer.VectorLayers;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * What the readers of vector formats read, for {@code .ci/compare-layers} to hold against GDAL. A line of standard input is one question: file, table, CRS
 * (the last two may be empty), parted by tabs; the answer is one line of JSON.
 */
final class LayerDump {
    private static final JsonFactory JSON = new JsonFactory();

    private LayerDump() {}

    public static void main(String[] none) throws IOException {
        PrintStream answers = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        BufferedReader questions = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String line = questions.readLine(); line != null; line = questions.readLine()) {
            String[] question = line.split("\t", -1);
            StringWriter answer = new StringWriter();
            try (JsonGenerator json = JSON.createGenerator(answer)) {
                json.writeStartObject();
                try {
                    write(VectorLayers.read(new LayerFile("layer", Path.of(question[0]).toAbsolutePath(), stated(question[1]), stated(question[2]),
                            Optional.empty(), Optional.empty(), 0, Edges.GEODESIC)), json);
                } catch (InputException e) {
                    json.writeStringField("refused", e.getMessage());
                }
                json.writeEndObject();
            }
            answers.println(answer);
        }
    }

    private static Optional<String> stated(String text) {
        return Optional.of(text).filter(t -> !t.isEmpty());
    }

    private static void write(VectorLayer layer, JsonGenerator json) throws IOException {
        json.writeStringField("format", layer.format());
        json.writeStringField("crs", layer.crs().label());
        json.writeStringField("wkt", layer.crs().wkt());
        json.writeNumberField("without", layer.featuresWithoutGeometry());
        json.writeArrayFieldStart("notes");
        for (String note : layer.notes()) {
            json.writeString(note);
        }
        for (GeometryCheck.Finding finding : GeometryCheck.of(layer)) {
            json.writeString(finding.message());
        }
        json.writeEndArray();
        json.writeArrayFieldStart("features");
        for (Feature feature : layer.features()) {
            json.writeStartObject();
            json.writeNumberField("id", feature.id());
            json.writeStringField("wkb", WKBWriter.toHex(new WKBWriter(2).write(feature.geometry())));
            json.writeObjectFieldStart("attributes");
            for (Map.Entry<String, Object> attribute : feature.attributes().entrySet()) {
                json.writeFieldName(attribute.getKey());
                write(attribute.getValue(), json);
            }
            json.writeEndObject();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void write(Object value, JsonGenerator json) throws IOException {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof Boolean flag) {
            json.writeBoolean(flag);
        } else if (value instanceof BigInteger number) {
            json.writeNumber(number);
        } else if (value instanceof Double || value instanceof Float) {
            json.writeNumber(((Number) value).doubleValue());
        } else if (value instanceof Number number) {
            json.writeNumber(number.longValue());
        } else {
            json.writeString(value.toString());
        }
    }
}
