package org.seacairn.layer;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.seacairn.InputException;

/**
 * One GeoJSON object as it stands in the file: a collection's frame, a feature or a geometry. Members may
 * come in any order, so what they mean is decided after the last. Problems are thrown without a place.
 */
final class GeoJsonNode {
    /** Reads the features of a collection one by one, each when the parser stands at it. */
    interface FeatureSink {
        void read(JsonParser parser) throws IOException;
    }

    /** Arrays in arrays: a multi-polygon's, the deepest there is, without its positions. */
    private static final int DEEPEST = 3;

    /** The member "type", or null. */
    String type;
    /** The geometry of a feature, or null. */
    GeoJsonNode geometry;
    /** A {@link Coordinate}, or lists of it as deep as the file has them, or null. */
    Object coordinates;
    /** The members of a geometry collection, or null. */
    List<GeoJsonNode> geometries;
    Map<String, Object> properties = Map.of();
    /** The member "id" as text or number, or null. */
    Object id;
    /** The name in a member "crs" of the earlier GeoJSON specification of 2008, or null. */
    String crsName;

    /**
     * Reads the object at which the parser stands.
     *
     * @param sink takes the features of a collection; null where no collection may stand
     */
    static GeoJsonNode read(JsonParser parser, FeatureSink sink) throws IOException {
        require(parser.currentToken() == JsonToken.START_OBJECT, parser, "an object in braces");
        GeoJsonNode node = new GeoJsonNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String member = parser.currentName();
            JsonToken value = parser.nextToken();
            switch (member) {
                case "type" -> node.type = scalarOrNone(parser) instanceof String type ? type : null;
                case "features" -> readFeatures(parser, sink);
                case "geometry" -> node.geometry = value == JsonToken.VALUE_NULL ? null : read(parser, null);
                case "geometries" -> node.geometries = readGeometries(parser);
                case "coordinates" -> node.coordinates = value == JsonToken.VALUE_NULL ? null : coordinates(parser, DEEPEST);
                case "properties" -> node.properties = value == JsonToken.VALUE_NULL ? Map.of() : readProperties(parser);
                case "id" -> node.id = scalarOrNone(parser);
                case "crs" -> node.crsName = value == JsonToken.VALUE_NULL ? null : readCrsName(parser);
                case "geometryType", "rings", "paths" -> refuseEsri(parser, member);
                default -> parser.skipChildren();
            }
        }
        return node;
    }

    private static void readFeatures(JsonParser parser, FeatureSink sink) throws IOException {
        if (sink == null) {
            throw new InputException("a collection stands inside another; give one FeatureCollection");
        }
        require(parser.currentToken() == JsonToken.START_ARRAY, parser, "a list of features");
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            sink.read(parser);
        }
    }

    private static List<GeoJsonNode> readGeometries(JsonParser parser) throws IOException {
        require(parser.currentToken() == JsonToken.START_ARRAY, parser, "a list of geometries");
        List<GeoJsonNode> list = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            list.add(read(parser, null));
        }
        return list;
    }

    private static Object coordinates(JsonParser parser, int levelsLeft) throws IOException {
        require(parser.currentToken() == JsonToken.START_ARRAY, parser, "a list of coordinates");
        JsonToken first = parser.nextToken();
        if (first == JsonToken.START_ARRAY) {
            if (levelsLeft == 0) {
                throw new InputException("its coordinates are nested too deep; a multi-polygon has four levels");
            }
            List<Object> list = new ArrayList<>();
            while (parser.currentToken() != JsonToken.END_ARRAY) {
                list.add(coordinates(parser, levelsLeft - 1));
                parser.nextToken();
            }
            return list;
        }
        if (first == JsonToken.END_ARRAY) {
            return List.of();
        }
        double x = ordinate(parser);
        parser.nextToken();
        double y = ordinate(parser);
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            // Height, and whatever else: not needed, but still numbers.
            ordinate(parser);
        }
        return new Coordinate(x, y);
    }

    private static double ordinate(JsonParser parser) throws IOException {
        require(parser.currentToken().isNumeric(), parser, "a number in a position of two numbers or more");
        double value = parser.getDoubleValue();
        if (!Double.isFinite(value)) {
            throw new InputException("a coordinate is " + parser.getText() + " and not a place; correct or delete the feature");
        }
        return value;
    }

    private static Map<String, Object> readProperties(JsonParser parser) throws IOException {
        require(parser.currentToken() == JsonToken.START_OBJECT, parser, "properties in braces");
        Map<String, Object> properties = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            properties.put(name, parser.nextToken().isScalarValue() ? scalar(parser) : nested(parser));
        }
        return properties;
    }

    /** Passes over a list or an object, whose members are none of this object's. */
    private static Object scalarOrNone(JsonParser parser) throws IOException {
        if (parser.currentToken().isScalarValue()) {
            return scalar(parser);
        }
        parser.skipChildren();
        return null;
    }

    private static Object scalar(JsonParser parser) throws IOException {
        return switch (parser.currentToken()) {
            case VALUE_STRING -> parser.getText();
            case VALUE_TRUE, VALUE_FALSE -> parser.getBooleanValue();
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getNumberValue();
            default -> null;
        };
    }

    /** A list or object as one line of JSON. */
    private static String nested(JsonParser parser) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = GeoJsonReader.JSON.createGenerator(text)) {
            generator.copyCurrentStructure(parser);
        }
        return text.toString();
    }

    private static String readCrsName(JsonParser parser) throws IOException {
        require(parser.currentToken() == JsonToken.START_OBJECT, parser, "a crs in braces");
        String name = null;
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String member = parser.currentName();
            JsonToken value = parser.nextToken();
            if (member.equals("properties") && value == JsonToken.START_OBJECT) {
                Object stated = readProperties(parser).get("name");
                name = stated == null ? null : stated.toString();
            } else {
                parser.skipChildren();
            }
        }
        if (name == null) {
            throw new InputException("its \"crs\" member names no CRS; write {\"type\": \"name\", \"properties\": {\"name\": \"EPSG:4326\"}}, or leave it out");
        }
        return name;
    }

    private static void refuseEsri(JsonParser parser, String member) throws IOException {
        boolean text = parser.currentToken() == JsonToken.VALUE_STRING;
        if (text ? parser.getText().startsWith("esri") : !member.equals("geometryType")) {
            throw new InputException("is Esri JSON (member \"" + member + "\") and not GeoJSON; export it as GeoJSON");
        }
        parser.skipChildren();
    }

    private static void require(boolean holds, JsonParser parser, String wanted) throws IOException {
        if (!holds) {
            String met = parser.currentToken() == null ? "the end of the file" : parser.getText();
            throw new InputException("expected " + wanted + " but found \"" + (met.length() <= 40 ? met : met.substring(0, 37) + "...")
                    + "\"; correct the feature or export the file again");
        }
    }
}
