package org.seacairn.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * GeoJSON after RFC 7946: WGS 84, shells counterclockwise. One feature a line. Properties have the
 * names of the CSV columns; a missing value is null.
 */
public final class GeoJsonWriter {
    private GeoJsonWriter() {}

    /** @throws org.seacairn.InputException if the file cannot be written */
    public static void write(Path file, FeatureTable<?> table) {
        OutputFile.text(file, out -> write(out, table));
    }

    private static <T> void write(Writer out, FeatureTable<T> table) throws IOException {
        out.write("{\"type\":\"FeatureCollection\",\"name\":\"" + table.name() + "\",\"features\":[\n");
        // Every feature is a value of its own to the generator, so that each stands on its own line.
        JsonFactory factory = JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();
        try (JsonGenerator json = factory.createGenerator(out)) {
            json.setRootValueSeparator(new SerializedString(",\n"));
            for (T row : table.rows()) {
                json.writeStartObject();
                json.writeStringField("type", "Feature");
                json.writeObjectFieldStart("properties");
                for (Column<T> column : table.columns()) {
                    json.writeFieldName(column.name());
                    writeValue(json, column, row);
                }
                json.writeEndObject();
                json.writeFieldName("geometry");
                writeGeometry(json, table.geometry().apply(row), table.decimals());
                json.writeEndObject();
            }
        }
        out.write("\n]}\n");
    }

    private static <T> void writeValue(JsonGenerator json, Column<T> column, T row) throws IOException {
        Object value = column.value(row);
        if (value == null) {
            json.writeNull();
            return;
        }
        switch (column.kind()) {
            case TEXT -> json.writeString((String) value);
            case BOOLEAN -> json.writeBoolean((Boolean) value);
            case INTEGER, REAL -> json.writeNumber(column.text(row));
        }
    }

    private static void writeGeometry(JsonGenerator json, Geometry geometry, int decimals) throws IOException {
        json.writeStartObject();
        json.writeStringField("type", geometry.getGeometryType());
        json.writeFieldName("coordinates");
        switch (geometry.getGeometryType()) {
            case Geometry.TYPENAME_POINT -> writePosition(json, geometry.getCoordinate(), decimals);
            case Geometry.TYPENAME_POLYGON -> writePolygon(json, (Polygon) geometry, decimals);
            case Geometry.TYPENAME_MULTIPOLYGON -> {
                json.writeStartArray();
                for (int i = 0; i < geometry.getNumGeometries(); i++) {
                    writePolygon(json, (Polygon) geometry.getGeometryN(i), decimals);
                }
                json.writeEndArray();
            }
            default -> throw new IllegalArgumentException("no GeoJSON for " + geometry.getGeometryType());
        }
        json.writeEndObject();
    }

    private static void writePolygon(JsonGenerator json, Polygon polygon, int decimals) throws IOException {
        json.writeStartArray();
        writeRing(json, polygon.getExteriorRing(), decimals);
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            writeRing(json, polygon.getInteriorRingN(i), decimals);
        }
        json.writeEndArray();
    }

    private static void writeRing(JsonGenerator json, LineString ring, int decimals) throws IOException {
        json.writeStartArray();
        for (Coordinate vertex : ring.getCoordinates()) {
            writePosition(json, vertex, decimals);
        }
        json.writeEndArray();
    }

    private static void writePosition(JsonGenerator json, Coordinate position, int decimals) throws IOException {
        json.writeStartArray();
        json.writeNumber(Decimals.text(position.x, decimals));
        json.writeNumber(Decimals.text(position.y, decimals));
        json.writeEndArray();
    }
}
