package org.seacairn.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the browser answers: a value of JSON that says what it is where a test asks for something else.
 *
 * @param value a Map, List, String, Double, Boolean or null
 */
record JsonValue(Object value) {
    static final JsonValue NOTHING = new JsonValue(null);
    private static final JsonFactory FACTORY = new JsonFactory();

    static JsonValue read(String text) {
        try (JsonParser parser = FACTORY.createParser(text)) {
            parser.nextToken();
            return new JsonValue(read(parser));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Object read(JsonParser parser) throws IOException {
        switch (parser.currentToken()) {
            case START_OBJECT:
                Map<String, Object> map = new LinkedHashMap<>();
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String name = parser.currentName();
                    parser.nextToken();
                    map.put(name, read(parser));
                }
                return map;
            case START_ARRAY:
                List<Object> list = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    list.add(read(parser));
                }
                return list;
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT:
                return parser.getDoubleValue();
            case VALUE_TRUE, VALUE_FALSE:
                return parser.getBooleanValue();
            case VALUE_NULL:
                return null;
            default:
                return parser.getText();
        }
    }

    /** @param value Maps, Lists, Strings, Numbers, Booleans and nulls */
    static String write(Object value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = FACTORY.createGenerator(text)) {
            write(value, generator);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static void write(Object value, JsonGenerator generator) throws IOException {
        if (value instanceof Map<?, ?> map) {
            generator.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                generator.writeFieldName((String) entry.getKey());
                write(entry.getValue(), generator);
            }
            generator.writeEndObject();
        } else if (value instanceof List<?> list) {
            generator.writeStartArray();
            for (Object item : list) {
                write(item, generator);
            }
            generator.writeEndArray();
        } else {
            generator.writePOJO(value);
        }
    }

    boolean isNull() {
        return value == null;
    }

    /** The member of that name, {@link #NOTHING} where there is none. */
    JsonValue get(String name) {
        return new JsonValue(as(Map.class).get(name));
    }

    List<JsonValue> items() {
        List<JsonValue> items = new ArrayList<>();
        for (Object item : as(List.class)) {
            items.add(new JsonValue(item));
        }
        return items;
    }

    /** The items of a list of texts. */
    List<String> texts() {
        return items().stream().map(JsonValue::text).toList();
    }

    String text() {
        return as(String.class);
    }

    double number() {
        return as(Double.class);
    }

    boolean truth() {
        return as(Boolean.class);
    }

    private <T> T as(Class<T> type) {
        if (!type.isInstance(value)) {
            throw new IllegalStateException("the browser answered " + this + " where a " + type.getSimpleName() + " is expected");
        }
        return type.cast(value);
    }

    @Override
    public String toString() {
        return write(value);
    }
}
