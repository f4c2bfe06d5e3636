package org.seacairn.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.seacairn.place.Site;

/** A summary for programs. */
final class JsonText {
    private JsonText() {}

    /** Fills an object that is open. */
    interface Fields {
        void writeTo(JsonGenerator json) throws IOException;
    }

    /** One object as indented text; escaped, so that it stays JSON whatever encoding standard output has. */
    static String of(Fields fields) {
        StringWriter text = new StringWriter();
        JsonFactory factory = JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();
        try (JsonGenerator json = factory.createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            fields.writeTo(json);
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    /** A number, or null where it is none. */
    static void number(JsonGenerator json, String name, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(name, value);
        } else {
            json.writeNullField(name);
        }
    }

    static void sites(JsonGenerator json, List<Site> sites) throws IOException {
        json.writeArrayFieldStart("sites");
        for (Site site : sites) {
            json.writeStartObject();
            json.writeNumberField("rank", site.rank());
            json.writeStringField("site", site.name());
            json.writeNumberField("longitude_deg", site.longitudeDeg());
            json.writeNumberField("latitude_deg", site.latitudeDeg());
            json.writeNumberField("depth_m", site.depthM());
            json.writeNumberField("score", site.score());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    static void array(JsonGenerator json, String name, List<String> lines) throws IOException {
        json.writeArrayFieldStart(name);
        for (String line : lines) {
            json.writeString(line);
        }
        json.writeEndArray();
    }
}
